/** In place of a screen that cannot be shown: one sentence why, and the way on. */
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { HeadGauge } from "./HeadGauge.tsx";

interface InsteadProps {
  where: string;
  title: string;
  benchName: string;
  /** One step back. */
  back: string;
  /** The main key: what it says and where it leads; none where there is only the way back. */
  on?: { words: string; href: string };
  says: string;
}

export function Instead({ where, title, benchName, back, on, says }: InsteadProps) {
  return (
    <Frame
      where={where}
      title={title}
      gauge={<HeadGauge />}
      benchName={benchName}
      bench={
        <Foot>
          <BackKey href={back} />
          {on === undefined ? <span /> : <MainKey {...on} />}
        </Foot>
      }
    >
      <Notice>{says}</Notice>
    </Frame>
  );
}

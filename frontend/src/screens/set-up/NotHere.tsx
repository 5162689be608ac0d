/** A definition this phone does not know: what to do, and the way back. */
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { AREAS, SET_UP } from "../../text/set_up.ts";

/** `area` names the list to go back to. */
export function NotHere({ area }: { area: string }) {
  const title = AREAS[area]?.title ?? SET_UP.where;
  return (
    <Frame
      where={SET_UP.where}
      title={title}
      benchName={SET_UP.bench}
      bench={
        <Foot>
          <BackKey href={`#/set-up/${area}`} />
          <MainKey words={title} href={`#/set-up/${area}`} />
        </Foot>
      }
    >
      <Notice>{SET_UP.not_here}</Notice>
    </Frame>
  );
}

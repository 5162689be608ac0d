/** The hold of a batch or lot: what keeps it back, who decided, and the form to do either. */
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { HOLD } from "../../text/holds.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Held } from "./Held.tsx";
import { thingOf } from "./thing.ts";
import "../common/rows.css";

/** `#/batch/:batch/hold` and `#/lot/:lot/hold`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const thing = thingOf(params);
  return thing === null ? <NotHere /> : <Held key={thing.subject} thing={thing} />;
}

function NotHere() {
  return (
    <Frame
      where={HOLD.where}
      title={HOLD.where}
      gauge={<HeadGauge />}
      benchName={HOLD.bench}
      bench={
        <Foot>
          <BackKey href="#/" />
          <MainKey words={HOLD.where} href="#/stock" />
        </Foot>
      }
    >
      <Notice>{HOLD.not_here}</Notice>
    </Frame>
  );
}

/** A drill: one question a screen, then five weighings, then what was done. */
import { useSignal } from "@preact/signals";
import { Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { Tube } from "../../parts/Tube.tsx";
import { DRILL } from "../../text/skills.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { QUESTIONS_COUNT, STEPS_COUNT, weighingTurn } from "./asked.ts";
import { Checklist } from "./Checklist.tsx";
import { Asked } from "./Drawn.tsx";
import { DrillBench } from "./DrillBench.tsx";
import { type Drilling, useDrill } from "./use_drill.ts";
import { Weighed } from "./Weighed.tsx";
import "../weigh-in/weigh_in.css";
import "./training.css";

/** `#/drill`. */
export function Screen() {
  const drilling = useDrill();
  const { typed } = drilling;
  const isOpen = useSignal(false);
  const isAsking = isOpen.value && typed.seed !== null;
  const isChecking = typed.at === STEPS_COUNT - 1;
  return (
    <Frame
      where={DRILL.where}
      title={isAsking ? DRILL.at_of(typed.at + 1, STEPS_COUNT) : DRILL.title}
      gauge={<HeadGauge />}
      calm={isAsking ? undefined : DRILL.calm}
      hasKeypad={isAsking && !isChecking}
      benchName={DRILL.bench}
      plate={<Refusal sentence={drilling.hindrance.value?.sentence ?? null} />}
      bench={
        <DrillBench
          key={typed.at}
          drilling={drilling}
          isAsking={isAsking}
          onAsk={() => {
            isOpen.value = true;
          }}
          onLeave={() => {
            isOpen.value = false;
          }}
        />
      }
    >
      {isAsking ? <Step drilling={drilling} /> : <Before />}
    </Frame>
  );
}

function Step({ drilling }: { drilling: Drilling }) {
  const { at } = drilling.typed;
  return (
    <div class="drill-step">
      <Tube
        full={at}
        whole={STEPS_COUNT}
        says={DRILL.progress(at, STEPS_COUNT)}
        parts={STEPS_COUNT}
        isThin
      />
      {at < QUESTIONS_COUNT && <Asked drilling={drilling} />}
      {weighingTurn(at) > 0 && <Weighed drilling={drilling} />}
      {at === STEPS_COUNT - 1 && <Checklist drilling={drilling} />}
    </div>
  );
}

function Before() {
  return (
    <div class="drill-before">
      <p>{DRILL.what}</p>
      <p>{DRILL.how_fine}</p>
      <Notice>{DRILL.who_sees}</Notice>
    </div>
  );
}

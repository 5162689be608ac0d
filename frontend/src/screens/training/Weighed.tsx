/** One thing weighed five times: which scale, what it shows now, what it showed before. */

import { NumberShown } from "../../parts/NumberShown.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { DRILL } from "../../text/skills.ts";
import { InstrumentCup } from "../weigh-in/InstrumentCup.tsx";
import { QUESTIONS_COUNT, weighingTurn } from "./asked.ts";
import type { Drilling } from "./use_drill.ts";

/** The reading of this turn; the scale may still be changed. */
export function Weighed({ drilling }: { drilling: Drilling }) {
  const { typed, read, scale } = drilling;
  const turn = weighingTurn(typed.at);
  const before = typed.reads.slice(QUESTIONS_COUNT, typed.at).filter((each) => each !== "");
  return (
    <div class="weighed-often">
      <h2>{DRILL.weigh}</h2>
      <p>{DRILL.weigh_how}</p>
      {scale !== null && (
        <>
          <p class="asks">{DRILL.turn_of(turn)}</p>
          <p class="sum">
            <NumberShown amount={read || null} unit={scale.unit} basis="counted" size="reading" />
          </p>
          <Notice>
            {before.length === 0 ? DRILL.type_first : DRILL.before(before, scale.unit)}
          </Notice>
          <div class="weigh-cups">
            <InstrumentCup instrument={scale} onPress={() => drilling.type({ instrument: "?" })} />
          </div>
        </>
      )}
    </div>
  );
}

/** One sum: what is known, what comes of it with its mark and source, and its cautions in full. */
import { Caution } from "../../parts/Caution.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { Frame } from "../../parts/Frame.tsx";
import { Glass } from "../../parts/Glass.tsx";
import { Part, Refusal } from "../../parts/Plain.tsx";
import { SUMS } from "../../text/sums.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { batchOf } from "../common/batches.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { BatchInQuestion } from "../common/InQuestion.tsx";
import { Instead } from "../common/Instead.tsx";
import { Recalled } from "../common/Recalled.tsx";
import { AskedFields } from "./AskedFields.tsx";
import { DoubtsPart } from "./DoubtsPart.tsx";
import type { SumPlan } from "./plan.ts";
import { AnswerPlate, ResultRows } from "./Results.tsx";
import { SumBench } from "./SumBench.tsx";
import { ALL_SUMS } from "./sums.ts";
import { useSum } from "./use_sum.ts";
import "./sums.css";

/** `#/sums/:sum`, and `#/sums/:sum/:batch`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { sum = "", batch = "" } = params;
  const plan = ALL_SUMS[sum];
  if (plan === undefined) {
    return (
      <Instead
        where={SUMS.where}
        title={SUMS.title}
        benchName={SUMS.bench}
        back="#/sums"
        on={{ words: SUMS.all, href: "#/sums" }}
        says={SUMS.not_here}
      />
    );
  }
  return <OneSum key={`${sum} ${batch}`} plan={plan} name={sum} batch={batch} />;
}

const GLASS_PX = 190;

function OneSum({ plan, name, batch }: { plan: SumPlan; name: string; batch: string }) {
  const sum = useSum(plan, name, batch);
  const { answer, typed } = sum;
  const state = batch === "" ? null : (batchOf(batch)?.state ?? null);
  const watched = answer.is === "found" ? answer.watched : undefined;
  return (
    <Frame
      where={state === null ? SUMS.where : <BatchNamed batch={state} />}
      title={plan.title}
      gauge={<HeadGauge />}
      calm={plan.what}
      hasKeypad
      benchName={SUMS.bench}
      bench={<SumBench sum={sum} batch={state} />}
      plate={<AnswerPlate answer={answer} isNoted={sum.isNoted} />}
      side={
        <>
          {answer.is !== "missing" && (
            <Part title={answer.is === "found" ? SUMS.results : SUMS.limits}>
              {watched !== undefined && <Glass {...watched} height={GLASS_PX} />}
              <ResultRows rows={answer.rows} />
              <Recalled cited={answer.cited} names={SUMS.cited} />
            </Part>
          )}
          <Caution about={plan.aboutNow?.(typed) ?? plan.about} />
        </>
      }
    >
      <Refusal sentence={sum.found?.sentence ?? null} />
      <BatchInQuestion batch={batch === "" ? null : batch} />
      <AskedFields sum={sum} />
      <DoubtsPart sum={sum} />
      <p class="key-row">
        <Cup onPress={sum.rubOut}>{SUMS.rub_out}</Cup>
      </p>
    </Frame>
  );
}

/** A step with a check: one reading against its limit, in time. */

import { useSignal } from "@preact/signals";
import type { BatchState } from "../../calc/batches.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { Entries, EntryRow } from "../../parts/EntryRow.tsx";
import { Frame } from "../../parts/Frame.tsx";
import { Part } from "../../parts/Plain.tsx";
import { cautionsOfStep } from "../../text/cautions.ts";
import { amountWords, clockWords } from "../../text/numbers.ts";
import { STEP } from "../../text/step.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { type BatchStep, batchOf, targetOf, unscaledOf } from "../common/batches.ts";
import { doneWords } from "../common/done.ts";
import { zone } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { InQuestion } from "../common/InQuestion.tsx";
import { Instead } from "../common/Instead.tsx";
import { entryState } from "../weigh-in/LineEntries.tsx";
import { type StepAsking, StepBench } from "./StepBench.tsx";
import { StepCheck } from "./StepCheck.tsx";
import { StepPlate } from "./StepPlate.tsx";
import { useStep } from "./use_step.ts";
import { SampleAndBlank, WhichScale } from "./Worked.tsx";
import "../weigh-in/weigh_in.css";

/** `#/step/:batch/:step`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const batch = batchOf(params.batch ?? "")?.state ?? null;
  const step = batch?.steps.find((each) => each.step === params.step);
  if (batch === null || step === undefined) {
    return (
      <Instead
        where={STEP.all_steps}
        title={STEP.all_steps}
        benchName={STEP.bench}
        back="#/"
        on={{ words: STEP.all_steps, href: `#/batch/${params.batch ?? ""}` }}
        says={STEP.not_here}
      />
    );
  }
  return <Stepped key={`${batch.batch}:${step.step}`} batch={batch} step={step} />;
}

function Stepped({ batch, step }: { batch: BatchState; step: BatchStep }) {
  const stepping = useStep(batch, step);
  const asking = useSignal<StepAsking>("keys");
  const at = batch.steps.indexOf(step) + 1;
  return (
    <Frame
      where={<BatchNamed batch={batch} />}
      title={STEP.step_of(String(at), String(batch.steps.length))}
      gauge={<HeadGauge />}
      hasKeypad={stepping.isMeasured}
      benchName={STEP.bench}
      bench={
        <StepBench
          step={step}
          stepping={stepping}
          asking={asking.value}
          onAsk={(next) => {
            asking.value = next;
          }}
          back={`#/batch/${batch.batch}`}
        />
      }
      plate={<StepPlate step={step} stepping={stepping} />}
      side={<Beside batch={batch} step={step} />}
    >
      <p class="step-says rec">{step.says}</p>
      {step.minutes !== null && (
        <p class="second">{STEP.takes(amountWords(step.minutes, "min"))}</p>
      )}
      {step.measures === "kettle_mass" && targetOf(batch) !== null && (
        <p class="key-row">
          <Cup href={`#/sums/kettle/${batch.batch}`}>{STEP.kettle}</Cup>
        </p>
      )}
      {stepping.isMeasured && (
        <StepCheck
          step={step}
          stepping={stepping}
          onAskInstrument={() => {
            asking.value = "instrument";
          }}
        />
      )}
      <WhichScale step={step} stepping={stepping} />
      <SampleAndBlank step={step} stepping={stepping} />
      {step.measures === "temperature" && (
        <p class="key-row">
          <Cup href={`#/heat/${batch.batch}/${step.step}`}>{STEP.log}</Cup>
        </p>
      )}
      <Caution
        about={[
          ...cautionsOfStep(step.measures),
          ...(hasProcessLimit(step) ? (["process_limit"] as const) : []),
        ]}
        own={step.caution}
      />
    </Frame>
  );
}

const MASSES = ["prepared_mass", "kettle_mass", "mass"];

/** A limit that is about what is fit to eat, not about how much there is. */
function hasProcessLimit({ measures, low, high }: BatchStep): boolean {
  return measures !== null && !MASSES.includes(measures) && (low !== null || high !== null);
}

/** What was read before, and what the recipe says does not scale. */
function Beside({ batch, step }: { batch: BatchState; step: BatchStep }) {
  const unscaled = unscaledOf(batch);
  return (
    <>
      <Before step={step} />
      {unscaled !== null && (
        <Part title={STEP.does_not_scale}>
          <p class="rec">{unscaled}</p>
          <Caution about="scaling" />
        </Part>
      )}
    </>
  );
}

function Before({ step }: { step: BatchStep }) {
  return (
    <Part title={STEP.before}>
      {step.done.length === 0 && <p class="second">{STEP.nothing_before}</p>}
      <Entries name={STEP.before}>
        {step.done.map((each) => (
          <EntryRow
            key={each.entry}
            time={clockWords(each.happened_at, zone())}
            state={entryState(each.entry)}
            more={
              <>
                {each.action && <span class="rec">{each.action}</span>}{" "}
                <InQuestion {...each} trust={each.trust} unit={step.unit} />
              </>
            }
          >
            {doneWords(each, step)}
          </EntryRow>
        ))}
      </Entries>
    </Part>
  );
}

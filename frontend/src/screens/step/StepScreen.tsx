/** A step with a check: one reading against its limit, in time. */

import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import type { BatchState } from "../../calc/batches.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { Entries, EntryRow } from "../../parts/EntryRow.tsx";
import { Frame } from "../../parts/Frame.tsx";
import { Glass } from "../../parts/Glass.tsx";
import { NumberShown } from "../../parts/NumberShown.tsx";
import { Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { useRoom } from "../../parts/room.ts";
import { Verdict } from "../../parts/Verdict.tsx";
import { cautionsOfStep } from "../../text/cautions.ts";
import { amountWords, clockWords, figure } from "../../text/numbers.ts";
import { STEP } from "../../text/step.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { type BatchStep, batchOf, targetOf, unscaledOf } from "../common/batches.ts";
import { doneWords } from "../common/done.ts";
import { zone } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { InQuestion } from "../common/InQuestion.tsx";
import { Instead } from "../common/Instead.tsx";
import { InstrumentCup } from "../weigh-in/InstrumentCup.tsx";
import { entryState } from "../weigh-in/LineEntries.tsx";
import { alsoAsked, isWorkedOut, readUnit } from "./asked.ts";
import type { Checked, StepTyped } from "./check.ts";
import { intoOf, type StepAsking, StepBench } from "./StepBench.tsx";
import { type Stepping, useStep } from "./use_step.ts";
import { SampleAndBlank, WhichScale, Worked } from "./Worked.tsx";
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
        <Check
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

const GLASS_PX = { least: 150, most: 300 };

function limitWords(step: BatchStep, unit: string | null): string {
  if (step.low === null && step.high === null) return STEP.no_limit;
  if (step.low === null) return STEP.at_most(amountWords(step.high, unit));
  if (step.high === null) return STEP.at_least(amountWords(step.low, unit));
  return STEP.from_to(figure(step.low), amountWords(step.high, unit));
}

/** What was worked out; of a salometer nothing is before its scale is said. */
function isWorthTelling(means: Checked | null, typed: StepTyped): means is Checked {
  if (means === null || (means.how === "salometer" && typed.scale === "")) return false;
  return means.how !== "read" || means.value !== typed.shown;
}

interface CheckProps {
  step: BatchStep;
  stepping: Stepping;
  onAskInstrument: () => void;
}

function LimitGlass(props: { step: BatchStep; means: Checked | null; height: number }) {
  const { step, means, height } = props;
  const limit = limitWords(step, step.unit);
  const isTold = means !== null && (means.how === "read" || means.reach !== null);
  return (
    <Glass
      says={
        isTold ? STEP.glass(amountWords(means.value, means.unit), limit) : STEP.glass_empty(limit)
      }
      level={isTold ? means.value : null}
      low={step.low}
      high={step.high}
      uncertainty={means?.reach ?? null}
      height={height}
    />
  );
}

function Corrected({ means }: { means: Checked | null }) {
  if (!means?.is_corrected) return null;
  return (
    <p class="give">
      <span>{WEIGH_IN.corrected}</span>
      <span>{means.reach && WEIGH_IN.give_or_take(means.reach)}</span>
    </p>
  );
}

function Check({ step, stepping, onAskInstrument }: CheckProps) {
  const { means, typed, instrument } = stepping;
  const part = useRef<HTMLDivElement>(null);
  const height = useRoom(part, GLASS_PX);
  const into = intoOf(typed, step);
  const also = alsoAsked(step, typed).find(({ field }) => field === into);
  const isTare = into === "tare";
  const unit = also?.unit ?? instrument?.unit ?? readUnit(step);
  const hasLimits = step.low !== null || step.high !== null;
  return (
    <div class={hasLimits ? "weigh" : "weigh no-glass"} ref={part}>
      {hasLimits && <LimitGlass step={step} means={means} height={height} />}
      <div class="weigh-read">
        <div class="figures">
          <p class="asks">
            {also?.asks ?? (isTare ? STEP.bowl_shows : STEP.measure(step.measures))}
          </p>
          {!isWorkedOut(step) && (
            <p class="sum">
              <NumberShown
                amount={typed[into] || null}
                unit={unit}
                basis="counted"
                size="reading"
              />
            </p>
          )}
          {hasLimits && (
            <p class="less">
              <span>{STEP.limit}</span>
              <b>{limitWords(step, null)}</b>
            </p>
          )}
          {isWorthTelling(means, typed) && <Worked means={means} />}
          <Corrected means={means} />
          {step.set_by && (
            <p class="second">
              {STEP.set_by} <span class="rec">{step.set_by}</span>
            </p>
          )}
        </div>
      </div>
      {stepping.isRead && (
        <div class="weigh-cups">
          <InstrumentCup instrument={instrument} onPress={onAskInstrument} />
        </div>
      )}
    </div>
  );
}

/** The verdict over the bench, or what stands in its way; the main key says what to type. */
function StepPlate({ step, stepping }: { step: BatchStep; stepping: Stepping }) {
  const { means, instrument } = stepping;
  const hindered = stepping.hindrance.value;
  if (hindered !== null) return <Refusal sentence={hindered.sentence} />;
  if (!stepping.isMeasured) return null;
  if (means === null || stepping.lacks === STEP.scale_first) return null;
  const { verdict } = means;
  if (verdict === null) return <Notice isLive>{STEP.no_limits_why}</Notice>;
  if (verdict === "within") {
    return <Verdict verdict="within" word={STEP.within} why={STEP.within_why} isLive />;
  }
  if (verdict === "cannot_tell") {
    const word = STEP.cannot_tell(instrument?.sort ?? "");
    return (
      <Verdict
        verdict="cannot_tell"
        isTooLittle={means.is_low}
        word={word}
        why={means.how === "cannot_correct" ? STEP.cannot_correct_why : STEP.cannot_why}
        isLive
      />
    );
  }
  const limit = amountWords(means.is_low ? step.low : step.high, step.unit);
  return (
    <Verdict
      verdict="outside"
      isTooLittle={means.is_low}
      word={means.is_low ? STEP.outside_little : STEP.outside_much}
      why={STEP.outside_why(amountWords(means.off, step.unit), limit)}
      isLive
    />
  );
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

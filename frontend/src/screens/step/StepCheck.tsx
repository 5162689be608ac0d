/** The one reading of a step, against its limit. */

import { useRef } from "preact/hooks";
import { Glass } from "../../parts/Glass.tsx";
import { NumberShown } from "../../parts/NumberShown.tsx";
import { useRoom } from "../../parts/room.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { STEP } from "../../text/step.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import type { BatchStep } from "../common/batches.ts";
import { InstrumentCup } from "../weigh-in/InstrumentCup.tsx";
import { alsoAsked, isWorkedOut, readUnit } from "./asked.ts";
import type { Checked, StepTyped } from "./check.ts";
import { intoOf } from "./StepBench.tsx";
import type { Stepping } from "./use_step.ts";
import { Worked } from "./Worked.tsx";

const GLASS_PX = { least: 150, most: 300 };

interface CheckProps {
  step: BatchStep;
  stepping: Stepping;
  onAskInstrument: () => void;
}

/** What is read stands in the glass between its limits; on which instrument, below. */
export function StepCheck({ step, stepping, onAskInstrument }: CheckProps) {
  const part = useRef<HTMLDivElement>(null);
  const height = useRoom(part, GLASS_PX);
  const hasLimits = step.low !== null || step.high !== null;
  return (
    <div class={hasLimits ? "weigh" : "weigh no-glass"} ref={part}>
      {hasLimits && <LimitGlass step={step} means={stepping.means} height={height} />}
      <div class="weigh-read">
        <Figures step={step} stepping={stepping} hasLimits={hasLimits} />
      </div>
      {stepping.isRead && (
        <div class="weigh-cups">
          <InstrumentCup instrument={stepping.instrument} onPress={onAskInstrument} />
        </div>
      )}
    </div>
  );
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

interface FiguresProps {
  step: BatchStep;
  stepping: Stepping;
  hasLimits: boolean;
}

/** What is typed, the limit it is held against, and what it was worked out to. */
function Figures({ step, stepping, hasLimits }: FiguresProps) {
  const { means, typed, instrument } = stepping;
  const into = intoOf(typed, step);
  const also = alsoAsked(step, typed).find(({ field }) => field === into);
  const bowlOrReading = into === "tare" ? STEP.bowl_shows : STEP.measure(step.measures);
  const unit = also?.unit ?? instrument?.unit ?? readUnit(step);
  return (
    <div class="figures">
      <p class="asks">{also?.asks ?? bowlOrReading}</p>
      {!isWorkedOut(step) && (
        <p class="sum">
          <NumberShown amount={typed[into] || null} unit={unit} basis="counted" size="reading" />
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

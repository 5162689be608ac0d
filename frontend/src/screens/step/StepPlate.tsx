/** What stands over the bench of a step: its verdict, or what is in the way of saving. */

import { Notice, Refusal } from "../../parts/Plain.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import { amountWords } from "../../text/numbers.ts";
import { STEP } from "../../text/step.ts";
import type { BatchStep } from "../common/batches.ts";
import type { Stepping } from "./use_step.ts";

/** The main key says what is still to be typed; here stands nothing until then. */
export function StepPlate({ step, stepping }: { step: BatchStep; stepping: Stepping }) {
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

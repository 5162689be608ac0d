/** Errors of checks as a chart draws them. */

import type { CheckedPoint } from "../../calc/instrument_checks.ts";
import type { Check } from "../../calc/instruments.ts";
import { ONE_SIDED_95 } from "../../calc/readings.ts";
import type { ErrorShown } from "../../parts/ErrorChart.tsx";
import { VERDICT_WORDS } from "../../text/instruments.ts";
import { amountWords, dayWords, signedWords } from "../../text/numbers.ts";
import { errorShown, readAt, referenceShown, saidOf } from "./said.ts";

/** One column a check: the step that decided it. */
export function overTime(checks: readonly Check[]): ErrorShown[] {
  return checks.flatMap((check) => {
    const { error, limit, guard_band } = check.values;
    if (error === undefined) return [];
    return [
      {
        id: check.entry,
        name: dayWords(check.on),
        error: Number(error),
        reach: guard_band === undefined ? null : Number(guard_band),
        limit: limit === undefined ? null : Number(limit),
        isOutside: check.verdict === "failed",
        words: `${VERDICT_WORDS[check.verdict] ?? ""}. ${saidOf(check)}`,
      },
    ];
  });
}

/** One column a step of a check, in the order in which it was read. */
export function stepByStep(points: readonly CheckedPoint[], unit: string | null): ErrorShown[] {
  return points.map((point, index) => ({
    id: String(index),
    name: amountWords(referenceShown(point.reference, unit), unit),
    error: Number(point.error),
    reach: point.u === null ? null : Number(reachOf(point)),
    limit: point.limit === null ? null : Number(point.limit),
    isOutside: point.verdict === "outside",
    words: `${readAt(point.sort, point.reference, unit)}: ${signedWords(errorShown(point.error, { limit: point.limit, guard_band: point.u }), unit)}`,
  }));
}

function reachOf({ u }: CheckedPoint): string | null {
  return u === null ? null : String(Number(u) * ONE_SIDED_95);
}

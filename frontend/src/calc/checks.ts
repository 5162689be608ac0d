/**
 * What a check at the bench says: errors with their doubt, the worst of them, one verdict.
 *
 * A check is a list of steps as they stand in the body of its entry: each has a `sort`, its
 * `readings`, where there is one a `reference` value with its `tolerance` (plus or minus), all in
 * the unit of the instrument, and what its sort needs more. Each instrument has a file of its own.
 */

import { type Body, decimalIn, textsIn } from "./bodies.ts";
import type { Cited, Limit } from "./limits.ts";
import { type Decimal, difference, plain, product, significant, ZERO } from "./numbers.ts";
import {
  type Doubt,
  guardBand,
  mean,
  rectangularU,
  repeatSd,
  resolutionU,
  type Verdict,
  verdict,
} from "./readings.ts";
import { sumDoubt } from "./weighing.ts";

export type CheckVerdict = "fit" | "failed" | "cannot_tell";

export const PLACES = 6; // a mean of readings is rounded to them
export const SHOWN_DIGITS = 3; // of an uncertainty in a sentence
// Which steps a verdict of the whole check comes from; null: there was no limit to judge by.
const DECIDES: Readonly<Record<CheckVerdict, readonly (Verdict | null)[]>> = {
  fit: ["within"],
  failed: ["outside"],
  cannot_tell: ["cannot_tell", null],
};

/** What one step measured against its reference; `step` counts from 0. */
export interface Measured {
  readonly step: number;
  readonly sort: string;
  readonly value: Decimal;
  readonly reference: Decimal;
  readonly doubt: Doubt | null;
}

/** An error (reading less reference), and what it decides; null without a limit. */
export interface Point {
  readonly step: number;
  readonly sort: string;
  readonly reference: Decimal;
  readonly error: Decimal;
  readonly doubt: Doubt | null;
  readonly limit: Limit | null;
  readonly verdict: Verdict | null;
}

/**
 * What a check says. `bias` is the mean of all errors, `repeatability` a standard deviation,
 * `hysteresis` the largest difference between a rising and a falling load; each null where the
 * steps do not tell. `says` and `values` make one sentence.
 */
export interface CheckResult {
  readonly verdict: CheckVerdict;
  readonly points: readonly Point[];
  readonly worst: number | null;
  readonly bias: Decimal | null;
  readonly repeatability: number | null;
  readonly hysteresis: Decimal | null;
  readonly says: string;
  readonly values: Readonly<Record<string, string>>;
}

/** The readings of a step; one that is no number is left out. */
export function readingsIn(step: Body): Decimal[] {
  return textsIn(step, "readings")
    .map((reading) => decimalIn({ reading }, "reading"))
    .filter((each) => each !== null);
}

/**
 * Doubt of the error a mean of readings shows: display, repeats, reference.
 *
 * `spread` is that of a single reading, known from elsewhere; two or more readings of one load
 * speak for themselves. Null where the division is not known.
 */
export function readingDoubt(
  readings: readonly Decimal[],
  known: {
    readonly division: Decimal | null;
    readonly spread: Doubt | null;
    readonly tolerance: Decimal | null;
  },
): Doubt | null {
  const { division, spread, tolerance } = known;
  if (division === null || division.compare(ZERO) <= 0) return null;
  const parts: Doubt[] = [{ u: resolutionU(division, 1), degrees: null }];
  if (readings.length >= 2) {
    const sdOfMean = repeatSd(readings) / Math.sqrt(readings.length);
    parts.push({ u: sdOfMean, degrees: readings.length - 1 });
  } else if (spread !== null) {
    parts.push(spread);
  }
  if (tolerance !== null) parts.push({ u: rectangularU(tolerance), degrees: null });
  return sumDoubt(parts);
}

/** The error of a step against plus or minus its limit, with the guard band. */
export function judged(measured: Measured, limit: Limit | null): Point {
  const { step, sort, reference, doubt } = measured;
  const error = difference(measured.value, reference);
  const said =
    limit === null
      ? null
      : verdict(error, { low: limit.amount.negated(), high: limit.amount }, doubt);
  return { step, sort, reference, error, doubt, limit, verdict: said };
}

/** The verdict of a check: failed by one step outside; fit when all are within. */
export function summedUp(
  points: readonly Point[],
  spread: { readonly repeatability: number | null; readonly hysteresis: Decimal | null },
): CheckResult {
  const said = checkVerdict(points);
  const deciding = points.filter((each) => DECIDES[said].includes(each.verdict));
  const worst = worstOf(deciding);
  const errors = points.map((each) => each.error);
  return {
    verdict: said,
    points,
    worst: worst === null ? null : worst.step,
    bias: errors.length > 0 ? mean(errors, PLACES) : null,
    repeatability: spread.repeatability,
    hysteresis: spread.hysteresis,
    says: `${said}.${reasonOf(said, worst)}`,
    values: worst === null ? {} : valuesOf(worst),
  };
}

/** Every published figure the limits of a check lean on, each once. */
export function citedIn(result: CheckResult): Cited[] {
  const found = new Map<string, Cited>();
  for (const each of result.points.flatMap((point) => point.limit?.cited ?? [])) {
    const key = JSON.stringify([each.what, each.source, each.basis, each.note]);
    if (!found.has(key)) found.set(key, each);
  }
  return [...found.values()];
}

function checkVerdict(points: readonly Point[]): CheckVerdict {
  if (points.some((each) => each.verdict === "outside")) return "failed";
  const isFit = points.length > 0 && points.every((each) => each.verdict === "within");
  return isFit ? "fit" : "cannot_tell";
}

/** The step with the largest share of its limit; one without a limit before all others. */
function worstOf(points: readonly Point[]): Point | null {
  let worst: Point | null = null;
  for (const each of points) {
    if (worst === null || isWorse(each, worst)) worst = each;
  }
  return worst;
}

function isWorse(a: Point, b: Point): boolean {
  const [ours, theirs] = [a.error.abs(), b.error.abs()];
  if (a.limit === null || b.limit === null) {
    return a.limit === null && (b.limit !== null || ours.compare(theirs) > 0);
  }
  return product(ours, b.limit.amount).compare(product(theirs, a.limit.amount)) > 0;
}

function reasonOf(said: CheckVerdict, worst: Point | null): string {
  if (worst === null) return "no_steps";
  if (said !== "cannot_tell") return said === "fit" ? "within" : "worst";
  if (worst.limit === null) return "no_limit";
  return worst.doubt === null ? "no_division" : "near_limit";
}

/** What a sentence about a step may name, as text in the instrument's unit. */
function valuesOf(point: Point): Record<string, string> {
  const { sort, reference, error, limit, doubt } = point;
  return {
    sort,
    reference: plain(reference),
    error: plain(error),
    ...(limit === null ? {} : { limit: plain(limit.amount) }),
    ...(doubt === null ? {} : { guard_band: significant(guardBand(doubt), SHOWN_DIGITS) }),
  };
}

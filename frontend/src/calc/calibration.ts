/**
 * Corrections of an instrument from its check points: found, judged, and put to a reading.
 *
 * A correction is reference - reading and is added to the reading (JCGM 100:2008 H.3, read). Three
 * sorts: `offset` (the mean error), `two_point` (a line through two points), `least_squares` (a
 * line through three or more).
 */

import { exponential } from "./elementary.ts";
import {
  isExtrapolated,
  type Line,
  leastSquares,
  levelThroughMean,
  type Point,
  predicted,
  throughMean,
} from "./lines.ts";
import { asDouble, type Decimal, difference } from "./numbers.ts";
import { fBeyond, normalCumulative, tBeyond } from "./quantiles.ts";

export type Sort = "offset" | "two_point" | "least_squares";

/** What the instrument showed and what was true, in one unit. */
export interface CheckPoint {
  readonly reading: Decimal;
  readonly reference: Decimal;
}

/** A line of corrections over readings. `terms` is how many figures were fitted: 1 or 2. */
export interface Correction {
  readonly sort: Sort;
  readonly line: Line;
  readonly terms: number;
}

/**
 * A test against "there is nothing to correct". `is_significant` is null when no spread is known;
 * the statistic and p are null then, and when the spread is 0.
 */
export interface Significance {
  readonly statistic: number | null;
  readonly p: number | null;
  readonly is_significant: boolean | null;
}

/**
 * A reading put right. `correction` is what was found, `value` has it only if it is applied; `u`
 * is the correction's, applied or not: leaving it out does not make it known.
 */
export interface Corrected {
  readonly value: number;
  readonly correction: number;
  readonly u: number | null;
  readonly degrees: number | null;
  readonly is_applied: boolean;
  readonly is_extrapolated: boolean;
}

/** The correction over the reading: reference - reading, exactly. */
export function correctionPoints(checks: readonly CheckPoint[]): Point[] {
  return checks.map(({ reading, reference }) => ({
    x: reading,
    y: difference(reference, reading),
  }));
}

/**
 * The correction of this sort through the check points.
 *
 * `known_sd` is the standard uncertainty of one point from elsewhere (resolution, repeatability,
 * the masses), null when unknown. It stands in where points show no scatter of their own, and
 * counts when it is the larger: three readings that look alike are not exact (JCGM 100 F.2.2.1).
 * Throws for too few points, for a line through points that share a reading, for `two_point` with
 * another number of points, and for a spread below zero.
 */
export function correctionOf(
  checks: readonly CheckPoint[],
  sort: Sort,
  known_sd: number | null,
): Correction {
  if (known_sd !== null && known_sd < 0) throw new RangeError("a spread below zero");
  const points = correctionPoints(checks);
  if (sort === "offset")
    return { sort, line: judged(levelThroughMean(points), known_sd), terms: 1 };
  if (sort === "least_squares") {
    return { sort, line: judged(leastSquares(points), known_sd), terms: 2 };
  }
  if (points.length !== 2) throw new RangeError("two_point takes two points");
  return { sort, line: judged(throughMean(points), known_sd), terms: 2 };
}

/**
 * Whether the correction as a whole is more than chance: F test of all its terms at once against
 * zero, F = (n height^2 + slope^2 Sxx) / (terms s^2) with `terms` and nu degrees.
 *
 * Draper and Smith, Applied Regression Analysis, the joint test of coefficients (memory). One
 * judgement for the whole range, so that a corrected scale has no jumps. Where s is known without
 * scatter the limit of F for endless degrees is used.
 */
export function significance({ line, terms }: Correction, level: number): Significance {
  if (line.sd === null) return { statistic: null, p: null, is_significant: null };
  const explained = line.count * line.height * line.height + line.slope * line.slope * line.sum_xx;
  if (line.sd === 0) return { statistic: null, p: null, is_significant: explained > 0 };
  const f = explained / (terms * (line.sd * line.sd));
  const p = pOf(f, terms, line.degrees);
  return { statistic: f, p, is_significant: p < 1 - level };
}

/**
 * Whether the correction at one reading is more than chance: t = correction / u with the line's
 * degrees, two-sided (Student's test of a predicted mean; JCGM 100 H.3.3 gives u).
 */
export function significanceAt(
  { line }: Correction,
  { reading, level }: { readonly reading: number; readonly level: number },
): Significance {
  const { value, u } = predicted(line, reading);
  if (u === null) return { statistic: null, p: null, is_significant: null };
  if (u === 0) return { statistic: null, p: null, is_significant: value !== 0 };
  const t = value / u;
  const p = line.degrees === null ? 2 * normalCumulative(-Math.abs(t)) : tBeyond(t, line.degrees);
  return { statistic: t, p, is_significant: p < 1 - level };
}

/**
 * The reading with its correction, if that is significant at this level; else as it is.
 * One that cannot be judged, because no spread is known, is not applied either.
 */
export function corrected(correction: Correction, reading: Decimal, level: number): Corrected {
  const shown = asDouble(reading);
  const found = predicted(correction.line, shown);
  const is_applied = significance(correction, level).is_significant === true;
  return {
    value: is_applied ? shown + found.value : shown,
    correction: found.value,
    u: found.u,
    degrees: correction.line.degrees,
    is_applied,
    is_extrapolated: isExtrapolated(correction.line, shown),
  };
}

/** The larger of scatter and known spread is the line's. */
function judged(line: Line, known_sd: number | null): Line {
  if (known_sd === null || (line.sd !== null && known_sd <= line.sd)) return line;
  return { ...line, sd: known_sd, degrees: null };
}

/** p of the F test; without degrees, terms x F is chi-squared with 1 or 2 degrees. */
function pOf(f: number, terms: number, degrees: number | null): number {
  if (degrees !== null) return fBeyond(f, { over: terms, under: degrees });
  return terms === 2 ? exponential(-f) : 2 * normalCumulative(-Math.sqrt(f));
}

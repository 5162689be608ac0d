/**
 * What an instrument showed, how far it can be trusted, and what that decides.
 *
 * Sources: JCGM 100:2008 (resolution F.2.2.1, repeats 4.2.3, effective degrees of freedom G.4.1)
 * and JCGM 106:2012 8.3.3 (guard bands), all read.
 */

import { asDouble, Decimal, difference, divided, product, total, ZERO } from "./numbers.ts";
import { normalQuantile, tQuantile } from "./quantiles.ts";

export type Verdict = "within" | "outside" | "cannot_tell";

/** How sure a verdict is, in percent, where nobody asks for another level. */
export const LEVEL_PERCENT = new Decimal(95n, 0);
export const ONE_SIDED_95 = 1.645; // normal quantile, JCGM 106:2012 8.3.3: u known without repeats
/**
 * One-sided 95 % of Student's t for 1, 2, 3 ... 30 degrees of freedom: computed by integration;
 * JCGM 100:2008 Table G.2 prints the same to two places (column 90 %).
 */
export const T_TABLE: readonly number[] = [
  6.3138, 2.92, 2.3534, 2.1318, 2.015, 1.9432, 1.8946, 1.8595, 1.8331, 1.8125, 1.7959, 1.7823,
  1.7709, 1.7613, 1.7531, 1.7459, 1.7396, 1.7341, 1.7291, 1.7247, 1.7207, 1.7171, 1.7139, 1.7109,
  1.7081, 1.7056, 1.7033, 1.7011, 1.6991, 1.6973,
];
const T_BEYOND: readonly (readonly [number, number])[] = [
  [120, 1.6577],
  [60, 1.6706],
  [40, 1.6839],
  [30, 1.6973],
];
/** From here on Student's t is 1.645 to two places. */
export const DEGREES_MAX = 1200;

/** Standard uncertainty of a value, in its unit; `degrees` of freedom is null when u does not rest on repeats. */
export interface Doubt {
  readonly u: number;
  readonly degrees: number | null;
}

/** What is in the bowl: shown less tare, exactly; without a tare what was shown. */
export function net(shown: Decimal, tare: Decimal | null): Decimal {
  return difference(shown, tare ?? ZERO);
}

/** Mean of repeats, rounded once. Throws for none. */
export function mean(values: readonly Decimal[], places: number): Decimal {
  if (values.length === 0) throw new RangeError("no values");
  return divided(total(values), whole(values.length), places);
}

/**
 * Standard deviation of single readings, n - 1 (JCGM 100 4.2.2); 0 for a single one.
 * The sum of squares is exact, so that readings far from zero lose nothing.
 */
export function repeatSd(values: readonly Decimal[]): number {
  const count = values.length;
  if (count < 2) return 0;
  const squares = product(total(values.map((v) => product(v, v))), whole(count));
  const sumOfValues = total(values);
  const over = difference(squares, product(sumOfValues, sumOfValues));
  return Math.sqrt(asDouble(over) / (count * (count - 1)));
}

/**
 * d / sqrt(12) for each reading that was made, also when repeats are identical.
 * A net mass rests on two readings: the tare was read too (JCGM 100 F.2.2.1).
 */
export function resolutionU(division: Decimal, readings: number): number {
  const step = asDouble(division);
  return Math.sqrt((readings * step * step) / 12);
}

/**
 * Standard uncertainty of what lies anywhere within plus or minus a tolerance:
 * tolerance / sqrt(3) (JCGM 100:2008 4.3.7).
 */
export function rectangularU(tolerance: Decimal): number {
  return asDouble(tolerance) / Math.sqrt(3);
}

/** Root of the sum of squares of independent standard uncertainties (JCGM 100 5.1.2). */
export function combinedU(parts: readonly number[]): number {
  let soFar = 0;
  for (const part of parts) soFar = soFar + part * part;
  return Math.sqrt(soFar);
}

/**
 * Doubt of a value taken from this many readings (2 with a tare).
 * Resolution counts once a reading. The spread is s / sqrt(n) of the repeats where there are two
 * or more, and the instrument's own repeatability for each reading without repeats.
 */
export function doubtOf(given: {
  readonly division: Decimal;
  readonly readings: number;
  readonly repeatability?: Decimal | null;
  readonly repeats?: readonly Decimal[];
}): Doubt {
  const repeats = given.repeats ?? [];
  const isRepeated = repeats.length >= 2;
  const singleReadings = isRepeated ? given.readings - 1 : given.readings;
  const spread = isRepeated ? repeatSd(repeats) / Math.sqrt(repeats.length) : 0;
  const known = given.repeatability ? asDouble(given.repeatability) : 0;
  const u = combinedU([
    resolutionU(given.division, given.readings),
    spread,
    known * Math.sqrt(singleReadings),
  ]);
  return { u, degrees: effectiveDegrees(u, spread, repeats.length - 1) };
}

/**
 * One-sided 95 %: 1.645, or Student's t where u rests on repeats; or another `level` in percent,
 * worked out.
 * Between two rows of the table the fewer degrees count, which is the wider band.
 */
export function coverageFactor(degrees: number | null, level: Decimal | null = null): number {
  if (level !== null && level.compare(LEVEL_PERCENT) !== 0) {
    const share = asDouble(level) / 100;
    if (degrees === null) return normalQuantile(share, 1);
    return tQuantile(share, { degrees: Math.max(degrees, 1), sides: 1 });
  }
  if (degrees === null) return ONE_SIDED_95;
  const fromTable = T_TABLE[Math.max(degrees, 1) - 1];
  if (fromTable !== undefined) return fromTable;
  const beyond = T_BEYOND.find(([least]) => degrees >= least);
  return beyond?.[1] ?? ONE_SIDED_95;
}

/** How near a limit a value may come before it is undecided; in the value's unit. */
export function guardBand(doubt: Doubt, level: Decimal | null = null): number {
  return coverageFactor(doubt.degrees, level) * doubt.u;
}

/**
 * Within or outside only where that is at least 95 % sure (or `level`, in percent), else
 * cannot_tell.
 * Limits are inclusive; a missing one does not limit. Null when there is no limit at all.
 * Without a known doubt nothing can be told.
 */
export function verdict(
  value: Decimal,
  limits: {
    readonly low: Decimal | null;
    readonly high: Decimal | null;
    readonly level?: Decimal | null;
  },
  doubt: Doubt | null,
): Verdict | null {
  const { low, high, level = null } = limits;
  if (low === null && high === null) return null;
  if (doubt === null) return "cannot_tell";
  const band = guardBand(doubt, level);
  const nearest = Math.min(
    low === null ? Number.POSITIVE_INFINITY : asDouble(difference(value, low)),
    high === null ? Number.POSITIVE_INFINITY : asDouble(difference(high, value)),
  );
  if (nearest >= band) return "within";
  return nearest < -band ? "outside" : "cannot_tell";
}

/**
 * Whether an instrument can say "within" at all for a line that may be this much below or above
 * its target: the guard bands leave room for one division of the display.
 * With one limit, or none, there is always room on the open side.
 */
export function isFineEnough(
  division: Decimal,
  line: { readonly below: Decimal | null; readonly above: Decimal | null },
  given: { readonly readings?: number; readonly repeatability?: Decimal | null } = {},
): boolean {
  if (line.below === null || line.above === null) return true;
  const { readings = 2, repeatability = null } = given;
  const band = guardBand(doubtOf({ division, readings, repeatability }));
  return asDouble(total([line.below, line.above])) - 2 * band >= asDouble(division);
}

/** Welch-Satterthwaite with only the repeats finite, cut to a whole number (G.4.1 note 1). */
function effectiveDegrees(u: number, spread: number, repeatsDegrees: number): number | null {
  if (spread === 0) return null;
  const ratio = (u * u) / (spread * spread);
  const degrees = ratio * ratio * repeatsDegrees;
  return degrees < DEGREES_MAX ? Math.trunc(degrees) : null;
}

function whole(count: number): Decimal {
  return new Decimal(BigInt(count), 0);
}

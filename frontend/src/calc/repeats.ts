/**
 * What repeated readings of one thing say: mean, spread, and how well the mean is known.
 *
 * Sources: JCGM 100:2008 4.2 and 4.4.3 (read); pooling NIST/SEMATECH e-Handbook 2.4.4.4 (read);
 * the repeatability limit ISO 5725-6 (memory).
 */

import { added } from "./elementary.ts";
import { asDouble, type Decimal, total } from "./numbers.ts";
import { tQuantile } from "./quantiles.ts";
import { repeatSd } from "./readings.ts";

export const REPEATABILITY_FACTOR = 2.8; // ISO 5725-6: 1.96 x sqrt 2 = 2.77, rounded there; memory

/**
 * Repeats in the unit of their readings. `sd` (n - 1) and `standard_error` are null for a single
 * reading, which says nothing of spread.
 */
export interface Repeats {
  readonly count: number;
  readonly mean: number;
  readonly sd: number | null;
  readonly standard_error: number | null;
  readonly degrees: number;
}

/** Where a mean lies at the level that was asked for, in the unit of the readings. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** A sum of squared deviations and the degrees of freedom it rests on. */
export interface Spread {
  readonly sum_of_squares: number;
  readonly degrees: number;
}

/** One standard deviation of several groups, in their unit, and its degrees of freedom. */
export interface PooledSd {
  readonly sd: number;
  readonly degrees: number;
}

/**
 * Mean, standard deviation of a single reading (n - 1) and of the mean (JCGM 100 4.2). Sums are
 * exact. Throws for none.
 */
export function repeatsOf(values: readonly Decimal[]): Repeats {
  if (values.length === 0) throw new RangeError("no values");
  const count = values.length;
  const sd = count > 1 ? repeatSd(values) : null;
  return {
    count,
    mean: asDouble(total(values)) / count,
    sd,
    standard_error: sd === null ? null : sd / Math.sqrt(count),
    degrees: count - 1,
  };
}

/**
 * Where the mean of endless repeats lies, at this level, two-sided by Student's t (JCGM 100 G.3).
 * Null for a single reading; throws for a level that is none.
 */
export function meanInterval(repeats: Repeats, level: number): Interval | null {
  if (repeats.standard_error === null) return null;
  const half = tQuantile(level, { degrees: repeats.degrees, sides: 2 }) * repeats.standard_error;
  return { low: repeats.mean - half, high: repeats.mean + half };
}

/**
 * One standard deviation from several: sums of squares and degrees are added, never standard
 * deviations averaged. Throws without any degrees.
 */
export function pooledSd(spreads: readonly Spread[]): PooledSd {
  const degrees = added(spreads.map((spread) => spread.degrees));
  if (degrees < 1) throw new RangeError("no degrees of freedom");
  const squares = added(spreads.map((spread) => spread.sum_of_squares));
  return { sd: Math.sqrt(squares / degrees), degrees };
}

/** How far two readings of one thing may lie apart, about 95 times in 100: 2.8 s. */
export function repeatabilityLimit(sd: number): number {
  return REPEATABILITY_FACTOR * sd;
}

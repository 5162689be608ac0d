/**
 * Where the mass of a batch went: yields, solids, evaporation and what is unaccounted.
 *
 * Common practice, named in DEVELOPERS.md 4; doubt by JCGM 100:2008 F.2.2.1. A figure
 * that was not recorded is null and makes null of what rests on it: missing is never zero.
 */

import type { Decimal } from "./numbers.ts";
import { asDouble, difference, divided, HUNDRED, parseDecimal, product, total } from "./numbers.ts";
import { combinedU, resolutionU } from "./readings.ts";

export const PERCENT_PLACES = 4;
export const MASS_PLACES = 4;
export const FLAG_PERCENT = parseDecimal("1"); // of what went in; own proposal
export const FLAG_U = 2; // times the standard uncertainty, about 95 %
const HUNDREDTH = parseDecimal("0.01");

/** A percentage over several batches and how many of them could be counted. */
export interface GroupPercent {
  readonly percent: Decimal | null;
  readonly counted: number;
  readonly left_out: number;
}

type Pair = readonly [Decimal | null, Decimal | null];

/** 100 x part / whole, rounded once; null when either is missing or the whole is nothing. */
export function percentOf(
  part: Decimal | null,
  whole: Decimal | null,
  places: number = PERCENT_PLACES,
): Decimal | null {
  if (part === null || whole === null || whole.isZero()) return null;
  return divided(product(part, HUNDRED), whole, places);
}

/** Edible mass after preparation, of the mass as purchased, what was spoiled included. */
export function edibleYieldPercent(
  prepared: Decimal | null,
  received: Decimal | null,
): Decimal | null {
  return percentOf(prepared, received);
}

/** Spoiled raw mass of the raw mass received; without a record null, not 0. */
export function spoilagePercent(spoiled: Decimal | null, received: Decimal | null): Decimal | null {
  return percentOf(spoiled, received);
}

/** Rejected packs of the packs filled, good and bad together. */
export function rejectsPercent(rejected: Decimal | null, filled: Decimal | null): Decimal | null {
  return percentOf(rejected, filled);
}

/**
 * Good finished mass of what was put in; above 100 where only the raw material counts as in and
 * sugar was added, so say what the whole is.
 */
export function recoveryPercent(goodOut: Decimal | null, putIn: Decimal | null): Decimal | null {
  return percentOf(goodOut, putIn);
}

/**
 * Sum of parts over sum of wholes, never the mean of percentages; a pair with a missing figure is
 * left out of both sums and counted as such.
 */
export function groupPercent(
  pairs: readonly Pair[],
  places: number = PERCENT_PLACES,
): GroupPercent {
  const wholePairs = pairs.flatMap(([part, whole]) =>
    part === null || whole === null ? [] : [{ part, whole }],
  );
  const percent = percentOf(
    total(wholePairs.map((pair) => pair.part)),
    total(wholePairs.map((pair) => pair.whole)),
    places,
  );
  return { percent, counted: wholePairs.length, left_out: pairs.length - wholePairs.length };
}

/**
 * Soluble solids of [amount, percent] pairs, exact, in the unit of the amounts.
 * Whether pectin and acid count is the recipe's choice: sources disagree.
 */
export function solidsIn(lines: readonly (readonly [Decimal, Decimal])[]): Decimal {
  return total(lines.map(([amount, percent]) => product(product(amount, percent), HUNDREDTH)));
}

/** Mass at which these solids are targetPercent of it; null for a target of 0. */
export function theoreticalOut(
  solids: Decimal,
  targetPercent: Decimal,
  places: number = MASS_PLACES,
): Decimal | null {
  return percentOf(solids, targetPercent, places);
}

/** Degrees Brix that the weighed mass implies: 100 x solids / mass. */
export function impliedSolidsPercent(solids: Decimal, out: Decimal | null): Decimal | null {
  return percentOf(solids, out);
}

/** What boiled off, from two weighings: never the plug that makes a balance close. */
export function evaporated(kettleIn: Decimal | null, kettleOut: Decimal | null): Decimal | null {
  return kettleIn === null || kettleOut === null ? null : difference(kettleIn, kettleOut);
}

/**
 * Put in less all that was recorded as coming out, signed: below zero means that a tare is wrong
 * or an input is missing, so it is shown, not cut to 0.
 */
export function unaccounted(putIn: Decimal | null, cameOut: readonly Decimal[]): Decimal | null {
  return putIn === null ? null : difference(putIn, total(cameOut));
}

/**
 * Standard uncertainty of the remainder, from each weighing's [division, readings]: every reading
 * adds d squared / 12, a net mass has two (JCGM 100 F.2.2.1).
 */
export function unaccountedU(weighings: readonly (readonly [Decimal, number])[]): number {
  return combinedU(weighings.map(([division, readings]) => resolutionU(division, readings)));
}

/** Whether the remainder is more than 1 % of what went in and more than the scales explain (2 u). */
export function needsALook(remainder: Decimal, putIn: Decimal, u: number): boolean {
  const size = asDouble(remainder.abs());
  const onePercent = asDouble(product(putIn.abs(), product(FLAG_PERCENT, HUNDREDTH)));
  return size > onePercent && size > FLAG_U * u;
}

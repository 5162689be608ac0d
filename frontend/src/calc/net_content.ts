/**
 * Declared content: which figure of a label is verified, and how far each pack is from it.
 * The rules of a country are in net_packs.ts (US) and net_batches.ts (EU).
 */

import { type Decimal, difference, divided, total } from "./numbers.ts";
import { mean } from "./readings.ts";
import { dimensionOf, inBase } from "./units.ts";

export type NetVerdict = "pass" | "fail" | "not_decided";

export const PLACES = 6; // of a mean tare, a mean error
// Nothing is decided on a weighing or a figure that cannot carry it.
const BLOCKING: readonly string[] = [
  "mav_disputed",
  "scale_too_coarse",
  "too_few_tares",
  "sample_too_large",
];
// More packs cannot mend these, so they count before the sample is complete.
const FIRM: readonly string[] = ["over_mav", "below_t2", "too_many_below_t1"];

/** One declaration of a label: its place among them, and its amount in the base unit. */
export interface Declared {
  readonly position: number;
  readonly in_base: Decimal;
}

/**
 * The declaration to verify: the larger, compared exactly (HB 133 (2026) 2.3.3.1, read).
 * Of equal ones the first. Throws RangeError for none, and for mass beside volume.
 */
export function largerDeclaration(
  declarations: readonly (readonly [amount: Decimal, unit: string])[],
): Declared {
  if (new Set(declarations.map(([, unit]) => dimensionOf(unit))).size !== 1) {
    throw new RangeError("declarations of one label measure the same thing");
  }
  return declarations
    .map(([amount, unit], position) => ({ position, in_base: inBase(amount, unit) }))
    .reduce((a, b) => (b.in_base.compare(a.in_base) > 0 ? b : a));
}

/** Label and mean tare, the weight a full pack shows. Throws RangeError without a tare. */
export function nominalGross(label: Decimal, tares: readonly Decimal[]): Decimal {
  return total([label, mean(tares, PLACES)]);
}

/** Gross less nominal gross of each pack: below zero is short. */
export function packageErrors(gross: readonly Decimal[], nominal: Decimal): Decimal[] {
  return gross.map((each) => difference(each, nominal));
}

/** An error in units of measure: -0.5 g is -5 of 0.1 g. Throws RangeError for a unit of 0. */
export function inMeasureUnits(error: Decimal, unitOfMeasure: Decimal, places: number): Decimal {
  return divided(error, unitOfMeasure, places);
}

/**
 * What the reasons against a lot or batch decide; without one it passes.
 * A disputed figure and a weighing that cannot carry a verdict decide nothing.
 */
export function netVerdict(reasons: readonly string[]): NetVerdict {
  if (reasons.some((each) => BLOCKING.includes(each))) return "not_decided";
  if (reasons.some((each) => FIRM.includes(each))) return "fail";
  if (reasons.some((each) => each !== "mean_short")) return "not_decided";
  return reasons.length > 0 ? "fail" : "pass";
}

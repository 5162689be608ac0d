/**
 * Titratable acidity from alkali of known strength.
 *
 * Percent = N x mL x equivalent weight / (10 x sample), grams in 100 mL or 100 g. Which acid it is
 * reckoned as must be said; it is no measure of pH.
 */

import type { Cited } from "./limits.ts";
import { type Decimal, difference, divided, parseDecimal, product, ZERO } from "./numbers.ts";
import { ACID_ROWS, type AcidRow } from "./tables/bench.ts";

export type SampleUnit = "mL" | "g";

export const PERCENT_PLACES = 4;
export const PER_LITRE_PLACES = 3;
const TEN = parseDecimal("10");

/**
 * What was run in: alkali of normality naoh_N, mL of it less a blank, for a sample of mL or of g,
 * reckoned as one acid.
 */
export interface Titration {
  readonly acid: string;
  readonly naoh_N: Decimal;
  readonly naoh_mL: Decimal;
  readonly sample: Decimal;
  readonly sample_unit: SampleUnit;
  readonly blank_mL: Decimal;
}

/** Grams of the acid in 100 mL (or 100 g) and in a litre; null by mass. */
export interface Acidity {
  readonly acid: string;
  readonly percent: Decimal;
  readonly per_100: SampleUnit;
  readonly per_litre: Decimal | null;
  readonly cited: readonly Cited[];
}

/**
 * The acidity, with source and basis of the acid's equivalent weight.
 *
 * Throws for an acid without a figure, a sample or normality not above 0, and a blank below 0 or
 * above what was run in.
 */
export function titratableAcidity(titration: Titration): Acidity {
  const { naoh_N, naoh_mL, sample, sample_unit, blank_mL } = titration;
  const { acid, equivalent_weight_g_per_eq, source, basis, note } = acidNamed(titration.acid);
  const runIn = difference(naoh_mL, blank_mL);
  if (sample.compare(ZERO) <= 0 || naoh_N.compare(ZERO) <= 0) {
    throw new RangeError("a sample and a normality are more than nothing");
  }
  if (blank_mL.isNegative() || runIn.isNegative()) {
    throw new RangeError("the blank takes no more than the sample did");
  }
  const over = product(product(naoh_N, runIn), parseDecimal(equivalent_weight_g_per_eq));
  return {
    acid,
    percent: divided(over, product(TEN, sample), PERCENT_PLACES),
    per_100: sample_unit,
    per_litre: sample_unit === "mL" ? divided(over, sample, PER_LITRE_PLACES) : null,
    cited: [{ what: "equivalent_weight", source, basis, note }],
  };
}

function acidNamed(acid: string): AcidRow {
  const row = ACID_ROWS.find((each) => each.acid === acid);
  if (row === undefined) throw new RangeError(`no equivalent weight for "${acid}"`);
  return row;
}

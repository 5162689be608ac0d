/**
 * Drying, concentrating and wetting: the dry solids are what stays.
 *
 * Moisture is said in two ways: of the whole (wet basis) or of the dry solids (dry basis), which
 * passes 100 %. Percents of moisture do not subtract: 80 % to 20 % takes three quarters of the
 * mass.
 */

import { MASS_PLACES, PERCENT_PLACES } from "./balance.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  HUNDRED,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import { combinedU } from "./readings.ts";

export type Basis = "wet" | "dry";

const RATIO_PLACES = 4;

/** Percent of water, of the whole (`wet`) or of the dry solids (`dry`), and its standard uncertainty. */
export interface Moisture {
  readonly percent: Decimal;
  readonly basis: Basis;
  readonly u: number;
}

/**
 * What drying or wetting makes, in the unit of the mass. `water_out` below zero is water to add;
 * `drying_ratio` is mass in over mass out.
 */
export interface Dried {
  readonly solids: Decimal;
  readonly makes: Decimal;
  readonly makes_u: number;
  readonly water_out: Decimal;
  readonly drying_ratio: Decimal;
}

/** What concentrating makes when something else is stirred in (sugar, salt). */
export interface Concentrated {
  readonly makes: Decimal;
  readonly to_add: Decimal;
  readonly water_out: Decimal;
}

/**
 * Water of the dry solids from water of the whole: M / (1 - M).
 * Throws below 0 and from 100 % on: nothing would be left.
 */
export function dryBasisPercent(wetBasis: Decimal, places: number = PERCENT_PLACES): Decimal {
  const { water, solids } = parts({ percent: wetBasis, basis: "wet", u: 0 });
  return divided(product(water, HUNDRED), solids, places);
}

/** Water of the whole from water of the dry solids: M / (1 + M). Throws below 0. */
export function wetBasisPercent(dryBasis: Decimal, places: number = PERCENT_PLACES): Decimal {
  const { water, whole } = parts({ percent: dryBasis, basis: "dry", u: 0 });
  return divided(product(water, HUNDRED), whole, places);
}

/**
 * The mass at another moisture: mass x solids before / solids after. Its doubt is from those of
 * mass and both moistures (JCGM 100:2008 5.1.2).
 * Throws for a mass below 0, a moisture below 0 or a wet one from 100 % on.
 */
export function dried(
  mass: Decimal,
  moisture: { readonly before: Moisture; readonly after: Moisture },
  massU = 0,
): Dried {
  if (mass.isNegative()) throw new RangeError("a mass is not below 0");
  const [before, after] = [parts(moisture.before), parts(moisture.after)];
  const solids = product(mass, before.solids);
  const heavier = product(before.whole, after.solids);
  const lighter = product(before.solids, after.whole);
  const makes = divided(product(solids, after.whole), heavier, MASS_PLACES);
  return {
    solids: divided(solids, before.whole, MASS_PLACES),
    makes,
    makes_u: madeU(makes, massU * (asDouble(lighter) / asDouble(heavier)), moisture),
    water_out: difference(mass, makes),
    drying_ratio: divided(heavier, lighter, RATIO_PLACES),
  };
}

/**
 * A liquid of solids_percent brought to to_percent of its own solids, with added_percent of the
 * product stirred in: 200 kg at 10 % to 15 % with 15 % sugar makes 133.3333 kg.
 *
 * Throws for a mass or percent below 0, a target of 0, and percents of the product above 100
 * together.
 */
export function concentrated(
  mass: Decimal,
  by: {
    readonly solids_percent: Decimal;
    readonly to_percent: Decimal;
    readonly added_percent?: Decimal;
  },
): Concentrated {
  const { solids_percent, to_percent, added_percent = ZERO } = by;
  const isBelow = [mass, solids_percent, added_percent].some((each) => each.isNegative());
  if (isBelow || to_percent.compare(ZERO) <= 0) {
    throw new RangeError("masses and percents are not below 0");
  }
  const both = total([to_percent, added_percent]);
  if (both.compare(HUNDRED) > 0 || solids_percent.compare(HUNDRED) > 0) {
    throw new RangeError("more than all of it");
  }
  const solids = product(mass, solids_percent);
  const makes = divided(solids, to_percent, MASS_PLACES);
  const toAdd = divided(product(solids, added_percent), product(to_percent, HUNDRED), MASS_PLACES);
  return { makes, to_add: toAdd, water_out: difference(total([mass, toAdd]), makes) };
}

/** What the mass adds, and the relative doubt of the solids before and after. */
function madeU(
  makes: Decimal,
  byMass: number,
  moisture: { readonly before: Moisture; readonly after: Moisture },
): number {
  const amount = asDouble(makes);
  const solids = [moisture.before, moisture.after].map((each) => amount * solidsDoubt(each));
  return combinedU([byMass, ...solids]);
}

/** u of the share of solids over that share: u / (100 - M) wet, u / (100 + M) dry. */
function solidsDoubt(moisture: Moisture): number {
  const percent = asDouble(moisture.percent);
  return moisture.u / (moisture.basis === "wet" ? 100 - percent : 100 + percent);
}

/** Water, solids and both together, in proportion. */
function parts(moisture: Moisture): { water: Decimal; solids: Decimal; whole: Decimal } {
  const { percent, basis } = moisture;
  if (percent.isNegative() || (basis === "wet" && percent.compare(HUNDRED) >= 0)) {
    throw new RangeError("moisture is not below 0 %, and of the whole it is below 100 %");
  }
  const solids = basis === "wet" ? difference(HUNDRED, percent) : HUNDRED;
  return { water: percent, solids, whole: total([percent, solids]) };
}

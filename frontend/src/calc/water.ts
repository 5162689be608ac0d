/**
 * Weighing water to learn what a vessel holds: density of water, air buoyancy, volume.
 *
 * Not taken into account: the vessel growing with warmth (below 0.1 % for glass and plastic in a
 * kitchen), water left hanging in it, other air than 0.0012 g/mL.
 */

import type { Cited } from "./limits.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  HUNDRED,
  ONE,
  parseDecimal,
  product,
  rounded,
  total,
} from "./numbers.ts";
import { combinedU, type Doubt, doubtOf, mean } from "./readings.ts";
import { HOT_WATER_ROWS } from "./tables/checks.ts";
import { sumDoubt } from "./weighing.ts";

export const COLDEST = parseDecimal("0"); // degC, from which the formula holds
export const WARMEST = parseDecimal("40"); // degC, to which it holds
export const KG_PLACES = 4; // kg/m3, as the published table has them
export const VOLUME_PLACES = 6;
export const CELSIUS_PLACES = 3;
// Tanaka et al., Metrologia 38 (2001) 301-309, kg/m3 and degC: coefficients read in quotation.
const DENSEST = parseDecimal("999.974950");
const DENSEST_AT = parseDecimal("3.983035");
const A2 = parseDecimal("301.797");
const A3 = parseDecimal("522528.9");
const A4 = parseDecimal("69.34881");
const TANAKA: Cited = {
  what: "water_density",
  source: "Tanaka et al., Metrologia 38 (2001) 301-309 (coefficients read in quotation)",
  basis: "read-secondary",
  note: "",
};
const THOUSAND = parseDecimal("1000");
// g/mL, the usual convention for a weighing in air; own definition, DEVELOPERS.md 4.
const AIR = parseDecimal("0.0012");
const WEIGHTS_IN_AIR = parseDecimal("0.99985"); // 1 - 0.0012 / 8.0: the scale's weights float too

/** Density of water in kg/m3 and who says so. */
export interface WaterDensity {
  readonly kg_per_m3: Decimal;
  readonly cited: readonly Cited[];
}

/** What a vessel holds, in mL, and its doubt. */
export interface HeldVolume {
  readonly volume: Decimal;
  readonly doubt: Doubt;
  readonly cited: readonly Cited[];
}

/**
 * Density of water at a temperature, rounded to 0.0001 kg/m3.
 *
 * From 0 to 40 degC by formula, within 0.0012 of IAPWS-95. Above, the formula does not hold: only
 * the temperatures of the table are answered, others throw RangeError.
 */
export function waterDensity(celsius: Decimal): WaterDensity {
  if (isFormulaHolding(celsius)) return { kg_per_m3: byFormula(celsius), cited: [TANAKA] };
  const row = HOT_WATER_ROWS.find((each) => parseDecimal(each.temp_C).compare(celsius) === 0);
  if (row === undefined) {
    throw new RangeError("the density of water is known from 0 to 40 degC; let it cool");
  }
  const cited = { what: "water_density", source: row.source, basis: row.basis, note: "" };
  return { kg_per_m3: parseDecimal(row.iapws95_kg_per_m3), cited: [cited] };
}

/** Grams of water in a volume; hot water is lighter. Throws as waterDensity does. */
export function massOfWater(volumeML: Decimal, celsius: Decimal): Decimal {
  return divided(product(volumeML, waterDensity(celsius).kg_per_m3), THOUSAND, VOLUME_PLACES);
}

/**
 * mL of water for each gram a scale shows in air. Throws as waterDensity does.
 * (1 - air / weights) / (density - air) with air 0.0012 and weights 8.0 g/mL.
 */
export function millilitresPerGram(celsius: Decimal, places: number): Decimal {
  return divided(WEIGHTS_IN_AIR, densityAboveAir(celsius), places);
}

/**
 * mL of water that show these masses, in g net: several fillings of one vessel, their mean.
 *
 * The doubt is that of the mean mass, as doubtOf gives it, and that of the temperature, in degC.
 * Throws RangeError for no mass and outside 0 to 40 degC.
 */
export function heldVolume(
  masses: readonly Decimal[],
  water: { readonly celsius: Decimal; readonly celsius_u: number },
  scale: {
    readonly division: Decimal;
    readonly readings?: number;
    readonly repeatability?: Decimal | null;
  },
): HeldVolume {
  if (!isFormulaHolding(water.celsius)) {
    throw new RangeError("a vessel is checked with water between 0 and 40 degC");
  }
  const weighed = mean(masses, VOLUME_PLACES);
  const aboveAir = densityAboveAir(water.celsius);
  const volume = divided(product(weighed, WEIGHTS_IN_AIR), aboveAir, VOLUME_PLACES);
  const weighing = doubtOf({
    division: scale.division,
    readings: scale.readings ?? 2,
    repeatability: scale.repeatability ?? null,
    repeats: masses.length > 1 ? masses : [],
  });
  const factor = asDouble(WEIGHTS_IN_AIR) / asDouble(aboveAir);
  const ofMass = { u: weighing.u * factor, degrees: weighing.degrees };
  // dV / dt = V x (density lost a degree) / (density - air)
  const steepness = steepnessAt(asDouble(water.celsius)) / (1000 * asDouble(aboveAir));
  const warmth = combinedU([asDouble(volume) * steepness * water.celsius_u]);
  const doubt = sumDoubt([ofMass, { u: warmth, degrees: null }]);
  if (doubt === null) throw new Error("both parts are known");
  return { volume, doubt, cited: [TANAKA] };
}

/** (value - nominal) / nominal in percent, rounded once. Throws RangeError for nominal 0. */
export function errorPercent(value: Decimal, nominal: Decimal, places: number): Decimal {
  return divided(product(difference(value, nominal), HUNDRED), nominal, places);
}

function isFormulaHolding(celsius: Decimal): boolean {
  return COLDEST.compare(celsius) <= 0 && celsius.compare(WARMEST) <= 0;
}

function byFormula(celsius: Decimal): Decimal {
  const at = rounded(celsius, CELSIUS_PLACES);
  const fromDensest = difference(at, DENSEST_AT);
  const lost = product(product(fromDensest, fromDensest), total([at, A2]));
  const under = product(A3, total([at, A4]));
  return divided(product(DENSEST, difference(under, lost)), under, KG_PLACES);
}

/** Density of water less that of air, exact, in g/mL. */
function densityAboveAir(celsius: Decimal): Decimal {
  return difference(product(waterDensity(celsius).kg_per_m3, divided(ONE, THOUSAND, 3)), AIR);
}

/** How much density water loses, kg/m3 for each degC: the formula's own slope. */
function steepnessAt(celsius: number): number {
  const fromDensest = celsius - asDouble(DENSEST_AT);
  const lost = fromDensest * fromDensest * (celsius + asDouble(A2));
  const lostSlope = 2 * fromDensest * (celsius + asDouble(A2)) + fromDensest * fromDensest;
  const under = celsius + asDouble(A4);
  const slope = (lostSlope * under - lost) / (asDouble(A3) * under * under);
  return asDouble(DENSEST) * slope;
}

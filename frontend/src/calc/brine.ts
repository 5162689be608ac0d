/**
 * Salt and sugar in percent: from what was weighed, of the whole or of the water, and in degrees
 * of a salometer, whose scale must be said.
 */

import { PERCENT_PLACES, percentOf, solidsIn } from "./balance.ts";
import type { Cited } from "./limits.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  HUNDRED,
  parseDecimal,
  product,
  total,
} from "./numbers.ts";
import { combinedU } from "./readings.ts";
import { SALOMETER_ROWS, type SalometerRow } from "./tables/bench.ts";

export const SALT_PLACES = 4;
/** 100 degrees of the 60 degF scale: no brine holds more. */
export const SATURATED_PERCENT = parseDecimal("26.395");

/**
 * A mass that went in, the percent of it that is the salt or sugar asked for (0 for water), and
 * the mass's standard uncertainty.
 */
export interface Weighed {
  readonly amount: Decimal;
  readonly percent: Decimal;
  readonly u: number;
}

/** Percent by mass of the whole, and its standard uncertainty from the weighings. */
export interface Strength {
  readonly percent: Decimal;
  readonly u: number;
}

/** Degrees of one scale and the percent of salt by mass they stand for. */
export interface Salometer {
  readonly degrees: Decimal;
  readonly percent: Decimal;
  readonly scale: string;
  readonly cited: readonly Cited[];
}

/**
 * Percent of salt or sugar by what was weighed in; null when nothing was.
 * u is the root of the squares of u_i (percent_i - percent) / mass (JCGM 100:2008 5.1.2).
 */
export function weighedStrength(parts: readonly Weighed[]): Strength | null {
  const whole = total(parts.map((part) => part.amount));
  const percent = percentOf(solidsIn(parts.map((p) => [p.amount, p.percent])), whole);
  if (percent === null) return null;
  const mass = asDouble(whole);
  const doubts = parts.map((p) => (asDouble(difference(p.percent, percent)) / mass) * p.u);
  return { percent, u: combinedU(doubts) };
}

/** Of the whole brine, from a percent of its water: 100 p / (100 + p). Throws below 0. */
export function percentByMass(ofWater: Decimal, places: number = PERCENT_PLACES): Decimal {
  if (ofWater.isNegative()) throw new RangeError("a percent is not below 0");
  return divided(product(ofWater, HUNDRED), total([HUNDRED, ofWater]), places);
}

/**
 * Of the water, from a percent of the whole brine: 100 p / (100 - p).
 * Throws below 0 and from 100 on.
 */
export function percentOfWater(byMass: Decimal, places: number = PERCENT_PLACES): Decimal {
  if (byMass.isNegative() || byMass.compare(HUNDRED) >= 0) {
    throw new RangeError("a brine has some water");
  }
  return divided(product(byMass, HUNDRED), difference(HUNDRED, byMass), places);
}

/**
 * Salt by mass that a salometer's degrees say on the `standard` or the `canning` scale.
 * Throws for another scale, below 0 and beyond a saturated brine.
 */
export function salometerPercent(degrees: Decimal, scale: string): Salometer {
  const row = scaleNamed(scale);
  const over = product(degrees, parseDecimal(row.percent_at_100));
  return salometer(row, degrees, divided(over, HUNDRED, SALT_PLACES));
}

/**
 * Degrees a salometer of this scale shows in a brine of this percent by mass.
 * Throws as salometerPercent does.
 */
export function salometerDegrees(percent: Decimal, scale: string): Salometer {
  const row = scaleNamed(scale);
  const over = product(percent, HUNDRED);
  return salometer(row, divided(over, parseDecimal(row.percent_at_100), SALT_PLACES), percent);
}

function scaleNamed(scale: string): SalometerRow {
  const row = SALOMETER_ROWS.find((each) => each.scale === scale);
  if (row === undefined) throw new RangeError(`which scale? there is none called "${scale}"`);
  return row;
}

function salometer(row: SalometerRow, degrees: Decimal, percent: Decimal): Salometer {
  if (percent.isNegative() || percent.compare(SATURATED_PERCENT) > 0) {
    throw new RangeError("a brine has from 0 to 26.395 % of salt");
  }
  const { source, basis, note } = row;
  return {
    degrees,
    percent,
    scale: row.scale,
    cited: [{ what: "salometer", source, basis, note }],
  };
}

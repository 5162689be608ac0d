/**
 * Units: what each code measures, how much it is in its base unit, and how to change units.
 * Base units are g, mL and pc. Mass is never changed into volume here: that takes a density.
 */

import { type Decimal, divided, parseDecimal, product, rounded } from "./numbers.ts";
import { type Dimension, UNIT_ROWS, type UnitRow } from "./tables/units.ts";

export type { Dimension };

const TWO = parseDecimal("2");
const FIVE = parseDecimal("5");
const HALF = parseDecimal("0.5");

export const BASE_UNITS: ReadonlyMap<Dimension, string> = new Map([
  ["mass", "g"],
  ["volume", "mL"],
  ["count", "pc"],
]);

export const UNITS: ReadonlyMap<string, UnitRow> = new Map(UNIT_ROWS.map((row) => [row.code, row]));

/** Whether the table knows this code; "cup", "oz." and "ML" are not codes. */
export function isUnit(code: string): boolean {
  return UNITS.has(code);
}

/** mass, volume, count or temperature. Throws for an unknown code. */
export function dimensionOf(code: string): Dimension {
  return known(code).dimension;
}

/**
 * The unit in which sheets keep amounts of this dimension: g, mL or pc.
 * Throws for a temperature, of which there are no amounts.
 */
export function baseUnitOf(code: string): string {
  const unit = BASE_UNITS.get(dimensionOf(code));
  if (unit === undefined) throw new RangeError(`${code} is not an amount`);
  return unit;
}

/** The exact amount in g, mL or pc. Throws for a temperature or unknown code. */
export function inBase(amount: Decimal, code: string): Decimal {
  return product(amount, factorOf(code));
}

/** An amount of g, mL or pc in this unit, rounded once, ties to even. */
export function fromBase(amount: Decimal, code: string, places: number): Decimal {
  return divided(amount, factorOf(code), places);
}

/**
 * An amount in another unit of the same dimension, rounded once, ties to even.
 * Throws when the dimensions differ: see density.ts for mass and volume.
 */
export function converted(
  amount: Decimal,
  fromCode: string,
  toCode: string,
  places: number,
): Decimal {
  if (dimensionOf(fromCode) !== dimensionOf(toCode)) {
    throw new RangeError(`${fromCode} and ${toCode} measure different things`);
  }
  return fromBase(inBase(amount, fromCode), toCode, places);
}

/**
 * g or mL as a US nutrition label prints them: from 5 whole, from 2 to 5 by halves, below 2 by
 * tenths. 21 CFR 101.9(b)(7)(ii), read; it does not say where a tie goes: to even here.
 */
export function labelMetric(amount: Decimal): Decimal {
  if (amount.compare(FIVE) >= 0) return rounded(amount, 0);
  if (amount.compare(TWO) >= 0) return product(rounded(product(amount, TWO), 0), HALF);
  return rounded(amount, 1);
}

function known(code: string): UnitRow {
  const unit = UNITS.get(code);
  if (unit === undefined) throw new RangeError(`unknown unit: ${JSON.stringify(code)}`);
  return unit;
}

function factorOf(code: string): Decimal {
  const factor = known(code).in_base;
  if (factor === null) throw new RangeError(`${code} is not an amount`);
  return parseDecimal(factor);
}

/**
 * Mass and volume: a density belongs to an ingredient, how it is packed, and the portion weighed.
 *
 * Rows come from tables/density.ts (USDA grams per household portion; that its cups and spoons
 * are the US customary ones is our assumption). They are passed in, because a phone loads them
 * only when they are needed.
 */

import type { Decimal } from "./numbers.ts";
import { difference, divided, parseDecimal, product, rounded, total, ZERO } from "./numbers.ts";
import { type Dimension, dimensionOf, inBase } from "./units.ts";

/** How USDA says that nobody wrote down whether it was sifted, packed or shaken. */
export const UNSTATED: readonly string[] = ["", "as measured", "as measured (method not stated)"];
export const SPREAD_PLACES = 6; // densities in g/mL while low and high are compared
export const SD_COVERAGE = parseDecimal("2"); // about 95 %: JCGM 100:2008 6.3.3

/** One published portion: what it weighed. Numbers are kept as printed. */
export interface DensityRow {
  readonly ingredient: string;
  readonly packing: string;
  readonly portion: string;
  readonly portion_amount: string;
  readonly portion_unit: string;
  readonly mass_g: string;
  readonly density_g_per_mL: string;
  readonly samples: string;
  readonly sd_g: string;
  readonly source: string;
  readonly basis: string;
}

/** One published range; `of` names the ingredients of the density table it holds for. */
export interface SpreadRow {
  readonly ingredient: string;
  readonly of: string;
  readonly state_low: string;
  readonly low_g: string;
  readonly state_high: string;
  readonly high_g: string;
  readonly per_amount: string;
  readonly per_unit: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

/** Between which densities the published figures lie, and who published them. */
export interface Spread {
  readonly low_g_per_mL: Decimal;
  readonly high_g_per_mL: Decimal;
  readonly sources: readonly string[];
}

/** An amount changed by a density; low and high are null when no spread is published. */
export interface Converted {
  readonly amount: Decimal;
  readonly unit: "g" | "mL";
  readonly low: Decimal | null;
  readonly high: Decimal | null;
  readonly spread_sources: readonly string[];
  readonly source: string;
  readonly basis: string;
  readonly portion: string;
}

/**
 * The row to convert with: of this ingredient and packing the largest published portion, since
 * small ones are rounded hardest. Null when nobody published one.
 */
export function bestDensity(
  rows: readonly DensityRow[],
  ingredient: string,
  packing: string,
): DensityRow | null {
  let best: DensityRow | null = null;
  for (const row of rows) {
    if (row.ingredient !== ingredient || row.packing !== packing) continue;
    const isLarger = best === null || portionVolume(row).compare(portionVolume(best)) > 0;
    if (isLarger) best = row; // the first of equals
  }
  return best;
}

/**
 * How far published figures for this ingredient lie apart.
 * With a stated packing only rows of that packing count; ranges given in g/mL count always, those
 * between two packings only when the packing is unstated. Null: only one figure is known.
 */
export function spreadOf(
  row: DensityRow,
  rows: readonly DensityRow[],
  ranges: readonly SpreadRow[],
): Spread | null {
  const alike = rows.filter((r) => r.ingredient === row.ingredient && countsBeside(r, row));
  const published = ranges.filter((r) => names(r, row) && rangeHolds(r, row));
  const lowHigh = [...alike.map(rowRange), ...published.map(publishedRange)];
  const low = lowHigh.map(([least]) => least).reduce((a, b) => (b.compare(a) < 0 ? b : a));
  const high = lowHigh.map(([, most]) => most).reduce((a, b) => (b.compare(a) > 0 ? b : a));
  if (low.compare(high) === 0) return null;
  const sources = [...new Set([...alike, ...published].map((r) => r.source))].sort();
  return { low_g_per_mL: low, high_g_per_mL: high, sources };
}

/**
 * Grams of a volume: the portion's grams over the portion's exact millilitres.
 * Throws when the unit is not one of volume; the caller asks dimensionOf first.
 */
export function massOfVolume(
  amount: Decimal,
  unit: string,
  row: DensityRow,
  spread: Spread | null,
  places: number,
): Converted {
  const volume = amountOf("volume", amount, unit);
  const mass = divided(product(volume, parseDecimal(row.mass_g)), portionVolume(row), places);
  const lowHigh: Range | null = spread && [
    rounded(product(volume, spread.low_g_per_mL), places),
    rounded(product(volume, spread.high_g_per_mL), places),
  ];
  return convertedBy(row, spread, "g", mass, lowHigh);
}

/**
 * Millilitres of a mass; the denser it lies, the less room it takes.
 * Throws when the unit is not one of mass.
 */
export function volumeOfMass(
  amount: Decimal,
  unit: string,
  row: DensityRow,
  spread: Spread | null,
  places: number,
): Converted {
  const mass = amountOf("mass", amount, unit);
  const room = divided(product(mass, portionVolume(row)), parseDecimal(row.mass_g), places);
  const lowHigh: Range | null = spread && [
    divided(mass, spread.high_g_per_mL, places),
    divided(mass, spread.low_g_per_mL, places),
  ];
  return convertedBy(row, spread, "mL", room, lowHigh);
}

type Range = readonly [Decimal, Decimal];

function amountOf(dimension: Dimension, amount: Decimal, unit: string): Decimal {
  if (dimensionOf(unit) !== dimension) throw new RangeError(`${unit} is no unit of ${dimension}`);
  return inBase(amount, unit);
}

/** Exact mL of the portion that was weighed. */
function portionVolume(row: DensityRow): Decimal {
  return inBase(parseDecimal(row.portion_amount), row.portion_unit);
}

function countsBeside(other: DensityRow, row: DensityRow): boolean {
  return UNSTATED.includes(row.packing) || other.packing === row.packing;
}

function names(published: SpreadRow, row: DensityRow): boolean {
  return published.of.split(";").includes(row.ingredient);
}

function rangeHolds(published: SpreadRow, row: DensityRow): boolean {
  return published.per_unit === "mL" || UNSTATED.includes(row.packing);
}

/** g/mL from two standard deviations below to two above; without one, the figure itself. */
function rowRange(row: DensityRow): Range {
  const [mass, volume] = [parseDecimal(row.mass_g), portionVolume(row)];
  const around = row.sd_g === "" ? ZERO : product(parseDecimal(row.sd_g), SD_COVERAGE);
  return [
    divided(difference(mass, around), volume, SPREAD_PLACES),
    divided(total([mass, around]), volume, SPREAD_PLACES),
  ];
}

function publishedRange(published: SpreadRow): Range {
  const volume = inBase(parseDecimal(published.per_amount), published.per_unit);
  return [
    divided(parseDecimal(published.low_g), volume, SPREAD_PLACES),
    divided(parseDecimal(published.high_g), volume, SPREAD_PLACES),
  ];
}

function convertedBy(
  row: DensityRow,
  spread: Spread | null,
  unit: "g" | "mL",
  amount: Decimal,
  lowHigh: Range | null,
): Converted {
  return {
    amount,
    unit,
    low: lowHigh?.[0] ?? null,
    high: lowHigh?.[1] ?? null,
    spread_sources: spread === null ? [] : spread.sources,
    source: row.source,
    basis: row.basis,
    portion: row.portion,
  };
}

/**
 * How far an instrument may be off: published limits, each with its source and basis.
 * Limits are inclusive; a load exactly at the end of a band belongs to the lower band.
 */

import { type Decimal, difference, divided, ONE, parseDecimal, product, ZERO } from "./numbers.ts";
import {
  CYLINDER_ROWS,
  MEASURE_ROWS,
  SCALE_CLASS_ROWS,
  SCALE_ERROR_ROWS,
  type ScaleErrorRow,
  WEIGHT_ROWS,
  type WeightRow,
} from "./tables/checks.ts";

export type When = "initial" | "in_service";
export type Measure = "cup" | "spoon";

const PERCENT = parseDecimal("0.01");
const GRAMS_PER_MG = parseDecimal("0.001");
const HB133 = "HB133-"; // how the table names the classes of HB 133 Table 2-2
const MEASURES = { cup: "household liquid measures", spoon: "measuring spoons" };
const WEIGHT_CLASSES: ReadonlyMap<string, (row: WeightRow) => string> = new Map([
  ["F1", (row: WeightRow) => row.F1_mg],
  ["F2", (row: WeightRow) => row.F2_mg],
  ["M1", (row: WeightRow) => row.M1_mg],
  ["M2", (row: WeightRow) => row.M2_mg],
  ["M3", (row: WeightRow) => row.M3_mg],
]);

/** A published figure an answer leans on; `what` names it: "scale_error", "mav". */
export interface Cited {
  readonly what: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

/** Plus or minus how much, in the unit of what is measured, and who says so. */
export interface Limit {
  readonly amount: Decimal;
  readonly cited: readonly Cited[];
}

/** The class of a scale and its number of divisions, cut to a whole number. */
export interface ScaleClass {
  readonly accuracy_class: string;
  readonly divisions: Decimal;
  readonly cited: readonly Cited[];
}

/** Whether a figure was recalled and not read: what is shown must say so. */
export function leansOnMemory(cited: readonly Cited[]): boolean {
  return cited.some((each) => each.basis === "memory");
}

/** Whether two recollections of a figure differ: such a figure decides nothing. */
export function isDisputed(cited: readonly Cited[]): boolean {
  return cited.some((each) => each.basis === "disputed");
}

/**
 * Maximum permissible error of a scale of class I to IIII at a load, in the load's unit.
 *
 * Bands are counted in verification intervals e; in service twice the initial error. OIML R
 * 76-1:2006 Table 6. Throws RangeError for another class, a load below zero or beyond the last
 * band, and e not above zero.
 */
export function scaleErrorLimit(
  load: Decimal,
  scale: { readonly e: Decimal; readonly accuracy_class: string },
  when: When = "in_service",
): Limit {
  if (scale.accuracy_class.startsWith(HB133)) {
    throw new RangeError(`${scale.accuracy_class} has no limit in service; see divisionTolerance`);
  }
  const row = errorRow(load, scale.e, scale.accuracy_class);
  const inE = when === "initial" ? row.mpe_initial_in_e : row.mpe_in_service_in_e;
  return { amount: product(parseDecimal(inE), scale.e), cited: [errorCited(row)] };
}

/**
 * Tolerance of a scale of class II or III before packs are checked on it, in divisions.
 *
 * NIST HB 133 (2026) Table 2-2, the acceptance tolerance of HB 44. Throws RangeError for another
 * class, a load below zero, and a division not above zero.
 */
export function divisionTolerance(
  load: Decimal,
  scale: { readonly division: Decimal; readonly accuracy_class: string },
): Limit {
  const row = errorRow(load, scale.division, `${HB133}${scale.accuracy_class}`);
  const amount = product(parseDecimal(row.mpe_initial_in_e), scale.division);
  return { amount, cited: [errorCited(row)] };
}

/**
 * The class a scale belongs to by the number and size of its divisions, both in g.
 *
 * Where two classes fit, the coarser: a finer one must be marked on the scale. Null where no
 * class fits. OIML R 76-1:2006 Table 3. Throws RangeError for a division not above zero.
 */
export function scaleClass(capacity: Decimal, division: Decimal): ScaleClass | null {
  if (division.compare(ZERO) <= 0) throw new RangeError("a scale has a division above zero");
  const fitting = SCALE_CLASS_ROWS.filter(
    (row) =>
      liesBetween(division, row.e_from_g, row.e_to_g) &&
      product(parseDecimal(row.n_min), division).compare(capacity) <= 0 &&
      (row.n_max === "" || capacity.compare(product(parseDecimal(row.n_max), division)) <= 0),
  );
  const row = fitting.at(-1); // the table goes from the finest class to the coarsest
  if (row === undefined) return null;
  const cited = { what: "scale_class", source: row.source, basis: row.basis, note: "" };
  const divisions = wholeTimes(division, capacity);
  return { accuracy_class: row.accuracy_class, divisions, cited: [cited] };
}

/**
 * Plus or minus how many g a weight of class F1, F2, M1, M2 or M3 may be off.
 *
 * Null where no single weight has this mass. OIML R 111-1:2004 Table 1. Throws RangeError for
 * another class.
 */
export function massTolerance(nominalG: Decimal, weightClass: string): Limit | null {
  const inMg = WEIGHT_CLASSES.get(weightClass);
  if (inMg === undefined) throw new RangeError(`no class of weights: ${weightClass}`);
  const row = WEIGHT_ROWS.find((each) => parseDecimal(each.nominal_g).compare(nominalG) === 0);
  if (row === undefined) return null;
  const cited = { what: "mass_tolerance", source: row.source, basis: row.basis, note: "" };
  return { amount: product(parseDecimal(inMg(row)), GRAMS_PER_MG), cited: [cited] };
}

/**
 * Plus or minus 5 % of a graduation of a household cup or spoon, in its unit.
 * Read in quotation for cups, from memory for spoons.
 */
export function measureLimit(nominal: Decimal, sort: Measure): Limit {
  const row = MEASURE_ROWS.find((each) => each.device.startsWith(MEASURES[sort]));
  if (row === undefined) throw new Error("the table has cups and spoons");
  const amount = product(product(nominal, parseDecimal(row.tolerance_percent_pm)), PERCENT);
  const cited = { what: "measure", source: row.source, basis: row.basis, note: "" };
  return { amount, cited: [cited] };
}

/**
 * Plus or minus how many mL a graduated cylinder may be off at any of its marks.
 *
 * Null for a capacity the table does not have. ASTM E1272-02 (2012) Table 1. Throws RangeError for
 * another class than A and B.
 */
export function cylinderLimit(capacityML: Decimal, cylinderClass: string): Limit | null {
  if (!["A", "B"].includes(cylinderClass)) {
    throw new RangeError(`no class of cylinders: ${cylinderClass}`);
  }
  const row = CYLINDER_ROWS.find(
    (each) => parseDecimal(each.capacity_mL).compare(capacityML) === 0,
  );
  if (row === undefined) return null;
  const text = cylinderClass === "A" ? row.class_A_pm_mL : row.class_B_pm_mL;
  const cited = { what: "cylinder", source: row.source, basis: row.basis, note: "" };
  return { amount: parseDecimal(text), cited: [cited] };
}

function errorRow(load: Decimal, step: Decimal, accuracyClass: string): ScaleErrorRow {
  if (step.compare(ZERO) <= 0 || load.compare(ZERO) < 0) {
    throw new RangeError("a load is not below zero and a division is above it");
  }
  const row = SCALE_ERROR_ROWS.find((each) => {
    if (each.accuracy_class !== accuracyClass) return false;
    const end = each.load_up_to_e;
    return end === "" || load.compare(product(parseDecimal(end), step)) <= 0;
  });
  if (row === undefined) throw new RangeError(`no limit for class ${accuracyClass} at this load`);
  return row;
}

function errorCited(row: ScaleErrorRow): Cited {
  return { what: "scale_error", source: row.source, basis: row.basis, note: row.note };
}

function liesBetween(x: Decimal, low: string, high: string): boolean {
  return parseDecimal(low).compare(x) <= 0 && (high === "" || x.compare(parseDecimal(high)) <= 0);
}

/** How many whole steps there are in a whole. */
function wholeTimes(step: Decimal, whole: Decimal): Decimal {
  const nearest = divided(whole, step, 0);
  return product(nearest, step).compare(whole) <= 0 ? nearest : difference(nearest, ONE);
}

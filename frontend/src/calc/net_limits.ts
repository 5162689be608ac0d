/**
 * Net content: how short a pack may be, how many are looked at, how fine a scale must be.
 *
 * US: NIST HB 133, category A. EU: 76/211/EEC with OIML R 87. Many figures of the US tables were
 * recalled and not read; each answer carries the basis of its rows.
 */

import type { Cited, Limit } from "./limits.ts";
import { Decimal, divided, ONE, parseDecimal, product, rounded, total, ZERO } from "./numbers.ts";
import {
  BATCH_PLAN_ROWS,
  type BatchPlanRow,
  CATEGORY_A_ROWS,
  MAV_ROWS,
  type MavRow,
  PACK_DIVISION_ROWS,
  SHORTAGE_ROWS,
} from "./tables/net_content.ts";
import { fromBase, inBase } from "./units.ts";

export type MavColumn = "g" | "lb" | "oz";
export type BatchRules = "arrete_1978" | "r87_2004";

export const MASS_PLACES = 6;
const PERCENT = parseDecimal("0.01");
const SIXTH = parseDecimal("6"); // a division is at most a sixth of the MAV: HB 133 (2026) 2.2.1, read
const TENTH = parseDecimal("0.1");
const TEN = parseDecimal("10");
const MAV_SIXTH: Cited = {
  what: "mav_sixth",
  source: "NIST HB 133 (2026) 2.2.1: division no more than MAV/6",
  basis: "read",
  note: "",
};
// Labels whose MAV the examples of HB 133 (2026) 2.2.1 and 2.3.8 print; for others in the same two
// bands the figure was read and the ends of the band recalled.
const READ_ANCHORS = [parseDecimal("113"), parseDecimal("907")];
const MAV_BAND: Cited = {
  what: "mav_band",
  source: "NIST Handbook 133, App. A Table 2-5: ends of the band, and lb and oz figures",
  basis: "memory",
  note: "",
};
const ROUNDED_UP: Cited = {
  what: "t_rounded_up",
  source: "OIML R 87; 76/211/EEC sec. 2.5: T in percent is rounded up",
  basis: "memory",
  note: "up to 1000 g or mL to 0.1, above to 1",
};
const FINE_UP_TO = parseDecimal("1000"); // g or mL, up to which T is rounded to 0.1
const LARGEST_PACK = parseDecimal("50000"); // g or mL, the end of the last band: memory
const R87_2004 = "OIML R 87:2004"; // how the table names the plan that was recalled
const STEPS = ["5", "2", "1"].map(parseDecimal); // of the 1-2-5 series

/**
 * HB 133 category A for a lot: `factor` null for a single pack, of which there is no mean;
 * `tare_count` null where it was not read.
 */
export interface PackPlan {
  readonly sample_size: number;
  readonly factor: Decimal | null;
  readonly allowed_over_mav: number;
  readonly tare_count: number | null;
  readonly cited: readonly Cited[];
}

/**
 * A plan for packs short by more than T: accept or reject by their number in the first sample or
 * in both together. Without numbers only the mean decides.
 */
export interface BatchPlan {
  readonly sample_size: number;
  readonly accept_at_most: number | null;
  readonly reject_at_least: number | null;
  readonly second_cumulative_size: number | null;
  readonly second_accept_at_most: number | null;
  readonly second_reject_at_least: number | null;
  readonly mean_sample_size: number;
  readonly mean_factor: Decimal;
  readonly cited: readonly Cited[];
}

/**
 * MAV in g of a pack labelled by weight, from the column of the unit that is declared.
 *
 * The gram figures are the pound figures cut, the ounce ones are coarser. HB 133 App. A Table 2-5:
 * two rows read, two disputed, the others memory. Throws RangeError for a label of 0.
 */
export function maximumAllowableVariation(labelG: Decimal, column: MavColumn = "g"): Limit {
  const row = mavRow(labelG, column);
  const cited = { what: "mav", source: row.source, basis: row.basis, note: row.note };
  const isAnchor = column === "g" && READ_ANCHORS.some((each) => each.compare(labelG) === 0);
  const inBand = isAnchor || row.basis !== "read" ? [] : [MAV_BAND];
  return { amount: mavOf(row, labelG, column), cited: [cited, ...inBand] };
}

/**
 * The largest division, in g, of a scale for packs under HB 133: a sixth of the MAV, down to 1, 2
 * or 5 times a power of ten.
 */
export function packDivision(labelG: Decimal, column: MavColumn = "g"): Limit {
  const mav = maximumAllowableVariation(labelG, column);
  const sixth = divided(mav.amount, SIXTH, MASS_PLACES);
  if (sixth.compare(ZERO) <= 0) throw new RangeError("no scale is fine enough for so little");
  return { amount: stepBelow(sixth), cited: [MAV_SIXTH, ...mav.cited] };
}

/**
 * The largest division, in g, of a scale for packs of this nominal content.
 * French arrete of 20 Oct 1978, art. 3.1, read. Throws RangeError for a content below 0.
 */
export function packDivisionEu(nominal: Decimal): Limit {
  const row = PACK_DIVISION_ROWS.filter(
    (each) => parseDecimal(each.allowed_from_nominal_g).compare(nominal) <= 0,
  ).at(-1);
  if (row === undefined) throw new RangeError("a content is not below 0");
  const cited = { what: "pack_division", source: row.source, basis: row.basis, note: row.note };
  return { amount: parseDecimal(row.scale_division_g), cited: [cited] };
}

/**
 * How many packs of a lot are weighed under HB 133 category A, and the factor of the mean.
 *
 * From memory; the factors agree with t(0.975, n - 1) / sqrt(n). Throws RangeError for none.
 */
export function packPlan(lotSize: number): PackPlan {
  const row = CATEGORY_A_ROWS.find((each) => holds(lotSize, each.lot_from, each.lot_to));
  if (row === undefined) throw new RangeError("a lot has at least one pack");
  const factor = row.sample_correction_factor;
  return {
    sample_size: Number(row.sample_size),
    factor: factor === "" ? null : parseDecimal(factor),
    allowed_over_mav: Number(row.packages_allowed_over_mav),
    tare_count: whole(row.initial_tare_sample),
    cited: [{ what: "pack_plan", source: row.source, basis: row.basis, note: row.note }],
  };
}

/**
 * T, the tolerable negative error of a nominal content in g or mL.
 *
 * A percentage is rounded up, to 0.1 up to 1000 and to 1 above: that rule is from memory. Throws
 * RangeError for a content of 0 and above 50 000.
 */
export function tolerableShortage(nominal: Decimal): Limit {
  const isKnown = nominal.compare(ZERO) > 0 && nominal.compare(LARGEST_PACK) <= 0;
  const row = SHORTAGE_ROWS.find((each) => nominal.compare(parseDecimal(each.up_to_g_or_mL)) <= 0);
  if (!isKnown || row === undefined) {
    throw new RangeError("T is known above 0 and up to 50 000 g or mL");
  }
  const cited = { what: "t", source: row.source, basis: row.basis, note: row.note };
  if (row.fixed_g_or_mL !== "") return { amount: parseDecimal(row.fixed_g_or_mL), cited: [cited] };
  const exact = product(product(nominal, parseDecimal(row.percent_of_Qn)), PERCENT);
  const shortage = roundedUp(exact, nominal.compare(FINE_UP_TO) <= 0 ? 1 : 0);
  const isExact = shortage.compare(exact) === 0;
  return { amount: shortage, cited: isExact ? [cited] : [cited, ROUNDED_UP] };
}

/**
 * The sampling plan for a batch under 76/211/EEC.
 *
 * `arrete_1978`: French arrete, read; a batch under 100 is checked whole. `r87_2004`: OIML R
 * 87:2004, from memory. Throws RangeError where the rules have no plan for such a batch.
 */
export function batchPlan(
  batchSize: number,
  rules: BatchRules = "arrete_1978",
  isDestructive = false,
): BatchPlan {
  const rows = BATCH_PLAN_ROWS.filter(
    (row) =>
      row.source.startsWith(R87_2004) === (rules === "r87_2004") &&
      row.rule.startsWith("destructive") === isDestructive &&
      holds(batchSize, row.batch_from, row.batch_to),
  );
  const [defective] = rows;
  const forMean = rows.find((row) => row.mean_factor !== "");
  if (defective === undefined || forMean === undefined) {
    throw new RangeError("these rules have no plan for such a batch");
  }
  return {
    sample_size: whole(defective.sample_size) ?? batchSize,
    accept_at_most: whole(defective.accept_at_most),
    reject_at_least: whole(defective.reject_at_least),
    second_cumulative_size: whole(defective.second_cumulative_size),
    second_accept_at_most: whole(defective.second_accept_at_most),
    second_reject_at_least: whole(defective.second_reject_at_least),
    mean_sample_size: whole(forMean.sample_size) ?? batchSize,
    mean_factor: parseDecimal(forMean.mean_factor),
    cited: planCited(defective, forMean),
  };
}

function mavRow(labelG: Decimal, column: MavColumn): MavRow {
  if (labelG.compare(ZERO) <= 0) throw new RangeError("a label says more than 0");
  const label = column === "g" ? labelG : fromBase(labelG, "lb", MASS_PLACES);
  const row = MAV_ROWS.find((each) => {
    const end = column === "g" ? each.label_up_to_g : each.label_up_to_lb;
    return end === "" || label.compare(parseDecimal(end)) <= 0;
  });
  if (row === undefined) throw new Error("the last band has no end");
  return row;
}

function mavOf(row: MavRow, labelG: Decimal, column: MavColumn): Decimal {
  if (row.percent_of_label !== "") {
    return product(product(labelG, parseDecimal(row.percent_of_label)), PERCENT);
  }
  if (column === "g") return parseDecimal(row.mav_g);
  return inBase(parseDecimal(column === "lb" ? row.mav_lb : row.mav_oz), column);
}

/** The largest of 1, 2, 5 times a power of ten that is not above x; x is above 0. */
function stepBelow(x: Decimal): Decimal {
  let power = ONE;
  while (power.compare(x) > 0) power = product(power, TENTH);
  while (product(power, TEN).compare(x) <= 0) power = product(power, TEN);
  const step = STEPS.map((each) => product(each, power)).find((each) => each.compare(x) <= 0);
  return step ?? power;
}

function roundedUp(x: Decimal, places: number): Decimal {
  const near = rounded(x, places);
  return near.compare(x) >= 0 ? near : total([near, new Decimal(1n, places)]);
}

function planCited(defective: BatchPlanRow, forMean: BatchPlanRow): Cited[] {
  const cited = [defective, forMean].map(({ source, basis, note }) => {
    return { what: "batch_plan", source, basis, note };
  });
  return defective.source === forMean.source && defective.note === forMean.note
    ? cited.slice(0, 1)
    : cited;
}

function holds(size: number, first: string, last: string): boolean {
  return Number(first) <= size && (last === "" || size <= Number(last));
}

function whole(text: string): number | null {
  return text === "" ? null : Number(text);
}

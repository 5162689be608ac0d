/**
 * Which side of the acid line a food lies on, and how long acidified vegetables are held for a
 * 5-log reduction, as published.
 *
 * pH 4.1 to 4.6 is read from the table of Food Protection Trends 2014, for the whole degree
 * Fahrenheit at or below the reading. Below pH 4.1 only the model of 2018 is known. Both rest on a
 * pH that has come to equilibrium.
 */

import { exponential } from "./elementary.ts";
import type { Cited } from "./limits.ts";
import { asDouble, type Decimal, ONE, parseDecimal, ZERO } from "./numbers.ts";
import { FIVE_LOG_ROWS, type FiveLogRow } from "./tables/bench.ts";
import { fahrenheit } from "./temperature.ts";

/** Minutes at 160 degF and degrees Fahrenheit for a tenth of them. */
interface Model {
  readonly minutes: number;
  readonly z: number;
}

// 21 CFR 114.3 and 114.80(a)(2), read.
const ACID_PH_MAX = parseDecimal("4.6");
const WATER_ACTIVITY_MAX = parseDecimal("0.85");
const METER_ABOVE_PH = parseDecimal("4.0");
const PH_END = parseDecimal("14");
const ACID_LINE: Cited = {
  what: "acid_line",
  source: "21 CFR 114.3: equilibrium pH 4.6 or below; low-acid only above water activity 0.85",
  basis: "read",
  note: "",
};
const METER: Cited = {
  what: "ph_method",
  source: "21 CFR 114.80(a)(2): above pH 4.0 a potentiometric method",
  basis: "read",
  note: "",
};
const REFERENCE_F = 160;
const TABLE_PH = { least: parseDecimal("4.1"), most: parseDecimal("4.6") };
const TABLE_MODEL: Model = { minutes: 5.6, z: 16.7 }; // Food Protection Trends 2014 Table 4, read
const LOW_PH_MODEL: Model = { minutes: 1.2, z: 19.5 }; // Food Protection Trends 2018 p. 264, read
const LOW_PH: Cited = {
  what: "five_log_below_pH_4.1",
  source: "Food Protection Trends 2018 p. 264: F160 = 1.2 min, z = 19.5 F",
  basis: "read",
  note: "",
};

/**
 * On which side an equilibrium pH and a water activity lie. 4.6 is the legal edge and not a target.
 * `needs_meter`: no paper or dye counts at this pH.
 */
export interface AcidLine {
  readonly side: "acid" | "low_acid" | "low_water";
  readonly needs_meter: boolean;
  readonly cited: readonly Cited[];
  readonly caution: "acidified";
}

/**
 * Minutes at the whole degree Fahrenheit below a temperature: as published, null below pH 4.1, and
 * by the model. Never shown without its caution.
 */
export interface FiveLogHold {
  readonly temp_F: Decimal;
  readonly published_min: Decimal | null;
  readonly model_min: number;
  readonly cited: readonly Cited[];
  readonly caution: "acidified";
}

/**
 * `acid` at pH 4.6 or below, else `low_acid`, or `low_water` at a water activity of 0.85 or below.
 * An activity that nobody measured counts as above.
 *
 * Throws for a pH outside 0 to 14 and an activity outside 0 to 1.
 */
export function acidLine(ph: Decimal, waterActivity: Decimal | null): AcidLine {
  const activity = waterActivity ?? ONE;
  if (!liesWithin(ph, PH_END) || !liesWithin(activity, ONE)) {
    throw new RangeError("no such pH or water activity");
  }
  const side = activity.compare(WATER_ACTIVITY_MAX) <= 0 ? "low_water" : "low_acid";
  return {
    side: ph.compare(ACID_PH_MAX) <= 0 ? "acid" : side,
    needs_meter: ph.compare(METER_ABOVE_PH) > 0,
    cited: [ACID_LINE, METER],
    caution: "acidified",
  };
}

/**
 * The hold for a 5-log reduction at a temperature and an equilibrium pH.
 *
 * Throws below 141 and above 180 degF as printed, for a pH not above 0, and above pH 4.6, where it
 * is no acidified food.
 */
export function fiveLogHold(temperature: Decimal, unit: "degC" | "degF", ph: Decimal): FiveLogHold {
  if (ph.compare(ZERO) <= 0 || ph.compare(TABLE_PH.most) > 0) {
    throw new RangeError("an acidified food has a pH of at most 4.6");
  }
  const row = rowAt(unit === "degC" ? fahrenheit(temperature) : temperature);
  const isPrinted = ph.compare(TABLE_PH.least) >= 0;
  const { source, basis, note } = row;
  return {
    temp_F: parseDecimal(row.temp_F),
    published_min: isPrinted ? parseDecimal(row.published_5log_min) : null,
    model_min: modelled(row, isPrinted ? TABLE_MODEL : LOW_PH_MODEL),
    cited: [isPrinted ? { what: "five_log", source, basis, note } : LOW_PH],
    caution: "acidified",
  };
}

function liesWithin(x: Decimal, most: Decimal): boolean {
  return !x.isNegative() && x.compare(most) <= 0;
}

/** The printed degree at or below: the longer of the two times. */
function rowAt(inF: Decimal): FiveLogRow {
  const last = FIVE_LOG_ROWS[FIVE_LOG_ROWS.length - 1];
  const atOrBelow = FIVE_LOG_ROWS.filter((row) => parseDecimal(row.temp_F).compare(inF) <= 0);
  const row = atOrBelow[atOrBelow.length - 1];
  if (row === undefined || (row === last && inF.compare(parseDecimal(row.temp_F)) > 0)) {
    throw new RangeError("no time is published for this temperature");
  }
  return row;
}

/** minutes x 10^((160 - temp_F) / z). */
function modelled(row: FiveLogRow, model: Model): number {
  const away = REFERENCE_F - asDouble(parseDecimal(row.temp_F));
  return model.minutes * exponential((Math.LN10 * away) / model.z);
}

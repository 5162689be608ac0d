/**
 * A time-temperature log: whole seconds and thousandths of a degree, so that 10 000 rows are
 * sorted, judged and drawn at once and a limit that is met exactly is met.
 */

import { type Body, textIn } from "./bodies.ts";
import { type Decimal, parseDecimal, product, rounded, written } from "./numbers.ts";
import { fahrenheit } from "./temperature.ts";

export type HeatUnit = "degC" | "degF";

export const ROWS_MAX = 10_000;
export const AT_S_MAX = 31_622_400; // a leap year: longer than anything is cooked or held
/** A step longer than this is not believed to be straight; own proposal, a habit and no rule. */
export const GAP_S = 600;
const THOUSAND = parseDecimal("1000");
const GRAMMAR = /^(-?)([0-9]{1,4})(?:\.([0-9]{1,3}))?$/;

/**
 * Readings in order of time, one for each second that was read, in thousandths of `unit`.
 *
 * Where one second has several readings that differ, `low` has the coldest, `high` the warmest and
 * `contradicted_s` the second: a judgement takes whichever is worse for it.
 */
export interface HeatLog {
  readonly unit: HeatUnit;
  readonly at_s: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly contradicted_s: readonly number[];
}

/** Two readings that follow one another further apart than is believed. */
export interface Gap {
  readonly from_s: number;
  readonly to_s: number;
}

/**
 * The two arrays of an entry as a log: seconds since it began, and what was read then.
 *
 * Rows may come in any order; the same reading twice counts once. Throws RangeError for arrays of
 * different length, no rows or more than 10 000, another unit, a time that is no whole second from
 * 0 to a year, and a temperature with more than 4 digits or 3 places.
 */
export function heatLog(
  atS: readonly number[],
  temperatures: readonly string[],
  unit: string,
): HeatLog {
  const count = atS.length;
  if (unit !== "degC" && unit !== "degF") {
    throw new RangeError(`${unit} is not the unit of a log`);
  }
  if (count !== temperatures.length || count === 0 || count > ROWS_MAX) {
    throw new RangeError("a log has 1 to 10 000 rows of a time and a temperature");
  }
  for (const second of atS) {
    if (!Number.isInteger(second) || second < 0 || second > AT_S_MAX) {
      throw new RangeError(`not a second of a log: ${second}`);
    }
  }
  return inOrder(atS, temperatures.map(inThousandths), unit);
}

/** The log in the body of a `heat_log`; null where its rows cannot be read. */
export function logIn(body: Body): HeatLog | null {
  const { at_s: atS, temperatures } = body;
  if (!Array.isArray(atS) || !Array.isArray(temperatures)) return null;
  if (!temperatures.every((each) => typeof each === "string")) return null;
  try {
    return heatLog(atS, temperatures, textIn(body, "unit") ?? "");
  } catch {
    return null; // it says so itself of a log that is none
  }
}

/**
 * A temperature as a whole number of thousandths. Throws RangeError for anything but up to 4
 * digits and 3 places.
 */
export function inThousandths(text: string): number {
  const found = GRAMMAR.exec(text);
  if (found === null) throw new RangeError(`not a temperature of a log: ${text}`);
  const [, sign, whole, places = ""] = found;
  const size = Number(whole) * 1000 + Number(places.padEnd(3, "0"));
  return sign && size !== 0 ? -size : size;
}

/**
 * A limit in degC as thousandths of the unit of a log: 57 degC are exactly 134.6 degF.
 * Throws RangeError where that is no whole number.
 */
export function limitInThousandths(celsius: Decimal, unit: string): number {
  const exact = product(unit === "degF" ? fahrenheit(celsius) : celsius, THOUSAND);
  const whole = rounded(exact, 0);
  if (whole.compare(exact) !== 0) throw new RangeError(`not a limit of a log: ${written(celsius)}`);
  return Number(whole.units);
}

/** Where readings that follow one another are more than so many seconds apart. */
export function gaps(log: HeatLog, longestS = GAP_S): Gap[] {
  const found: Gap[] = [];
  let before: number | null = null;
  for (const second of log.at_s) {
    if (before !== null && second - before > longestS) found.push({ from_s: before, to_s: second });
    before = second;
  }
  return found;
}

/** The coldest and the warmest reading of a row in degrees, as doubles. */
export function degreesAt(log: HeatLog, row: number): readonly [number, number] {
  return [at(log.low, row) / 1000, at(log.high, row) / 1000];
}

/**
 * The rows a drawing of so many columns needs: of each column the first, coldest, warmest and
 * last, so that no peak is lost. Throws RangeError without a column.
 */
export function outline(log: HeatLog, columns: number): number[] {
  if (columns < 1) throw new RangeError("a drawing has at least one column");
  const firstS = at(log.at_s, 0);
  const spanS = Math.max(at(log.at_s, log.at_s.length - 1) - firstS, 1);
  const byColumn = new Map<number, number[]>();
  for (const [row, second] of log.at_s.entries()) {
    const column = Math.min(Math.floor(((second - firstS) * columns) / spanS), columns - 1);
    const rows = byColumn.get(column);
    if (rows === undefined) byColumn.set(column, [row]);
    else rows.push(row);
  }
  return [...byColumn.values()].flatMap((rows) => {
    const coldest = rows.reduce((best, row) => (at(log.low, row) < at(log.low, best) ? row : best));
    const warmest = rows.reduce((best, row) =>
      at(log.high, row) > at(log.high, best) ? row : best,
    );
    const shown = new Set([at(rows, 0), coldest, warmest, at(rows, rows.length - 1)]);
    return [...shown].sort((a, b) => a - b);
  });
}

function inOrder(atS: readonly number[], read: readonly number[], unit: HeatUnit): HeatLog {
  const seconds: number[] = [];
  const low: number[] = [];
  const high: number[] = [];
  const contradicted: number[] = [];
  const rows = atS.map((_, row) => row).sort((a, b) => at(atS, a) - at(atS, b));
  for (const row of rows) {
    const [second, value, last] = [at(atS, row), at(read, row), seconds.length - 1];
    if (seconds[last] === second) {
      low[last] = Math.min(at(low, last), value);
      high[last] = Math.max(at(high, last), value);
    } else {
      seconds.push(second);
      low.push(value);
      high.push(value);
    }
  }
  for (const [row, second] of seconds.entries()) {
    if (low[row] !== high[row]) contradicted.push(second);
  }
  return { unit, at_s: seconds, low, high, contradicted_s: contradicted };
}

/** A number of an array by its place; a place that is not there is a defect. */
function at(numbers: readonly number[], place: number): number {
  const found = numbers[place];
  if (found === undefined) throw new Error("a log has no such row");
  return found;
}

/**
 * A logger's CSV text read as a time-temperature log: columns, headings, times and readings.
 *
 * What cannot be read is a refusal with the key of one sentence and the row it is in; a row without
 * a reading is left out and named. Nothing is guessed where two answers fit: the person is asked.
 */

import { AT_S_MAX, ROWS_MAX } from "./heat_logs.ts";
import { cellsOf, delimiterOf, heatOf, numberOf } from "./logger_cells.ts";
import { fits, isDayKnown, type Moment, momentOf, together, writtenTime } from "./logger_times.ts";
import { parseDecimal, product, rounded } from "./numbers.ts";

export type TimeUnit = "s" | "min" | "h";

export const GOT_CHARS_MAX = 80;
export const TEXT_CHARS_MAX = 4_000_000; // ten times what 10 000 rows of a logger need
const SECONDS_PER: Readonly<Record<TimeUnit, string>> = { s: "1", min: "60", h: "3600" };
const NO_READING = /^(?:|-+|n\/?a|nan|null|none|err(?:or)?|open)$/i;
const TIME_LABEL = /time|min|sec|hour|elapsed|zeit|hora|heure|[([]s[)\]]/i;
const HEAT_LABEL = /temp|[°º]|celsius|fahrenheit|probe|core|\bdeg/i;
const OTHER_LABEL = /humid|\brh\b|%|dew|^(?:#|no\.?|nr\.?|n|id|row|index|record|sample|count)$/i;
const UNIT_LABELS: readonly (readonly [string, RegExp])[] = [
  ["degC", /[°º] ?c\b|\bc\b|celsius|deg ?c\b/i],
  ["degF", /[°º] ?f\b|\bf\b|fahrenheit|deg ?f\b/i],
];
const TIME_UNITS: readonly (readonly [TimeUnit, RegExp])[] = [
  ["h", /\b(?:h|hrs?|hours?)\b/i],
  ["s", /\b(?:s|secs?|seconds?)\b/i],
  ["min", /\b(?:min|mins|minutes?)\b/i],
];

/** What a person said about a file where it does not say so itself; columns from 0. */
export interface Asked {
  readonly time_column?: number | null;
  readonly temperature_column?: number | null;
  readonly time_unit?: TimeUnit | null;
}

/**
 * Why a file cannot be read: the key of a sentence, the line of the file, what stood there.
 *
 * Keys: empty, no_columns, no_rows, which_column, too_many_rows, cells_missing, time, date_order,
 * temperature, unit_differs, too_long.
 */
export interface Unread {
  readonly key: string;
  readonly row: number;
  readonly got: string;
}

/**
 * The two arrays of an entry, in the order of the file, seconds from the earliest row on.
 *
 * `unit` is null where the file does not say it. `begins` is the time of the first reading, local
 * unless `is_utc` (the file has offsets), null where the day is not certain. `time_unit` is "clock"
 * for times of day, else the unit of the numbers, assumed where nothing said so.
 */
export interface LoggerLog {
  readonly at_s: readonly number[];
  readonly temperatures: readonly string[];
  readonly unit: string | null;
  readonly begins: string | null;
  readonly is_utc: boolean;
  readonly time_unit: string;
  readonly is_time_unit_assumed: boolean;
  readonly time_column: number;
  readonly temperature_column: number;
  readonly left_out: readonly number[];
}

interface Row {
  readonly number: number;
  readonly cells: readonly string[];
}

/**
 * Where the log begins in the table, and which columns hold it; `date` stands before a clock of its
 * own column.
 */
interface Columns {
  readonly first: number;
  readonly date: number | null;
  readonly time: number;
  readonly temperature: number;
  readonly labels: readonly string[];
}

/**
 * The log in a CSV text, or why there is none to be read.
 *
 * Delimiter: tabulator, semicolon, bar or comma, the first that half of the lines have. Lines
 * before the first row of a time and a number are its heading. A row whose temperature is empty or
 * dashes is left out; anything else that is no number is refused.
 */
export function loggerLog(text: string, asked: Asked = {}): LoggerLog | Unread {
  if (text.length > TEXT_CHARS_MAX) return unread("too_many_rows", 1, `${text.length}`);
  const clean = text.replace(/^\ufeff/, "").replace(/[\u00a0\u202f]/g, " ");
  const filled = clean
    .split(/\r\n|\n|\r/)
    .map((line, place) => ({ number: place + 1, line }))
    .filter(({ line }) => /[^ \t]/.test(line));
  const top = filled[0];
  if (top === undefined) return unread("empty", 1, "");
  const delimiter = delimiterOf(filled.map(({ line }) => line));
  if (delimiter === null) return unread("no_columns", top.number, top.line);
  const table = filled.map(({ number, line }) => ({ number, cells: cellsOf(line, delimiter) }));
  const columns = columnsOf(table, asked);
  if ("key" in columns) return columns;
  const rows = table.slice(columns.first);
  const over = rows[ROWS_MAX];
  if (over !== undefined) return unread("too_many_rows", over.number, `${rows.length}`);
  return readRows(rows, columns, asked.time_unit ?? null);
}

function readRows(
  rows: readonly Row[],
  columns: Columns,
  timeUnit: TimeUnit | null,
): LoggerLog | Unread {
  let unit = firstFitting(UNIT_LABELS, columns.labels[columns.temperature] ?? "");
  const temperatures: string[] = [];
  const kept: Row[] = [];
  const leftOut: number[] = [];
  for (const row of rows) {
    const cell = row.cells[columns.temperature];
    if (cell === undefined || row.cells[columns.time] === undefined) {
      return unread("cells_missing", row.number, row.cells.join(" "));
    }
    if (NO_READING.test(cell)) {
      leftOut.push(row.number);
      continue;
    }
    const read = heatOf(cell);
    if (read === null) return unread("temperature", row.number, cell);
    if (read.unit !== null && unit !== null && unit !== read.unit) {
      return unread("unit_differs", row.number, cell);
    }
    unit = read.unit ?? unit;
    temperatures.push(read.text);
    kept.push(row);
  }
  const times = timesOf(kept, columns, timeUnit);
  if ("key" in times) return times;
  const { time: time_column, temperature: temperature_column } = columns;
  const read = { temperatures, unit, left_out: leftOut };
  return { ...times, ...read, time_column, temperature_column };
}

type Times = Pick<LoggerLog, "at_s" | "begins" | "is_utc" | "time_unit" | "is_time_unit_assumed">;

function timesOf(kept: readonly Row[], columns: Columns, asked: TimeUnit | null): Times | Unread {
  const texts = kept.map((row) => timeText(row, columns));
  const first = texts[0];
  if (first === undefined) return unread("no_rows", 1, "");
  if (momentOf(first) !== null) return momentsOf(kept, texts);
  const said = asked ?? firstFitting(TIME_UNITS, columns.labels[columns.time] ?? "");
  const seconds: number[] = [];
  for (const [place, row] of kept.entries()) {
    const text = texts[place] ?? "";
    const number = numberOf(text);
    if (number === null) return unread("time", row.number, text);
    const exact = product(parseDecimal(number), parseDecimal(SECONDS_PER[said ?? "min"]));
    seconds.push(Number(rounded(exact, 0).units));
  }
  const atS = fromFirst(kept, seconds);
  if ("key" in atS) return atS;
  const isAssumed = said === null;
  const unit = { time_unit: said ?? "min", is_time_unit_assumed: isAssumed };
  return { at_s: atS, begins: null, is_utc: false, ...unit };
}

function momentsOf(kept: readonly Row[], texts: readonly string[]): Times | Unread {
  const moments: Moment[] = [];
  for (const [place, row] of kept.entries()) {
    const text = texts[place] ?? "";
    const moment = momentOf(text);
    if (moment === null || !fits(moment, moments[0] ?? moment)) {
      return unread("time", row.number, text);
    }
    moments.push(moment);
  }
  const seconds = together(moments);
  if (seconds === null) return unread("date_order", kept[0]?.number ?? 1, texts[0] ?? "");
  const atS = fromFirst(kept, seconds);
  if ("key" in atS) return atS;
  const begins = isDayKnown(moments) ? writtenTime(least(seconds)) : null;
  const is_utc = moments[0]?.offset_min != null;
  return { at_s: atS, begins, is_utc, time_unit: "clock", is_time_unit_assumed: false };
}

function fromFirst(kept: readonly Row[], seconds: readonly number[]): number[] | Unread {
  const first = least(seconds);
  const atS = seconds.map((second) => second - first);
  const long = kept.find((_, place) => (atS[place] ?? 0) > AT_S_MAX);
  return long === undefined ? atS : unread("too_long", long.number, long.cells.join(" "));
}

function timeText({ cells }: Row, { date, time }: Columns): string {
  return date === null ? (cells[time] ?? "") : `${cells[date]} ${cells[time]}`;
}

function columnsOf(table: readonly Row[], asked: Asked): Columns | Unread {
  const begun = table.findIndex((_, place) => beginsLog(table, place));
  const [top, start] = [table[0], table[begun]];
  if (top === undefined || start === undefined) {
    return unread("no_rows", top?.number ?? 1, top?.cells.join(" ") ?? "");
  }
  const { cells } = start;
  const first = withUnreadRows(table, begun);
  const head = table[first - 1]?.cells ?? [];
  const labels = head.length === cells.length ? head : cells.map(() => "");
  const numeric = [...cells.keys()].filter((n) => numberOf(cells[n] ?? "") !== null);
  const { date, time } = timeColumns({ cells, labels, numeric }, asked.time_column ?? null);
  const others = numeric.filter((n) => n !== time);
  const temperature = asked.temperature_column ?? heatColumn(labels, others);
  const isThere = time !== null && cells[time] !== undefined;
  if (!isThere || temperature === null || cells[temperature] === undefined) {
    return unread("which_column", table[Math.max(first - 1, 0)]?.number ?? 1, labels.join(" | "));
  }
  return { first, date, time, temperature, labels };
}

/**
 * A row with a time and a number, and the row after it is as wide; so a line of settings with two
 * numbers does not begin a log.
 */
function beginsLog(table: readonly Row[], place: number): boolean {
  const cells = table[place]?.cells ?? [];
  const numbers = cells.filter((cell) => numberOf(cell) !== null).length;
  const moments = cells.filter((cell) => momentOf(cell) !== null).length;
  const after = table[place + 1]?.cells ?? cells;
  return numbers >= 1 && numbers + moments >= 2 && after.length === cells.length;
}

/**
 * Rows just above that have a time but no number belong to the log and not to its heading: they are
 * left out or refused by name, never passed over.
 */
function withUnreadRows(table: readonly Row[], begun: number): number {
  const cells = table[begun]?.cells ?? [];
  const timed = cells.findIndex(saysTime);
  let first = begun;
  while (first > 0) {
    const above = table[first - 1]?.cells ?? [];
    if (above.length !== cells.length || !saysTime(above[timed] ?? "")) break;
    first -= 1;
  }
  return first;
}

function saysTime(cell: string): boolean {
  return momentOf(cell) !== null || numberOf(cell) !== null;
}

/** The column of days, where clocks have one of their own, and the column of times. */
function timeColumns(
  row: {
    readonly cells: readonly string[];
    readonly labels: readonly string[];
    readonly numeric: readonly number[];
  },
  asked: number | null,
): { readonly date: number | null; readonly time: number | null } {
  if (asked !== null) return { date: null, time: asked };
  const moments = row.cells
    .map((cell, place) => ({ place, moment: momentOf(cell) }))
    .filter(({ moment }) => moment !== null);
  const [first, after] = moments;
  if (first !== undefined) {
    const isApart = first.moment?.second === null && after !== undefined;
    if (isApart && after.moment?.day === null) return { date: first.place, time: after.place };
    return { date: null, time: first.place };
  }
  const named = row.numeric.filter((n) => TIME_LABEL.test(row.labels[n] ?? ""));
  if (named.length === 1) return { date: null, time: named[0] ?? null };
  return { date: null, time: row.numeric.length === 2 ? (row.numeric[0] ?? null) : null };
}

function heatColumn(labels: readonly string[], numeric: readonly number[]): number | null {
  const named = numeric.filter((n) => HEAT_LABEL.test(labels[n] ?? ""));
  const others = numeric.filter((n) => !OTHER_LABEL.test(labels[n] ?? ""));
  return [numeric, named, others].find((fitting) => fitting.length === 1)?.[0] ?? null;
}

function firstFitting<Name extends string>(
  patterns: readonly (readonly [Name, RegExp])[],
  label: string,
): Name | null {
  return patterns.find(([, pattern]) => pattern.test(label))?.[0] ?? null;
}

function least(seconds: readonly number[]): number {
  return seconds.reduce((low, second) => Math.min(low, second), Infinity);
}

function unread(key: string, row: number, got: string): Unread {
  return { key, row, got: [...got].slice(0, GOT_CHARS_MAX).join("") };
}

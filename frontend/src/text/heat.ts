/** Words of the screens of time-temperature logs: what is asked of them, how rows come. */
import { durationWords, type HeatSaid, heatSentence, reasonWords } from "./heat_results.ts";
import { heatVerdictWord, RULES } from "./heat_rules.ts";
import { amountWords, countWords, figure } from "./numbers.ts";

export const HEAT = {
  where: "Heat and cold",
  title: "Time and temperature",
  bench: "Keys for the log",
  not_here: "This batch is not on this phone yet.",
  no_log: "This log is not on this phone.",
  batch: "The whole batch",
  asked: "What it is judged by",
  set_by: "Who set the limit?",
  set_by_hint: "The tested recipe, the local code, a process authority.",
  reference: "Reference",
  t_ref: "Reference temperature",
  z: "z, degrees for ten times as much",
  wanted: "Minutes wanted at the reference",
  wanted_hint: "As whoever set it wrote it. Blank: only the sum is told.",
  unit: "Read in",
  thermometer: "Thermometer or logger",
  no_thermometer: "none of these",
  thermometer_is: (name: string, state: string) => `${name}, ${state}`,
  how: "How the rows come",
  every: "Ask every so many minutes",
  go_on: "Go on",
  start_timer: "Start the timer",
  choose_rule: "Choose what it is judged by",
  say_set_by: "Say who set the limit",
  say_reference: "Type the reference",
  say_how: "Choose how the rows come",
  say_every: "Say how often to ask",
  say_unit: "Say degrees C or F",
  rows_first: "No row yet",
  begins_later: "Say when it began: not later than now",
  say_action: "Say what was done about it",
  keep_row: (at: string, shown: string) => `Keep ${at}, ${shown}`,
  save: (rows: number) => `Save ${countWords(rows, "row")}`,
  rows: "Rows",
  minutes: "Minutes from the start",
  temperature: "Temperature",
  take_last: "take out",
  none_yet: "none yet",
  last_rows: (words: string) => `last: ${words}`,
  paste: "Paste the rows here",
  paste_hint: "One row a line: a time, then a temperature. Minutes, clocks or dates.",
  choose_file: "The logger's file",
  file_hint: "CSV or text, up to 10 000 rows. It stays on this phone until it is saved.",
  reading: "Reading the rows\u2026",
  too_large: "This file is larger than any log. Choose the logger's CSV file.",
  columns: "Columns",
  time_column: "Times stand in",
  heat_column: "Temperatures stand in",
  guess: "as the file says",
  column: (number: number, label: string, first: string) =>
    `${number}${label === "" ? "" : ` ${label}`}${first === "" ? "" : `, as ${first}`}`,
  time_unit: "Times are in",
  time_units: { s: "seconds", min: "minutes", h: "hours" },
  assumed: "No unit of time stands there. Say which it is.",
  began: "When it began",
  began_on: "On",
  began_clock: "At",
  began_hint: "The file says no day. Say when the first row was read.",
  actions: "What was done about it?",
  result: "What it came to",
  limits_by: "set by",
  kept: "How it was kept",
  so_far: (word: string) => `So far: ${word.toLowerCase()}`,
  to_temperature: "Now the temperature",
  say_minutes: "Now the minutes",
  by: "Kept by",
  done: "What was done",
  correct: "Correct it",
  void_it: "Void it",
  kept_rows: "Rows kept so far",
  change_row: "Change",
  take_out_row: "Take out",
  reason: "Why is it corrected?",
  say_reason: "Say why it is corrected",
  list: (at: string, shown: string) => `${at}: ${shown}`,
  timer: {
    began: (clock: string) => `Running since ${clock}.`,
    gone: (minutes: string) => `${minutes} gone.`,
    next: (clock: string) => `Next reading at ${clock}.`,
    now: "Read the temperature now.",
    late: (minutes: string) => `Read it now. It was due ${minutes} ago; it is kept as read now.`,
  },
};

/** What a log may be judged by, in words; "none" only keeps it. */
export const RULE_OPTIONS: readonly { value: string; word: string }[] = [
  { value: "", word: "Choose" },
  ...Object.entries(RULES).map(([value, word]) => ({ value, word })),
  { value: "none", word: "Nothing, only keep it" },
];

export const REFERENCE_OPTIONS: readonly { value: string; word: string }[] = [
  { value: "", word: "Choose" },
  { value: "f0", word: "F0, 121.1 \u00b0C, z 10 \u00b0C" },
  { value: "f0_250_f", word: "F0, 250 \u00b0F, z 10 \u00b0C" },
  { value: "acidified_from_4_1", word: "Acidified, pH 4.1 to 4.6, 160 \u00b0F, z 16.7 \u00b0F" },
  { value: "acidified_below_4_1", word: "Acidified, below pH 4.1, 160 \u00b0F, z 19.5 \u00b0F" },
  { value: "beer", word: "Units at 60 \u00b0C, z 7 \u00b0C" },
  { value: "beer_1_393", word: "Units at 60 \u00b0C, 1.393 a degree" },
  { value: "acid_foods", word: "Acid foods, 93.3 \u00b0C, z 8.9 \u00b0C" },
  { value: "tomato_beverages", word: "Tomato drinks, 80 \u00b0C, z 10 \u00b0C" },
  { value: "pickle_quality", word: "Pickle quality, 73.9 \u00b0C, z 22.4 \u00b0C" },
  { value: "own", word: "Another, as it was set" },
];

/** Published figures by name, for those that are recalled. */
export const CITED: Readonly<Record<string, string>> = {
  acid_foods: "the reference of acid foods",
};

export const HOW_OPTIONS = [
  { value: "typed", word: "Type them" },
  { value: "pasted", word: "Paste text" },
  { value: "file", word: "A logger's file" },
  { value: "timer", word: "Timer here" },
] as const;

/** How rows came, as a saved log says it. */
export function howWord(came_by: string | null): string {
  const words: Readonly<Record<string, string>> = {
    typed: "typed",
    pasted: "pasted",
    file: "from a logger's file",
    timer: "with the timer",
  };
  return words[came_by ?? ""] ?? "";
}

/** What two moments of a rule are called: from, and until; none where it has none. */
export const MOMENTS: Readonly<Record<string, readonly [string, string | null]>> = {
  ambient_cooling: ["Preparation ended at minute", null],
  received_cooling: ["Received at minute", null],
  time_4_h: ["Taken out at minute", "Used up at minute"],
  time_6_h: ["Taken out at minute", "Used up at minute"],
};

const UNREAD: Readonly<Record<string, string>> = {
  empty: "There is nothing in it. Choose another.",
  no_columns: "No columns are seen. Put a time and a temperature on each line.",
  no_rows: "No row has a time and a number. Put both on each line.",
  which_column: "Several columns fit. Choose which ones hold the times and the temperatures.",
  too_many_rows: "It holds more than 10 000 rows. Cut it in two.",
  cells_missing: "This line is shorter than the others. Complete it or take it out.",
  time: "This is no time like the others. Correct it or take it out.",
  date_order: "These dates do not fit together. Correct the first of them.",
  temperature: "This is no temperature. Correct it or take it out.",
  unit_differs: "The unit changes here. Keep one unit in a log.",
  too_long: "This is more than a year after the first row. Correct its date.",
};

/** Why a text cannot be read: where, what stood there, what to do. */
export function unreadWords({ key, row, got }: { key: string; row: number; got: string }): string {
  const where = got === "" ? "" : `Line ${figure(String(row))}, \u201c${got}\u201d: `;
  return where + (UNREAD[key] ?? key);
}

/** The same for the main key: what stands at fault, the rest is said beside the rows. */
export function unreadShort({ row, got }: { row: number; got: string }): string {
  return got === "" ? "The rows cannot be read" : `Line ${figure(String(row))} cannot be read`;
}

/** The whole plot in words. */
export function plotWords(judged: HeatSaid, unit: string | null): string {
  const { rows } = judged;
  if (rows === null) return reasonWords(["unreadable"]);
  const span = `${countWords(rows.row_count, "reading")} in ${durationWords(rows.span_s)}`;
  const course = `${amountWords(rows.lowest, unit)} at the lowest, ${amountWords(rows.highest, unit)} at the highest`;
  return `${span}, ${course}. ${heatVerdictWord(judged.verdict)} ${heatSentence(judged, unit)}`;
}

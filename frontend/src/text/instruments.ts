/** Words of instruments: their sheet, the guided check, what leaned on one that failed. */
import { amountWords, countWords, dayWords, signedWords } from "./numbers.ts";

export const INSTRUMENTS = {
  where: "Instruments",
  title: "What you measure with",
  bench: "Instruments",
  none: "No instrument is set up yet.",
  not_here: "This instrument is not on this phone. Find signal, then open it again.",
  set_up: "Change it",
  all: "All instruments",
  check: "Check it",
  nowhere: "goes from kitchen to kitchen",
  what: "What it is",
  place: "Stands in",
  shows: "Shows",
  step: "Smallest step",
  most: "Most it takes",
  holds: "Holds",
  good_for: "Good for",
  interval: "Verification interval e",
  accuracy_class: "Class",
  every: "Checked every",
  every_words: (days: number | null, uses: number | null) =>
    [days && countWords(days, "day"), uses && countWords(uses, "use")].filter(Boolean).join(" or "),
  last: (day: string) => `Last check ${dayWords(day, true)}`,
  undecided: (day: string) =>
    `The check of ${dayWords(day)} cannot tell, so the one before counts.`,
  never: "It was never checked. Check it before you rely on it.",
  due_on: (day: string) => `next by ${dayWords(day)}`,
  uses: (count: number, isLeast: boolean) =>
    `${isLeast ? "at least " : ""}${countWords(count, "reading")} since`,
  over_time: "Its checks over time",
  along: "The last check, step by step",
  control_chart: "Control chart",
  chart: (count: number, last: string) =>
    `Errors of ${countWords(count, "check")} between their limits. The last: ${last}`,
  limits: "How far it may be off",
  recalled: "recalled, not read",
  correction: "Correction in force",
  no_correction: "Readings are taken as they are shown.",
  not_applied: "Found, but not applied: chance explains it",
  not_known: "Found, but not applied: nothing tells how far it scatters",
  found_by: (day: string) => `found by the check of ${dayWords(day)}`,
  offset: (by: string, isLess: boolean) =>
    isLess ? `Take ${by} off every reading` : `Add ${by} to every reading`,
  line: (
    { by, isLess, at }: { by: string; isLess: boolean; at: string },
    { slope, grows, step }: { slope: string; grows: boolean; step: string },
  ) =>
    `${isLess ? "Take off" : "Add"} ${by} at ${at}, and ${slope} ${grows ? "more" : "less"} for each ${step} more`,
  formula: (height: string, slope: string, centre: string) =>
    `correction = ${height} ${slope} \u00d7 (reading \u2212 ${centre})`,
  range: (low: string, high: string) =>
    `Checked from ${low} to ${high}. A reading outside that is less sure.`,
  spread: (sd: string) => `One reading spreads by ${sd} (standard deviation of repeats).`,
  no_spread: "Its repeats all read the same.",
  put_right: "Put right on the spot.",
  checked: "checked",
  see_leaned: "What leaned on it",
};

/** Where in a check something was read. */
const PLACES_OF: Record<string, (at: string) => string> = {
  zero: () => "With an empty pan",
  return_to_zero: () => "Empty again",
  tare: () => "Tared",
  rising: (at) => `At ${at}`,
  falling: (at) => `At ${at}, coming down`,
  off_centre: (at) => `Off centre, ${at}`,
  repeats: (at) => `${at}, again and again`,
  ice: () => "In ice",
  boiling: () => "In boiling water",
  buffer: (at) => `In the buffer of ${at}`,
  comparison: (at) => `Against ${at}`,
  water: (at) => `Filled to ${at}`,
};

const HELP: Record<string, string> = {
  near_limit: "Repeat it, or take a mass that is known better.",
  no_limit: "No limit is known for it. Set one up.",
  no_division: "Its smallest step is not known. Set it up.",
  no_steps: "Nothing was read that tells anything.",
};

/** The verdict of a check in words. */
export const VERDICT_WORDS: Record<string, string> = {
  fit: "Fit",
  failed: "Failed",
  cannot_tell: "Cannot tell",
};

interface SaidOf {
  says: string;
  values: Readonly<Record<string, string>>;
  unit: string | null;
}

/** Where the step that decides was read. */
export function placeWords(sort: string, reference: string, unit: string | null): string {
  return (PLACES_OF[sort] ?? PLACES_OF.comparison)?.(amountWords(reference, unit)) ?? "";
}

/** What the check says, and what would help where it cannot tell. */
export function saidWords({ says, values, unit }: SaidOf): string {
  const why = says.split(".")[1] ?? "";
  const { sort, reference = "0", error, limit, guard_band } = values;
  if (sort === undefined || error === undefined) return HELP[why] ?? "";
  const off = `${placeWords(sort, reference, unit)} it is off by ${signedWords(error, unit)}`;
  const allowed = limit === undefined ? "" : `, \u00b1\u00a0${amountWords(limit, unit)} allowed`;
  const good =
    why !== "near_limit" || guard_band === undefined
      ? ""
      : ` The check itself is good to \u00b1\u00a0${amountWords(guard_band, unit)}.`;
  return `${off}${allowed}.${good} ${HELP[why] ?? ""}`.trim();
}

/** What a published figure is about, and how well it is known. */
export const CITED: Record<string, string> = {
  scale_error: "Errors of scales",
  scale_class: "Class of the scale by its steps",
  mass_tolerance: "Check weights",
  measure: "Household measures",
  cylinder: "Cylinders",
  boiling_point: "Boiling point",
  weather: "Air pressure of the day",
  division_tolerance: "Errors of scales",
};
export const BASIS: Record<string, string> = {
  read: "read in the source",
  "read-secondary": "quoted by a third party",
  memory: INSTRUMENTS.recalled,
  "common-practice": "own practice",
  disputed: "recollections differ, it decides nothing",
};

/** What leaned on an instrument that failed. */
export const LEANED = {
  title: "What leaned on it",
  where: (name: string) => `${name} failed`,
  calm: (from: string | null, to: string | null) =>
    [
      from === null ? "It never passed before." : `It last passed on ${dayWords(from)}.`,
      to === null ? "Nothing has put it right yet." : `It was put right on ${dayWords(to)}.`,
      "Work goes on; what was read in between is in question.",
    ].join(" "),
  held: "Held here",
  held_why: "From what this phone holds; others may have read more with it.",
  asking: "Asking the server for the whole record.",
  whole: "Whole record",
  whole_why: (clock: string) => `As the server knew it at ${clock}.`,
  adding_up: "The server is still adding up. The whole record comes as soon as it is done.",
  still: "The server is still adding up; there may be more.",
  coming: (come: string, all: string) => `${come} of ${all} readings have come.`,
  no_signal: "The server did not answer.",
  not_handed: "The check is not handed over yet.",
  not_found: "The server knows of no such failed check.",
  refused: "The server refused to tell.",
  cut_off: "The answer broke off: some readings are counted and not listed.",
  none: "No reading on this phone leaned on it.",
  none_at_all: "Nothing leaned on it.",
  sum: (readings: number, sheets: number) =>
    `${countWords(readings, "reading")} on ${countWords(sheets, "sheet")}.`,
  fill_of: (name: string) => `Fill check of ${name}`,
  packs: "packs weighed",
  drill_of: (name: string) => (name === "" ? "practice" : `practice of ${name}`),
  check_of: (name: string) => `check of ${name}`,
  elsewhere: "Also read with it",
  reads: (amount: string) => `read ${amount}`,
  mean_off: (amount: string) => `mean off by ${amount}`,
  moves: (by: string) => `would move by ${by}`,
  mean_moves: (by: string) => `the mean would move by ${by}`,
  unknown: "nobody can say how far it would move",
  changes: (name: string, was: string, now: string) =>
    `${name.replace(/\.$/, "")}: ${was} would be ${now}`,
  no_change: "no verdict would change",
  verdicts: { pass: "passed", fail: "failed", not_decided: "not decided" } as Record<
    string,
    string
  >,
  readings: (count: number) => countWords(count, "reading"),
  more: (count: number) => `Show ${countWords(count, "more", "more")}`,
  open_batch: "Open the batch",
  open_lot: "Open the lot",
  lots: "Lots",
  trace: "trace",
  got: "Who to call",
  got_none: "No business got any of it.",
  incomplete: "This list may lack somebody: not every link is known.",
  private: "Sold to private buyers",
  print: "Print this list",
  sheet: "Its sheet",
};

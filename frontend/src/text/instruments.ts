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
  offset: (by: string) => `Add ${by} to every reading`,
  line: (by: string, at: string, slope: string, step: string) =>
    `Add ${by} at ${at}, and ${slope} more for each ${step} more`,
  formula: (height: string, slope: string, centre: string) =>
    `correction = ${height} ${slope} \u00d7 (reading \u2212 ${centre})`,
  range: (low: string, high: string) =>
    `Checked from ${low} to ${high}. Beyond that it is stretched.`,
  spread: (sd: string) => `One reading spreads by ${sd} (standard deviation of repeats).`,
  no_spread: "Its repeats all read the same.",
  put_right: "Put right on the spot.",
  see_leaned: "What leaned on it",
};

/** Where in a check something was read. */
export const PLACES_OF: Record<string, (at: string) => string> = {
  zero: () => "With nothing on it",
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

/** The guided check. */
export const CHECK = {
  bench: "The reading",
  of: (at: number, all: number) => `${at} of ${all}`,
  which: "How thorough?",
  depths: {
    scale: {
      quick: "Quick: zero and one mass",
      full: "Full: zero, masses up and down, off centre, repeats",
    },
    thermometer: { quick: "Ice only", full: "Ice and boiling water" },
  } as Record<string, Record<string, string>>,
  which_why: "A full check also finds the correction and the spread.",
  known: {
    scale: "Which check weights?",
    ph_meter: "Which buffers?",
    refractometer: "What does it read?",
  } as Record<string, string>,
  known_else: "What is it compared with?",
  known_why: {
    scale: "Three from light to heavy serve best. Their class tells how far each is true.",
    ph_meter: "Type the pH the bottle gives at its temperature.",
  } as Record<string, string>,
  add_known: "Add one",
  value: "How much",
  tolerance: "True to \u00b1",
  class_of: "Class on it",
  no_class: "not marked",
  true_to: (tolerance: string) => `\u00b1\u00a0${tolerance}`,
  not_true: "how true is not known",
  choose_known: "Choose at least one",
  on_to: "Go on",
  skip: "Skip",
  last_one: "last",
  read_first: "Type what it shows",
  keep: (amount: string) => `Keep ${amount}`,
  start_looking: "It stands level",
  result: "What the check says",
  water: "The water",
  water_why: "Fill it an hour before, so that water and room are alike.",
  celsius: "Temperature of the water",
  on_scale: "Weighed on",
  no_scale: "A scale with known steps is needed first",
  water_first: "Type the temperature first",
  no_volume: "Say in set up how much it holds",
  altitude: "How high is the kitchen?",
  altitude_why: "Water boils cooler higher up: about 1 \u00b0C for each 300 m.",
  altitude_m: "Height above the sea",
  altitude_first: "Type the height first",
  correct: "Later readings",
  lines: {
    "": "leave as they are",
    least_squares: "correct by a line",
    offset: "correct by the same everywhere",
    two_point: "correct by a line through two points",
    none: "stop correcting",
  } as Record<string, string>,
  will: (words: string) => `${words}. It is put to every reading from now on.`,
  will_not: "Chance explains what was found, so no reading is changed.",
  will_not_known: "Nothing tells how far it scatters, so no reading is changed.",
  adjusted: "It was adjusted just now",
  adjusted_why: "What was found no longer holds; check it again.",
  when: "Made earlier?",
  when_why: "Leave the day empty if it was now.",
  day: "On the day",
  clock: "At the hour",
  save: "Save the check",
  save_failed: "Save: failed",
  nothing_read: "Read at least one step",
};

/** A stage: its title, and where to look. `at` is the load or value. */
interface StageWords {
  title: (at: string) => string;
  look: string;
  drawn: string;
}

export const STAGES: Record<string, StageWords> = {
  level: {
    title: () => "Set it level",
    look: "On a firm table, out of the draught. The bubble stands in the middle. Let it warm up.",
    drawn: "A scale on a firm table, its level bubble in the middle of the ring.",
  },
  zero: {
    title: () => "Empty pan",
    look: "Nothing on it. Set it to zero, wait, and read.",
    drawn: "An empty pan, the eye on the display.",
  },
  rising: {
    title: (at) => `Put on ${at}`,
    look: "In the middle of the pan. Wait until it stands still.",
    drawn: "A check weight in the middle of the pan, the eye on the display.",
  },
  falling: {
    title: (at) => `Back down to ${at}`,
    look: "Take off the heavier one, put this in the middle. Do not set to zero.",
    drawn: "A check weight in the middle of the pan, the eye on the display.",
  },
  return_to_zero: {
    title: () => "Empty again",
    look: "Take everything off. Do not set to zero, just read.",
    drawn: "An empty pan, the eye on the display.",
  },
  off_centre: {
    title: (at) => `${at} off centre`,
    look: "Half way to the edge, once on each side.",
    drawn: "The pan from above with a place on each side; the load stands on the full one.",
  },
  repeats: {
    title: (at) => `${at}, five times`,
    look: "Lift it off and put it back in the middle each time. Read each time.",
    drawn: "A check weight lifted off the pan and put back.",
  },
  tare: {
    title: () => "The empty vessel",
    look: "Dry, on the scale. Read it, or set to zero and type 0.",
    drawn: "An empty vessel on a scale, the eye on the display.",
  },
  water: {
    title: () => "Filled with water",
    look: "Eye level with the mark. The lowest point of the curved surface lies on it. Dry the outside, weigh it.",
    drawn: "A vessel of water; the eye is level with the lowest point of its curved surface.",
  },
  spoon: {
    title: () => "A level spoon of water",
    look: "Draw a straight edge over the rim, then pour it into a cup on the scale.",
    drawn: "A spoon of water with a straight edge drawn over its rim.",
  },
  ice: {
    title: () => "In ice and water",
    look: "Crushed ice with water between. Stir. The tip in the middle, not on the glass. Wait a minute.",
    drawn: "A glass of ice and water, the tip of a thermometer in the middle.",
  },
  boiling: {
    title: () => "In boiling water",
    look: "A rolling boil. The tip in the water, not on the bottom. Mind the steam.",
    drawn: "A pot of boiling water, the tip of a thermometer clear of the bottom.",
  },
  buffer: {
    title: (at) => `Buffer of ${at}`,
    look: "Fresh from the bottle. Rinse the tip, dab it, wait until it stands still.",
    drawn: "A bottle of buffer poured into a beaker with the tip of the meter in it.",
  },
  comparison: {
    title: (at) => `Against ${at}`,
    look: "Read it where the known value is.",
    drawn: "The instrument beside the known one.",
  },
};
export const CORNER_WORDS: Record<string, string> = {
  front: "at the front",
  right: "at the right",
  back: "at the back",
  left: "at the left",
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

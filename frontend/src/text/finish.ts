/** Words of finishing a batch, of its balance and its page. */
import { dayWords } from "./numbers.ts";

export const FINISH = {
  bench: "Keys for what came out",
  title: "What came out",
  good: "Good packs",
  good_mass: "Good amount",
  rejected: "Rejected",
  rejected_why: "Why were they rejected?",
  residue: "Left in the pot",
  sample: "Samples taken",
  spilled: "Spilled",
  breakage: "Broken",
  losses: "Where the rest went",
  blank_hint: "Leave blank what was not measured. Blank is not nought.",
  life_sort: "Kind of date",
  on: "On",
  no_life: "no date",
  lot_named: (code: string) => `This becomes lot ${code}.`,
  finish: (words: string) => `Finish, ${words}`,
  good_first: "Say how much came out",
  balance: "Where it went",
  not_here: "This batch is not on this phone yet.",
  already: "This batch is finished. Correct it on its page.",
  open_page: "The whole batch",
  packs: (count: string, word: string) => `${count} ${word}`,
};

export const BALANCE = {
  says: (put: string, out: string, lost: string) =>
    `${put} in; ${out} in good packs; ${lost} unaccounted`,
  good: "good",
  rejected: "rejected",
  residue: "left in the pot",
  samples: "samples",
  steam: "steam",
  unaccounted: "unaccounted",
  more_out: "more out than in",
  more_out_check: (amount: string) => `${amount} more out than in. Check the bowl weights first.`,
  yield: "Recovery",
  of_theory: "Of what the recipe promises",
  rejects: "Rejects",
  edible: "Edible after preparation",
  good_out: "In good packs",
  kettle_in: "Into the kettle",
  kettle_out: "Out of the kettle",
  theory: "Promised by the recipe",
  prepared: "As prepared",
  as_bought: "As bought",
  filled: "In packs, rejects included",
  share_of: (part: string, whole: string) =>
    `100 \u00d7 ${part.toLowerCase()} / ${whole.toLowerCase()}`,
  rejects_by: "100 \u00d7 rejected packs / all packs",
  steam_by: "into the kettle \u2212 out of the kettle",
  rest_by: "out of the kettle \u2212 packs \u2212 pot \u2212 samples",
  one: "1, standard uncertainty of the scales",
  no_kettle: "Weigh what is in the kettle to see where it went.",
  percent: (value: string | null) => (value === null ? "not computed" : `${value}\u00a0%`),
};

export const BATCH = {
  yields: "The yields of this recipe",
  corrected_from: (read: string) => `corrected, ${read} read`,
  leans_on: (count: string, where: string) => `${count} on it: ${where}.`,
  would_change: (name: string, was: string, now: string) => `${name}: ${was} would be ${now}.`,
  no_change: "No verdict would change.",
  see_leaned: "What else leaned on it",
  bench: "Next",
  where: "Batch",
  version_by: (on: string) => `started ${dayWords(on, true)} by`,
  makes: (amount: string) => `to make ${amount}`,
  lines: "Weighed in",
  steps: "Steps",
  out: "What came out",
  lost: "Lost",
  findings: "To look at",
  balance: "Where it went",
  not_done: "not done",
  done: "done",
  by: "by",
  again: "Read again",
  never: "never happened",
  chosen: (reason: string) => `chosen of two: ${reason}`,
  until_chosen: (amount: string) => `${amount} counts until one is chosen.`,
  next: {
    lay_out: "Lay out",
    weigh_in: (name: string) => `Weigh in ${name}`,
    step: "Next step",
    finish: "Finish the batch",
  },
  label: "Label",
  trace: "Trace",
  weigh: "Weigh in",
  start: "Start a batch",
  batches: "Batches",
  under_way: "Under way",
  finished: "Finished",
  none: "No batch yet. Start one.",
  finished_on: (on: string) => `finished ${dayWords(on)}`,
  lines_done: (done: string, all: string) => `${done} of ${all} weighed in`,
  not_here: "This batch is not on this phone yet.",
  all_batches: "All batches",
  rejected: (count: string) => `${count} rejected`,
  from_phone: "This phone holds every entry and added them up.",
  from_server: "As the server last sent it.",
  from_both: "As the server last sent it, with what waits here on top.",
};

const LOST: Record<string, string> = {
  spoiled: "spoiled",
  trim: "peel and trim",
  residue: "left in the pot",
  spilled: "spilled",
  breakage: "broken",
  sample: "sample",
  expired: "past its date",
  waste: "wasted",
  other: "other",
};

/** The word of a loss reason. */
export function lossWord(reason: string | null): string {
  return LOST[reason ?? "other"] ?? reason ?? "";
}

const FOUND: Record<string, string> = {
  held: "It is on hold and waits for a decision.",
  outside: "Outside its limits.",
  cannot_tell: "The instrument could not tell.",
  step_outside: "Outside its limit.",
  step_cannot_tell: "The instrument could not tell.",
  instrument_failed: "Its instrument failed a check.",
  not_started: "Entries came, but not the start of this batch.",
  two_starts: "This batch was started twice.",
  two_corrections: "Two corrections of one entry disagree.",
  more_out_than_in: "More came out than went in. Check the bowl weights first.",
  unaccounted: "More is unaccounted than the scales explain.",
  unit: "A unit does not fit its line; it is not counted in.",
};

/** A finding as one sentence. */
export function findingWords(what: string): string {
  return FOUND[what] ?? what.replaceAll("_", " ");
}

export const CORRECT_BATCH = {
  bench: "Keys for the correction",
  where: "Correct",
  stands: "As it stands",
  shown: "It showed",
  tare: "The bowl",
  counted: "Counted",
  amount: "Amount",
  rejected: "Rejected",
  instrument: "Instrument",
  no_instrument: "none",
  reason: "Why?",
  reason_hint: "One sentence. The old value stays readable.",
  was: (value: string) => `was ${value}`,
  save: "Save the correction",
  reason_first: "Say why first",
  nothing_changed: "Change something first",
  number_first: "Type the number first",
  never_key: "Void it",
  not_here: "This entry is not on this phone.",
  batch: "The whole batch",
};

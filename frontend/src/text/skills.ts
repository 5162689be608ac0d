/** Words of practice: the drill, a reader's sheet, the class. */
import { amountWords, countWords, figure, ordinal, unitWord } from "./numbers.ts";

export const SORT_WORDS: Record<string, string> = {
  dial: "Dials",
  surface: "Curved surfaces",
  spoon: "Spoons and cups",
};

export const TECHNIQUE_WORDS: Record<string, string> = {
  level_surface: "Put it on a level surface",
  eye_level: "Brought the eye level with it",
  lowest_point: "Read the lowest point",
  needle_on_zero: "Saw the needle on zero first",
  waited_until_steady: "Waited until it was steady",
  tared_the_bowl: "Tared the bowl",
  levelled_with_a_straight_edge: "Levelled with a straight edge",
  spooned_not_scooped: "Spooned in, did not scoop",
  wrote_it_at_once: "Wrote it down at once",
};

const ADVICE: Record<string, string> = {
  dial: "Face the dial squarely; count the marks from the numeral below.",
  surface: "Bend down to it and read the lowest point, not the rim of the curve.",
  spoon: "Judge by the rim: lay a straight edge across in your mind.",
};

const ASKS: Record<string, string> = {
  dial: "Where does the needle stand?",
  cylinder: "Where is the surface lowest?",
  spoon: "How full is this spoon?",
  cup: "How full is this cup?",
};

export const DRILL = {
  where: "Practice",
  title: "A drill",
  bench: "Keys for the drill",
  calm: "About two minutes. It works without signal.",
  what: "Read four dials, four curved surfaces and four spoons or cups. Then weigh one thing five times and tick what you did.",
  who_sees: "You and the coordinators see it. Nobody else does.",
  how_fine: "Read as finely as you can, between the marks too.",
  begin: "Start the drill",
  go_on: "Go on with it",
  afresh: "Begin a new one",
  at_of: (at: number, all: number) => `${figure(String(at))} of ${figure(String(all))}`,
  progress: (done: number, all: number) => `${done} of ${all} done`,
  asks: (shape: string) => ASKS[shape] ?? "",
  each_mark: (division: string, unit: string) => `Each mark is ${amountWords(division, unit)}.`,
  level_is: (holds: string) => `Level, 100 %, is ${amountWords(holds, "mL")}. Heaped is more.`,
  type_first: "Type what you read",
  ends_at: (low: string, high: string) => `It goes from ${low} to ${high}: read again`,
  keep: (amount: string) => `Keep ${amount}`,
  keep_again: (amount: string, turn: number) => `Keep ${amount}, ${ordinal(turn)} time`,
  in_words: "Tell me in words",
  as_drawn: "Back to the drawing alone",
  read_in_words: "Read from words, not from the drawing.",
  weigh: "Weigh one thing five times",
  weigh_how: "Any steady thing. Lift it off each time, wait for zero, put it back.",
  turn_of: (turn: number) => `Time ${turn} of 5: it shows`,
  before: (shown: readonly string[], unit: string) =>
    `So far ${shown.map((each) => figure(each)).join(", ")} ${unitWord(unit)}`,
  which_scale: "Which scale do you use?",
  no_scale: "No scale here: leave the weighing out",
  none: "No scale is set up.",
  ticks: "Tick what you did",
  ticks_why: "Only what you did today. An empty one is no fault: it is what to try next.",
  save: "Save the drill",
};

/** What is to be read, for one who hears the screen: the scale, not the answer. */
export const DRAWN = {
  dial: (low: string, high: string, division: string, numbered: string) =>
    `A dial from ${low} to ${high}, a mark every ${division}, a numeral every ${numbered}. Its needle is to be read. Press “${DRILL.in_words}” to be told where it stands.`,
  cylinder: (division: string, numbered: string) =>
    `A part of a measuring cylinder, a mark every ${division}, a numeral every ${numbered}. The lowest point of the surface is to be read. Press “${DRILL.in_words}” to be told where it stands.`,
  measure: (shape: string, holds: string) =>
    `A ${shape} cut through the middle; it holds ${holds} when level. How full it is, is to be judged. Press “${DRILL.in_words}” to be told how high it stands.`,
  marks_past: (numeral: string, marks: number, tenths: number) =>
    `Past ${numeral} by ${countWords(marks, "mark")} and ${countWords(tenths, "tenth")} of one.`,
  below_rim: (parts: string) => `${parts} hundredths of the measure are missing below the rim.`,
  at_rim: "It ends level with the rim.",
  above_rim: (parts: string) =>
    `Full to the rim, and ${parts} hundredths of the measure in a mound on top.`,
};

const IMPROVED: Record<string, string> = {
  bias: "nearer the truth on average",
  spread: "closer together",
  within_half_percent: "more within half a division",
  repeatability: "Weighing repeats better",
  technique: "New",
};

export const SKILLS = {
  drill_done: "read",
  weighed_time: (number: number) => `Weighed, ${ordinal(number)} time`,
  where: "Practice",
  class_title: "The class",
  bench: "Next",
  start: "Start a drill",
  see_class: "See the class",
  not_here: "No drill yet. The first one shows where you stand.",
  not_theirs: "This phone holds no drill of this member.",
  nobody: "Nobody has done a drill yet.",
  no_drill: "no drill yet",
  last: (day: string) => `Last drill, ${day}`,
  true_average: "True on average",
  high: (bias: string) => `Reads ${bias} divisions high`,
  low: (bias: string) => `Reads ${bias} divisions low`,
  close: "close together",
  scattered: "scattered",
  and: (one: string, other: string) => `${one}, and ${other}.`,
  but: (one: string, other: string) => `${one}, but ${other}.`,
  advice: (sort: string) => ADVICE[sort] ?? "",
  keep_on: "Keep doing it this way.",
  rings: (bias: string, spread: string, count: number) =>
    `Rings around the true value with ${countWords(count, "reading")} on them. Mean ${bias} divisions from it, spread ${spread} divisions.`,
  in_divisions: "in divisions of what was read",
  figures: "By what was read",
  bias: "bias",
  spread: "spread",
  within_half: "within ½ division",
  sort: "read",
  all: "All",
  percent: (bias: string) => `${bias} %`,
  over_time: "Over time",
  over_time_why: "Mean of each drill with its spread; the line is the truth.",
  weighing: "Weighing one thing",
  repeats: "repeatability s",
  mean: "mean",
  times: "times",
  improved: "What became better",
  improved_why: "Only steps larger than their own doubt are listed.",
  improved_first: "The next drill is compared with this one.",
  improved_none: "No step larger than its own doubt since the drill before.",
  improved_words: (what: string) => IMPROVED[what] ?? what,
  from_to: (before: string, now: string, unit: string) =>
    `${figure(before)} \u2192 ${amountWords(now, unit)}`,
  techniques: "What you do",
  techniques_theirs: "What was ticked last",
  readings: "Each reading of the last drill",
  was: "drawn",
  off: "off",
  done: "ticked",
  open: "not ticked",
  read: "read",
  notes: "Notes",
  drills: (count: number) => countWords(count, "drill"),
};

/** What the class says of one skill. */
export const CLASS = {
  bias: "bias",
  repeatability: "one person again",
  person_to_person: "person to person",
  intermediate: "both together",
  each: "Each member",
  differ: "people read differently",
  alike: "people differ no more than one person's readings do",
  set_to_zero: "people differ less than chance allows, so person to person stands at zero",
  no_doubt: "A mean is known",
  not_told: "too few readings tell how people differ",
  too_few: "too few",
  how: "In divisions, from the last drill of each; spreads are standard deviations. The line is the truth, the drop a mean, the whisker the spread named beside it. Readings are compared by an analysis of variance with people as the groups (GUM H.5): people differ where chance alone would do it less than once in twenty. Both together is what anybody here may read.",
  weighing: "Weighing one thing",
  weighing_why:
    "Repeatability of all who used that scale, pooled. Each weighed a thing of their own, so a bias cannot be told.",
};

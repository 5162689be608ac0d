/** Words of what is kept back: put on hold, decided about, used or sold all the same. */
export const HOLD = {
  where: "On hold",
  bench: "What to do about the hold",
  free: "Not on hold",
  free_why: "Nothing keeps it back.",
  held_lot: "Held. Do not use, sell or move it.",
  held_batch: "Held. Nothing of it is used, sold or moved.",
  with_batch: (batch: string) => `It is held with its batch ${batch}, and let go with it.`,
  since: "Held since",
  waits: "Nobody has decided yet.",
  decided: "A coordinator decided to keep it back.",
  released: "Released",
  see: "See the hold",
  put: "Put on hold",
  put_lot: "Put this lot on hold",
  put_batch: "Put this batch on hold",
  because: "Why",
  becauses: [
    { value: "check", word: "a check" },
    { value: "complaint", word: "a complaint" },
    { value: "recalled", word: "a recall" },
    { value: "other", word: "something else" },
  ] as const,
  reason: "In your own words; it stays with the record.",
  because_first: "Say why first",
  reason_first: "Say it in words first",
  only_coordinator: "Only a coordinator can release it.",
  decision: "The decision",
  decisions: [
    { value: "release", word: "release it" },
    { value: "hold", word: "keep it back" },
  ] as const,
  decide_first: "Choose the decision first",
  decide: { release: "Release it", hold: "Keep it back" },
  causes: "What keeps it back",
  logged: "What was logged",
  history: "Decided",
  no_longer: "corrected or taken back since",
  decided_so: { release: "released", hold: "kept back" } as Readonly<Record<string, string>>,
  not_here: "This phone does not hold it.",
};

/** What a cause of a hold is, in a few words. */
export const CAUSES: Readonly<Record<string, string>> = {
  outside: "A check was outside its limit",
  cannot_tell: "A check could not tell",
  fail: "A log of temperature failed",
  not_proven: "A log of temperature proves nothing",
  hold: "Put on hold",
  decision: "Kept back by decision",
  complaint: "a complaint",
  recalled: "a recall",
  check: "a check",
  other: "something else",
};

export const DESPITE = {
  says: (lot: string, words: string) => `${lot} is ${words}.`,
  label: "Why is it used or sold all the same?",
  hint: "It is not proposed. The reason stays with the entry.",
  first: "Say why all the same first",
  do: (words: string) => `${words} all the same`,
  another: "Take another lot",
};

const AGAINST: Readonly<Record<string, string>> = {
  held: "held",
  recalled: "recalled",
  expired: "past its date",
};

/** "held", "recalled and past its date". */
export function againstWords(against: readonly string[]): string {
  return against.map((each) => AGAINST[each] ?? each).join(" and ");
}

/** Words of histories and of correcting: nothing is erased, and each correction says why. */
import { countWords, dayWords } from "./numbers.ts";

export const HISTORY = {
  title: "What happened",
  partial: "This phone does not hold every entry. It shows what it has.",
  correct: "Correct",
  two_count: (value: string) => `Two corrections disagree. Until one is chosen ${value} counts.`,
};

/** How far off the clock was of the phone an entry was handed over from (R33). */
export const CLOCK_OFF = {
  off: (by: string, isBehind: boolean) =>
    `The clock of that phone was ${by} ${isBehind ? "behind" : "ahead"}.`,
  review: "Look whether its date is right.",
  days: (days: number, hours: number) =>
    `${countWords(days, "day")}${hours === 0 ? "" : ` ${hours}\u00a0h`}`,
  hours: (hours: number, minutes: number) =>
    [hours === 0 ? "" : `${hours}\u00a0h`, minutes === 0 ? "" : `${minutes}\u00a0min`]
      .filter(Boolean)
      .join(" "),
};

/** A void among two corrections that disagree. */
export const DID_NOT_HAPPEN = "it did not happen";

/** "10 Nov 9:40". */
export function momentWords(day: string, clock: string): string {
  return `${dayWords(day)} ${clock}`;
}

export const CORRECT = {
  where: "Correct an entry",
  bench: "Save the correction",
  was: (words: string) => `It says ${words}.`,
  amount: "What it should say",
  reason: "Why",
  reason_hint: "The old value stays readable beside it.",
  choose: "What is wrong",
  wrong_amount: "The amount",
  never: "It did not happen",
  save_amount: (amount: string) => `Correct to ${amount}`,
  save_void: "Void it",
  type_reason: "Write why first",
  type_amount: "Type what it should say",
  not_held: "This phone does not hold the entry. Find signal first.",
  wrong_number: "A number or the note",
  wrong_moment: "The day or time",
  on_day: "On the day",
  at_clock: "At",
  moment_why: "It is voided where it stands and written anew at this moment.",
  moments: {
    no_day: "Say on which day",
    same: "Nothing is changed yet",
    to_come: "That is still to come",
  },
  numbers: "Its numbers",
  numbers_why: "Rub a reading out that was none.",
  note: "Its note",
  nothing: "Nothing is changed yet",
  save: "Save the correction",
  not_a_number: (name: string) => `${name} wants a number`,
};

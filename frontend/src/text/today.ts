/** Words of today. */
import { amountWords } from "./numbers.ts";

const ORDINALS = ["1st", "2nd", "3rd"];

export const TODAY = {
  bench: "Next",
  no_signal: "No signal. Everything is kept on this phone.",
  loading: "Still taking in what the others wrote.",
  sign_in: "Sign in again to hand over. Writing goes on.",
  update: "A new version is here.",
  take_update: "Take it in now",
  day: (opens: string, closes: string, now: string) =>
    `The day from ${opens} to ${closes} o'clock. It is ${now}.`,
  empty: "Nothing is waiting. Start from the shelf.",
  shelf: "Start something",
  next: "Next: ",
  of: (at: string, all: string) => `, ${at} of ${all}`,
  nth: (count: number) => ORDINALS[count - 1] ?? `${count}th`,
  lay_out: (done: string, all: string) => `${done} of ${all} laid out`,
  step: "a step",
  finish: "finish it",
  way: (at: string) => `Step ${at} of 4 of the batch`,
  started: "started",
  finished: "finished",
  late: (name: string, amount: string) => `Use ${amountWords(amount)} ${name}`,
  use_or_discard: (amount: string) => `Use ${amount} or discard`,
  past: (amount: string) => `${amount} past its date`,
  today: "today",
  open: "open",
  main: {
    lay_out: (name: string) => `Lay out ${name}`,
    weigh_in: (name: string) => `Weigh in ${name}`,
    step: (name: string) => `Next step of ${name}`,
    finish: (name: string) => `Finish ${name}`,
    start: "Start a batch",
    receive: "Receive something",
  },
  shelf_words: {
    receive: "Receive",
    start: "Batch",
    stall: "Stall",
    stock: "Stock",
    trace: "Trace",
    batches: "Records",
    set_up: "Set up",
    sun: "Sun",
  },
  here: "Where are you?",
  no_kitchen: "no kitchen chosen",
};

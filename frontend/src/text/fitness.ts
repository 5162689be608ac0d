/** Words of how far an instrument may be relied on; said wherever one is used. */
import { dayWords } from "./numbers.ts";

export const FITNESS = {
  fit: "fit",
  due: "check due",
  failed: "failed",
  not_checked: "not checked",
  failed_on: (name: string, day: string | null) =>
    day === null ? `${name} failed a check.` : `${name} failed its check of ${dayWords(day)}.`,
  would_move: (by: string) => `If the error it found counts, this moves by ${by}.`,
  corrected: (shown: string, value: string) => `${shown} read, corrected ${value}`,
  was_due: (name: string) => `${name} was due for a check.`,
  of_batch: "An instrument its batch was measured with failed a check.",
  of_batch_due: "An instrument its batch was measured with was due for a check.",
  batch_failed: "an instrument of it failed a check",
  batch_due: "an instrument was due for a check",
  scale_failed: "its scale failed a check",
  scale_due: "its scale was due for a check",
  line: "in question",
  weighed_on: (name: string) => `Its water was weighed on ${name}.`,
  beyond: "Outside what was checked: the corrected figure is less sure.",
};

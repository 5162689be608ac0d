/** Words of laying out. */

const SMALL_COUNTS = [
  "none",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
];

/** `Two still to lay out`. */
function still(count: number): string {
  const word = SMALL_COUNTS[count] ?? String(count);
  return `${word.charAt(0).toUpperCase()}${word.slice(1)} still to lay out`;
}

export const LAY_OUT = {
  lay_out: "Lay it out",
  where: "Lay out",
  bench: "Next",
  tube: (done: string, all: string) => `${done} of ${all} laid out`,
  done_of: (done: string, all: string) => `${done} of ${all}`,
  laid_out: "laid out",
  to_do: "to lay out",
  empties: "empties it",
  weigh_on: (name: string) => `weigh on ${name}`,
  no_scale: "no instrument here can tell",
  missing: (amount: string) => `${amount} missing`,
  no_lot: "none by the record",
  receive: "Receive",
  all_the_same: "is here",
  weigh_first: "Weigh in the first",
  still,
  lines: "Lines",
  not_here: "This batch is not on this phone yet.",
  all_batches: "All batches",
};

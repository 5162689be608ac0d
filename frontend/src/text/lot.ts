/** Words of the lot sheet: what it is, what happened to it, what to look at. */
import { countWords } from "./numbers.ts";

export const LOT = {
  where: "Lot",
  bench: "What to do with this lot",
  count: "Count this",
  move: "Move",
  loss: "Loss",
  top_up: "Pour together",
  weigh_packs: "Weigh packs",
  trace: "Trace",
  label: "Label",
  paid: "Price paid",
  close: "Close",
  more: "More",
  what: "What it is",
  here: "Where it stands",
  nowhere: "Nothing of it is left.",
  came: "Came from",
  made_on: "Made or received",
  source: "Source",
  their_lot: "Their lot mark",
  batch: "Batch",
  made: "Came in",
  sums: "Where it went",
  sold: "Sold",
  dispatched: "To businesses",
  used: "Used in batches",
  lost: "Lost",
  returned: "Came back",
  found: "Found by counting",
  findings: "To look at",
  settled: "looked at",
  notes: "Notes",
  not_held: "This phone does not hold this lot. Find it under Trace with signal.",
  refused: "Refused. It never came into the store.",
  from_server: "As the server added it up.",
};

/** What a finding means and what would help, in one sentence. */
export function findingWords(what: string, place: string): string {
  const words: Record<string, string> = {
    negative: `More went out at ${place} than came in. Count it there.`,
    no_maker: "Nobody recorded how this lot came. Look for the missing receipt or batch.",
    held: "It is on hold and waits for a decision.",
    two_makers: "Two entries say how this lot came. Void the wrong one.",
    unit: "One entry uses a unit of another kind and is not counted in. Correct its unit.",
    two_corrections: "Two corrections of one entry disagree. Choose one.",
    instrument_failed: "The scale its packs were weighed on failed a check. Weigh them again.",
    circle: "Corrections name each other in a circle. Correct the entry anew.",
  };
  return words[what] ?? `Somebody should look at this: ${what.replaceAll("_", " ")}.`;
}

/** What an entry did to the lot, before its amount. */
export const DID: Record<string, string> = {
  receipt: "received",
  output: "packed",
  topped_up: "poured together",
  weigh_in: "weighed in",
  loss: "lost",
  transfer: "moved",
  dispatch: "sent",
  sale: "sold",
  return: "came back",
  count: "counted",
  held: "put on hold",
  hold_decided: "hold decided",
  fill_checked: "packs weighed",
  note: "note",
  finding_settled: "looked at",
  price_paid: "price paid",
};

/** What a fill check came to. */
export const FILL_VERDICTS: Record<string, string> = {
  pass: "Filled as the label says.",
  fail: "Too little in the packs.",
  not_decided: "Not decided.",
};

/** Where or why, after the amount. */
export const SAID = {
  from: (name: string) => `from ${name}`,
  to: (name: string) => `to ${name}`,
  at: (name: string) => `at ${name}`,
  because: (reason: string) => `because ${reason.replaceAll("_", " ")}`,
  refused: (why: string) => `refused: ${why}`,
  packs_of: (packs: number, label: string) => `${countWords(packs, "pack")} of ${label}`,
  despite: (why: string) => `all the same, because: ${why}`,
};

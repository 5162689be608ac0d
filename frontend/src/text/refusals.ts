/** Words for what an entry refuses: the names of fields, and what to do when the phone is in trouble. */

const FIELDS: Record<string, string> = {
  action: "What was done",
  amount: "The amount",
  "amount.unit": "The unit",
  code: "The batch code",
  condition: "The condition",
  counted: "The count",
  currency: "The currency",
  document: "The delivery note",
  discount: "The discount",
  from: "What is poured together",
  "from.amount": "The amount",
  "from.lot": "The lot code",
  from_place: "The place it leaves",
  life: "The date",
  "life.length": "How long it keeps",
  "life.on": "The date",
  "life.sort": "The kind of date",
  lines: "The lines",
  "lines.above": "The tolerance above",
  "lines.amount": "The amount of a line",
  "lines.below": "The tolerance below",
  "lines.note": "The note of a line",
  "lines.soluble_percent": "The solids of a line",
  lot: "The lot code",
  lots: "What is laid out",
  "lots.amount": "The amount laid out",
  "lots.lot": "The lot code",
  makes: "What it makes",
  material: "The material",
  name: "The name",
  note: "The note",
  on: "The day",
  pack_net: "The amount in a pack",
  packs: "The number of packs",
  place: "The place",
  price: "The price",
  price_each: "The price",
  "reading.instrument": "The instrument",
  "reading.repeats": "A repeated reading",
  "reading.shown": "The reading",
  "reading.tare": "The tare",
  reason: "The reason",
  recipient: "The recipient",
  refused_why: "The reason",
  rejected: "The rejected packs",
  rejected_why: "The reason",
  says: "The note",
  source: "The source",
  steps: "The steps",
  "steps.caution": "The caution of a step",
  "steps.high": "The upper limit of a step",
  "steps.low": "The lower limit of a step",
  "steps.says": "What a step says",
  target_solids_percent: "The solids aimed at",
  their_lot: "Their lot mark",
  to_place: "The place it goes to",
};

/** The name a person knows a field by, also one in a correction; an unknown one keeps its own. */
export function fieldWords(field: string): string {
  const path = field.replace(/\[\d+\]/g, "").replace(/^body\./, "");
  return FIELDS[path] ?? FIELDS[path.replace(/\.(amount|unit)$/, "")] ?? field;
}

/** What to do when the phone could not keep an entry. What was typed stays typed. */
export const TROUBLE = {
  "trouble.storage_full": "This phone is full. Free some space, then save again.",
  "trouble.storage": "This phone could not write it down. Close other tabs, then save again.",
  "trouble.nobody": "Nobody is signed in on this phone. Sign in, then save again.",
};

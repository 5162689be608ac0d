/** Words for what an entry refuses: the names of fields, and what to do when the phone is in trouble. */

const FIELDS: Record<string, string> = {
  amount: "The amount",
  "amount.amount": "The amount",
  "amount.unit": "The unit",
  condition: "The condition",
  document: "The delivery note",
  discount: "The discount",
  from: "What is poured together",
  from_place: "The place it leaves",
  life: "The date",
  "life.on": "The date",
  "life.sort": "The kind of date",
  lot: "The lot code",
  material: "The material",
  name: "The name",
  note: "The note",
  place: "The place",
  price: "The price",
  price_each: "The price",
  reason: "The reason",
  recipient: "The recipient",
  refused_why: "The reason",
  source: "The source",
  their_lot: "Their lot mark",
  to_place: "The place it goes to",
};

/** The name a person knows a field by; an unknown one keeps its own. */
export function fieldWords(field: string): string {
  return FIELDS[field] ?? FIELDS[field.replace(/\[\d+\]/g, "")] ?? field;
}

/** What to do when the phone could not keep an entry. What was typed stays typed. */
export const TROUBLE = {
  "trouble.storage_full": "This phone is full. Free some space, then save again.",
  "trouble.storage": "This phone could not write it down. Close other tabs, then save again.",
  "trouble.nobody": "Nobody is signed in on this phone. Sign in, then save again.",
};

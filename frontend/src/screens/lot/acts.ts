/** What one can do with a lot in stock: what is typed, what is missing, the entry it becomes. */
import { difference, parseDecimal, plain } from "../../calc/numbers.ts";
import { earliest } from "../../calc/shelf_life.ts";
import { inBase } from "../../calc/units.ts";
import type { KindName } from "../../entries/kinds.ts";
import { typedNumber } from "../../parts/typing.ts";
import { DESPITE } from "../../text/holds.ts";
import { ACTS } from "../../text/stock.ts";
import { despitePart, lacksReason } from "../common/against.ts";
import type { Hindrance } from "../common/sentences.ts";

/** The last part of the path. */
export type Act = "count" | "move" | "loss" | "top-up";

/** Every field as it was typed; "" is not answered yet. */
export interface ActTyped {
  [field: string]: string;
  place: string;
  to_place: string;
  amount: string;
  unit: string;
  reason: string;
  note: string;
  other: string;
  other_amount: string;
  despite: string;
}

export const BLANK: ActTyped = {
  place: "",
  to_place: "",
  amount: "",
  unit: "",
  reason: "",
  note: "",
  other: "",
  other_amount: "",
  despite: "",
};

/** An act named by a path, or null. */
export function actOf(text: string | undefined): Act | null {
  const acts: readonly Act[] = ["count", "move", "loss", "top-up"];
  return acts.find((act) => act === text) ?? null;
}

/** The lots that are moved on or poured together, and must not be without a reason. */
export function lotsUsed(act: Act, typed: ActTyped, lot: string): string[] {
  if (act === "move") return [lot];
  return act === "top-up" ? [lot, typed.other].filter((each) => each !== "") : [];
}

/** The first open thing. A count of nothing is a count; nothing cannot be moved. */
export function missing(act: Act, typed: ActTyped, lot: string): Hindrance | null {
  const isNone = (text: string) => {
    const amount = typedNumber(text);
    return amount === null || (act !== "count" && parseDecimal(amount).isZero());
  };
  const open: [string, boolean, string][] = [
    ["place", typed.place === "", ACTS.choose_place],
    ["other", act === "top-up" && typed.other === "", ACTS.choose_lot],
    ["despite", lacksReason(lotsUsed(act, typed, lot), typed.despite), DESPITE.first],
    ["amount", isNone(typed.amount), act === "count" ? ACTS.type_count : ACTS.type_amount],
    ["other_amount", act === "top-up" && isNone(typed.other_amount), ACTS.type_amount],
    ["to_place", act === "move" && typed.to_place === "", ACTS.choose_to],
    ["reason", act === "loss" && typed.reason === "", ACTS.choose_reason],
  ];
  const first = open.find(([, isOpen]) => isOpen);
  return first === undefined ? null : { field: first[0], sentence: first[2] };
}

/** What the entry needs beside what was typed. */
export interface ActAbout {
  lot: string;
  material: string | null;
  isStall: boolean;
  newLot: string;
  lives: readonly ({ sort: string; on: string } | null)[];
}

/** The kind and body of the entry. */
export function entryOf(
  act: Act,
  typed: ActTyped,
  about: ActAbout,
): { kind: KindName; body: object } {
  const { lot } = about;
  const amount = { amount: typedNumber(typed.amount) ?? "", unit: typed.unit };
  const { place } = typed;
  if (act === "count") return { kind: "count", body: { lot, amount, place } };
  if (act === "move") {
    const despite = despitePart([lot], typed.despite);
    const body = { lot, amount, from_place: place, to_place: typed.to_place, ...despite };
    return { kind: "transfer", body };
  }
  if (act === "loss") {
    const stage = about.isStall ? "stall" : "store";
    const note = typed.note.trim() === "" ? {} : { note: typed.note.trim() };
    return { kind: "loss", body: { lot, place, amount, reason: typed.reason, stage, ...note } };
  }
  const other = { amount: typedNumber(typed.other_amount) ?? "", unit: typed.unit };
  const from = [
    { lot, amount },
    { lot: typed.other, amount: other },
  ];
  const life = earlierLife(about.lives);
  return {
    kind: "topped_up",
    body: {
      lot: about.newLot,
      material: about.material,
      place,
      from,
      ...despitePart(lotsUsed(act, typed, lot), typed.despite),
      ...(life === null ? {} : { life }),
    },
  };
}

/** What was poured together keeps no longer than the part that keeps least. */
export function earlierLife(
  lives: readonly ({ sort: string; on: string } | null)[],
): { sort: string; on: string } | null {
  const first = earliest(lives.map((life) => life?.on ?? null));
  return lives.find((life) => life?.on === first) ?? null;
}

/** A count against the record, in base units: how many more or fewer were seen. */
export function variance(
  typed: ActTyped,
  expected: string,
): { is: "same" | "less" | "more"; by: string } {
  const seen = inBase(parseDecimal(typedNumber(typed.amount) ?? "0"), typed.unit);
  const by = difference(seen, parseDecimal(expected));
  if (by.isZero()) return { is: "same", by: "0" };
  return { is: by.isNegative() ? "less" : "more", by: plain(by.abs()) };
}

/** Bringing goods to the stall and taking the rest back: one transfer, both legs. */
import { typedNumber } from "../../parts/typing.ts";
import type { LotInStock } from "../../state/stock.ts";
import { DESPITE } from "../../text/holds.ts";
import { BRING } from "../../text/stall.ts";
import { despitePart, lacksReason } from "../common/against.ts";
import type { Hindrance } from "../common/sentences.ts";

/** Every field as it was typed; "" is not answered yet. */
export interface BringTyped {
  [field: string]: string;
  way: string;
  other: string;
  lot: string;
  amount: string;
  despite: string;
}

export const BLANK: BringTyped = { way: "bring", other: "", lot: "", amount: "", despite: "" };

/** Taking back what should not have stood there needs no reason. */
export function asksWhy(typed: BringTyped): boolean {
  return typed.way === "bring";
}

/** The first open thing, or null. */
export function missing(typed: BringTyped): Hindrance | null {
  const amount = typedNumber(typed.amount);
  if (typed.other === "") return { field: "other", sentence: BRING.choose_place };
  if (typed.lot === "") return { field: "lot", sentence: BRING.choose_lot };
  if (asksWhy(typed) && lacksReason([typed.lot], typed.despite)) {
    return { field: "despite", sentence: DESPITE.first };
  }
  const isNone = amount === null || /^[0.]+$/.test(amount);
  return isNone ? { field: "amount", sentence: BRING.type_amount } : null;
}

/** The body of the transfer. */
export function transferOf(typed: BringTyped, stall: string, lot: LotInStock): object {
  const isBring = typed.way === "bring";
  return {
    lot: typed.lot,
    amount: { amount: typedNumber(typed.amount) ?? "", unit: lot.unit },
    from_place: isBring ? typed.other : stall,
    to_place: isBring ? stall : typed.other,
    ...despitePart(asksWhy(typed) ? [typed.lot] : [], typed.despite),
  };
}

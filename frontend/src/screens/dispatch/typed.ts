/** The form of a dispatch: what is typed, what is still missing, the entry it becomes. */
import { typedNumber } from "../../parts/typing.ts";
import { DESPITE } from "../../text/holds.ts";
import { DISPATCH } from "../../text/stall.ts";
import { despitePart, lacksReason } from "../common/against.ts";
import type { Hindrance } from "../common/sentences.ts";

/** Every field as it was typed; "" is not answered yet. */
export interface DispatchTyped {
  [field: string]: string;
  recipient: string;
  recipient_name: string;
  place: string;
  lot: string;
  amount: string;
  price: string;
  document: string;
  despite: string;
}

export const BLANK: DispatchTyped = {
  recipient: "",
  recipient_name: "",
  place: "",
  lot: "",
  amount: "",
  price: "",
  document: "",
  despite: "",
};

/** The first open thing, or null. */
export function missing(typed: DispatchTyped): Hindrance | null {
  const amount = typedNumber(typed.amount);
  const open: [string, boolean, string][] = [
    ["recipient", typed.recipient === "" && typed.recipient_name === "", DISPATCH.choose_recipient],
    ["place", typed.place === "", DISPATCH.choose_place],
    ["lot", typed.lot === "", DISPATCH.choose_lot],
    ["despite", lacksReason([typed.lot], typed.despite), DESPITE.first],
    ["amount", amount === null || /^[0.]+$/.test(amount), DISPATCH.type_amount],
  ];
  const first = open.find(([, isOpen]) => isOpen);
  return first === undefined ? null : { field: first[0], sentence: first[2] };
}

/** The body of the dispatch; its recipient is set up by now. */
export function dispatchOf(typed: DispatchTyped, unit: string): object {
  const price = typedNumber(typed.price);
  const document = typed.document.trim();
  return {
    lot: typed.lot,
    amount: { amount: typedNumber(typed.amount) ?? "", unit },
    place: typed.place,
    recipient: typed.recipient,
    ...(price === null ? {} : { price_each: price }),
    ...(document === "" ? {} : { document }),
    ...despitePart([typed.lot], typed.despite),
  };
}

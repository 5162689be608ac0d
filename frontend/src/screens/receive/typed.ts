/** The form of a receipt: what is typed, what is still missing, the entry it becomes. */
import { parseDecimal, plain, total } from "../../calc/numbers.ts";
import { dimensionOf, inBase } from "../../calc/units.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Body } from "../../state/types.ts";
import { RECEIVE } from "../../text/receive.ts";
import type { Hindrance } from "../common/sentences.ts";

/** Every field as it was typed; "" is not answered yet. */
export interface ReceiveTyped {
  [field: string]: string | boolean;
  source: string;
  source_name: string;
  material: string;
  their_lot: string;
  has_no_mark: boolean;
  amount: string;
  unit: string;
  place: string;
  condition: string;
  refused_why: string;
  life_sort: string;
  life_on: string;
  price: string;
}

export const BLANK: ReceiveTyped = {
  source: "",
  source_name: "",
  material: "",
  their_lot: "",
  has_no_mark: false,
  amount: "",
  unit: "",
  place: "",
  condition: "fit",
  refused_why: "",
  life_sort: "",
  life_on: "",
  price: "",
};

/** The first open thing, or null when all that is needed is there. */
export function missing(typed: ReceiveTyped): Hindrance | null {
  const amount = typedNumber(typed.amount);
  const isAmount = amount !== null && !parseDecimal(amount).isZero();
  const open: [string, boolean, string][] = [
    ["source", typed.source === "" && typed.source_name === "", RECEIVE.choose_source],
    ["material", typed.material === "", RECEIVE.choose_material],
    ["amount", !isAmount, RECEIVE.choose_amount],
    ["place", typed.place === "", RECEIVE.choose_place],
    [
      "refused_why",
      typed.condition === "refused" && typed.refused_why.trim() === "",
      RECEIVE.choose_why,
    ],
  ];
  const first = open.find(([, isOpen]) => isOpen);
  return first === undefined ? null : { field: first[0], sentence: first[2] };
}

/** The body of the receipt; its source is set up by now. */
export function receiptOf(typed: ReceiveTyped, lot: string): Body {
  const { condition } = typed;
  return {
    lot,
    material: typed.material,
    source: typed.source,
    amount: { amount: typedNumber(typed.amount) ?? "", unit: typed.unit },
    place: typed.place,
    condition,
    ...(typed.has_no_mark || typed.their_lot.trim() === ""
      ? {}
      : { their_lot: typed.their_lot.trim() }),
    ...(condition === "refused" ? { refused_why: typed.refused_why.trim() } : {}),
    ...(typed.life_on === "" ? {} : { life: { sort: typed.life_sort, on: typed.life_on } }),
  };
}

/** What the store holds now and with this receipt, in the base unit of the material. */
export function storeLevels(
  typed: ReceiveTyped,
  held: readonly string[],
): { before: string; after: string } {
  const before = total(held.map(parseDecimal));
  const amount = typedNumber(typed.amount);
  const adds = amount !== null && typed.unit !== "" && dimensionOf(typed.unit) !== "temperature";
  const isFit = typed.condition === "fit";
  const added = adds && isFit ? inBase(parseDecimal(amount), typed.unit) : parseDecimal("0");
  return { before: plain(before), after: plain(total([before, added])) };
}

/** The numbers of a fill check that can be corrected. */
import { type Body, itemsIn, quantityIn, textIn, textsIn } from "../../calc/bodies.ts";
import { FILL } from "../../text/fill.ts";
import { listIn, type NumberIn } from "../common/numbers_in.ts";

/** The packs first, in the order they were weighed; then what the label says. */
export function fillNumbers(body: Body): NumberIn[] {
  const unit = textIn(body, "unit");
  const label = itemsIn(body, "label").flatMap((each, at) => {
    const amount = quantityIn(each, "amount");
    const path = `label.${at}.amount.amount`;
    return amount === null ? [] : [one(path, FILL.declared, amount.amount, amount.unit)];
  });
  return [
    ...listIn(textsIn(body, "gross"), { path: "gross", unit, name: FILL.pack }),
    ...listIn(textsIn(body, "tares"), { path: "tares", unit, name: FILL.empty_pack }),
    ...label,
    ...(typeof body.lot_size === "number"
      ? [one("lot_size", FILL.lot_size, String(body.lot_size), null)]
      : []),
  ];
}

function one(path: string, name: string, value: string, unit: string | null): NumberIn {
  return { path, name, value, unit, isOptional: false };
}

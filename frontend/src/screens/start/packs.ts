/** The sizes of pack of a version: which lines belong to which, how many packs there will be. */
import { decimalIn, itemsIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { packsOf } from "../../calc/formulas.ts";
import {
  type Decimal,
  difference,
  HUNDRED,
  ONE,
  parseDecimal,
  plain,
  ZERO,
} from "../../calc/numbers.ts";
import { ediblePortion } from "../../calc/recipes.ts";
import { converted, dimensionOf, isUnit } from "../../calc/units.ts";
import type { Body } from "../../state/types.ts";

const PLACES = 6;

/** One size a batch may be filled into. */
export interface PackSize {
  size: string;
  net: { amount: string; unit: string };
  word: string;
  packaging: string | null;
}

/** In the order of the recipe. */
export function packSizes(body: Body): PackSize[] {
  return itemsIn(body, "pack_sizes").flatMap((each) => {
    const net = quantityIn(each, "net");
    if (net === null) return [];
    return [
      {
        size: textIn(each, "size") ?? "",
        net,
        word: textIn(each, "word") ?? "",
        packaging: textIn(each, "packaging"),
      },
    ];
  });
}

/** The version without the packaging of other sizes; as it is where it knows no sizes. */
export function filledInto(body: Body, chosen: PackSize | null): Body {
  const others = packSizes(body)
    .filter(({ size }) => size !== chosen?.size)
    .map(({ packaging }) => packaging);
  const isOthers = (line: Body) => {
    const material = textIn(line, "material");
    return material !== null && material !== chosen?.packaging && others.includes(material);
  };
  if (chosen === null) return body;
  return { ...body, lines: itemsIn(body, "lines").filter((line) => !isOthers(line)) };
}

/** How much of what is made is expected to be lost. */
export function lossOf(body: Body): Decimal {
  return decimalIn(body, "loss_percent") ?? ZERO;
}

/** What is left of what is made after the expected loss; pieces that are left are whole. */
export function leftToFill(
  makes: { amount: string; unit: string },
  loss: Decimal,
): { amount: string; unit: string } {
  const amount = parseDecimal(makes.amount);
  const left =
    makes.unit === "pc"
      ? packsOf(amount, { net: ONE, loss_percent: loss })
      : ediblePortion(amount, difference(HUNDRED, loss), PLACES);
  return { amount: plain(left), unit: makes.unit };
}

/** What is in one pack, in the unit of what is made; null where one is a mass, one a volume. */
export function netIn(net: { amount: string; unit: string }, unit: string): Decimal | null {
  if (!isUnit(net.unit) || !isUnit(unit) || dimensionOf(net.unit) !== dimensionOf(unit))
    return null;
  const inUnit = converted(parseDecimal(net.amount), net.unit, unit, PLACES);
  return inUnit.isZero() ? null : inUnit;
}

/** Whole packs out of what is made, after the expected loss; null where that cannot be told. */
export function packsLeft(
  makes: { amount: string; unit: string },
  net: { amount: string; unit: string },
  loss: Decimal,
): Decimal | null {
  const each = netIn(net, makes.unit);
  if (each === null) return null;
  return packsOf(parseDecimal(makes.amount), { net: each, loss_percent: loss });
}

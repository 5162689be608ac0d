/** A recipe version made as large as wanted: live amounts, what is at hand, what limits. */
import { decimalIn, inBaseUnit, itemsIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { goodFactor } from "../../calc/formulas.ts";
import {
  type Decimal,
  ONE,
  parseDecimal,
  plain,
  product,
  rounded,
  total,
  ZERO,
} from "../../calc/numbers.ts";
import {
  asPurchased,
  ediblePortion,
  type Factor,
  factorShown,
  limiting,
  type Stocked,
  scaled,
  scaleFactor,
  wholeCount,
} from "../../calc/recipes.ts";
import { converted, dimensionOf, fromBase, isUnit } from "../../calc/units.ts";
import { lotsOf, type RecipeVersion } from "../../state/stock.ts";
import type { Body } from "../../state/types.ts";
import { bothSides, sharedAmounts, usablePercent } from "./formula.ts";
import { filledInto, lossOf, netIn, type PackSize, packsLeft } from "./packs.ts";

/** How a batch is scaled; the words of the wire. */
export type ScaledBy = "as_written" | "mass" | "packs" | "limiting";

const PLACES = 3; // enough for what a kitchen scale reads, in any unit
const MOST_PLACES = 6; // of a small amount of a large unit; no entry holds more
const FACTOR_PLACES = 2;
const LEAST = parseDecimal("0.1"); // below it fewer than two or three digits would stand

/** One line as it will be planned; `at_hand` and `short` in the unit of the line. */
export interface ScaledLine {
  line: string;
  material: string;
  amount: string;
  unit: string;
  at_hand: string | null;
  is_short: boolean;
  /** Of a prepared line what to lay out as bought, of one as bought what is left prepared. */
  other: { is: "to_lay_out" | "left"; amount: string } | null;
  /** The line as it goes into the batch. */
  body: Body;
}

/** The whole recipe at a factor. */
export interface Scaled {
  factor: string;
  makes: { amount: string; unit: string };
  packs: string | null;
  lines: ScaledLine[];
  /** The line that runs out first when all is used. */
  limits: string | null;
}

/** What the recipe makes as written, in packs where it says so. */
export function packsWritten(version: RecipeVersion): Decimal | null {
  const packs = version.body.packs;
  return typeof packs === "number" || typeof packs === "bigint"
    ? parseDecimal(String(packs))
    : null;
}

/** What is at hand of a line, in base units, against what it needs. */
function stockedLines(version: RecipeVersion): Stocked[] {
  return itemsIn(version.body, "lines").flatMap((line) => {
    const planned = quantityIn(line, "amount");
    const needed = planned === null ? null : inBaseUnit(parseDecimal(planned.amount), planned.unit);
    if (needed === null) return [];
    const lots = lotsOf(textIn(line, "material") ?? "").filter((lot) => lot.unit === needed.unit);
    const available = total([ZERO, ...lots.map((lot) => parseDecimal(lot.amount))]);
    return [
      {
        line: textIn(line, "line") ?? "",
        needed: needed.value,
        available,
        yield_percent: usablePercent(line),
      },
    ];
  });
}

/** The factor for what was asked; null while the number for it is not typed or makes no sense. */
export function factorFor(
  version: RecipeVersion,
  asked: {
    by: ScaledBy;
    typed: string | null;
    unit: string;
    packNet: Body | null;
    pack?: PackSize | null;
  },
): Factor | null {
  const makes = quantityIn(version.body, "makes");
  if (makes === null) return null;
  const base = parseDecimal(makes.amount);
  if (asked.by === "as_written") return scaleFactor(base, base);
  if (asked.by === "limiting") return limiting(stockedLines(version))?.factor ?? null;
  const wanted = asked.typed === null ? null : parseDecimal(asked.typed);
  if (wanted === null || wanted.isZero() || wanted.isNegative()) return null;
  const loss = lossOf(version.body);
  if (asked.by === "mass") return massFactor(wanted, asked.unit, { makes, loss });
  const packs = packsWritten(version);
  if (packs !== null && !asked.pack) return scaleFactor(wanted, packs);
  const net = asked.pack?.net ?? quantityIn({ net: asked.packNet }, "net");
  const each = net === null ? null : netIn(net, makes.unit);
  if (each === null) return null;
  return goodFactor(product(wanted, each), { makes: base, loss_percent: loss });
}

/** The factor that leaves so much that is good. */
function massFactor(
  wanted: Decimal,
  unit: string,
  recipe: { makes: { amount: string; unit: string }; loss: Decimal },
): Factor | null {
  const { makes, loss } = recipe;
  if (!isAlike(unit, makes.unit)) return null;
  const amount = converted(wanted, unit, makes.unit, MOST_PLACES);
  const base = parseDecimal(makes.amount);
  return amount.isZero() ? null : goodFactor(amount, { makes: base, loss_percent: loss });
}

function isAlike(one: string, other: string): boolean {
  return isUnit(one) && isUnit(other) && dimensionOf(one) === dimensionOf(other);
}

/**
 * The recipe at this factor. Pieces are made whole, upwards; from what limits, downwards. `pack` is
 * the size it is filled into, where the recipe knows sizes.
 */
export function scaledVersion(
  version: RecipeVersion,
  factor: Factor,
  by: ScaledBy,
  pack: PackSize | null = null,
): Scaled {
  const filled = { ...version, body: filledInto(version.body, pack) };
  const written = quantityIn(version.body, "makes");
  const makes = {
    amount: plain(scaledFinely(parseDecimal(written?.amount ?? "0"), factor)),
    unit: written?.unit ?? "g",
  };
  const shares = sharedAmounts(version.body, factor);
  const rule = by === "limiting" ? "down" : "up";
  return {
    factor: plain(fine((places) => factorShown(factor, places), FACTOR_PLACES)),
    makes,
    packs: packsScaled(version, { factor, makes, pack }),
    lines: itemsIn(filled.body, "lines").map((line) =>
      scaledLine(line, {
        factor,
        rule,
        share: shares.get(textIn(line, "line") ?? "") ?? null,
      }),
    ),
    limits: limiting(stockedLines(filled))?.line ?? null,
  };
}

function packsScaled(
  version: RecipeVersion,
  at: { factor: Factor; makes: { amount: string; unit: string }; pack: PackSize | null },
): string | null {
  if (at.pack !== null) {
    const left = packsLeft(at.makes, at.pack.net, lossOf(version.body));
    return left === null ? null : plain(left);
  }
  const packs = packsWritten(version);
  return packs === null ? null : plain(wholeCount(packs, at.factor, "down").count);
}

function scaledLine(
  line: Body,
  at: { factor: Factor; rule: "up" | "down"; share: Decimal | null },
): ScaledLine {
  const { factor, rule, share } = at;
  const planned = quantityIn(line, "amount") ?? { amount: "0", unit: "g" };
  const written = parseDecimal(planned.amount);
  const isPieces = planned.unit === "pc" && !written.isZero();
  const whole = isPieces ? wholeCount(written, factor, rule).count : null;
  const amount = whole ?? (share === null ? scaledFinely(written, factor) : finely(share));
  const limit = (name: string) => {
    const typed = decimalIn(line, name);
    return typed === null ? {} : { [name]: plain(scaledFinely(typed, factor)) };
  };
  const quantity = { amount: plain(amount), unit: planned.unit };
  const other = otherSide(line, amount);
  const needed = other?.is === "to_lay_out" ? parseDecimal(other.amount) : amount;
  const hand = atHand(textIn(line, "material") ?? "", planned.unit);
  return {
    line: textIn(line, "line") ?? "",
    material: textIn(line, "material") ?? "",
    ...quantity,
    at_hand: hand === null ? null : plain(hand),
    is_short: hand !== null && hand.compare(needed) < 0,
    other,
    body: { ...line, amount: quantity, ...limit("below"), ...limit("above") },
  };
}

/** What stands on the other side of a line's yield, in the unit of the line. */
function otherSide(line: Body, amount: Decimal): ScaledLine["other"] {
  const sides = bothSides(line);
  if (sides === null) return null;
  const { yield_percent, is_bought } = sides;
  const side = is_bought ? ediblePortion : asPurchased;
  const other = fine((places) => side(amount, yield_percent, places), PLACES);
  return { is: is_bought ? "left" : "to_lay_out", amount: plain(other) };
}

function finely(amount: Decimal): Decimal {
  return fine((places) => rounded(amount, places), PLACES);
}

function scaledFinely(amount: Decimal, factor: Factor): Decimal {
  return fine((places) => scaled(amount, factor, places), PLACES);
}

/** At the usual places, unless so little is left of it there that more are needed. */
function fine(at: (places: number) => Decimal, usual: number): Decimal {
  const usually = at(usual);
  return usually.abs().compare(LEAST) < 0 ? at(MOST_PLACES) : usually;
}

function atHand(material: string, unit: string): Decimal | null {
  const base = inBaseUnit(ONE, unit)?.unit;
  if (base === undefined) return null;
  const lots = lotsOf(material).filter((lot) => lot.unit === base);
  const standing = total([ZERO, ...lots.map((lot) => parseDecimal(lot.amount))]);
  return fromBase(standing, unit, PLACES);
}

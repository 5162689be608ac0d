/** A recipe version made as large as wanted: live amounts, what is at hand, what limits. */
import { decimalIn, inBaseUnit, itemsIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { type Decimal, ONE, parseDecimal, plain, total, ZERO } from "../../calc/numbers.ts";
import {
  type Factor,
  factorShown,
  limiting,
  packsFactor,
  type Stocked,
  scaled,
  scaleFactor,
  wholeCount,
} from "../../calc/recipes.ts";
import { converted, dimensionOf, fromBase, isUnit } from "../../calc/units.ts";
import { lotsOf, type RecipeVersion } from "../../state/stock.ts";
import type { Body } from "../../state/types.ts";

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
    return [{ line: textIn(line, "line") ?? "", needed: needed.value, available }];
  });
}

/** The factor for what was asked; null while the number for it is not typed or makes no sense. */
export function factorFor(
  version: RecipeVersion,
  asked: { by: ScaledBy; typed: string | null; unit: string; packNet: Body | null },
): Factor | null {
  const makes = quantityIn(version.body, "makes");
  if (makes === null) return null;
  const base = parseDecimal(makes.amount);
  if (asked.by === "as_written") return scaleFactor(base, base);
  if (asked.by === "limiting") return limiting(stockedLines(version))?.factor ?? null;
  const wanted = asked.typed === null ? null : parseDecimal(asked.typed);
  if (wanted === null || wanted.isZero() || wanted.isNegative()) return null;
  if (asked.by === "mass") return massFactor(wanted, asked.unit, makes);
  const packs = packsWritten(version);
  if (packs !== null) return scaleFactor(wanted, packs);
  const net = asked.packNet === null ? null : quantityIn({ net: asked.packNet }, "net");
  if (net === null || !isAlike(net.unit, makes.unit)) return null;
  const packNet = converted(parseDecimal(net.amount), net.unit, makes.unit, MOST_PLACES);
  return packsFactor(wanted, { pack_net: packNet, makes: base });
}

function isAlike(one: string, other: string): boolean {
  return isUnit(one) && isUnit(other) && dimensionOf(one) === dimensionOf(other);
}

function massFactor(
  wanted: Decimal,
  unit: string,
  makes: { amount: string; unit: string },
): Factor | null {
  if (!isAlike(unit, makes.unit)) return null;
  const amount = converted(wanted, unit, makes.unit, MOST_PLACES);
  return amount.isZero() ? null : scaleFactor(amount, parseDecimal(makes.amount));
}

/** The recipe at this factor. Pieces are made whole, upwards; from what limits, downwards. */
export function scaledVersion(version: RecipeVersion, factor: Factor, by: ScaledBy): Scaled {
  const makes = quantityIn(version.body, "makes");
  const packs = packsWritten(version);
  const rule = by === "limiting" ? "down" : "up";
  return {
    factor: plain(fine((places) => factorShown(factor, places), FACTOR_PLACES)),
    makes: {
      amount: plain(scaledFinely(parseDecimal(makes?.amount ?? "0"), factor)),
      unit: makes?.unit ?? "g",
    },
    packs: packs === null ? null : plain(wholeCount(packs, factor, "down").count),
    lines: itemsIn(version.body, "lines").map((line) => scaledLine(line, factor, rule)),
    limits: limiting(stockedLines(version))?.line ?? null,
  };
}

function scaledLine(line: Body, factor: Factor, rule: "up" | "down"): ScaledLine {
  const planned = quantityIn(line, "amount") ?? { amount: "0", unit: "g" };
  const written = parseDecimal(planned.amount);
  const isPieces = planned.unit === "pc" && !written.isZero();
  const amount = isPieces ? wholeCount(written, factor, rule).count : scaledFinely(written, factor);
  const at = (name: string) => {
    const limit = decimalIn(line, name);
    return limit === null ? {} : { [name]: plain(scaledFinely(limit, factor)) };
  };
  const quantity = { amount: plain(amount), unit: planned.unit };
  const hand = atHand(textIn(line, "material") ?? "", planned.unit);
  return {
    line: textIn(line, "line") ?? "",
    material: textIn(line, "material") ?? "",
    ...quantity,
    at_hand: hand === null ? null : plain(hand),
    is_short: hand !== null && hand.compare(amount) < 0,
    body: { ...line, amount: quantity, ...at("below"), ...at("above") },
  };
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

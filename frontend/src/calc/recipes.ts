/**
 * Recipe sums: scaling to a mass, to packs or to what limits; percents of flour and formula.
 * Common practice in the trade; published instances stand in the vectors with their source.
 */

import { Decimal, divided, HUNDRED, product, rounded, total, ZERO } from "./numbers.ts";

export type CountRule = "up" | "down" | "nearest";

/** An exact ratio: `wanted` of the thing of which the recipe as written gives `base`. */
export interface Factor {
  readonly wanted: Decimal;
  readonly base: Decimal;
}

/**
 * What one line needs as written and what is at hand, in one unit; `yield_percent` says how much
 * of what is at hand can be used.
 */
export interface Stocked {
  readonly line: string;
  readonly needed: Decimal;
  readonly available: Decimal;
  readonly yield_percent?: Decimal;
}

/** The line that runs out first and the factor it allows. */
export interface Limit {
  readonly line: string;
  readonly factor: Factor;
}

/** A count that was made whole, and the factor the recipe has with it. */
export interface WholeCount {
  readonly count: Decimal;
  readonly factor: Factor;
}

/** Finished mass over finished mass, or packs over packs. Throws unless base > 0 and wanted >= 0. */
export function scaleFactor(wanted: Decimal, base: Decimal): Factor {
  if (!isAboveZero(base) || wanted.isNegative()) {
    throw new RangeError("a recipe makes more than nothing");
  }
  return { wanted, base };
}

/**
 * For this many packs of pack_net, where the recipe as written makes `makes` of the same unit.
 * Throws as scaleFactor does.
 */
export function packsFactor(
  packs: Decimal,
  recipe: { readonly pack_net: Decimal; readonly makes: Decimal },
): Factor {
  return scaleFactor(product(packs, recipe.pack_net), recipe.makes);
}

/**
 * The smallest available x yield / needed over the lines that are needed at all; of equals the
 * first. Null when no line is needed.
 */
export function limiting(lines: readonly Stocked[]): Limit | null {
  let least: Limit | null = null;
  for (const line of lines) {
    if (!isAboveZero(line.needed)) continue;
    const factor = {
      wanted: product(line.available, line.yield_percent ?? HUNDRED),
      base: product(line.needed, HUNDRED),
    };
    if (least === null || isLess(factor, least.factor)) least = { line: line.line, factor };
  }
  return least;
}

/** Amount times factor, exactly, then rounded once. */
export function scaled(amount: Decimal, factor: Factor, places: number): Decimal {
  return divided(product(amount, factor.wanted), factor.base, places);
}

/** The factor as a decimal, to be read; sums use the exact one. */
export function factorShown(factor: Factor, places: number): Decimal {
  return divided(factor.wanted, factor.base, places);
}

/**
 * Eggs or jars as a whole number, with the factor that the whole recipe then has.
 * Nearest: a tie goes to the even number. Throws unless amount > 0.
 */
export function wholeCount(amount: Decimal, factor: Factor, rule: CountRule): WholeCount {
  if (!isAboveZero(amount)) throw new RangeError("nothing to count");
  const over = product(amount, factor.wanted);
  const nearest = divided(over, factor.base, 0);
  const isOver = product(nearest, factor.base).compare(over);
  let units = nearest.units;
  if (rule === "up" && isOver < 0) units += 1n;
  if (rule === "down" && isOver > 0) units -= 1n;
  const count = new Decimal(units, 0);
  return { count, factor: { wanted: count, base: amount } };
}

/** 100 x each amount over all flours together. Throws without flour. */
export function bakersPercents(
  amounts: readonly Decimal[],
  isFlour: readonly boolean[],
  places: number,
): Decimal[] {
  const flour = total(amounts.filter((_, line) => isFlour[line]));
  if (!isAboveZero(flour)) throw new RangeError("no flour: which ingredient is 100 %?");
  return amounts.map((amount) => divided(product(amount, HUNDRED), flour, places));
}

/** 100 x each amount over the sum of all. Throws when that is not above 0. */
export function formulaPercents(amounts: readonly Decimal[], places: number): Decimal[] {
  return amountsFromPercents(amounts, HUNDRED, places);
}

/**
 * The amounts that make `wanted` in all, from baker's or formula percents alike.
 * Throws when the percents do not sum to more than 0.
 */
export function amountsFromPercents(
  percents: readonly Decimal[],
  wanted: Decimal,
  places: number,
): Decimal[] {
  const whole = total(percents);
  if (!isAboveZero(whole)) throw new RangeError("no percents");
  return percents.map((percent) => divided(product(wanted, percent), whole, places));
}

/**
 * Rounded parts that add up to the whole: each is cut, and what is left goes one step each to the
 * largest remainders, of equals to the first. Throws for a whole or weight below 0, a whole with
 * more places, or weights of nothing.
 */
export function sharedOut(whole: Decimal, weights: readonly Decimal[], places: number): Decimal[] {
  const allWeights = total(weights);
  const cutWhole = rounded(whole, places);
  const isRefused =
    !isAboveZero(allWeights) ||
    weights.some((weight) => weight.isNegative()) ||
    whole.isNegative() ||
    cutWhole.compare(whole) !== 0;
  if (isRefused) throw new RangeError("nothing to share by");
  return addedUp(
    weights.map((weight) => product(cutWhole, weight)),
    { whole: cutWhole, allWeights, places },
  );
}

/**
 * What to buy for this much edible: edible / yield, rounded once; yields above 100 are right for
 * what swells. Throws unless yield > 0.
 */
export function asPurchased(edible: Decimal, yieldPercent: Decimal, places: number): Decimal {
  if (!isAboveZero(yieldPercent)) throw new RangeError("a yield is more than nothing");
  return divided(product(edible, HUNDRED), yieldPercent, places);
}

/** What is left to use of what was bought: bought x yield. */
export function ediblePortion(bought: Decimal, yieldPercent: Decimal, places: number): Decimal {
  return divided(product(bought, yieldPercent), HUNDRED, places);
}

/** Each share is shares[i] / allWeights; their sum is whole. */
function addedUp(
  shares: readonly Decimal[],
  by: { readonly whole: Decimal; readonly allWeights: Decimal; readonly places: number },
): Decimal[] {
  const parts = shares.map((share, line) => {
    const cut = cutDown(share, by.allWeights, by.places);
    return { line, cut, remainder: share.minus(product(cut, by.allWeights)) };
  });
  const missing = rounded(by.whole.minus(total(parts.map((part) => part.cut))), by.places).units;
  const byRemainder = [...parts].sort(
    (a, b) => b.remainder.compare(a.remainder) || a.line - b.line,
  );
  const raised = new Set(byRemainder.slice(0, Number(missing)).map((part) => part.line));
  const step = new Decimal(1n, by.places);
  return parts.map(({ cut, line }) => (raised.has(line) ? cut.plus(step) : cut));
}

/** a / b cut, not rounded, to this many places; neither is negative. */
function cutDown(a: Decimal, b: Decimal, places: number): Decimal {
  const nearest = divided(a, b, places);
  const isTooMuch = product(nearest, b).compare(a) > 0;
  return isTooMuch ? nearest.minus(new Decimal(1n, places)) : nearest;
}

function isAboveZero(x: Decimal): boolean {
  return x.compare(ZERO) > 0;
}

/** Bases are above zero, so the comparison can be made crosswise without dividing. */
function isLess(a: Factor, b: Factor): boolean {
  return product(a.wanted, b.base).compare(product(b.wanted, a.base)) < 0;
}

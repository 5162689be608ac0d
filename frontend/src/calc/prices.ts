/**
 * What to ask for a pack: markup, margin, commission, break-even (production 2.2 and 2.3).
 * Markup is a share of the cost, margin of the price: whoever shows one says which.
 */

import { asDecimal, inSteps, type StepRule } from "./coins.ts";
import {
  type Decimal,
  difference,
  divided,
  HUNDRED,
  ONE,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import { Ratio } from "./ratios.ts";

export const PERCENT_PLACES = 4;
export const PRICE_PLACES = 4;
const WHOLE = new Ratio(ONE);
const PERCENT = new Ratio(ONE, HUNDRED);

/** What so many packs cost together: kept as a whole, so that nothing is rounded between. */
export interface PackCost {
  readonly cost: Decimal;
  readonly packs?: Decimal;
}

/**
 * What is to be earned, in percent of cost (markup) or of price (margin), and what a stall keeps,
 * in percent of price.
 */
export interface Wanted {
  readonly of: "cost" | "price";
  readonly percent: Decimal;
  readonly commission_percent?: Decimal;
}

/**
 * A price in coins and what is earned with it, commission taken off; `exact` is to be read and was
 * not rounded before.
 */
export interface PriceProposal {
  readonly exact: Decimal;
  readonly price: Decimal;
  readonly commission: Decimal;
  readonly earned: Decimal;
  readonly markup_percent: Decimal | null;
  readonly margin_percent: Decimal | null;
}

/** How many packs carry the fixed cost: exactly, and in whole packs. */
export interface BreakEven {
  readonly exact: Decimal;
  readonly packs: number;
}

/** (price - cost) in percent of the cost; null for a cost of nothing. */
export function markupPercent(cost: Decimal, price: Decimal): Decimal | null {
  if (cost.isZero()) return null;
  return divided(product(difference(price, cost), HUNDRED), cost, PERCENT_PLACES);
}

/** (price - cost) in percent of the price; null for a price of nothing. */
export function marginPercent(cost: Decimal, price: Decimal): Decimal | null {
  if (price.isZero()) return null;
  return divided(product(difference(price, cost), HUNDRED), price, PERCENT_PLACES);
}

/**
 * The margin that a markup is, both in percent: k / (1 + k). Throws RangeError at and below
 * -100 %.
 */
export function marginOfMarkup(markup: Decimal): Decimal {
  const whole = total([markup, HUNDRED]);
  if (whole.compare(ZERO) <= 0) throw new RangeError("nothing is given away and paid for");
  return divided(product(markup, HUNDRED), whole, PERCENT_PLACES);
}

/**
 * The markup that a margin is, both in percent: m / (1 - m). Throws RangeError at and above
 * 100 %.
 */
export function markupOfMargin(margin: Decimal): Decimal {
  const left = difference(HUNDRED, margin);
  if (left.compare(ZERO) <= 0) throw new RangeError("a margin is less than the price");
  return divided(product(margin, HUNDRED), left, PERCENT_PLACES);
}

/**
 * The price of a pack before coins: cost / (1 - margin - commission), or
 * cost (1 + markup) / (1 - commission). Throws RangeError as priceProposal does.
 */
export function exactPrice(cost: PackCost, wanted: Wanted, places = PRICE_PLACES): Decimal {
  return asDecimal(priceOf(cost, wanted), places);
}

/**
 * A price as a whole number of a coin, upwards where nobody says otherwise.
 *
 * Throws RangeError for a cost below zero, no packs, a markup below -100 %, margin and commission
 * that leave nothing, and a coin that is not above zero.
 */
export function priceProposal(
  cost: PackCost,
  wanted: Wanted,
  { coin, rule = "up" }: { readonly coin: Decimal; readonly rule?: StepRule },
): PriceProposal {
  const exact = priceOf(cost, wanted);
  const price = inSteps(exact, coin, rule);
  const costEach = new Ratio(cost.cost, cost.packs ?? ONE);
  const kept = new Ratio(wanted.commission_percent ?? ZERO).times(PERCENT);
  const commission = new Ratio(price).times(kept);
  const earned = new Ratio(price).minus(commission).minus(costEach);
  const percentOf = (whole: Ratio) =>
    whole.over.isZero() ? null : asDecimal(earned.dividedBy(whole.times(PERCENT)), PERCENT_PLACES);
  return {
    exact: asDecimal(exact, PRICE_PLACES),
    price,
    commission: asDecimal(commission, PRICE_PLACES),
    earned: asDecimal(earned, PRICE_PLACES),
    markup_percent: percentOf(costEach),
    margin_percent: percentOf(new Ratio(price)),
  };
}

/**
 * How many packs at a price, each with its variable cost, carry a fixed cost of the same period,
 * rounded up; null for never. Throws RangeError for a fixed cost below zero.
 */
export function breakEven(
  fixed: Decimal,
  pack: { readonly price: Decimal; readonly variable: Decimal },
): BreakEven | null {
  if (fixed.isNegative()) throw new RangeError("a fixed cost is not below zero");
  const left = difference(pack.price, pack.variable);
  if (left.compare(ZERO) <= 0) return null;
  const packs = inSteps(new Ratio(fixed, left), ONE, "up");
  return { exact: divided(fixed, left, PRICE_PLACES), packs: Number(packs.units) };
}

function priceOf({ cost, packs = ONE }: PackCost, wanted: Wanted): Ratio {
  if (cost.isNegative() || packs.compare(ZERO) <= 0) {
    throw new RangeError("a price is asked for packs that cost something");
  }
  const each = new Ratio(cost, packs);
  const share = new Ratio(wanted.percent).times(PERCENT);
  const kept = new Ratio(wanted.commission_percent ?? ZERO).times(PERCENT);
  const isOfCost = wanted.of === "cost";
  const left = isOfCost ? WHOLE.minus(kept) : WHOLE.minus(share).minus(kept);
  const isBelow = WHOLE.plus(share).over.isNegative();
  if (left.over.compare(ZERO) <= 0 || kept.over.isNegative() || isBelow) {
    throw new RangeError("margin and commission leave nothing");
  }
  return isOfCost ? each.times(WHOLE.plus(share)).dividedBy(left) : each.dividedBy(left);
}

/** Money as coins: exact fractions become parts that add up to the coin. */

import { Decimal, product, rounded, ZERO } from "./numbers.ts";
import { Ratio } from "./ratios.ts";

export type StepRule = "up" | "nearest" | "down";

const HALF = new Ratio(new Decimal(1n, 0), new Decimal(2n, 0));

/** An exact fraction rounded once to so many places. */
export function asDecimal(amount: Ratio, places: number): Decimal {
  return amount.rounded(places);
}

/**
 * Rounded parts whose sum is the rounded sum of the exact ones: each is cut, and what is left goes
 * one coin each to the largest remainders, of equals to the first (production 2.5).
 *
 * Parts below zero, such as the value of a by-product, are cut downwards.
 */
export function coinParts(parts: readonly Ratio[], places: number): Decimal[] {
  const cut = parts.map((part, place) => {
    const coins = cutDown(part, places);
    return { place, coins, remainder: part.minus(new Ratio(coins)) };
  });
  const exact = parts.reduce((sum, part) => sum.plus(part), new Ratio(ZERO));
  const sumOfCut = cut.reduce((sum, each) => sum.plus(each.coins), ZERO);
  const missing = Number(rounded(exact.rounded(places).minus(sumOfCut), places).units);
  const byRemainder = [...cut].sort(
    (a, b) => b.remainder.compare(a.remainder) || a.place - b.place,
  );
  const raised = new Set(byRemainder.slice(0, missing).map((each) => each.place));
  const coin = new Decimal(1n, places);
  return cut.map(({ coins, place }) => (raised.has(place) ? coins.plus(coin) : coins));
}

/**
 * An amount as a whole number of a coin, such as 0.25; halfway goes up.
 * Throws RangeError for a coin that is not above zero and an amount below zero.
 */
export function inSteps(amount: Ratio, step: Decimal, rule: StepRule): Decimal {
  if (step.compare(ZERO) <= 0 || amount.over.isNegative()) {
    throw new RangeError("a price is paid in coins above zero");
  }
  const exact = amount.dividedBy(new Ratio(step));
  const down = cutDown(rule === "nearest" ? exact.plus(HALF) : exact, 0);
  const isUp = rule === "up" && new Ratio(down).compare(exact) < 0;
  return product(isUp ? down.plus(new Decimal(1n, 0)) : down, step);
}

/** A fraction cut downwards to so many places. */
function cutDown(amount: Ratio, places: number): Decimal {
  const nearest = amount.rounded(places);
  const isTooMuch = new Ratio(nearest).compare(amount) > 0;
  return isTooMuch ? nearest.minus(new Decimal(1n, places)) : nearest;
}

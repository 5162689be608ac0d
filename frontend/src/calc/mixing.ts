/**
 * Mixing two strengths: the Pearson square and dilution, refused where it cannot be done.
 *
 * By mass the square is exact. A percent of the water is turned into one of the whole first. Grams
 * in 100 mL are mixed by volume, which is an approximation: volumes do not add up.
 */

import { MASS_PLACES, PERCENT_PLACES, percentOf, solidsIn } from "./balance.ts";
import { type Decimal, difference, divided, HUNDRED, product, total } from "./numbers.ts";

export type StrengthBasis = "by_mass" | "of_water" | "per_100_mL";
export type Solute = "salt" | "sugar" | "acid" | "alcohol" | "fat" | "other";
export type Side = "strong" | "weak";

/** Two strengths and the one wanted, in percent of one basis, and of what. */
export interface Square {
  readonly strong: Decimal;
  readonly weak: Decimal;
  readonly target: Decimal;
  readonly basis: StrengthBasis;
  readonly solute: Solute;
}

/**
 * How far an answer may be trusted: `is_exact` is false for volumes; the sum of an acid says
 * nothing about pH, so it carries a caution.
 */
export interface Marks {
  readonly basis: StrengthBasis;
  readonly is_exact: boolean;
  readonly caution: "acidified" | null;
}

/** Percents of the mixture that come from each side; they add up to 100. */
export interface Shares {
  readonly strong_percent: Decimal;
  readonly weak_percent: Decimal;
  readonly marks: Marks;
}

/** Amounts from each side that make what was wanted: they add up to it. */
export interface Mixture {
  readonly strong: Decimal;
  readonly weak: Decimal;
  readonly marks: Marks;
}

/** How much to add of the other side, and what it all makes then. */
export interface Addition {
  readonly to_add: Decimal;
  readonly makes: Decimal;
  readonly marks: Marks;
}

/**
 * Share of the strong one: (target - weak) / (strong - weak).
 *
 * Throws where the target lies outside both strengths, which differences taken without sign would
 * hide, where they are equal, and for impossible percents.
 */
export function pearsonShares(square: Square): Shares {
  const { over, under } = strongShare(square);
  const strong = divided(product(over, HUNDRED), under, PERCENT_PLACES);
  return {
    strong_percent: strong,
    weak_percent: difference(HUNDRED, strong),
    marks: marksOf(square),
  };
}

/**
 * Amounts of both sides for this much of the target strength; a dilution has weak = 0.
 * Throws for an amount below 0 and as pearsonShares does.
 */
export function mixedTo(makes: Decimal, square: Square): Mixture {
  if (makes.isNegative()) throw new RangeError("an amount is not below 0");
  const { over, under } = strongShare(square);
  const strong = divided(product(makes, over), under, MASS_PLACES);
  return { strong, weak: difference(makes, strong), marks: marksOf(square) };
}

/**
 * How much of the other side to add to an amount of the strong or the weak one.
 * Throws where no amount of it reaches the target, and as mixedTo does.
 */
export function addedToReach(amount: Decimal, square: Square, atHand: Side): Addition {
  if (amount.isNegative()) throw new RangeError("an amount is not below 0");
  const { over: strong, under } = strongShare(square);
  const weak = difference(under, strong);
  const [here, other] = atHand === "strong" ? [strong, weak] : [weak, strong];
  if (here.isZero()) {
    throw new RangeError("no amount of the other side reaches its own strength");
  }
  const toAdd = divided(product(amount, other), here, MASS_PLACES);
  return { to_add: toAdd, makes: total([amount, toAdd]), marks: marksOf(square) };
}

/** Percent by mass of what (mass, percent) pairs make together; null of nothing. */
export function strengthOf(parts: readonly (readonly [Decimal, Decimal])[]): Decimal | null {
  return percentOf(solidsIn(parts), total(parts.map(([mass]) => mass)));
}

/**
 * Share of the strong one as an exact fraction: over and under.
 *
 * For percents of the water the strengths by mass are p / (100 + p); with them the square becomes
 * (t - w)(100 + s) over (s - w)(100 + t).
 */
function strongShare(square: Square): { over: Decimal; under: Decimal } {
  const { strong, weak, target, basis } = square;
  if (weak.isNegative() || (basis === "by_mass" && strong.compare(HUNDRED) > 0)) {
    throw new RangeError("no such strength");
  }
  const isOutside = target.compare(weak) < 0 || target.compare(strong) > 0;
  if (strong.compare(weak) <= 0 || isOutside) {
    throw new RangeError("the target lies outside the two strengths");
  }
  const [over, under] = [difference(target, weak), difference(strong, weak)];
  if (basis !== "of_water") return { over, under };
  return {
    over: product(over, total([HUNDRED, strong])),
    under: product(under, total([HUNDRED, target])),
  };
}

function marksOf(square: Square): Marks {
  return {
    basis: square.basis,
    is_exact: square.basis !== "per_100_mL",
    caution: square.solute === "acid" ? "acidified" : null,
  };
}

/**
 * Formulas: lines written as a share of the base or of the whole become amounts.
 *
 * The base is all lines marked so, together: the flours of a dough are 100 (production 1.2). A share
 * is always of what is prepared; a line as bought counts with what its yield leaves of it.
 */

import { Decimal, difference, divided, HUNDRED, parseDecimal, product, ZERO } from "./numbers.ts";
import { Ratio } from "./ratios.ts";
import type { Factor } from "./recipes.ts";

export type Share = "base" | "whole";
export type FormulaTrouble =
  | "no_base"
  | "base_too_much"
  | "whole_too_much"
  | "no_amount"
  | "not_whole";

/** Printed percents are rounded: as far from 100 they still mean all of it; own proposal. */
export const SUM_SLACK_PERCENT = new Ratio(parseDecimal("0.5"));
const NOTHING = new Ratio(ZERO);
const ALL = new Ratio(HUNDRED);

/**
 * A line with an amount, or with a percent of the base or of the whole, never both.
 *
 * Amounts are masses in one unit, as they are to be weighed in; `yield_percent` says how much of
 * that the sums count.
 */
export interface FormulaLine {
  readonly amount?: Decimal | null;
  readonly percent?: Decimal | null;
  readonly percent_of?: Share;
  readonly is_base?: boolean;
  readonly yield_percent?: Decimal;
}

/** Of all lines and of the base: amounts, percents of the whole, percents of the base. */
interface Sums {
  readonly amount: Ratio;
  readonly of_whole: Ratio;
  readonly of_base: Ratio;
  readonly base_amount: Ratio;
  readonly base_of_whole: Ratio;
  readonly base_of_base: Ratio;
}

/**
 * Why no amounts follow from these lines, or null where they do.
 *
 * `no_base`: a share of a base no line is marked as; `base_too_much`, `whole_too_much`: shares that
 * leave nothing for the rest; `no_amount`: shares alone, and `whole` is not known; `not_whole`:
 * shares alone that do not add up to all of it.
 */
export function formulaTrouble(
  lines: readonly FormulaLine[],
  whole: Decimal | null,
): FormulaTrouble | null {
  const answer = solved(lines, whole === null ? null : new Ratio(whole));
  return typeof answer === "string" ? answer : null;
}

/**
 * The amount of each line times the factor, as it is to be weighed in, rounded once.
 *
 * `whole` is all that is prepared, asked only where no amount, or no base, says how large the
 * formula is. Throws where `formulaTrouble` says why.
 */
export function formulaAmounts(
  lines: readonly FormulaLine[],
  at: { readonly whole: Decimal | null; readonly factor: Factor; readonly places: number },
): Decimal[] {
  const answer = solved(lines, at.whole === null ? null : new Ratio(at.whole));
  if (typeof answer === "string") throw new RangeError(answer);
  const times = new Ratio(at.factor.wanted, at.factor.base);
  return lines.map((line, place) => {
    const exact = isSet(line.amount)
      ? new Ratio(line.amount).times(times)
      : (answer[place] ?? NOTHING).times(times).dividedBy(yieldOf(line));
    return exact.rounded(at.places);
  });
}

/**
 * For this much that is good, where of what the recipe makes so many percent are lost.
 * Throws unless makes > 0, wanted >= 0 and 0 <= loss_percent < 100.
 */
export function goodFactor(
  wanted: Decimal,
  recipe: { readonly makes: Decimal; readonly loss_percent: Decimal },
): Factor {
  if (recipe.makes.compare(ZERO) <= 0 || wanted.isNegative() || !isLoss(recipe.loss_percent)) {
    throw new RangeError("a loss leaves something");
  }
  const left = difference(HUNDRED, recipe.loss_percent);
  return { wanted: product(wanted, HUNDRED), base: product(recipe.makes, left) };
}

/**
 * How many whole packs what is made fills after the expected loss; makes and net in one unit.
 * Throws unless net > 0, makes >= 0 and 0 <= loss_percent < 100.
 */
export function packsOf(
  makes: Decimal,
  pack: { readonly net: Decimal; readonly loss_percent: Decimal },
): Decimal {
  if (pack.net.compare(ZERO) <= 0 || makes.isNegative() || !isLoss(pack.loss_percent)) {
    throw new RangeError("a pack holds something");
  }
  const good = product(makes, difference(HUNDRED, pack.loss_percent));
  const filled = product(pack.net, HUNDRED);
  const nearest = divided(good, filled, 0);
  const isTooMany = product(nearest, filled).compare(good) > 0;
  return new Decimal(isTooMany ? nearest.units - 1n : nearest.units, 0);
}

/** What is prepared of each line. */
function solved(lines: readonly FormulaLine[], whole: Ratio | null): Ratio[] | FormulaTrouble {
  const sums = sumsOf(lines);
  const hasBaseShares = lines.some((line) => isShare(line, "base"));
  if (hasBaseShares && !lines.some((line) => line.is_base === true)) return "no_base";
  if (hasBaseShares && sums.base_of_base.compare(ALL) >= 0) {
    return withFreeBase(lines, sums, whole);
  }
  return withBoundBase(lines, sums, whole);
}

/** The base lines are shares of their own sum, so only the whole says how much that is. */
function withFreeBase(
  lines: readonly FormulaLine[],
  sums: Sums,
  whole: Ratio | null,
): Ratio[] | FormulaTrouble {
  if (!isNothing(sums.base_amount) || !isNothing(sums.base_of_whole)) return "base_too_much";
  if (distance(sums.base_of_base, ALL).compare(SUM_SLACK_PERCENT) > 0) return "base_too_much";
  if (whole === null || isNothing(whole)) return "no_amount";
  const rest = ALL.minus(sums.of_whole).times(whole).minus(ALL.times(sums.amount));
  const base = rest.dividedBy(sums.of_base);
  return base.compare(NOTHING) > 0 ? amounts(lines, { base, whole }) : "whole_too_much";
}

/** Two sums, of the base and of the whole, each a share of the other: solved together. */
function withBoundBase(
  lines: readonly FormulaLine[],
  sums: Sums,
  whole: Ratio | null,
): Ratio[] | FormulaTrouble {
  const restOfBase = ALL.minus(sums.base_of_base);
  const left = ALL.minus(sums.of_whole)
    .times(restOfBase)
    .minus(sums.of_base.times(sums.base_of_whole));
  const given = ALL.times(sums.amount.times(restOfBase).plus(sums.of_base.times(sums.base_amount)));
  if (!isNothing(given)) {
    if (left.compare(NOTHING) <= 0) return "whole_too_much";
    const all = given.dividedBy(left);
    return amounts(lines, { whole: all, base: baseFor(sums, all) });
  }
  if (whole === null || isNothing(whole)) return "no_amount";
  if (distance(left, NOTHING).compare(SUM_SLACK_PERCENT.times(restOfBase)) > 0) return "not_whole";
  const parts = amounts(lines, { whole, base: baseFor(sums, whole) });
  const sum = parts.reduce((one, other) => one.plus(other), NOTHING);
  return parts.map((part) => part.times(whole).dividedBy(sum));
}

/** The base lines together, where the whole is this much. */
function baseFor(sums: Sums, whole: Ratio): Ratio {
  return ALL.times(sums.base_amount)
    .plus(sums.base_of_whole.times(whole))
    .dividedBy(ALL.minus(sums.base_of_base));
}

function amounts(
  lines: readonly FormulaLine[],
  of: { readonly base: Ratio; readonly whole: Ratio },
): Ratio[] {
  return lines.map((line) =>
    isSet(line.percent)
      ? new Ratio(line.percent).times(of[line.percent_of ?? "whole"]).dividedBy(ALL)
      : prepared(line),
  );
}

function sumsOf(lines: readonly FormulaLine[]): Sums {
  const base = lines.filter((line) => line.is_base === true);
  return {
    amount: sum(lines, prepared),
    of_whole: sum(lines, (line) => share(line, "whole")),
    of_base: sum(lines, (line) => share(line, "base")),
    base_amount: sum(base, prepared),
    base_of_whole: sum(base, (line) => share(line, "whole")),
    base_of_base: sum(base, (line) => share(line, "base")),
  };
}

function sum(lines: readonly FormulaLine[], of: (line: FormulaLine) => Ratio): Ratio {
  return lines.reduce((so_far, line) => so_far.plus(of(line)), NOTHING);
}

function isShare(line: FormulaLine, of: Share): boolean {
  return isSet(line.percent) && (line.percent_of ?? "whole") === of;
}

function share(line: FormulaLine, of: Share): Ratio {
  return isShare(line, of) ? new Ratio(line.percent ?? ZERO) : NOTHING;
}

/** What the sums count of a line with an amount; nothing of a share. */
function prepared(line: FormulaLine): Ratio {
  if (isSet(line.percent)) return NOTHING;
  return new Ratio(line.amount ?? ZERO).times(yieldOf(line));
}

/** The part that is left; throws for a yield of nothing. */
function yieldOf(line: FormulaLine): Ratio {
  const percent = line.yield_percent ?? HUNDRED;
  if (percent.compare(ZERO) <= 0) throw new RangeError("a yield is more than nothing");
  return new Ratio(percent, HUNDRED);
}

function isLoss(percent: Decimal): boolean {
  return !percent.isNegative() && percent.compare(HUNDRED) < 0;
}

function isSet(value: Decimal | null | undefined): value is Decimal {
  return value !== null && value !== undefined;
}

function isNothing(ratio: Ratio): boolean {
  return ratio.over.isZero();
}

function distance(one: Ratio, other: Ratio): Ratio {
  const apart = one.minus(other);
  return apart.over.isNegative() ? NOTHING.minus(apart) : apart;
}

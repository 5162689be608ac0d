/**
 * What a batch cost: the lots actually used, packs, labour, fuel, overhead (production 2.1).
 *
 * The rule is the actual cost of the lots in the jar (production 2.4). What is not known is named
 * and makes the cost incomplete, never cheaper; sums are exact and become coins once, at the end.
 */

import { asDecimal, coinParts } from "./coins.ts";
import { Decimal, divided, HUNDRED, ONE, product, rounded, total, ZERO } from "./numbers.ts";
import { Ratio } from "./ratios.ts";

export type LotPart = "materials" | "packs";
export type Part = "materials" | "packs" | "labour" | "fuel" | "overhead" | "other" | "by_products";
export type OverheadBy = "batch" | "labour_hour" | "kg" | "kettle_hour";
export type PercentOf = "materials" | "labour" | "materials_and_labour";

export const PARTS: readonly Part[] = [
  "materials",
  "packs",
  "labour",
  "fuel",
  "overhead",
  "other",
  "by_products",
];
export const PACK_PLACES = 4;
/** A cost that goes on into another lot is kept this finely. */
export const LOT_PLACES = 8;
const HOUR_MIN = new Decimal(60n, 0);
/** What the quantity of an overhead is divided by: minutes make hours, grams make kilograms. */
const PER: Readonly<Record<OverheadBy, Decimal>> = {
  batch: ONE,
  labour_hour: HOUR_MIN,
  kg: new Decimal(1000n, 0),
  kettle_hour: HOUR_MIN,
};

const BASES: Readonly<Record<PercentOf, readonly Part[]>> = {
  materials: ["materials", "packs"],
  labour: ["labour"],
  materials_and_labour: ["materials", "packs", "labour"],
};

/** So much of a lot, and what was paid for how much of it; null where nobody knows. */
export interface UsedLot {
  readonly part: LotPart;
  readonly lot: string;
  readonly amount: Decimal;
  readonly price: Decimal | null;
  readonly of_amount: Decimal | null;
}

/** Minutes of a member; time that is not paid is counted and told apart. */
export interface Labour {
  readonly member: string;
  readonly minutes: Decimal;
  readonly rate_per_hour: Decimal | null;
  readonly is_paid: boolean;
}

/** Fuel, overhead, another cost, or the value of a by-product: `amount` / `per` (else 1). */
export interface Expense {
  readonly part: "fuel" | "overhead" | "other" | "by_products";
  readonly name: string;
  readonly amount: Decimal | null;
  readonly per?: Decimal;
}

/**
 * Overhead in percent of ingredients and packaging, of labour (unpaid time as well) or of both;
 * common practice, and the base stays in its name.
 */
export interface Surcharge {
  readonly name: string;
  readonly percent: Decimal | null;
  readonly of: PercentOf;
}

/** What is not known, "price", "rate" or "amount", and of which lot, member or expense. */
export interface Missing {
  readonly what: string;
  readonly of: string;
}

/** What one lot, member or expense cost, in coins; a by-product lowers the cost. */
export interface CostLine {
  readonly part: Part;
  readonly of: string;
  readonly cost: Decimal;
  readonly is_paid: boolean;
}

/**
 * Lines, parts and `known` add up to the coin. `total` is null while anything is missing; `unpaid`
 * is the labour in it that nobody was paid for.
 */
export interface BatchCost {
  readonly lines: readonly CostLine[];
  readonly parts: Readonly<Record<Part, Decimal>>;
  readonly known: Decimal;
  readonly unpaid: Decimal;
  readonly total: Decimal | null;
  readonly missing: readonly Missing[];
  readonly per_good_pack: Decimal | null;
  readonly per_filled_pack: Decimal | null;
  readonly per_good_pack_paid: Decimal | null;
}

/** Packs that were filled and those of them that are good; null where nobody counted. */
export interface Packs {
  readonly good: Decimal | null;
  readonly filled: Decimal | null;
}

/** The cost of what was poured together, to 8 places; null while a price is missing. */
export interface LotCost {
  readonly cost: Decimal | null;
  readonly missing: readonly Missing[];
}

/** All that went into a batch but its lots; `places` are those of a coin. */
export interface Costing {
  readonly labour: readonly Labour[];
  readonly expenses: readonly (Expense | Surcharge)[];
  readonly packs: Packs;
  readonly places: number;
}

/**
 * What a batch cost in all, by line, by part and by pack.
 * Per good pack, so that rejects are not hidden; per filled pack beside it.
 */
export function batchCost(used: readonly UsedLot[], costing: Costing): BatchCost {
  const { labour, expenses, packs, places } = costing;
  const direct = [...used.map(ofLot), ...labour.map(ofLabour)];
  const items = [
    ...direct,
    ...expenses.map((each) => ("percent" in each ? ofSurcharge(each, direct) : ofExpense(each))),
  ];
  const known = items.filter((item) => "cost" in item);
  const missing = items.filter((item) => "what" in item);
  const coins = coinParts(
    known.map((item) => item.cost),
    places,
  );
  const lines = known.map((item, place) => ({ ...item, cost: coins[place] ?? ZERO }));
  const exact = missing.length > 0 ? null : sumOf(known);
  const paid = missing.length > 0 ? null : sumOf(known.filter((item) => item.is_paid));
  const parts = partSums(lines, places);
  const allKnown = total(Object.values(parts));
  return {
    lines,
    parts,
    known: allKnown,
    unpaid: inCoins(
      lines.filter((line) => !line.is_paid),
      places,
    ),
    total: missing.length > 0 ? null : allKnown,
    missing,
    per_good_pack: each(exact, packs.good),
    per_filled_pack: each(exact, packs.filled),
    per_good_pack_paid: each(paid, packs.good),
  };
}

/** What a lot cost that was poured together from others. */
export function lotCost(poured: readonly UsedLot[]): LotCost {
  const items = poured.map(ofLot);
  const missing = items.filter((item) => "what" in item);
  const cost = sumOf(items.filter((item) => "cost" in item));
  return { cost: missing.length > 0 ? null : asDecimal(cost, LOT_PLACES), missing };
}

/**
 * A recipe line as a lot to be bought: edible / yield, at a price per unit as bought (production
 * 2.1). Throws RangeError unless the yield is above zero.
 */
export function plannedUse(
  material: string,
  edible: Decimal,
  bought: { readonly yield_percent: Decimal; readonly price_each: Decimal | null },
): UsedLot {
  if (bought.yield_percent.compare(ZERO) <= 0) throw new RangeError("a yield is more than nothing");
  return {
    part: "materials",
    lot: material,
    amount: product(edible, HUNDRED),
    price: bought.price_each,
    of_amount: bought.yield_percent,
  };
}

/**
 * Price of a unit that can be used: price as bought / yield, so it goes up (production 1.3).
 * Throws RangeError unless the yield is above zero.
 */
export function usablePrice(price: Decimal, yieldPercent: Decimal, places: number): Decimal {
  if (yieldPercent.compare(ZERO) <= 0) throw new RangeError("a yield is more than nothing");
  return divided(product(price, HUNDRED), yieldPercent, places);
}

/**
 * Overhead at a rate for each batch, labour hour, kg or kettle hour: `quantity` are batches,
 * minutes or grams; common practice, and the choice stays in its name.
 */
export function overhead(by: OverheadBy, rate: Decimal, quantity: Decimal | null): Expense {
  const amount = quantity === null ? null : product(rate, quantity);
  return { part: "overhead", name: by, amount, per: PER[by] };
}

interface Known {
  readonly part: Part;
  readonly of: string;
  readonly cost: Ratio;
  readonly is_paid: boolean;
}

function ofLot({ part, lot, amount, price, of_amount }: UsedLot): Known | Missing {
  if (price === null || of_amount === null || of_amount.isZero()) {
    return { what: "price", of: lot };
  }
  return { part, of: lot, cost: new Ratio(product(price, amount), of_amount), is_paid: true };
}

function ofLabour({ member, minutes, rate_per_hour, is_paid }: Labour): Known | Missing {
  if (rate_per_hour === null) return { what: "rate", of: member };
  const cost = new Ratio(product(minutes, rate_per_hour), HOUR_MIN);
  return { part: "labour", of: member, cost, is_paid };
}

function ofExpense({ part, name, amount, per = ONE }: Expense): Known | Missing {
  if (amount === null) return { what: "amount", of: name };
  const isCredit = part === "by_products";
  const cost = new Ratio(isCredit ? amount.negated() : amount, per);
  return { part, of: name, cost, is_paid: true };
}

function ofSurcharge(surcharge: Surcharge, direct: readonly (Known | Missing)[]): Known | Missing {
  const { name, percent, of } = surcharge;
  if (percent === null) return { what: "amount", of: name };
  const base = direct
    .filter((item) => "cost" in item)
    .filter((item) => BASES[of].includes(item.part));
  const cost = sumOf(base).times(new Ratio(percent, HUNDRED));
  return { part: "overhead", of: name, cost, is_paid: true };
}

function sumOf(items: readonly { readonly cost: Ratio }[]): Ratio {
  return items.reduce((sum, item) => sum.plus(item.cost), new Ratio(ZERO));
}

function partSums(lines: readonly CostLine[], places: number): Record<Part, Decimal> {
  const of = (part: Part) =>
    inCoins(
      lines.filter((line) => line.part === part),
      places,
    );
  return {
    materials: of("materials"),
    packs: of("packs"),
    labour: of("labour"),
    fuel: of("fuel"),
    overhead: of("overhead"),
    other: of("other"),
    by_products: of("by_products"),
  };
}

/** The sum of lines; no line is nothing, in coins. */
function inCoins(lines: readonly CostLine[], places: number): Decimal {
  return total([rounded(ZERO, places), ...lines.map((line) => line.cost)]);
}

function each(cost: Ratio | null, packs: Decimal | null): Decimal | null {
  if (cost === null || packs === null || packs.compare(ZERO) <= 0) return null;
  return asDecimal(cost.dividedBy(new Ratio(packs)), PACK_PLACES);
}

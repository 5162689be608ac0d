/**
 * What a batch cost, worked out over sheets when somebody asks: like a trace, a walk.
 *
 * No sheet holds this sum. It rests on the sheets of the batch, of its lots, of what was paid for
 * them and of the batches they come from, so that a price that comes late moves every cost that
 * rests on it, and in whatever order things arrived the cost is the same.
 */

import { amountIn, type Body, decimalIn, objectIn, sumOf, textIn } from "./bodies.ts";
import { CostWalk, type Item } from "./cost_walk.ts";
import { type BatchCost, LOT_PLACES, PACK_PLACES } from "./costs.ts";
import type { Lacking, StatesBySubject } from "./lot_worth.ts";
import {
  type Decimal,
  divided,
  ONE,
  parseDecimal,
  plain,
  product,
  total,
  written,
  ZERO,
} from "./numbers.ts";
import type { Product, Products } from "./product_shares.ts";

const THOUSANDTH = parseDecimal("0.001");
const PER_OF: Readonly<Record<string, string>> = { pc: "pc", g: "kg", mL: "L" };

/** What one lot, member or expense cost, in coins; `amount` of a lot in its base unit. */
export interface Line {
  readonly part: string;
  readonly of: string;
  readonly material: string | null;
  readonly amount: string | null;
  readonly unit: string | null;
  readonly minutes: string | null;
  readonly entries: readonly string[];
  readonly cost: string;
  readonly is_paid: boolean;
}

/**
 * What one product costs, or what a by-product is worth, in coins: main products add up to `total`.
 * `each` is of a good pack, kg or L; null where it is not known. `by` is how several main ones
 * share, `basis` how sure that rule is.
 */
export interface ProductCost {
  readonly lot: string;
  readonly material: string | null;
  readonly sort: "main" | "by_product";
  readonly per: string | null;
  readonly good: string | null;
  readonly cost: string | null;
  readonly each: string | null;
  readonly by: string | null;
  readonly basis: string | null;
}

/**
 * What a batch cost, less the value of its by-products. Lines and parts add up to `known`; `total`
 * is null, and so is what rests on it, while anything is missing. Good packs are pieces, or kg or
 * L of a mass, of main products; null where these are not alike.
 */
export interface CostAnswer {
  readonly batch: string;
  readonly currency: string | null;
  readonly places: number;
  readonly lines: readonly Line[];
  readonly parts: Readonly<Record<string, string>>;
  readonly known: string;
  readonly unpaid: string;
  readonly total: string | null;
  readonly missing: readonly Lacking[];
  readonly per: string | null;
  readonly good: string | null;
  readonly filled: string | null;
  readonly per_good_pack: string | null;
  readonly per_filled_pack: string | null;
  readonly per_good_pack_paid: string | null;
  readonly minutes: string | null;
  readonly products: readonly ProductCost[];
}

/**
 * The actual cost of a batch over the sheets at hand; `cooperative` is the id of whose currency
 * and rates count. For a view, `seen` says what its lots of each material cost.
 */
export function costOfBatch(
  batch: string,
  cooperative: string,
  sheets: StatesBySubject,
  seen?: ReadonlyMap<string, Decimal>,
): CostAnswer {
  const walk = new CostWalk(cooperative, sheets);
  const items = walk.itemsOf(batch, [`batch:${batch}`], seen);
  const products = walk.productsOf(batch);
  const packs = packsOf(products.main.flatMap((each) => each.rows));
  const made = walk.sumOf(items, packs, walk.places);
  const known = items.filter((item) => item.lacking.length === 0);
  const minutes = items.flatMap((item) => (item.minutes === null ? [] : [item.minutes]));
  return {
    batch,
    currency: walk.currency,
    places: walk.places,
    lines: known.map((item, place) => lineOf(item, made.lines[place])),
    parts: Object.fromEntries(
      Object.entries(made.parts).map(([part, value]) => [part, written(value)]),
    ),
    known: written(made.known),
    unpaid: written(made.unpaid),
    total: text(made.total),
    missing: items.flatMap((item) => item.lacking),
    per: packs.per,
    good: packs.good === null ? null : plain(packs.good),
    filled: packs.filled === null ? null : plain(packs.filled),
    per_good_pack: text(made.per_good_pack),
    per_filled_pack: text(made.per_filled_pack),
    per_good_pack_paid: text(made.per_good_pack_paid),
    minutes: minutes.length === 0 ? null : plain(total(minutes)),
    products: productCosts(products, items, walk),
  };
}

interface PacksOf {
  readonly per: string | null;
  readonly good: Decimal | null;
  readonly filled: Decimal | null;
}

/** Shares in coins for what is told, and more finely for what is divided by packs. */
function productCosts(products: Products, items: readonly Item[], walk: CostWalk): ProductCost[] {
  const none = { good: null, filled: null };
  const made = walk.sumOf(items, none, walk.places);
  const finely = walk.sumOf(items, none, LOT_PLACES);
  const coins = new Map(
    made.lines
      .filter((line) => line.part === "by_products")
      .map((line) => [line.of, line.cost.negated()]),
  );
  const fine = new Map(products.byProducts.map((each) => [each.lot, each.value]));
  if (made.total !== null && finely.total !== null) {
    for (const [lot, share] of products.shares(made.total, walk.places) ?? [])
      coins.set(lot, share);
    for (const [lot, share] of products.shares(finely.total, LOT_PLACES) ?? [])
      fine.set(lot, share);
  }
  const by = products.main.length > 1 ? products.by : null;
  return products.rows.map((each) =>
    productCost(each, { coins: coins.get(each.lot), fine: fine.get(each.lot), by }),
  );
}

interface ShareOf {
  readonly coins: Decimal | undefined;
  readonly fine: Decimal | null | undefined;
  readonly by: string | null;
}

function productCost(each: Product, { coins, fine, by }: ShareOf): ProductCost {
  const packs = packsOf(each.rows);
  const good = packs.good ?? ZERO; // nobody is told what one of none costs
  const eachOf = fine == null || good.isZero() ? null : divided(fine, good, PACK_PLACES);
  const isShared = by !== null && each.sort === "main";
  return {
    lot: each.lot,
    material: textIn({ ...each.rows[0] }, "material"),
    sort: each.sort,
    per: packs.per,
    good: packs.good === null ? null : plain(packs.good),
    cost: text(coins ?? null),
    each: text(eachOf),
    by: isShared ? by : null,
    basis: isShared ? "memory" : null,
  };
}

/** Good ones, and all that were filled where somebody counted rejects. */
function packsOf(outputs: readonly Body[]): PacksOf {
  const good = sumOf(outputs.map((each) => amountIn({ amount: each }, "amount")));
  const alike = new Set(outputs.map((each) => `${textIn(each, "material")} ${packWords(each)}`));
  if (good === null || alike.size > 1) return { per: null, good: null, filled: null };
  const rejected = outputs.map((each) => decimalIn(each, "rejected")).filter((x) => x !== null);
  const factor = good.unit === "pc" ? ONE : THOUSANDTH;
  return {
    per: PER_OF[good.unit] ?? null,
    good: product(good.value, factor),
    filled: rejected.length === 0 ? null : product(total([good.value, ...rejected]), factor),
  };
}

function packWords(row: Body): string {
  const pack = objectIn(row, "pack_net") ?? {};
  return `${textIn(pack, "amount")} ${textIn(pack, "unit")}`;
}

function lineOf(item: Item, line: BatchCost["lines"][number] | undefined): Line {
  return {
    part: line?.part ?? "",
    of: item.of,
    material: item.material,
    amount: item.amount === null ? null : plain(item.amount),
    unit: item.unit,
    minutes: item.minutes === null ? null : plain(item.minutes),
    entries: item.entries,
    cost: written(line?.cost ?? ZERO),
    is_paid: item.what.sort !== "labour" || item.what.cost.is_paid,
  };
}

function text(x: Decimal | null): string | null {
  return x === null ? null : written(x);
}

/**
 * How the products of a batch share its cost: by mass, by sales value, or as by-products.
 *
 * A by-product is credited at its value and lowers the cost of the others, which share what is left
 * (production 2.1, joint products: from memory of cost-accounting texts, and marked so).
 */

import { amountIn, type Body, decimalIn, itemsIn, objectIn, textIn } from "./bodies.ts";
import { coinParts } from "./coins.ts";
import type { Cited } from "./limits.ts";
import { type Decimal, ONE, parseDecimal, product, total, ZERO } from "./numbers.ts";
import { Ratio } from "./ratios.ts";

export type JointBy = "mass" | "sales_value";

const THOUSANDTH = parseDecimal("0.001"); // a value is of a pack, or of a kg or L

/** One of several products of one batch: its mass, or what it sells for where they part. */
export interface JointProduct {
  readonly lot: string;
  readonly weight: Decimal;
}

/** The cost of each product, in coins that add up, and who says how to share it. */
export interface JointCosts {
  readonly costs: readonly Decimal[];
  readonly cited: Cited;
}

/**
 * One lot that came out: `amount` in its base unit, null where outputs of it were measured unlike.
 * `value` is of all of it, null while nobody said one in the currency of the cost.
 */
export interface Product {
  readonly lot: string;
  readonly sort: "main" | "by_product";
  readonly rows: readonly Body[];
  readonly amount: Decimal | null;
  readonly unit: string | null;
  readonly value: Decimal | null;
}

/**
 * All lots that came out of a batch, in the order in which they did, from the sheets of it and of
 * its cost; main ones share by mass where nobody said otherwise.
 */
export class Products {
  readonly rows: readonly Product[];
  readonly by: JointBy;

  constructor(batch: Body, cost: Body, currency: string | null) {
    const shared = objectIn(cost, "shared") ?? {};
    const isKnown = currency === null || textIn(shared, "currency") === currency;
    const said = new Map(itemsIn(shared, "products").map((each) => [textIn(each, "lot"), each]));
    const lots = new Map<string, Body[]>();
    for (const each of itemsIn(batch, "outputs")) {
      const lot = textIn(each, "lot") ?? "";
      lots.set(lot, [...(lots.get(lot) ?? []), each]);
    }
    this.rows = [...lots].map(([lot, rows]) => productOf(lot, rows, said.get(lot) ?? {}, isKnown));
    this.by = textIn(shared, "by") === "sales_value" ? "sales_value" : "mass";
  }

  /** Those that carry the cost. */
  get main(): readonly Product[] {
    return this.rows.filter((each) => each.sort === "main");
  }

  /** Those that lower it. */
  get byProducts(): readonly Product[] {
    return this.rows.filter((each) => each.sort === "by_product");
  }

  /**
   * What each main product costs of a cost less all by-products, adding up to it; null while they
   * cannot be shared by what is known.
   */
  shares(cost: Decimal, places: number): ReadonlyMap<string, Decimal> | null {
    const { main } = this;
    const [first] = main;
    if (first !== undefined && main.length === 1) return new Map([[first.lot, cost]]);
    const weights = main.map((each) => ({
      lot: each.lot,
      weight: this.by === "mass" ? massG(each.rows) : each.value,
    }));
    const known = weights.flatMap(({ lot, weight }) => (weight === null ? [] : [{ lot, weight }]));
    if (known.length < weights.length || known.every(({ weight }) => weight.isZero())) return null;
    const { costs } = jointCosts(cost, known, { by: this.by, places });
    return new Map(known.map(({ lot }, at) => [lot, costs[at] ?? ZERO]));
  }
}

/**
 * The cost of a batch with several products, shared by mass or by sales value at split-off. From
 * memory of cost-accounting texts, and marked so.
 *
 * Throws RangeError for weights below zero or of nothing at all.
 */
export function jointCosts(
  cost: Decimal,
  products: readonly JointProduct[],
  { by, places }: { readonly by: JointBy; readonly places: number },
): JointCosts {
  const whole = total(products.map((each) => each.weight));
  const isBelow = products.some((each) => each.weight.isNegative());
  if (whole.compare(ZERO) <= 0 || isBelow) throw new RangeError("nothing to share a cost by");
  const shares = products.map((each) => new Ratio(product(cost, each.weight), whole));
  const cited = {
    what: `joint_${by}`,
    source: "cost-accounting texts",
    basis: "memory",
    note: "",
  };
  return { costs: coinParts(shares, places), cited };
}

function productOf(lot: string, rows: readonly Body[], said: Body, isKnown: boolean): Product {
  const units = new Set(rows.map((each) => textIn(each, "unit")));
  const [only = null] = units;
  const unit = units.size === 1 ? only : null;
  const amount =
    unit === null ? null : total(rows.map((each) => decimalIn(each, "amount") ?? ZERO));
  const each = isKnown ? decimalIn(said, "value_each") : null;
  const factor = unit === "pc" ? ONE : THOUSANDTH;
  return {
    lot,
    sort: textIn(said, "sort") === "by_product" ? "by_product" : "main",
    rows,
    amount,
    unit,
    value: each === null || amount === null ? null : product(each, product(amount, factor)),
  };
}

/** The mass of a product lot; null where a pack has no net mass. */
function massG(rows: readonly Body[]): Decimal | null {
  const known = rows.map(rowMassG).filter((mass) => mass !== null);
  return known.length === rows.length ? total(known) : null;
}

function rowMassG(row: Body): Decimal | null {
  const amount = decimalIn(row, "amount");
  const unit = textIn(row, "unit");
  if (amount === null || unit === "g") return amount;
  const pack = objectIn(row, "pack_net");
  const net = pack === null ? null : amountIn({ amount: pack }, "amount");
  if (unit !== "pc" || net === null || net.unit !== "g") return null;
  return product(amount, net.value);
}

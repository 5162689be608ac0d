/**
 * What a lot is worth, followed over sheets back to the prices that were paid (production 2.4).
 *
 * A received lot is worth what was paid for it, a topped-up one what was poured into it, a product
 * what its batch cost. What is not known is named, with the lot one has to look at.
 */

import { amountIn, type Body, decimalIn, itemsIn, objectIn, textIn } from "./bodies.ts";
import { jointCosts, LOT_PLACES, lotCost, type UsedLot } from "./costs.ts";
import { type Decimal, product, total, ZERO } from "./numbers.ts";

/** Subject -> state, whatever its type; only what a cost needs is read of each. */
export interface StatesBySubject {
  get(subject: string): object | undefined;
}

/**
 * What is not known ("price", "currency", "lot", "unit", "circle", "rate", "amount" or "share") of
 * which lot, member or expense, and through which lot of the batch one comes to it.
 */
export interface Lacking {
  readonly what: string;
  readonly of: string;
  readonly through: string | null;
}

/** What so much of a lot cost; `lacking` is not empty where that is not known. */
export interface Worth {
  readonly price: Decimal | null;
  readonly of_amount: Decimal | null;
  readonly unit: string | null;
  readonly lacking: readonly Lacking[];
}

/** The exact total of a batch, null while something is lacking. */
export interface OfBatch {
  readonly cost: Decimal | null;
  readonly lacking: readonly Lacking[];
}

/** Follows lots over sheets; `costOf` works out a batch, given the way one came. */
export class Worths {
  readonly sheets: StatesBySubject;
  readonly currency: string | null;
  readonly costOf: (batch: string, way: readonly string[]) => OfBatch;

  constructor(
    sheets: StatesBySubject,
    currency: string | null,
    costOf: (batch: string, way: readonly string[]) => OfBatch,
  ) {
    this.sheets = sheets;
    this.currency = currency;
    this.costOf = costOf;
  }

  /**
   * `way` are the subjects from which one came: goods that go in a circle by a slip have no cost.
   */
  worthOf(code: string, way: readonly string[]): Worth {
    const subject = `lot:${code}`;
    const held = this.sheets.get(subject);
    if (held === undefined) return unknown("lot", code);
    if (way.includes(subject)) return unknown("circle", code);
    const lot: Body = { ...held };
    const on = [...way, subject];
    const madeBy = textIn(lot, "made_by");
    if (madeBy === "receipt") return this.#paid(code, lot);
    if (madeBy === "topped_up") return this.#poured(lot, on);
    const batch = textIn(lot, "batch");
    if (madeBy === "output" && batch !== null) return this.#produced(code, batch, on);
    return unknown("lot", code);
  }

  #paid(code: string, lot: Body): Worth {
    const sheet: Body = { ...this.sheets.get(`price:${code}`) };
    const price = decimalIn(sheet, "price");
    if (price === null) return unknown("price", code);
    if (this.currency !== null && textIn(sheet, "currency") !== this.currency) {
      return unknown("currency", code);
    }
    const made = decimalIn(lot, "made");
    if (made === null || made.isZero()) return unknown("price", code);
    return { price, of_amount: made, unit: textIn(lot, "unit"), lacking: [] };
  }

  #poured(lot: Body, way: readonly string[]): Worth {
    const poured = itemsIn(lot, "came_from").map((each) => {
      const code = textIn(each, "lot") ?? "";
      const worth = this.worthOf(code, way);
      return { worth, used: usedLot(worth, code, decimalIn(each, "amount") ?? ZERO) };
    });
    const lacking = poured.flatMap(({ worth }) => worth.lacking);
    const made = decimalIn(lot, "made");
    const unit = textIn(lot, "unit");
    if (lacking.length > 0 || poured.length === 0 || made === null || made.isZero()) {
      const found = lacking.length > 0 ? lacking : [lacks("price", textIn(lot, "lot") ?? "")];
      return { price: null, of_amount: null, unit, lacking: found };
    }
    const { cost } = lotCost(poured.map(({ used }) => used));
    return { price: cost, of_amount: made, unit, lacking: [] };
  }

  #produced(code: string, batch: string, way: readonly string[]): Worth {
    const found = this.costOf(batch, way);
    if (found.cost === null) {
      return { price: null, of_amount: null, unit: null, lacking: found.lacking };
    }
    return shareOf(code, found.cost, itemsIn({ ...this.sheets.get(`batch:${batch}`) }, "outputs"));
  }
}

/** So much of a lot, at what it is worth. */
export function usedLot(worth: Worth, code: string, amount: Decimal): UsedLot {
  return { part: "materials", lot: code, amount, price: worth.price, of_amount: worth.of_amount };
}

/** A batch with several products is shared by mass; like with like by what was counted. */
function shareOf(code: string, cost: Decimal, outputs: readonly Body[]): Worth {
  const sums = new Map<string, Body[]>();
  for (const each of outputs) {
    const lot = textIn(each, "lot") ?? "";
    sums.set(lot, [...(sums.get(lot) ?? []), each]);
  }
  const own = sums.get(code) ?? [];
  const amount = total(own.map((each) => decimalIn(each, "amount") ?? ZERO));
  const [first] = own;
  const unit = first === undefined ? null : textIn(first, "unit");
  if (amount.isZero() || own.some((each) => textIn(each, "unit") !== unit)) {
    return unknown("share", code);
  }
  if (sums.size === 1) return { price: cost, of_amount: amount, unit, lacking: [] };
  const weights = [...sums].map(([lot, rows]) => ({ lot, weight: massG(rows) }));
  const known = weights.flatMap(({ lot, weight }) => (weight === null ? [] : [{ lot, weight }]));
  if (known.length < weights.length || known.every(({ weight }) => weight.isZero())) {
    return unknown("share", code);
  }
  const { costs } = jointCosts(cost, known, { by: "mass", places: LOT_PLACES });
  const price = costs[known.findIndex(({ lot }) => lot === code)] ?? null;
  return { price, of_amount: amount, unit, lacking: [] };
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

function unknown(what: string, of: string): Worth {
  return { price: null, of_amount: null, unit: null, lacking: [lacks(what, of)] };
}

function lacks(what: string, of: string): Lacking {
  return { what, of, through: null };
}

/**
 * What a lot is worth, followed over sheets back to the prices that were paid (production 2.4).
 *
 * A received lot is worth what was paid for it, a topped-up one what was poured into it, a product
 * its share of what its batch cost, a by-product its value. What is not known is named, with the
 * lot one has to look at.
 */

import { type Body, decimalIn, itemsIn, textIn } from "./bodies.ts";
import { LOT_PLACES, lotCost, type UsedLot } from "./costs.ts";
import { type Decimal, ZERO } from "./numbers.ts";
import { Products } from "./product_shares.ts";

/** Subject -> state, whatever its type; only what a cost needs is read of each. */
export interface StatesBySubject {
  get(subject: string): object | undefined;
}

/**
 * What is not known ("price", "currency", "lot", "unit", "circle", "rate", "amount", "value" or
 * "share") of which lot, member or expense, and through which lot of the batch one comes to it.
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
    const made: Body = { ...this.sheets.get(`batch:${batch}`) };
    const products = new Products(made, { ...this.sheets.get(`cost:${batch}`) }, this.currency);
    const own = products.rows.find((each) => each.lot === code);
    if (own === undefined || own.amount === null || own.amount.isZero()) {
      return unknown("share", code);
    }
    const { amount, unit } = own;
    if (own.sort === "by_product") {
      if (own.value === null) return unknown("value", code);
      return { price: own.value, of_amount: amount, unit, lacking: [] };
    }
    const found = this.costOf(batch, way);
    if (found.cost === null) {
      return { price: null, of_amount: null, unit: null, lacking: found.lacking };
    }
    const price = products.shares(found.cost, LOT_PLACES)?.get(code);
    if (price === undefined) return unknown("share", code);
    return { price, of_amount: amount, unit, lacking: [] };
  }
}

/** So much of a lot, at what it is worth. */
export function usedLot(worth: Worth, code: string, amount: Decimal): UsedLot {
  return { part: "materials", lot: code, amount, price: worth.price, of_amount: worth.of_amount };
}

function unknown(what: string, of: string): Worth {
  return { price: null, of_amount: null, unit: null, lacking: [lacks(what, of)] };
}

function lacks(what: string, of: string): Lacking {
  return { what, of, through: null };
}

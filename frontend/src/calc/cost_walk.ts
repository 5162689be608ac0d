/** What costs in a batch, item by item, followed over sheets; what is not known is named. */

import { type Body, decimalIn, itemsIn, objectIn, textIn } from "./bodies.ts";
import {
  type BatchCost,
  batchCost,
  type Expense,
  type Labour,
  LOT_PLACES,
  type OverheadBy,
  overhead,
  type Packs,
  type PercentOf,
  type Surcharge,
  type UsedLot,
} from "./costs.ts";
import { type Lacking, type OfBatch, type StatesBySubject, usedLot, Worths } from "./lot_worth.ts";
import { ratesOn } from "./money.ts";
import { type Decimal, ONE, total, ZERO } from "./numbers.ts";
import { type Product, Products } from "./product_shares.ts";

export const COIN_PLACES = 2; // until the cooperative says otherwise
const EXPENSE_PART: ReadonlyMap<string, "fuel" | "overhead"> = new Map([
  ["fuel", "fuel"],
  ["overhead", "overhead"],
]);
const OVERHEAD_BY: ReadonlyMap<string, OverheadBy> = new Map([
  ["batch", "batch"],
  ["labour_hour", "labour_hour"],
  ["kg", "kg"],
]);
const PERCENT_OF: ReadonlyMap<string, PercentOf> = new Map([
  ["materials", "materials"],
  ["labour", "labour"],
  ["materials_and_labour", "materials_and_labour"],
]);

type What =
  | { readonly sort: "lot"; readonly cost: UsedLot }
  | { readonly sort: "labour"; readonly cost: Labour }
  | { readonly sort: "expense"; readonly cost: Expense | Surcharge };

/** One thing that costs, what it is of, and what is not known of it. */
export interface Item {
  readonly what: What;
  readonly of: string;
  readonly lacking: readonly Lacking[];
  readonly material: string | null;
  readonly amount: Decimal | null;
  readonly unit: string | null;
  readonly minutes: Decimal | null;
  readonly entries: readonly string[];
}

const NOTHING_SAID = {
  lacking: [],
  material: null,
  amount: null,
  unit: null,
  minutes: null,
  entries: [],
};

/** Works out batches over sheets, each once. */
export class CostWalk {
  readonly cooperative: string;
  readonly sheets: StatesBySubject;
  readonly currency: string | null;
  readonly places: number;
  readonly #known = new Map<string, OfBatch>();

  constructor(cooperative: string, sheets: StatesBySubject) {
    this.cooperative = cooperative;
    this.sheets = sheets;
    const fields = objectIn(this.#state(`cooperative:${cooperative}`), "fields") ?? {};
    this.currency = textIn(fields, "currency");
    const places = fields.currency_places;
    this.places = typeof places === "number" ? places : COIN_PLACES;
  }

  /** All that costs in a batch, in the order of its parts. */
  itemsOf(batch: string, way: readonly string[], seen?: ReadonlyMap<string, Decimal>): Item[] {
    const state = this.#state(`batch:${batch}`);
    const sheet = this.#state(`cost:${batch}`);
    const rates = this.#rates(textIn(state, "started_on"));
    const labour = labourItems(itemsIn(sheet, "labour"), rates);
    const lots =
      seen === undefined
        ? itemsIn(state, "lots_in").map((each) => this.#lotItem(each, way))
        : [...seen].map(([material, cost]) => this.#seenItem(material, cost));
    return [
      ...lots,
      ...labour,
      ...itemsIn(sheet, "expenses").map((each) => this.#expenseItem(each)),
      ...overheadItems(rates, state, labour),
      ...surchargeItems(rates, lots, labour),
      ...this.productsOf(batch).byProducts.map(byProductItem),
    ];
  }

  /** The lots that came out, and how they share its cost. */
  productsOf(batch: string): Products {
    const [made, cost] = [this.#state(`batch:${batch}`), this.#state(`cost:${batch}`)];
    return new Products(made, cost, this.currency);
  }

  /** The cost of a batch whose product is used in another, less its by-products, to 8 places. */
  costOf(batch: string, way: readonly string[]): OfBatch {
    const subject = `batch:${batch}`;
    if (way.includes(subject)) return { cost: null, lacking: [lacks("circle", batch)] };
    let known = this.#known.get(batch);
    if (known === undefined) {
      const items = this.itemsOf(batch, [...way, subject]);
      const made = this.sumOf(items, { good: null, filled: null }, LOT_PLACES);
      known = { cost: made.total, lacking: items.flatMap((item) => item.lacking) };
      this.#known.set(batch, known);
    }
    return known;
  }

  /** Their cost by line, part and pack; lines of what is known, in the order of items. */
  sumOf(items: readonly Item[], packs: Packs, places: number): BatchCost {
    const whats = items.map((item) => item.what);
    return batchCost(
      whats.flatMap((each) => (each.sort === "lot" ? [each.cost] : [])),
      {
        labour: whats.flatMap((each) => (each.sort === "labour" ? [each.cost] : [])),
        expenses: whats.flatMap((each) => (each.sort === "expense" ? [each.cost] : [])),
        packs,
        places,
      },
    );
  }

  #state(subject: string): Body {
    return { ...this.sheets.get(subject) };
  }

  #rates(on: string | null): Body {
    return on === null ? {} : ratesOn(this.#state(`rates:${this.cooperative}`), on);
  }

  #lotItem(lotIn: Body, way: readonly string[]): Item {
    const code = textIn(lotIn, "lot") ?? "";
    const unit = textIn(lotIn, "unit");
    const material = textIn(lotIn, "material");
    const amount = decimalIn(lotIn, "amount") ?? ZERO;
    const worths = new Worths(this.sheets, this.currency, (batch, on) => this.costOf(batch, on));
    const worth = worths.worthOf(code, way);
    let lacking = worth.lacking.map(({ what, of }) => ({ what, of, through: code }));
    if (lacking.length === 0 && worth.unit !== unit) {
      lacking = [{ what: "unit", of: code, through: code }];
    }
    const used = usedLot(worth, code, amount);
    const cost: UsedLot = {
      ...used,
      part: this.#isPackaging(material) ? "packs" : used.part,
      price: lacking.length > 0 ? null : used.price,
    };
    return {
      ...NOTHING_SAID,
      what: { sort: "lot", cost },
      of: code,
      lacking,
      material,
      amount,
      unit,
    };
  }

  #seenItem(material: string, cost: Decimal): Item {
    const used: UsedLot = {
      part: this.#isPackaging(material) ? "packs" : "materials",
      lot: material,
      amount: ONE,
      price: cost,
      of_amount: ONE,
    };
    return { ...NOTHING_SAID, what: { sort: "lot", cost: used }, of: material, material };
  }

  #isPackaging(material: string | null): boolean {
    const fields = objectIn(this.#state(`material:${material}`), "fields") ?? {};
    return textIn(fields, "sort") === "packaging";
  }

  #expenseItem(row: Body): Item {
    const entry = textIn(row, "entry") ?? "";
    const part = textIn(row, "part");
    const amount = decimalIn(row, "amount");
    const isOther = this.currency !== null && textIn(row, "currency") !== this.currency;
    const wrong = amount === null ? "amount" : "currency";
    const isLacking = amount === null || isOther;
    const cost: Expense = {
      part: EXPENSE_PART.get(part ?? "") ?? "other",
      name: entry,
      amount: isLacking ? null : amount,
    };
    return {
      ...NOTHING_SAID,
      what: { sort: "expense", cost },
      of: textIn(row, "says") ?? part ?? "other",
      lacking: isLacking ? [lacks(wrong, entry)] : [],
      entries: [entry],
    };
  }
}

/** Minutes by who worked and at which pay, the first first. */
function labourItems(rows: readonly Body[], rates: Body): Item[] {
  const groups = new Map<string, Body[]>();
  for (const row of rows) {
    const key = JSON.stringify([whoWorked(row), payOf(row, rates), row.is_paid !== false]);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first === undefined ? [] : [labourItem(first, group, rates)];
  });
}

function labourItem(first: Body, group: readonly Body[], rates: Body): Item {
  const who = whoWorked(first);
  const minutes = total(group.map((row) => decimalIn(row, "minutes") ?? ZERO));
  const rate = decimalIn({ pay: payOf(first, rates) }, "pay");
  const cost: Labour = {
    member: who,
    minutes,
    rate_per_hour: rate,
    is_paid: first.is_paid !== false,
  };
  return {
    ...NOTHING_SAID,
    what: { sort: "labour", cost },
    of: who,
    lacking: rate === null ? [lacks("rate", who)] : [],
    minutes,
    entries: group.map((row) => textIn(row, "entry") ?? ""),
  };
}

function whoWorked(row: Body): string {
  return textIn(row, "member") ?? textIn(row, "name") ?? "";
}

function payOf(row: Body, rates: Body): string | null {
  return textIn(row, "pay_per_hour") ?? textIn(rates, "pay_per_hour");
}

/** The overhead in force; by the hour or kg it is not known before those are. */
function overheadItems(rates: Body, state: Body, labour: readonly Item[]): Item[] {
  const row = objectIn(rates, "overhead") ?? {};
  const by = OVERHEAD_BY.get(textIn(row, "by") ?? "");
  const rate = decimalIn(row, "rate");
  if (by === undefined || rate === null) return [];
  const quantity = overheadQuantity(by, state, labour);
  const lacking = quantity === null ? [lacks("amount", `overhead:${by}`)] : [];
  const cost = overhead(by, rate, quantity);
  return [{ ...NOTHING_SAID, what: { sort: "expense", cost }, of: by, lacking }];
}

function overheadQuantity(by: OverheadBy, state: Body, labour: readonly Item[]): Decimal | null {
  if (by === "labour_hour") {
    const minutes = labour.flatMap((item) => (item.minutes === null ? [] : [item.minutes]));
    return minutes.length === 0 ? null : total(minutes);
  }
  return by === "kg" ? decimalIn(objectIn(state, "balance") ?? {}, "good_out") : ONE;
}

/** An overhead in percent of what else costs; not known before all of that is. */
function surchargeItems(rates: Body, lots: readonly Item[], labour: readonly Item[]): Item[] {
  const row = objectIn(rates, "overhead") ?? {};
  const of = PERCENT_OF.get(textIn(row, "percent_of") ?? "");
  const percent = decimalIn(row, "rate");
  if (textIn(row, "by") !== "percent" || of === undefined || percent === null) return [];
  const base = [...(of === "labour" ? [] : lots), ...(of === "materials" ? [] : labour)];
  const isOpen = base.some((item) => item.lacking.length > 0);
  const cost: Surcharge = { name: of, percent: isOpen ? null : percent, of };
  const lacking = isOpen ? [lacks("amount", `overhead:${of}`)] : [];
  return [{ ...NOTHING_SAID, what: { sort: "expense", cost }, of, lacking }];
}

/** What a by-product is worth lowers the cost; unknown, the cost is not. */
function byProductItem({ lot, rows, amount, unit, value }: Product): Item {
  const cost: Expense = { part: "by_products", name: lot, amount: value };
  return {
    ...NOTHING_SAID,
    what: { sort: "expense", cost },
    of: lot,
    lacking: value === null ? [lacks("value", lot)] : [],
    material: textIn({ ...rows[0] }, "material"),
    amount,
    unit,
  };
}

function lacks(what: string, of: string): Lacking {
  return { what, of, through: null };
}

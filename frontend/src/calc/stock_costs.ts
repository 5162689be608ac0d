/**
 * Two views of what stock cost: first in first out, and moving average (production 2.4).
 *
 * They are views: what a batch cost is the actual cost of its lots (costs.ts), and the order of
 * cost is not the order of picking. Movements come in the order in which they took effect, so a
 * late receipt or price is put in its place and everything is worked out anew. Under both views
 * purchases = cost of goods + closing stock.
 */

import { asDecimal, coinParts } from "./coins.ts";
import { type Decimal, difference, total, ZERO } from "./numbers.ts";
import { Ratio } from "./ratios.ts";

export type View = "fifo" | "moving_average";
export type Sort = "in" | "out" | "back";

export const EACH_PLACES = 4;

/** Stock that came `in` for a price, went `out`, or came `back` of an earlier out (`of`). */
export interface Move {
  readonly sort: Sort;
  readonly id: string;
  readonly amount: Decimal;
  readonly price?: Decimal | null;
  readonly of?: string | null;
}

/**
 * What went out, less what came back, and its cost in coins: null while a price is missing.
 * Provisional: it went out of stock that was not booked yet, at the last known cost.
 */
export interface OutCost {
  readonly id: string;
  readonly amount: Decimal;
  readonly cost: Decimal | null;
  readonly is_provisional: boolean;
}

/**
 * Costs in coins that add up; `missing` names the receipts without a price and what went out before
 * any cost was known. `closing_each` is the unit cost of what is left.
 */
export interface StockCost {
  readonly view: View;
  readonly outs: readonly OutCost[];
  readonly cost_of_goods: Decimal | null;
  readonly closing_amount: Decimal;
  readonly closing: Decimal | null;
  readonly closing_each: Decimal | null;
  readonly missing: readonly string[];
}

/**
 * Walk the movements in their order; `places` are those of a coin.
 *
 * Stock below nothing goes out at the last known cost, marked provisional, until the next receipts,
 * which fill it at their cost. What comes back does so at the cost at which it left. Throws
 * RangeError for an amount that is not above zero, a price below zero, and a return of what never
 * went out or of more than that.
 */
export function stockCost(moves: readonly Move[], view: View, places: number): StockCost {
  const books = new Books(view);
  for (const move of moves) books.take(move);
  return books.closed(places);
}

/**
 * All receipts of a period before anything goes out: with a moving average over that, the weighted
 * average of the period.
 */
export function inPeriod(moves: readonly Move[]): Move[] {
  const receipts = moves.filter((move) => move.sort === "in");
  return [...receipts, ...moves.filter((move) => move.sort !== "in")];
}

/** So much stock at one unit cost; null where one of `lacking` has no price. */
interface Layer {
  readonly amount: Decimal;
  readonly each: Ratio | null;
  readonly lacking: readonly string[];
  readonly isProvisional: boolean;
}

/** Layers of stock, and for each out the layers that it took. */
class Books {
  private readonly view: View;
  private stock: Layer[] = [];
  private readonly taken = new Map<string, Layer[]>();
  private lastKnown: Ratio | null = null;

  constructor(view: View) {
    this.view = view;
  }

  take(move: Move): void {
    const { amount, price = null } = move;
    if (!isAboveZero(amount) || price?.isNegative()) {
      throw new RangeError("a movement is of more than nothing");
    }
    if (move.sort === "in") {
      const each = price === null ? null : new Ratio(price, amount);
      const lacking = price === null ? [move.id] : [];
      this.come({ amount, each, lacking, isProvisional: false });
    } else if (move.sort === "out") {
      if (this.taken.has(move.id)) throw new RangeError(`${move.id} went out twice`);
      this.taken.set(move.id, this.drawn(amount, move.id));
    } else {
      this.comeBack(move.of ?? "", amount);
    }
  }

  /** The books as they stand now. */
  closed(places: number): StockCost {
    const all = [...this.taken.values()].flat();
    const shorts = all.filter((layer) => layer.isProvisional);
    const left = [
      ...this.stock,
      ...shorts.map((each) => ({ ...each, amount: each.amount.negated() })),
    ];
    const values = [...[...this.taken.values()].map(worthOf), worthOf(left)];
    const coins = coinParts(
      values.filter((value) => value !== null),
      places,
    );
    const shown = values.map((value) => (value === null ? null : (coins.shift() ?? null)));
    const outs = [...this.taken].map(([id, taken], place) => ({
      id,
      amount: amountOf(taken),
      cost: shown[place] ?? null,
      is_provisional: taken.some((layer) => layer.isProvisional),
    }));
    const costs = outs.map((out) => out.cost).filter((cost) => cost !== null);
    const [amount, value] = [amountOf(left), values[values.length - 1] ?? null];
    const isKnown = value !== null && !amount.isZero();
    const lacking = [...left, ...all].flatMap((layer) => layer.lacking);
    return {
      view: this.view,
      outs,
      cost_of_goods: costs.length === outs.length ? total(costs) : null,
      closing_amount: amount,
      closing: shown[shown.length - 1] ?? null,
      closing_each: isKnown ? asDecimal(value.dividedBy(new Ratio(amount)), EACH_PLACES) : null,
      missing: [...new Set(lacking)].sort(),
    };
  }

  /** A receipt first fills what went out before it was booked. */
  private come(receipt: Layer): void {
    let layer = receipt;
    for (const [id, taken] of this.taken) {
      const filledUp: Layer[] = [];
      for (const short of taken) {
        if (!short.isProvisional) {
          filledUp.push(short);
          continue;
        }
        const filled = least(short.amount, layer.amount);
        filledUp.push({ ...layer, amount: filled });
        filledUp.push({ ...short, amount: difference(short.amount, filled) });
        layer = { ...layer, amount: difference(layer.amount, filled) };
      }
      this.taken.set(
        id,
        filledUp.filter((each) => isAboveZero(each.amount)),
      );
    }
    this.lastKnown = layer.each ?? this.lastKnown;
    this.put(layer, "back");
  }

  private drawn(wanted: Decimal, name: string): Layer[] {
    let amount = wanted;
    const drawn: Layer[] = [];
    while (isAboveZero(amount)) {
      const first = this.stock.shift();
      if (first === undefined) break;
      const used = least(first.amount, amount);
      drawn.push({ ...first, amount: used });
      amount = difference(amount, used);
      const rest = difference(first.amount, used);
      if (isAboveZero(rest)) this.stock.unshift({ ...first, amount: rest });
    }
    if (isAboveZero(amount)) {
      const each = this.lastKnown;
      drawn.push({ amount, each, lacking: each === null ? [name] : [], isProvisional: true });
    }
    return drawn;
  }

  /** What went out last comes back first; what was never in stock only ceases to be short. */
  private comeBack(id: string, wanted: Decimal): void {
    const taken = this.taken.get(id) ?? [];
    if (wanted.compare(amountOf(taken)) > 0) throw new RangeError("more came back than went out");
    let amount = wanted;
    while (isAboveZero(amount)) {
      const last = taken.pop();
      if (last === undefined) break;
      const back = least(last.amount, amount);
      const rest = difference(last.amount, back);
      if (isAboveZero(rest)) taken.push({ ...last, amount: rest });
      if (!last.isProvisional) this.put({ ...last, amount: back }, "front");
      amount = difference(amount, back);
    }
  }

  private put(layer: Layer, end: "front" | "back"): void {
    if (!isAboveZero(layer.amount)) return;
    this.stock = end === "front" ? [layer, ...this.stock] : [...this.stock, layer];
    if (this.view === "moving_average") this.stock = [merged(this.stock)];
  }
}

/** One layer at the average of all: unknown while one of them is. */
function merged(stock: readonly Layer[]): Layer {
  const [amount, value] = [amountOf(stock), worthOf(stock)];
  return {
    amount,
    each: value === null ? null : value.dividedBy(new Ratio(amount)),
    lacking: [...new Set(stock.flatMap((layer) => layer.lacking))],
    isProvisional: false,
  };
}

function amountOf(layers: readonly Layer[]): Decimal {
  return total(layers.map((layer) => layer.amount));
}

function worthOf(layers: readonly Layer[]): Ratio | null {
  let value = new Ratio(ZERO);
  for (const { amount, each } of layers) {
    if (each === null) return null;
    value = value.plus(each.times(new Ratio(amount)));
  }
  return value;
}

function least(a: Decimal, b: Decimal): Decimal {
  return a.compare(b) <= 0 ? a : b;
}

function isAboveZero(x: Decimal): boolean {
  return x.compare(ZERO) > 0;
}

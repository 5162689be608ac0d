/**
 * Two views of what a batch's lots cost: first in first out, and the moving average.
 *
 * They are views (production 2.4): what a batch cost is the actual cost of its lots. The movements
 * of a material are those its lot sheets tell, by their days; on one day what came in is first.
 */

import { costOfBatch } from "./batch_costs.ts";
import { type Body, decimalIn, itemsIn, textIn } from "./bodies.ts";
import { coinParts } from "./coins.ts";
import { CostWalk } from "./cost_walk.ts";
import { LOT_PLACES } from "./costs.ts";
import type { StatesBySubject } from "./lot_worth.ts";
import { type Decimal, parseDecimal, rounded, total, written, ZERO } from "./numbers.ts";
import { Ratio } from "./ratios.ts";
import { TEXT_ORDER } from "./record.ts";
import { type Move, type StockCost, stockCost, type View } from "./stock_costs.ts";
import { typeIn } from "./subjects.ts";

/**
 * What the lots of a batch cost in a view, and with that the whole batch; null while it is not
 * known. `missing` are the lots without a price, or what has no cost of its own. `parts` say where
 * all that was ever paid for its materials is in this view: in this batch (`here`), `elsewhere`,
 * `lost` or `left`; they add up to `bought`, to the coin.
 */
export interface ViewedCost {
  readonly view: View;
  readonly lots: string | null;
  readonly total: string | null;
  readonly missing: readonly string[];
  readonly parts: Readonly<Record<Where, string>> | null;
}

const PLACES_OF_MONEY = ["bought", "here", "elsewhere", "lost", "left"] as const;
type Where = (typeof PLACES_OF_MONEY)[number];
const LOST = " lost";

/** Whose currency counts, the sheets at hand, and the codes of the lots to look at. */
export interface Viewing {
  readonly cooperative: string;
  readonly sheets: StatesBySubject;
  readonly lots: Iterable<string>;
}

interface Dated {
  readonly on: string;
  readonly rank: number;
  readonly move: Move;
}

const LOT_PARTS: readonly string[] = ["materials", "packs"];

/**
 * A batch seen in a view over these lots, which should be all of its materials'.
 *
 * What was lost goes out on its day, unless a count found it again; what counts found beyond all
 * losses comes in for nothing. Lots that were poured together only change their code; a product
 * has no price of its own and is named.
 */
export function viewedCost(batch: string, view: View, viewing: Viewing): ViewedCost {
  const { cooperative, sheets } = viewing;
  const used = itemsIn({ ...sheets.get(`batch:${batch}`) }, "lots_in");
  const codes = [...viewing.lots].sort();
  const seen = new Map<string, Decimal>();
  const missing = new Set<string>();
  const { places } = new CostWalk(cooperative, sheets);
  const told: (Told | null)[] = [];
  for (const material of new Set(used.map((each) => textIn(each, "material") ?? "").sort())) {
    const made = stockCost(movesOf(material, codes, sheets), view, LOT_PLACES);
    const here = made.outs.filter((out) => out.id.endsWith(` batch:${batch}`));
    const known = here.map((out) => out.cost).filter((cost) => cost !== null);
    if (here.length === 0 || known.length < here.length) {
      for (const name of made.missing.length > 0 ? made.missing : [material]) missing.add(name);
    }
    const parts = toldInCoins(made, batch, places);
    told.push(parts);
    seen.set(material, parts === null ? total(known) : parts.here);
  }
  if (missing.size > 0) {
    return { view, lots: null, total: null, missing: [...missing].sort(), parts: null };
  }
  const answer = costOfBatch(batch, cooperative, sheets, seen);
  const lots = total(LOT_PARTS.map((part) => parseDecimal(answer.parts[part] ?? "0")));
  return {
    view,
    lots: written(lots),
    total: answer.total,
    missing: [],
    parts: summed(told, places),
  };
}

type Told = Readonly<Record<Where, Decimal>>;

/** Where the money of one material is; null while any of it is not known. */
function toldInCoins(made: StockCost, batch: string, places: number): Told | null {
  if (made.closing === null || made.cost_of_goods === null) return null;
  const whereOf = (id: string) => {
    if (id.endsWith(LOST)) return "lost";
    return id.endsWith(` batch:${batch}`) ? "here" : "elsewhere";
  };
  const sumAt = (where: string) =>
    total(made.outs.filter((out) => whereOf(out.id) === where).map((out) => out.cost ?? ZERO));
  const sums = [sumAt("here"), sumAt("elsewhere"), sumAt("lost"), made.closing];
  const coins = coinParts(
    sums.map((sum) => new Ratio(sum)),
    places,
  );
  const [here = ZERO, elsewhere = ZERO, lost = ZERO, left = ZERO] = coins;
  return { bought: total(coins), here, elsewhere, lost, left };
}

function summed(told: readonly (Told | null)[], places: number): ViewedCost["parts"] {
  const known = told.filter((each) => each !== null);
  if (known.length < told.length) return null;
  const sum = (where: Where) => written(rounded(total(known.map((each) => each[where])), places));
  return {
    bought: sum("bought"),
    here: sum("here"),
    elsewhere: sum("elsewhere"),
    lost: sum("lost"),
    left: sum("left"),
  };
}

function movesOf(material: string, codes: readonly string[], sheets: StatesBySubject): Move[] {
  const dated = codes.flatMap((code) => {
    const lot: Body = { ...sheets.get(`lot:${code}`) };
    return textIn(lot, "material") === material ? movesOfLot(code, lot, sheets) : [];
  });
  dated.sort(
    (a, b) => TEXT_ORDER(a.on, b.on) || a.rank - b.rank || TEXT_ORDER(a.move.id, b.move.id),
  );
  return dated.map(({ move }) => move);
}

/** What came in at its price, and each way it went; pouring together is no movement. */
function movesOfLot(code: string, lot: Body, sheets: StatesBySubject): Dated[] {
  const made = decimalIn(lot, "made") ?? ZERO;
  const moves: Dated[] = [];
  if (textIn(lot, "made_by") !== "topped_up" && made.compare(ZERO) > 0) {
    const price = decimalIn({ ...sheets.get(`price:${code}`) }, "price");
    const move: Move = { sort: "in", id: code, amount: made, price };
    moves.push({ on: textIn(lot, "made_on") ?? "", rank: 0, move });
  }
  for (const way of itemsIn(lot, "went_to")) {
    const to = textIn(way, "to") ?? "";
    const amount = decimalIn(way, "amount") ?? ZERO;
    if (typeIn(to) === "lot" || amount.compare(ZERO) <= 0) continue;
    const move: Move = { sort: "out", id: `${code} ${to}`, amount };
    moves.push({ on: textIn(way, "on") ?? "", rank: 1, move });
  }
  return [...moves, ...lostOrFound(code, lot)];
}

/**
 * What was lost and not found again, each on its day; or what was only ever found, for which
 * nothing was paid.
 */
function lostOrFound(code: string, lot: Body): Dated[] {
  return leftOf(itemsIn(lot, "lost_on")).map(({ on, amount }): Dated => {
    if (!amount.isNegative()) {
      return { on, rank: 1, move: { sort: "out", id: `${code} ${on}${LOST}`, amount } };
    }
    const found = amount.negated();
    const id = `${code} ${on} found`;
    return { on, rank: 0, move: { sort: "in", id, amount: found, price: ZERO } };
  });
}

/**
 * Days of losses, or of finds below zero, so that all that is left is one of the two: a find takes
 * back the losses before it, the latest first, and a loss the finds.
 */
function leftOf(days: readonly Body[]): { on: string; amount: Decimal }[] {
  const left: { on: string; amount: Decimal }[] = [];
  for (const each of days) {
    let now = { on: textIn(each, "on") ?? "", amount: decimalIn(each, "amount") ?? ZERO };
    for (let last = left.at(-1); last !== undefined && isOpposite(last, now); last = left.at(-1)) {
      left.pop();
      const rest = total([last.amount, now.amount]);
      const isTakenBack = rest.isZero() || rest.isNegative() !== last.amount.isNegative();
      now = { on: isTakenBack ? now.on : last.on, amount: rest };
    }
    if (!now.amount.isZero()) left.push(now);
  }
  return left;
}

function isOpposite(one: { amount: Decimal }, other: { amount: Decimal }): boolean {
  return !other.amount.isZero() && one.amount.isNegative() !== other.amount.isNegative();
}

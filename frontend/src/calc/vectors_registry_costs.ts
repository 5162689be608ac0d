/**
 * How the functions about cost and price are called with what a vector gives; the twin of
 * tests/calc/registry_costs.py, where the forms of a vector are told.
 */

import * as coins from "./coins.ts";
import * as costs from "./costs.ts";
import { type Decimal, parseDecimal, plain, written } from "./numbers.ts";
import * as prices from "./prices.ts";
import { jointCosts } from "./product_shares.ts";
import { Ratio } from "./ratios.ts";
import { shareOut } from "./share_outs.ts";
import * as stockCosts from "./stock_costs.ts";
import type { Adapters, Given } from "./vectors_registry.ts";

const dec = (text: string): Decimal => parseDecimal(text);
const d = (text: string | null | undefined): Decimal | null => (text == null ? null : dec(text));
const w = (x: Decimal | null): string | null => (x === null ? null : written(x));

const ratioOf = ([over, under]: [string, string]): Ratio => new Ratio(dec(over), dec(under));

export function picked(made: object, g: Given): object {
  if (!g.show) return made;
  return Object.fromEntries(Object.entries(made).filter(([name]) => g.show.includes(name)));
}

function usedOf(each: Given): costs.UsedLot {
  return {
    part: each.part ?? "materials",
    lot: each.lot,
    amount: dec(each.amount),
    price: d(each.price),
    of_amount: d(each.of_amount),
  };
}

function labourOf(each: Given): costs.Labour {
  return {
    member: each.member,
    minutes: dec(each.minutes),
    rate_per_hour: d(each.rate_per_hour),
    is_paid: each.is_paid ?? true,
  };
}

function expenseOf(each: Given): costs.Expense | costs.Surcharge {
  if ("percent" in each) return { name: each.of, percent: d(each.percent), of: each.of };
  return { part: each.part, name: each.name, amount: d(each.amount), per: dec(each.per ?? "1") };
}

const missingJson = (missing: readonly costs.Missing[]) =>
  missing.map((each) => `${each.what}: ${each.of}`);

function batchCost(g: Given) {
  const made = costs.batchCost(g.used.map(usedOf), {
    labour: (g.labour ?? []).map(labourOf),
    expenses: (g.expenses ?? []).map(expenseOf),
    packs: { good: d(g.good), filled: d(g.filled) },
    places: g.places,
  });
  const parts = Object.entries(made.parts).map(([part, sum]) => [part, written(sum)]);
  return picked(
    {
      known: w(made.known),
      unpaid: w(made.unpaid),
      total: w(made.total),
      per_good_pack: w(made.per_good_pack),
      per_filled_pack: w(made.per_filled_pack),
      per_good_pack_paid: w(made.per_good_pack_paid),
      lines: made.lines.map((each) => [each.part, each.of, written(each.cost), each.is_paid]),
      parts: Object.fromEntries(parts),
      missing: missingJson(made.missing),
    },
    g,
  );
}

function lotCost(g: Given) {
  const made = costs.lotCost(g.poured.map(usedOf));
  return { cost: w(made.cost), missing: missingJson(made.missing) };
}

function plannedUse(g: Given) {
  const bought = { yield_percent: dec(g.yield_percent), price_each: d(g.price_each) };
  const used = costs.plannedUse(g.material, dec(g.edible), bought);
  return {
    ...used,
    amount: written(used.amount),
    price: w(used.price),
    of_amount: w(used.of_amount),
  };
}

function overhead(g: Given) {
  const made = costs.overhead(g.by, dec(g.rate), d(g.quantity));
  return { ...made, amount: w(made.amount), per: w(made.per ?? null) };
}

function jointCostsJson(g: Given) {
  const products = g.products.map(([lot, weight]: [string, string]) => ({
    lot,
    weight: dec(weight),
  }));
  const made = jointCosts(dec(g.cost), products, g);
  return { costs: made.costs.map(written), cited: `${made.cited.what}: ${made.cited.basis}` };
}

const costOf = (g: Given): prices.PackCost => ({ cost: dec(g.cost), packs: dec(g.packs ?? "1") });

const wantedOf = (g: Given): prices.Wanted => ({
  of: g.of,
  percent: dec(g.percent),
  commission_percent: dec(g.commission_percent ?? "0"),
});

function priceProposal(g: Given) {
  const how = { coin: dec(g.coin), rule: g.rule ?? "up" };
  const made = prices.priceProposal(costOf(g), wantedOf(g), how);
  return Object.fromEntries(Object.entries(made).map(([name, value]) => [name, w(value)]));
}

function breakEven(g: Given) {
  const pack = { price: dec(g.price), variable: dec(g.variable) };
  const found = prices.breakEven(dec(g.fixed), pack);
  return found && { ...found, exact: written(found.exact) };
}

function movesOf(g: Given): stockCosts.Move[] {
  return g.moves.map((each: Given) => ({
    sort: each.sort,
    id: each.id,
    amount: dec(each.amount),
    price: d(each.price),
    of: each.of ?? null,
  }));
}

function stockCost(g: Given) {
  const moves = g.is_period ? stockCosts.inPeriod(movesOf(g)) : movesOf(g);
  const made = stockCosts.stockCost(moves, g.view, g.places);
  return picked(
    {
      ...made,
      outs: made.outs.map((each) => [
        each.id,
        plain(each.amount),
        w(each.cost),
        each.is_provisional,
      ]),
      cost_of_goods: w(made.cost_of_goods),
      closing_amount: plain(made.closing_amount),
      closing: w(made.closing),
      closing_each: w(made.closing_each),
    },
    g,
  );
}

function shareOutJson(g: Given) {
  const uses = g.uses.map(([member, amount]: [string, string]) => ({
    member,
    amount: dec(amount),
  }));
  const made = shareOut(dec(g.net), uses, {
    reserve_percent: dec(g.reserve_percent),
    loss: g.loss ?? "carried",
    places: g.places,
  });
  return {
    reserve: written(made.reserve),
    to_share: written(made.to_share),
    shares: made.shares.map((each) => [each.member, written(each.amount)]),
    carried: written(made.carried),
    cited: `${made.cited.what}: ${made.cited.basis}`,
  };
}

export const COSTS: Adapters = {
  coins: {
    as_decimal: (g) => written(coins.asDecimal(ratioOf(g.amount), g.places)),
    coin_parts: (g) => coins.coinParts(g.parts.map(ratioOf), g.places).map(written),
    in_steps: (g) => written(coins.inSteps(ratioOf(g.amount), dec(g.step), g.rule)),
  },
  costs: {
    batch_cost: batchCost,
    lot_cost: lotCost,
    planned_use: plannedUse,
    usable_price: (g) => written(costs.usablePrice(dec(g.price), dec(g.yield_percent), g.places)),
    overhead,
  },
  prices: {
    markup_percent: (g) => w(prices.markupPercent(dec(g.cost), dec(g.price))),
    margin_percent: (g) => w(prices.marginPercent(dec(g.cost), dec(g.price))),
    margin_of_markup: (g) => written(prices.marginOfMarkup(dec(g.markup))),
    markup_of_margin: (g) => written(prices.markupOfMargin(dec(g.margin))),
    exact_price: (g) =>
      written(prices.exactPrice(costOf(g), wantedOf(g), g.places ?? prices.PRICE_PLACES)),
    price_proposal: priceProposal,
    break_even: breakEven,
  },
  stock_costs: {
    stock_cost: stockCost,
    in_period: (g) => stockCosts.inPeriod(movesOf(g)).map((each) => each.id),
  },
  product_shares: { joint_costs: jointCostsJson },
  share_outs: { share_out: shareOutJson },
};

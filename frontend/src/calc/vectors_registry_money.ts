/**
 * How folds and walks about money are called with what a vector gives; the twin of
 * tests/calc/registry_money.py.
 */

import { type AskedOf, askedOn, askedState } from "./asked_prices.ts";
import { costOfBatch } from "./batch_costs.ts";
import { viewedCost } from "./cost_views.ts";
import { usedLot, type Worth } from "./lot_worth.ts";
import { costState, ratesOn, ratesState } from "./money.ts";
import { parseDecimal, written } from "./numbers.ts";
import type { Adapters, Given } from "./vectors_registry.ts";
import { picked } from "./vectors_registry_costs.ts";
import { fold, statesOf } from "./vectors_registry_folds.ts";

function usedJson(g: Given) {
  const worth: Worth = {
    price: g.price === null ? null : parseDecimal(g.price),
    of_amount: g.of_amount === null ? null : parseDecimal(g.of_amount),
    unit: "g",
    lacking: [],
  };
  const used = usedLot(worth, g.lot, parseDecimal(g.amount));
  const { price, of_amount } = used;
  return {
    ...used,
    amount: written(used.amount),
    price: price === null ? null : written(price),
    of_amount: of_amount === null ? null : written(of_amount),
  };
}

export const MONEY: Adapters = {
  asked_prices: {
    asked_state: fold(askedState),
    asked_on: (g) => askedOn(g.state, g.on, g as AskedOf),
  },
  batch_costs: {
    cost_of_batch: (g) => picked(costOfBatch(g.batch, g.cooperative, statesOf(g.sheets)), g),
  },
  cost_views: {
    viewed_cost: ({ batch, view, cooperative, sheets, lots }) =>
      viewedCost(batch, view, { cooperative, sheets: statesOf(sheets), lots }),
  },
  lot_worth: {
    used_lot: usedJson,
  },
  money: {
    cost_state: fold(costState),
    rates_state: fold(ratesState),
    rates_on: (g) => ratesOn(g.state, g.on),
  },
};

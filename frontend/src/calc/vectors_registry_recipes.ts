/**
 * How the functions about formulas and preparations are called; the twin of
 * tests/calc/registry_recipes.py, where the short forms of a vector are told.
 */

import * as formulas from "./formulas.ts";
import { type Decimal, parseDecimal, written } from "./numbers.ts";
import { preparationsOf } from "./preparations.ts";
import type { Adapters, Given } from "./vectors_registry.ts";

const dec = (text: string): Decimal => parseDecimal(text);
const d = (text: string | null | undefined): Decimal | null => (text == null ? null : dec(text));
const w = (x: Decimal | null): string | null => (x === null ? null : written(x));

function linesOf(g: Given): formulas.FormulaLine[] {
  return g.lines.map((line: Given) => ({
    amount: d(line.amount),
    percent: d(line.percent),
    percent_of: line.of ?? "whole",
    is_base: line.is_base ?? false,
    yield_percent: dec(line.yield_percent ?? "100"),
  }));
}

function amountsOf(g: Given): string[] {
  const [wanted, base] = g.factor ?? ["1", "1"];
  return formulas
    .formulaAmounts(linesOf(g), {
      whole: d(g.whole),
      factor: { wanted: dec(wanted), base: dec(base) },
      places: g.places,
    })
    .map(written);
}

export const RECIPES_WRITTEN: Adapters = {
  formulas: {
    formula_trouble: (g) => formulas.formulaTrouble(linesOf(g), d(g.whole)),
    formula_amounts: amountsOf,
    good_factor: (g) => {
      const recipe = { makes: dec(g.makes), loss_percent: dec(g.loss_percent) };
      const { wanted, base } = formulas.goodFactor(dec(g.wanted), recipe);
      return { wanted: written(wanted), base: written(base) };
    },
    packs_of: (g) =>
      written(
        formulas.packsOf(dec(g.makes), { net: dec(g.net), loss_percent: dec(g.loss_percent) }),
      ),
  },
  preparations: {
    preparations_of: (g) =>
      preparationsOf(g.batches, {
        material: g.material,
        recipe: g.recipe,
        prepared_as: g.prepared_as,
      }).map(([edible, bought]) => [w(edible), w(bought)]),
  },
};

import { expect, test } from "vitest";
import { parseDecimal } from "../../calc/numbers.ts";
import { scaleFactor } from "../../calc/recipes.ts";
import { DENSITY_ROWS, SPREAD_ROWS } from "../../calc/tables/density.ts";
import type { RecipeVersion } from "../../state/stock.ts";
import { byWeight, isHousehold, type MaterialOf, rangeAt } from "./household.ts";

const TABLE = { rows: DENSITY_ROWS, ranges: SPREAD_ROWS };
const SPICE = { line: "2", material: "spice", amount: { amount: "3", unit: "us_tsp" } };
const VERSION: RecipeVersion = {
  entry: "e",
  number: 1,
  author: "m",
  published_on: "2026-10-15",
  body: {
    lines: [
      {
        line: "1",
        material: "sugar",
        amount: { amount: "2", unit: "us_cup" },
        above: "0.25",
      },
      SPICE,
      { line: "3", material: "vinegar", amount: { amount: "1", unit: "us_cup" } },
    ],
  },
};
const MATERIALS: MaterialOf = (id) => {
  if (id === "vinegar") return { measured_by: "volume", density_of: null };
  return { measured_by: "mass", density_of: id === "sugar" ? "sugar, granulated" : null };
};

test("two US cups of sugar are 400 g by the published 200 g a cup, the limit with them", () => {
  const { version } = byWeight(VERSION, TABLE, MATERIALS);

  const [sugar] = version.body.lines as { amount: unknown; above: string; note: string }[];
  expect(sugar?.amount).toEqual({ amount: "400", unit: "g" });
  expect(sugar?.above).toBe("50");
  expect(sugar?.note).toContain("Written as 2\u00a0US cup");
});

test("without a density the line stays by volume, and says so", () => {
  const { version, by_volume } = byWeight(VERSION, TABLE, MATERIALS);

  expect(version.body.lines).toContainEqual(SPICE);
  expect([...by_volume]).toEqual(["2"]);
});

test("what is measured by volume anyway is no household measure", () => {
  const line = { line: "3", material: "vinegar", amount: { amount: "1", unit: "us_cup" } };

  expect(isHousehold(line, MATERIALS)).toBe(false);
});

test("the range of published figures grows with the batch", () => {
  const twice = scaleFactor(parseDecimal("2"), parseDecimal("1"));

  expect(rangeAt({ low: parseDecimal("390"), high: parseDecimal("410.5") }, twice)).toEqual({
    low: "780",
    high: "821",
  });
});

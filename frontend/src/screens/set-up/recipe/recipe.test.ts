import { expect, test } from "vitest";
import { DENSITY_ROWS, SPREAD_ROWS } from "../../../calc/tables/density.ts";
import { parseBody } from "../../../entries/parse.ts";
import { lineAmount, publishedUnit } from "./amounts.ts";
import { differences } from "./differences.ts";
import { BLANK_LINE, BLANK_STEP } from "./items.ts";
import { isOfNewerApp } from "./publishing.ts";
import {
  blankRecipe,
  movedUp,
  nextId,
  nextVersionNumber,
  recipeTyped,
  versionBody,
} from "./typed.ts";

const TABLE = { rows: DENSITY_ROWS, ranges: SPREAD_ROWS };
const SUGAR = { measured_by: "mass", density_of: "sugar, granulated" };
const TWO_CUPS = {
  ...BLANK_LINE,
  line: "1",
  material: "sugar",
  amount: "2",
  amount_unit: "us_cup",
};

const JAM = {
  recipe: "jam",
  number: 2,
  name: "Mango jam",
  product: "mango-jam",
  makes: { amount: "16.93", unit: "kg" },
  packs: 66,
  lines: [
    { line: "1", material: "mango", amount: { amount: "15", unit: "kg" }, below: "0.15" },
    { line: "2", material: "pectin", amount: { amount: "60", unit: "g" }, soluble_percent: "100" },
  ],
  steps: [
    {
      step: "1",
      says: "Fill hot.",
      measures: "temperature",
      unit: "degC",
      low: "85",
      set_by: "the tested recipe",
      caution: "Hot jam burns.",
    },
  ],
  target_solids_percent: "68",
  life: { sort: "best_before", length: 12, unit: "months" },
};

const AMOUNTS = new Map([
  ["1", { amount: "15", unit: "kg", note: null }],
  ["2", { amount: "60", unit: "g", note: null }],
]);

test("a version of a newer app is not published over: what this one does not know would be lost", () => {
  const [step] = JAM.steps;

  expect(isOfNewerApp(JAM)).toBe(false);
  expect(isOfNewerApp({ ...JAM, rest_hours: "12" })).toBe(true);
  expect(isOfNewerApp({ ...JAM, steps: [{ ...step, measures: "viscosity" }] })).toBe(true);
});

test("two US cups of sugar are published as 400 g by the published 200 g a cup", () => {
  const found = lineAmount(TWO_CUPS, SUGAR, TABLE);

  expect(found.is === "ready" && [found.amount, found.unit]).toEqual(["400", "g"]);
  expect(publishedUnit(TWO_CUPS, SUGAR)).toBe("g");
});

test("a unit of what the material is measured by stays as it was typed", () => {
  const pounds = { ...TWO_CUPS, amount: "1.50", amount_unit: "lb" };

  expect(lineAmount(pounds, SUGAR, null)).toEqual({
    is: "ready",
    amount: "1.50",
    unit: "lb",
    by: null,
  });
});

test("cups of something without a density ask for one", () => {
  const found = lineAmount(TWO_CUPS, { measured_by: "mass", density_of: "" }, TABLE);

  expect(found).toEqual({ is: "open", what: "density" });
});

test("pieces of something weighed are refused", () => {
  const pieces = { ...TWO_CUPS, amount_unit: "pc" };

  expect(lineAmount(pieces, SUGAR, TABLE)).toEqual({ is: "open", what: "measure" });
});

test("while the table is not read a cup waits for it", () => {
  expect(lineAmount(TWO_CUPS, SUGAR, null)).toEqual({ is: "loading" });
});

test("nothing typed, or nought, is no amount", () => {
  const nought = { ...TWO_CUPS, amount: "0.0" };

  expect(lineAmount(nought, SUGAR, TABLE)).toEqual({ is: "open", what: "amount" });
});

test("a version that is only opened becomes the same version again", () => {
  const typed = recipeTyped("jam", { entry: "e2", body: JAM });

  expect(versionBody(typed, { number: 2, amounts: AMOUNTS })).toEqual(JAM);
});

test("what is published is an entry this phone accepts", () => {
  const body = versionBody(recipeTyped("jam", { entry: "e2", body: JAM }), {
    number: 3,
    amounts: AMOUNTS,
  });

  expect(parseBody("recipe_published", 1, body)).toEqual({ ...JAM, number: 3 });
});

test("limits of a step that checks nothing are not published", () => {
  const typed = {
    ...blankRecipe("r"),
    steps: [{ ...BLANK_STEP, step: "1", says: "Stir.", low: "80", unit: "degC" }],
  };

  const { steps } = versionBody(typed, { number: 1, amounts: new Map() });

  expect(steps).toEqual([{ step: "1", says: "Stir." }]);
});

test("where a cup was turned into grams the line says so beside what its writer noted", () => {
  const typed = { ...blankRecipe("r"), lines: [{ ...TWO_CUPS, note: "Sifted." }] };
  const amounts = new Map([["1", { amount: "400", unit: "g", note: "Written as 2 cup." }]]);

  const { lines } = versionBody(typed, { number: 1, amounts });

  expect(lines).toEqual([
    {
      line: "1",
      material: "sugar",
      amount: { amount: "400", unit: "g" },
      note: "Sifted. Written as 2 cup.",
    },
  ]);
});

test("versions that say the same differ in nothing", () => {
  expect(differences(JAM, { ...JAM, number: 3 })).toEqual([]);
});

test("a changed limit, a new line and a step taken out are named one by one", () => {
  const [mango, pectin] = JAM.lines;
  const acid = { line: "3", material: "acid", amount: { amount: "55", unit: "g" } };
  const after = { ...JAM, lines: [{ ...mango, below: "0.10" }, pectin, acid], steps: [] };

  expect(differences(JAM, after)).toEqual([
    {
      of: "line",
      item: { ...mango, below: "0.10" },
      at: 0,
      change: "changed",
      field: "below",
      from: "0.15",
      to: "0.10",
    },
    { of: "line", item: acid, at: 2, change: "added" },
    { of: "step", item: JAM.steps[0], at: 0, change: "removed" },
  ]);
});

test("lines in another order are a difference", () => {
  const after = { ...JAM, lines: movedUp(JAM.lines, 1) };

  expect(differences(JAM, after)).toEqual([{ of: "order_lines" }]);
});

test("a new line takes no id that stands there", () => {
  expect(nextId([])).toBe("1");
  expect(nextId(["mango", "2", "7"])).toBe("8");
});

test("the next version comes after the highest, also where one is missing", () => {
  expect(nextVersionNumber([])).toBe(1);
  expect(nextVersionNumber([{ number: 1 }, { number: 4 }])).toBe(5);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { itemsIn, quantityIn } from "../../../calc/bodies.ts";
import { parseBody } from "../../../entries/parse.ts";
import { isRefusal } from "../../../entries/refusals.ts";
import type { Body } from "../../../state/types.ts";
import { csvOf, jsonOf, rowsIn } from "./file_text.ts";
import { recipesIn } from "./reading.ts";
import { rowsOf } from "./rows.ts";
import { versionBody } from "./typed.ts";

const MATERIALS = new Map([
  ["apple", "Apple, tart"],
  ["onion", 'Onion "red"'],
  ["chutney", "Apple chutney; mild"],
  ["jar", "Jar 250"],
]);
const nameOf = (id: string) => MATERIALS.get(id) ?? id;
const idsOf = (name: string) =>
  [...MATERIALS].flatMap(([id, called]) => (called === name ? [id] : []));

const decimal = fc
  .tuple(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 3 }))
  .map(([units, places]) => (units / 10 ** places).toFixed(places));
const signed = fc.tuple(fc.constantFrom("", "-"), decimal).map((parts) => parts.join(""));
// Signs that a cell must survive: quotes, delimiters, new lines, what a spreadsheet calculates.
const words = fc
  .array(fc.constantFrom("Stir", '"', ",", ";", "\n", "\t", "=1+1", "'", "@", "-", " ", "é", "5"), {
    minLength: 1,
    maxLength: 8,
  })
  .map((parts) => parts.join("").trim())
  .filter((text) => text !== "");
const maybe = <Value>(name: string, value: fc.Arbitrary<Value>) =>
  fc.option(value, { nil: undefined }).map((made) => (made === undefined ? {} : { [name]: made }));
const merged = (...parts: fc.Arbitrary<Body>[]) =>
  fc.tuple(...parts).map((made): Body => Object.assign({}, ...made));
const quantity = fc.record({ amount: decimal, unit: fc.constantFrom("g", "kg", "lb") });
const percent = fc.integer({ min: 1, max: 99 }).map(String);

const yields = merged(
  fc.record({ percent, by: fc.constantFrom("table", "own", "typed") }),
  maybe("source", words),
  maybe("prepared_as", words),
);
const share = fc.option(fc.record({ percent, percent_of: fc.constantFrom("base", "whole") }));
const line = merged(
  fc.record({ material: fc.constantFrom("apple", "onion", "jar"), amount: quantity }),
  share.map((made) => made ?? {}),
  maybe("is_base", fc.constant(true)),
  maybe("state", fc.constantFrom("as_bought", "prepared")),
  maybe("yields", yields),
  maybe("below", decimal),
  maybe("above", decimal),
  maybe("level", fc.constantFrom("90", "99")),
  maybe("soluble_percent", percent),
  maybe("note", words),
);
const check = fc.oneof(
  fc.constant({}),
  merged(
    fc.record({ measures: fc.constantFrom("temperature", "ph"), unit: fc.constant("degC") }),
    maybe("low", signed),
    maybe("high", signed),
    maybe("set_by", words),
  ),
);
const acidity = merged(
  fc.record({ measures: fc.constant("acidity"), unit: fc.constant("%") }),
  maybe("acid", fc.constantFrom("citric", "acetic")),
);
const weighed = fc.record({
  measures: fc.constantFrom("salt_weighed", "sugar_weighed"),
  counts: fc.constant([{ line: "1", percent: "62.5" }]),
});
const step = merged(
  fc.record({ says: words }),
  fc.oneof(check, acidity, weighed),
  maybe("minutes", decimal),
  maybe("caution", words),
);
const pack = merged(
  fc.record({ net: quantity }),
  maybe("word", fc.constantFrom("jar", "tub")),
  maybe("packaging", fc.constant("jar")),
);
const numbered = (name: string, items: fc.Arbitrary<Body>, least: number) =>
  fc
    .array(items, { minLength: least, maxLength: 5 })
    .map((made) => made.map((each, at): Body => ({ [name]: String(at + 1), ...each })));
const life = fc.record({
  sort: fc.constantFrom("use_by", "best_before"),
  length: fc.integer({ min: 1, max: 400 }),
  unit: fc.constantFrom("days", "months"),
});
const version = merged(
  fc.record({ name: words, product: fc.constant("chutney"), makes: quantity }),
  fc.record({ lines: numbered("line", line, 1), steps: numbered("step", step, 0) }),
  maybe("packs", fc.integer({ min: 1, max: 999 })),
  maybe("target_solids_percent", percent),
  maybe("loss_percent", percent),
  numbered("size", pack, 0).map((made): Body => (made.length === 0 ? {} : { pack_sizes: made })),
  maybe("life", life),
  maybe("does_not_scale", words),
  maybe("note", words),
);

/** The version a file becomes again, with the amounts its shares had. */
function broughtBack(text: string, body: Body): Body {
  const { rows, wrong } = rowsIn(text);
  const found = recipesIn(rows, idsOf);
  expect([...wrong, ...found.wrong]).toEqual([]);
  const amounts = new Map(
    itemsIn(body, "lines").map((each) => {
      const amount = quantityIn(each, "amount") ?? { amount: "", unit: "" };
      return [String(each.line), { ...amount, note: null }] as const;
    }),
  );
  const [only] = found.recipes;
  if (only === undefined) throw new Error("no recipe in the file");
  const { recipe, number, ...rest } = versionBody(only.typed, { number: 1, amounts });
  expect([recipe, number]).toEqual(["", 1]);
  return rest;
}

test("a recipe written to CSV and read again is the same recipe", () => {
  fc.assert(
    fc.property(version, (body) => {
      const rows = rowsOf({ entry: "e", number: 1, body }, nameOf);

      expect(broughtBack(csvOf(rows), body)).toEqual(body);
    }),
  );
});

test("a recipe written to JSON and read again is the same recipe", () => {
  fc.assert(
    fc.property(version, (body) => {
      const rows = rowsOf({ entry: "e", number: 1, body }, nameOf);

      expect(broughtBack(jsonOf(rows), body)).toEqual(body);
    }),
  );
});

test("what the property tests write is what a phone may publish", () => {
  fc.assert(
    fc.property(version, (body) => {
      const parsed = parseBody("recipe_published", 1, { recipe: "r", number: 1, ...body });

      expect(isRefusal(parsed) ? parsed : null).toBeNull();
    }),
  );
});

const HEAD = "recipe,part,id,what,amount,unit,percent,state,low,measures";
const CHUTNEY = "Chutney,recipe,,Apple chutney; mild,8,kg";

function read(...lines: string[]) {
  const { rows, wrong } = rowsIn([HEAD, ...lines].join("\n"));
  const found = recipesIn(rows, idsOf);
  return { ...found, wrong: [...wrong, ...found.wrong] };
}

test("a number with a comma is told with its row and column, and the rest is read", () => {
  const { wrong, recipes } = read(CHUTNEY, 'Chutney,line,1,"Apple, tart","6,5",kg');

  expect(wrong).toEqual([
    {
      number: 3,
      column: "amount",
      sentence: '"6,5" is no number; write it with a point, as 12.5',
    },
  ]);
  expect(recipes[0]?.typed.lines[0]).toMatchObject({
    material: "apple",
    amount: "",
    amount_unit: "kg",
  });
});

test("a material that is not set up here is offered once, however often it stands there", () => {
  const { missing, wrong } = read(
    CHUTNEY,
    "Chutney,line,1,Raisin,1,kg",
    "Chutney,line,2,raisin,1,kg",
  );

  expect(missing).toEqual([{ name: "Raisin", part: "line" }]);
  expect(wrong.map(({ number, column }) => [number, column])).toEqual([
    [3, "what"],
    [4, "what"],
  ]);
});

test("semicolons and tabulators part cells too", () => {
  const { rows, wrong } = rowsIn("recipe;part;what\nChutney;line;salt\n");

  expect(wrong).toEqual([]);
  expect(rows).toEqual([{ number: 2, row: { recipe: "Chutney", part: "line", what: "salt" } }]);
});

test("a column nobody knows is named, and a text without columns too", () => {
  expect(rowsIn("recipe,part,colour\n").wrong).toMatchObject([{ number: 1, column: "colour" }]);
  expect(rowsIn("apples and onions").wrong).toMatchObject([{ number: 1, column: "recipe" }]);
  expect(rowsIn("[1").wrong).toMatchObject([{ number: 1, column: "recipe" }]);
});

test("a unit nobody has, a part of nothing and an id that stands twice are each told", () => {
  const { wrong } = read(
    CHUTNEY,
    'Chutney,line,1,"Apple, tart",6,cup',
    'Chutney,line,1,"Apple, tart",6,kg',
    "Chutney,spice,,Salt,6,kg",
  );

  expect(wrong.map(({ number, column }) => [number, column])).toEqual([
    [3, "unit"],
    [4, "id"],
    [5, "part"],
  ]);
});

test("a line that counts and is not there is told, and so is a count without its percent", () => {
  const counting = (counted: string) =>
    rowsIn(
      `recipe,part,id,what,measures,counted\nChutney,line,1,Salt,,\nChutney,step,1,Salt it,salt_weighed,${counted}\n`,
    );
  const told = (counted: string) =>
    recipesIn(counting(counted).rows, idsOf)
      .wrong.filter(({ column }) => column === "counted")
      .map(({ number, sentence }) => [number, sentence]);

  expect(told("1:100")).toEqual([]);
  expect(told("7:100")).toEqual([
    [3, '"7:100" is no line with its percent; write the id of a line and a percent, as 3:100'],
  ]);
  expect(told("1")).toHaveLength(1);
});

test("a recipe without its own row, and one with two", () => {
  expect(read('Chutney,line,1,"Apple, tart",6,kg').wrong).toMatchObject([
    { number: 2, column: "part" },
  ]);
  expect(read(CHUTNEY, CHUTNEY).wrong).toMatchObject([{ number: 3, column: "part" }]);
});

test("a cell that a spreadsheet would calculate is kept as words", () => {
  const csv = csvOf([{ recipe: "=HYPERLINK(1)", part: "line", low: "-18", note: "-spice" }]);

  expect(csv).toContain("'=HYPERLINK(1)");
  expect(csv).toContain(",-18,");
  expect(rowsIn(csv).rows[0]?.row).toEqual({
    recipe: "=HYPERLINK(1)",
    part: "line",
    low: "-18",
    note: "-spice",
  });
});

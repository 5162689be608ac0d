import { expect, test } from "vitest";
import { textIn } from "./file_bytes.ts";
import { csvOf, rowsIn } from "./file_text.ts";
import { recipesIn } from "./reading.ts";

const HEAD = "recipe,part,id,what,amount,unit,percent,note";
const JAM = "Jam,recipe,,Plum jam,4,kg";
const known = (name: string) => [name];

/** Row, column and sentence of all that is wrong, as they are told. */
function told(text: string): string[] {
  const { rows, wrong } = rowsIn(text);
  return [...wrong, ...recipesIn(rows, known).wrong].map(
    ({ number, column, sentence }) => `${number} ${column}: ${sentence}`,
  );
}

const csv = (...lines: string[]) => [HEAD, ...lines].join("\n");
const json = (...fields: string[]) =>
  `[{"recipe":"Jam","part":"recipe","what":"Plum jam","unit":"kg",${fields.join(",")}}]`;

test("a file in UTF-16 with its mark is read, and one in another code is not", () => {
  const bytes = (text: string, bits: (code: number) => number[]) =>
    new Uint8Array([...text].flatMap((letter) => bits(letter.charCodeAt(0))));
  const text = csv(JAM);

  expect(textIn(bytes(`\uFEFF${text}`, (code) => [code & 255, code >> 8]))).toBe(text);
  expect(textIn(bytes(`\uFEFF${text}`, (code) => [code >> 8, code & 255]))).toBe(text);
  expect(textIn(new TextEncoder().encode(`\uFEFF${text}`))).toBe(text);
  expect(textIn(bytes("Crème", (code) => [code]))).toBeNull();
  expect(textIn(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))).toBeNull();
});

test("lines may end in any of the three ways", () => {
  for (const end of ["\n", "\r\n", "\r"]) {
    expect(rowsIn(csv(JAM, "Jam,line,1,Plums,5,kg").replaceAll("\n", end)).rows).toHaveLength(2);
  }
});

test("what stands behind the last column is told, not dropped", () => {
  expect(told(csv(`${JAM},,2,5`))).toEqual([
    '2 note: "5" stands behind the last column; put quotes around a cell with a comma in it',
  ]);
  expect(told(csv(`${JAM},,,,, `))).toEqual([]);
});

test("a column that stands there twice is told, in both forms", () => {
  const twice = "this column stands there twice; take one out";

  expect(told("recipe,part,what,amount,unit,what\nJam,recipe,Plum jam,4,kg,\n")).toEqual([
    `1 what: ${twice}`,
  ]);
  expect(told(json('"amount":"4"', '"amount":"5"'))).toEqual([`1 amount: ${twice}`]);
  expect(told(json('"amount":"4"', '"note":"\\"amount\\":"'))).toEqual([]);
});

test("a list or an object in a cell is told, and a name of the language is a name", () => {
  expect(told(json('"amount":"4"', '"note":["a"]'))).toEqual([
    "1 note: it holds a list or an object; write one text or number",
  ]);
  expect(told(json('"amount":4', '"__proto__":{"unit":"g"}'))).toEqual([
    "1 __proto__: there is no such column; take it out or correct its name",
  ]);
  const { recipes } = recipesIn(rowsIn(json('"amount":4').replace("Jam", "__proto__")).rows, known);
  expect(recipes[0]?.typed).toMatchObject({ name: "__proto__", makes: "4" });
});

test("a number in JSON keeps its digits", () => {
  const [read] = rowsIn(json('"amount":2.50', '"percent":123456789012345678901')).rows;

  expect(read?.row).toMatchObject({ amount: "2.50", percent: "123456789012345678901" });
});

test("a number below zero and an amount of nothing are told where they stand", () => {
  expect(told(csv(JAM, "Jam,line,1,Plums,-5,kg", "Jam,line,2,Sugar,0.0,kg"))).toEqual([
    '3 amount: "-5" is below zero; write it without the minus',
    "4 amount: it is zero; write how much",
  ]);
});

test("a recipe of more lines than a recipe may have is read as far as it may, and at once", () => {
  const lines = Array.from({ length: 50_000 }, () => "Jam,line,,Plums,5,kg");
  const { rows } = rowsIn(csv(JAM, ...lines));

  const { recipes, wrong } = recipesIn(rows, known);

  expect(recipes[0]?.typed.lines).toHaveLength(60);
  expect(wrong).toEqual([
    {
      number: 63,
      column: "part",
      sentence: "a recipe has at most 60 rows of this part; take the others out",
    },
  ]);
});

test("five thousand recipes come back as they went", () => {
  const rows = Array.from({ length: 5_000 }, (_, at) => ({
    recipe: `=Jam ${at}\n"${at}"`,
    part: "recipe",
    what: "Plum jam",
    amount: "4.50",
    unit: "kg",
  }));

  const read = rowsIn(csvOf(rows));

  expect(read.wrong).toEqual([]);
  expect(read.rows.map(({ row }) => row)).toEqual(rows);
  expect(recipesIn(read.rows, known).recipes).toHaveLength(5_000);
});

test("lists within lists without end are no recipes", () => {
  expect(told("[".repeat(200_000) + "]".repeat(200_000))).toEqual([
    "1 recipe: This is not the JSON of an export: it must be a list of rows.",
  ]);
});

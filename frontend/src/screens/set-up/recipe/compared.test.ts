import { expect, test } from "vitest";
import { KINDS } from "../../../entries/kinds.ts";
import { changeWords } from "./change_words.ts";
import { compared } from "./compared.ts";
import { differences } from "./differences.ts";

/** What tells versions, lines and steps apart. */
const NOT_COMPARED = ["recipe", "number", "line", "step"];

const JAM = {
  name: "Mango jam",
  loss_percent: "3",
  lines: [
    { line: "1", material: "mango", amount: { amount: "10", unit: "kg" }, state: "as_bought" },
    { line: "2", material: "sugar", amount: { amount: "8", unit: "kg" } },
  ],
  steps: [{ step: "1", says: "Boil.", minutes: "20" }],
};

test("every line stands there, with what became of it", () => {
  const [mango, sugar] = JAM.lines;
  const lemon = { line: "3", material: "lemon", amount: { amount: "200", unit: "g" } };
  const after = { ...JAM, loss_percent: "4", lines: [{ ...mango, state: "prepared" }, lemon] };

  const { recipe, lines, steps, order } = compared(JAM, after);

  expect(recipe).toEqual([{ of: "recipe", field: "loss_percent", from: "3", to: "4" }]);
  expect(lines.map(({ id, is }) => [id, is])).toEqual([
    ["1", "changed"],
    ["3", "added"],
    ["2", "removed"],
  ]);
  expect(lines[0]?.changes.map(({ field, from, to }) => [field, from, to])).toEqual([
    ["state", "as_bought", "prepared"],
  ]);
  expect(lines[2]?.item).toEqual(sugar);
  expect([steps[0]?.is, order]).toEqual(["same", []]);
});

test("two amounts differ by so much, in the unit of the later one", () => {
  const was = { amount: "10", unit: "kg" };

  expect(changeWords(was, { amount: "10500", unit: "g" }, null)).toBe("+500\u00a0g, +5\u00a0%");
  expect(changeWords(was, { amount: "8", unit: "kg" }, null)).toBe(
    "\u22122\u00a0kg, \u221220\u00a0%",
  );
});

test("what cannot be subtracted is not", () => {
  expect(changeWords({ amount: "1", unit: "kg" }, { amount: "1", unit: "L" }, null)).toBeNull();
  expect(changeWords("as_bought", "prepared", null)).toBeNull();
  expect(changeWords(undefined, "3", "g")).toBeNull();
  expect(changeWords("3", "3.0", "g")).toBeNull();
});

test("percents differ in points", () => {
  expect(changeWords("20", "25", "%")).toBe("+5 points");
});

test("whatever a version may hold is compared: nothing in it can change unseen", () => {
  const { fields } = KINDS.recipe_published;
  const isNamed = ({ name }: { name: string }) => !NOT_COMPARED.includes(name);
  const changed = (was: object, now: object) => differences({ ...was }, { ...now }).length;
  const unseen = fields.flatMap((field) => {
    const { name } = field;
    if (name !== "lines" && name !== "steps") {
      return isNamed(field) && changed({}, { [name]: "new" }) === 0 ? [name] : [];
    }
    return (field.fields ?? [])
      .filter(isNamed)
      .filter((part) => changed({ [name]: [{}] }, { [name]: [{ [part.name]: "new" }] }) === 0)
      .map((part) => `${name}.${part.name}`);
  });

  expect(unseen).toEqual([]);
});

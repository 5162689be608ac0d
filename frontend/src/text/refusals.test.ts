import { expect, test } from "vitest";
import { KINDS } from "../entries/kinds.ts";
import { fieldWords } from "./refusals.ts";

/** What hands type; the rest is chosen by the app, or is a definition with labels of its own. */
const TYPED = ["text", "decimal", "decimals", "quantity", "day"];
const BY_THE_APP = /(^|\.)(line|step|stage|unit|set_by|division|repeatability|finding)$/;

interface Path {
  path: string;
  type: string;
}

interface Declared {
  readonly name: string;
  readonly type: string;
  readonly fields?: readonly Declared[];
}

test("every field that hands fill in has a name people know", () => {
  const paths = Object.values(KINDS)
    .filter((kind) => !/_(defined|changed)$/.test(kind.name))
    .flatMap((kind) => pathsOf(kind.fields, ""))
    .filter(({ path, type }) => TYPED.includes(type) && !BY_THE_APP.test(path));

  expect(paths.length).toBeGreaterThan(20);
  expect(paths.filter(({ path }) => fieldWords(path) === path)).toEqual([]);
});

test("the number of an amount is called as the amount is", () => {
  expect(fieldWords("counted.amount")).toBe("The count");
  expect(fieldWords("from[1].amount.amount")).toBe("The amount");
  expect(fieldWords("body.reading.shown")).toBe("The reading");
});

function pathsOf(fields: readonly Declared[], at: string): Path[] {
  return fields.flatMap((field) => [
    { path: at + field.name, type: field.type },
    ...pathsOf(field.fields ?? [], `${at}${field.name}.`),
  ]);
}

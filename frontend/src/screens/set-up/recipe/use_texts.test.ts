import { expect, test } from "vitest";
import { added, withoutOne } from "./use_texts.ts";

const PASTED = { name: "", text: "recipe,part" };
const CSV = { name: "recipes.csv", text: "recipe,part,what" };

test("a file stands beside what was typed, and is the one that is looked at", () => {
  expect(added([PASTED], [CSV])).toEqual({ texts: [PASTED, CSV], at: 1 });
});

test("the blank text gives way to a file, and a file never to one of its name", () => {
  const other = { ...CSV, text: "recipe,part,unit" };
  const { texts } = added([{ name: "", text: "" }], [CSV]);

  expect(texts).toEqual([CSV]);
  expect(added(texts, [other])).toEqual({
    texts: [CSV, { name: "recipes.csv (2)", text: other.text }],
    at: 1,
  });
});

test("nothing chosen changes nothing, the last one taken away leaves a blank text", () => {
  expect(added([PASTED, CSV], [])).toEqual({ texts: [PASTED, CSV], at: 1 });
  expect(withoutOne([PASTED, CSV], 1)).toEqual({ texts: [PASTED], at: 0 });
  expect(withoutOne([CSV], 0)).toEqual({ texts: [{ name: "", text: "" }], at: 0 });
});

import { expect, test } from "vitest";
import { BLANK_LINE } from "./items.ts";
import { proposedFor, takenYield } from "./own_yields.ts";

const MANGO = { ...BLANK_LINE, line: "1", material: "mango", yield_percent: "84" };

function batches(...preparations: [string, string][]) {
  return preparations.map(([prepared, bought]) => ({
    recipe: "jam",
    lines: [{ material: "mango", unit: "g", in_base: bought, prepared }],
  }));
}

const SIX = batches(
  ["8600", "10000"],
  ["8800", "10000"],
  ["4400", "5000"],
  ["8500", "10000"],
  ["8900", "10000"],
  ["8720", "10000"],
);

test("six preparations say another yield than the table: it is offered, with its spread", () => {
  // 47 920 of 55 000 g.
  expect(proposedFor(MANGO, { recipe: "jam", batches: SIX })).toEqual({
    percent: "87.1",
    lowest: "85",
    highest: "89",
    counted: 6,
  });
});

test("four preparations are not enough, nor are those of another recipe", () => {
  expect(proposedFor(MANGO, { recipe: "jam", batches: SIX.slice(0, 4) })).toBeNull();
  expect(proposedFor(MANGO, { recipe: "chutney", batches: SIX })).toBeNull();
});

test("what was taken is not offered again, and says what it rests on", () => {
  const proposed = proposedFor(MANGO, { recipe: "jam", batches: SIX });
  if (proposed === null) throw new Error("nothing is offered");

  const taken = { ...MANGO, ...takenYield(proposed, "6 preparations, 85 to 89 %") };

  expect(taken).toMatchObject({ yield_percent: "87.1", yield_by: "own" });
  expect(taken.yield_source).toBe("6 preparations, 85 to 89 %");
  expect(proposedFor({ ...BLANK_LINE, ...taken }, { recipe: "jam", batches: SIX })).toBeNull();
});

test("a line that goes in prepared has no yield to measure", () => {
  const prepared = { ...MANGO, state: "prepared" };

  expect(proposedFor(prepared, { recipe: "jam", batches: SIX })).toBeNull();
});

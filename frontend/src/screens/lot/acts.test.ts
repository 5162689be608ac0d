import { expect, test } from "vitest";
import { type ActTyped, actOf, BLANK, earlierLife, entryOf, missing, variance } from "./acts.ts";

const ABOUT = {
  lot: "SU-261028-K7-1",
  material: "su",
  isStall: false,
  newLot: "SU-261125-K7-1",
  lives: [
    { sort: "best_before", on: "2027-01-10" },
    { sort: "use_by", on: "2026-12-01" },
  ],
};

function typed(part: Partial<ActTyped>): ActTyped {
  return { ...BLANK, place: "k1", unit: "kg", amount: "1.5", ...part } as ActTyped; // each part is a text
}

test("a path that names no act is none", () => {
  expect(actOf("top-up")).toBe("top-up");
  expect(actOf("label")).toBeNull();
});

test("a count of nothing is a count, but nothing cannot be moved", () => {
  expect(missing("count", typed({ amount: "0" }), "QU-1")).toBeNull();
  expect(missing("move", typed({ amount: "0", to_place: "s1" }), "QU-1")?.field).toBe("amount");
});

test("a loss needs a reason", () => {
  expect(missing("loss", typed({}), "QU-1")?.field).toBe("reason");
  expect(missing("loss", typed({ reason: "spilled" }), "QU-1")).toBeNull();
});

test("a move names both places in one entry", () => {
  expect(entryOf("move", typed({ to_place: "m1" }), ABOUT)).toEqual({
    kind: "transfer",
    body: {
      lot: "SU-261028-K7-1",
      amount: { amount: "1.5", unit: "kg" },
      from_place: "k1",
      to_place: "m1",
    },
  });
});

test("a loss at a stall says so", () => {
  const entry = entryOf("loss", typed({ reason: "sample" }), { ...ABOUT, isStall: true });

  expect(entry.body).toMatchObject({ stage: "stall", reason: "sample" });
});

test("what is poured together becomes a new lot with the earlier date", () => {
  const entry = entryOf("top-up", typed({ other: "SU-261015-K7-4", other_amount: "0.6" }), ABOUT);

  expect(entry.kind).toBe("topped_up");
  expect(entry.body).toEqual({
    lot: "SU-261125-K7-1",
    material: "su",
    place: "k1",
    from: [
      { lot: "SU-261028-K7-1", amount: { amount: "1.5", unit: "kg" } },
      { lot: "SU-261015-K7-4", amount: { amount: "0.6", unit: "kg" } },
    ],
    life: { sort: "use_by", on: "2026-12-01" },
  });
});

test("without any date what is poured together has none", () => {
  expect(earlierLife([null, null])).toBeNull();
});

test("a count is held against the record in base units", () => {
  expect(variance(typed({ amount: "1.5" }), "1500")).toEqual({ is: "same", by: "0" });
  expect(variance(typed({ amount: "1.25" }), "1500")).toEqual({ is: "less", by: "250" });
  expect(variance(typed({ amount: "2" }), "1500")).toEqual({ is: "more", by: "500" });
});

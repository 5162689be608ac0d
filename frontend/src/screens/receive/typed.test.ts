import { expect, test } from "vitest";
import { BLANK, missing, type ReceiveTyped, receiptOf, storeLevels } from "./typed.ts";

const FILLED: ReceiveTyped = {
  ...BLANK,
  source: "t1",
  material: "su",
  amount: "12.50",
  unit: "kg",
  place: "k1",
};

test("the main key names the first open thing", () => {
  expect(missing(BLANK)?.field).toBe("source");
  expect(missing({ ...FILLED, amount: "0" })?.field).toBe("amount");
  expect(missing({ ...FILLED, place: "" })?.field).toBe("place");
  expect(missing(FILLED)).toBeNull();
});

test("a written name stands for a source", () => {
  expect(missing({ ...FILLED, source: "", source_name: "River farm" })).toBeNull();
});

test("refused goods need a reason", () => {
  expect(missing({ ...FILLED, condition: "refused" })?.field).toBe("refused_why");
});

test("the digits that were read are kept", () => {
  expect(receiptOf(FILLED, "SU-261125-K7-1")).toEqual({
    lot: "SU-261125-K7-1",
    material: "su",
    source: "t1",
    amount: { amount: "12.50", unit: "kg" },
    place: "k1",
    condition: "fit",
  });
});

test("mark, date and reason stand in the receipt only where they were given", () => {
  const typed = { ...FILLED, their_lot: " L 42 ", life_sort: "use_by", life_on: "2026-12-01" };

  expect(receiptOf(typed, "SU-261125-K7-1")).toMatchObject({
    their_lot: "L 42",
    life: { sort: "use_by", on: "2026-12-01" },
  });
  expect(receiptOf({ ...typed, has_no_mark: true }, "X")).not.toHaveProperty("their_lot");
  expect(
    receiptOf({ ...typed, condition: "refused", refused_why: "wet sacks" }, "X"),
  ).toMatchObject({ condition: "refused", refused_why: "wet sacks" });
});

test("the store rises by what comes in, and not by what is refused", () => {
  expect(storeLevels(FILLED, ["600", "7400"])).toEqual({ before: "8000", after: "20500" });
  expect(storeLevels({ ...FILLED, condition: "refused" }, ["8000"])).toEqual({
    before: "8000",
    after: "8000",
  });
});

import { expect, test } from "vitest";
import { type RatesTyped, ratesMissing } from "./typed.ts";

function typed(part: Partial<RatesTyped>): RatesTyped {
  return {
    since: "2026-03-02",
    pay: "",
    by: "none",
    rate: "",
    percent_of: "materials",
    of: "price",
    percent: "30",
    commission: "",
    coin: "0.05",
    rule: "up",
    ...part,
  };
}

test("rates may go without overhead and without a price proposal, not with half of one", () => {
  expect(ratesMissing(typed({}))).toBeNull();
  expect(ratesMissing(typed({ percent: "", coin: "" }))).toBeNull();
  expect(ratesMissing(typed({ by: "kg" }))).toEqual({
    field: "rate",
    sentence: "Type the amount",
  });
  expect(ratesMissing(typed({ percent: "" }))?.field).toBe("percent");
  expect(ratesMissing(typed({ coin: "" }))?.field).toBe("coin");
  expect(ratesMissing(typed({ coin: "0" }))?.sentence).toBe("A coin is worth more than nothing.");
});

test("a margin and what a stall keeps leave something of the price, a markup may be more", () => {
  const nothing = "Margin and what the stall keeps leave nothing of the price.";
  expect(ratesMissing(typed({ percent: "100" }))?.sentence).toBe(nothing);
  expect(ratesMissing(typed({ percent: "80", commission: "20" }))?.sentence).toBe(nothing);
  expect(ratesMissing(typed({ percent: "80", commission: "19" }))).toBeNull();
  expect(ratesMissing(typed({ of: "cost", percent: "250" }))).toBeNull();
});

import { expect, test } from "vitest";
import { costOfBatch } from "../../calc/batch_costs.ts";
import { askedFrom, evenFor, pricedOf, proposalFor } from "./proposal.ts";
import {
  expenseOf,
  labourOf,
  paidMissing,
  ratesBody,
  rowBody,
  sharedBody,
  sharedMissing,
  workMissing,
} from "./typed.ts";

/** B01 of the production pack: 2741.25 for 64 good jars. */
const B01 = {
  pack_of: null,
  lot: null,
  material: "jam",
  total: "2741.25",
  good: "64",
  per: "pc",
  each: "42.8320",
};
const MARGIN = { of: "price", percent: "30", commission: "", coin: "0.50", rule: "up" } as const;

test("a margin is of the price, a markup of the cost, and both are said of the price in coins", () => {
  const margin = proposalFor(B01, { ...MARGIN, fixed: "" });
  const markup = proposalFor(B01, { ...MARGIN, of: "cost", fixed: "" });

  expect(margin).toMatchObject({ exact: "61.1886", price: "61.50" });
  expect(markup).toMatchObject({ exact: "55.6816", price: "56.00" });
});

test("an incomplete cost has no price, and a margin of all of it neither", () => {
  const incomplete = proposalFor({ ...B01, total: null }, { ...MARGIN, fixed: "" });
  const nothing = proposalFor(B01, { ...MARGIN, percent: "100", fixed: "" });
  const noCoin = proposalFor(B01, { ...MARGIN, coin: "0", fixed: "" });
  const belowNothing = proposalFor({ ...B01, total: "-1.00" }, { ...MARGIN, fixed: "" });

  for (const each of [incomplete, nothing, noCoin, belowNothing])
    expect(each).toHaveProperty("why");
});

test("products that are not alike have a price each, by-products none", () => {
  const cost = costOfBatch("b1", "coop", new Map());
  const product = { material: "m", per: "pc", good: "2", each: "5", by: "mass", basis: "memory" };
  const main = { ...product, sort: "main", lot: "A", cost: "10.00" } as const;
  const other = { ...product, sort: "by_product", lot: "B", cost: "1.00" } as const;

  expect(pricedOf({ ...cost, products: [main, other] })).toMatchObject([
    { lot: "A", total: "10.00", good: "2", each: "5" },
  ]);
  expect(pricedOf({ ...cost, good: "4", total: "9", products: [main] })).toMatchObject([
    { lot: null, material: "m", total: "9", good: "4" },
  ]);
});

test("one product carries the cost, and a by-product says what it is worth", () => {
  const typed = { by: "mass", "sort A": "main", "sort B": "by_product", "value B": "" };
  const lots = ["A", "B"];

  expect(sharedMissing(typed, lots, "EUR")?.field).toBe("B");
  expect(sharedMissing({ ...typed, "value B": "2" }, lots, "EUR")).toBeNull();
  expect(sharedMissing({ ...typed, "sort A": "by_product" }, lots, "EUR")?.field).toBe("");
  expect(sharedMissing({ ...typed, "sort B": "main", by: "sales_value" }, lots, "EUR")?.field).toBe(
    "A",
  );
  expect(
    sharedBody({ ...typed, "value B": "2.50" }, lots, { batch: "b1", currency: "EUR" }),
  ).toEqual({
    batch: "b1",
    by: "mass",
    currency: "EUR",
    products: [
      { lot: "A", sort: "main" },
      { lot: "B", sort: "by_product", value_each: "2.50" },
    ],
  });
});

test("a fixed cost is covered by whole packs, and never by a price below the cost", () => {
  const answer = proposalFor(B01, { ...MARGIN, fixed: "" });

  expect(evenFor("100", answer, "42.8320")).toContain("6 to sell");
  expect(evenFor("100", answer, "99")).toContain("Never");
  expect(evenFor("", answer, "42.8320")).toBeNull();
});

test("what a person chose last counts more than what the cooperative set", () => {
  const rates = { proposal: { of: "cost", percent: "50", coin: "0.25", rule: "nearest" } };

  expect(askedFrom(null, rates)).toMatchObject({ of: "cost", percent: "50", coin: "0.25" });
  expect(askedFrom({ percent: "40" }, rates)).toMatchObject({ percent: "40", rule: "nearest" });
});

test("work is somebody's and of more than nothing; only what is unpaid says so", () => {
  const typed = { member: "ana", name: "", minutes: "90.", is_paid: true };

  expect(workMissing({ ...typed, member: "" })?.field).toBe("member");
  expect(workMissing({ ...typed, minutes: "0" })?.field).toBe("minutes");
  expect(labourOf(typed, "b1")).toEqual({ batch: "b1", member: "ana", minutes: "90" });
  expect(labourOf({ ...typed, member: "", name: " Al ", is_paid: false }, "b1")).toEqual({
    batch: "b1",
    name: "Al",
    minutes: "90",
    is_paid: false,
  });
});

test("a gift has a price of nothing, and a correction needs its reason", () => {
  const typed = { price: "0", reason: "" };

  expect(paidMissing(typed, { currency: "EUR", isCorrected: false })).toBeNull();
  expect(paidMissing(typed, { currency: "EUR", isCorrected: true })?.field).toBe("reason");
  expect(paidMissing(typed, { currency: null, isCorrected: false })).not.toBeNull();
});

test("what was left blank is left out", () => {
  const blank = { since: "2026-01-01", pay: "", by: "none", rate: "5", of: "price", percent: "" };
  const typed = { ...blank, commission: "", coin: "0.50", rule: "up", percent_of: "labour" };
  const percent = ratesBody({ ...typed, by: "percent" }, "c");

  expect(ratesBody(typed, "c")).toEqual({ cooperative: "c", since: "2026-01-01" });
  expect(percent.overhead).toEqual({ by: "percent", rate: "5", percent_of: "labour" });
  expect(expenseOf({ part: "fuel", amount: "85", says: " " }, "b1", "EUR")).toEqual({
    batch: "b1",
    part: "fuel",
    amount: "85",
    currency: "EUR",
  });
});

test("a corrected row keeps all but its number", () => {
  const common = { entry: "e", author: "ana", on: "2026-01-01" };
  const work = { ...common, member: "ana", name: null, minutes: "900", pay_per_hour: "70" };
  const spent = { ...common, part: "fuel", says: "gas", amount: "1", currency: "EUR" };

  expect(rowBody({ ...work, is_paid: false }, "b1", "90")).toEqual({
    batch: "b1",
    member: "ana",
    minutes: "90",
    is_paid: false,
    pay_per_hour: "70",
  });
  expect(rowBody(spent, "b1", "2")).toEqual({
    batch: "b1",
    part: "fuel",
    says: "gas",
    amount: "2",
    currency: "EUR",
  });
});

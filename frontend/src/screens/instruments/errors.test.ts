import { expect, test } from "vitest";
import { stepByStep } from "./errors.ts";
import { saidOf } from "./said.ts";

const filled = { sort: "water", reference: "2000", limit: "20" };

test("an error has no more digits than the check is good for", () => {
  const said = saidOf({
    says: "fit.within",
    values: { ...filled, error: "-3.84423", guard_band: "2.37" },
    unit: "mL",
  });

  expect(said).toContain("off by \u22123.8\u00a0mL");
});

test("what a scale showed gets no digits it did not show", () => {
  const values = { sort: "rising", reference: "5000", error: "2", guard_band: "0.983", limit: "6" };

  expect(saidOf({ says: "fit.within", values, unit: "g" })).toContain("off by +2\u00a0g");
});

test("a step in the list is as short as the sentence", () => {
  const point = {
    step: 0,
    sort: "water",
    reference: "5",
    error: "0.079055",
    u: "0.0688",
    limit: "0.25",
    verdict: "within",
    repeats: [],
  };

  expect(stepByStep([point], "mL").map(({ words }) => words)).toEqual([
    "Filled to 5\u00a0mL: +0.079\u00a0mL",
  ]);
});

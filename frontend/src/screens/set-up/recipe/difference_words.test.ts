import { expect, test } from "vitest";
import { fieldWords } from "./difference_words.ts";

const STEP = { step: "1", says: "Weigh the pulp.", measures: "prepared_mass", unit: "g" };

test("minutes differ in minutes, a limit in the unit of its step", () => {
  expect(fieldWords({ field: "minutes" }, { from: "40", to: "50" }, STEP)).toBe(
    "takes: 40\u00a0min becomes 50\u00a0min (+10\u00a0min, +25\u00a0%)",
  );
  expect(fieldWords({ field: "low" }, { from: "100", to: "90" }, STEP)).toBe(
    "not below: 100\u00a0g becomes 90\u00a0g (\u221210\u00a0g, \u221210\u00a0%)",
  );
});

test("the lines that count are named with their percents", () => {
  const counts = [
    { line: "1", percent: "100" },
    { line: "3", percent: "62" },
  ];

  expect(fieldWords({ field: "counts" }, { from: undefined, to: counts }, STEP)).toBe(
    "counted lines: \u2014 becomes line 1 with 100\u00a0%, line 3 with 62\u00a0%",
  );
});

import { expect, test } from "vitest";
import { readingBudget } from "./budget.ts";

const BODY = {
  reading: { unit: "g", shown: "273.4", tare: "213.2", division: "0.1", repeatability: "0.05" },
};

test("a net mass names what was shown, the bowl, the step and how they make it", () => {
  const budget = readingBudget(BODY);

  expect(budget?.value).toBe("60.2\u00a0g");
  expect(budget?.formula).toBe("273.4 \u2212 213.2");
  expect(budget?.inputs).toEqual([
    { name: "1st reading", value: "273.4\u00a0g" },
    { name: "Bowl", value: "213.2\u00a0g" },
    { name: "Smallest step", value: "0.1\u00a0g" },
    { name: "Repeatability", value: "0.05\u00a0g" },
    // sqrt(2 x 0.1^2 / 12) and sqrt(2) x 0.05, by hand
    { name: "From the display, u", value: "0.041\u00a0g" },
    { name: "From the spread of readings, u", value: "0.071\u00a0g" },
  ]);
});

test("the doubt is that of two readings, one-sided, by hand", () => {
  // u = sqrt(2 x 0.1^2 / 12 + 2 x 0.05^2) = 0.081650 g; 1.645 u = 0.13431 g
  const budget = readingBudget(BODY);

  expect(budget?.uncertainty).toBe("0.13\u00a0g");
  expect(budget?.coverage).toContain("1.645");
});

test("repeats are named each and their mean counts", () => {
  const budget = readingBudget({
    reading: { unit: "g", shown: "60.4", repeats: ["60.3"], division: "0.1" },
  });

  expect(budget?.value).toBe("60.35\u00a0g");
  expect(budget?.formula).toBe("mean of 2");
});

test("without a known step the doubt is not known, never nought", () => {
  const budget = readingBudget({ reading: { unit: "g", shown: "60.4" } });

  expect(budget?.uncertainty).toBe("not known");
  expect(budget?.coverage).toBeNull();
});

test("what was counted has no budget", () => {
  expect(readingBudget({ counted: { amount: "66", unit: "pc" } })).toBeNull();
});

import { expect, test } from "vitest";
import type { CorrectionLine } from "../../calc/instrument_checks.ts";
import { formulaWords } from "./line_words.ts";

const line: CorrectionLine = {
  unit: "g",
  sort: "least_squares",
  terms: 2,
  count: 9,
  centre: "3440",
  height: "0",
  slope: "0",
  sum_xx: "90000000",
  sd: "1.44",
  degrees: null,
  low: "0",
  high: "10000",
  is_significant: false,
};

test("a formula has a sign before its slope, also where there is none", () => {
  expect(formulaWords(line)).toMatch(/^correction = 0 \+ 0 \u00d7 \(reading/);
  expect(formulaWords({ ...line, height: "-1.33", slope: "-0.000417" })).toMatch(
    /^correction = \u22121\.33 \u2212 0\.000417 \u00d7 \(reading/,
  );
});

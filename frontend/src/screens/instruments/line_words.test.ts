import { expect, test } from "vitest";
import type { CorrectionLine } from "../../calc/instrument_checks.ts";
import { formulaWords, lineWords, rangeWords, spreadWords } from "./line_words.ts";

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

test("what was checked ends at the last reading, not at a round figure beyond it", () => {
  expect(rangeWords({ ...line, high: "5006.00000000000" })).toContain("5\u202f006\u00a0g");
  expect(rangeWords({ ...line, low: "-0.2" })).toContain("\u22120.2\u00a0g");
});

test("repeats that all read the same spread by no figure", () => {
  expect(spreadWords("0", "g")).toBe("Its repeats all read the same.");
  expect(spreadWords("1.2", "g")).toContain("1.2");
});

test("a correction is taken off or added, and grows or shrinks along the range", () => {
  const words = (height: string, slope: string) =>
    lineWords({ ...line, height, slope }).replace(/[\u00a0\u202f\u2009]/g, " ");

  expect(words("-3.2", "-0.0011")).toMatch(/^Take off 3\.20 g at 3 440 g, and [\d.]+ g more for/);
  expect(words("-3.2", "0.0011")).toMatch(/^Take off 3\.20 g at 3 440 g, and [\d.]+ g less for/);
  expect(words("3.2", "0.0011")).toMatch(/^Add 3\.20 g at 3 440 g, and [\d.]+ g more for/);
  expect(lineWords({ ...line, terms: 1, height: "-3.2" })).toMatch(/^Take 3\.20.g off every/);
});

import { expect, test } from "vitest";
import { errorShown, readAt, saidOf } from "./said.ts";

test("an error is told to the places its guard band is good for", () => {
  expect(errorShown("-0.083748", { limit: "0.5", guard_band: "0.1234" })).toBe("-0.08");
  expect(errorShown("1", { limit: "2", guard_band: "0.475" })).toBe("1");
});

test("an error that was rounded never looks like the limit it passes", () => {
  expect(errorShown("0.5004", { limit: "0.5", guard_band: "0.11" })).toBe("0.5004");
  expect(errorShown("0.496", { limit: "0.5", guard_band: "0.11" })).toBe("0.496");
});

test("an error at its limit stays as it is", () => {
  expect(errorShown("0.5", { limit: "0.5", guard_band: "0.11" })).toBe("0.5");
});

test("without a guard band the limit says how fine an error is told", () => {
  expect(errorShown("-0.976783", { limit: "12", guard_band: null })).toBe("-1");
  expect(errorShown("-0.976783", {})).toBe("-0.976783");
});

test("a boiling point is told to a tenth, a check weight as it stands on it", () => {
  expect(readAt("boiling", "95.196", "degC")).toBe("In boiling water");
  expect(readAt("comparison", "203.3528", "degF")).toBe("Against 203.4\u00a0°F");
  expect(readAt("rising", "0.005", "g")).toBe("At 0.005\u00a0g");
});

test("what helps is said where a check cannot tell", () => {
  const words = saidOf({
    says: "cannot_tell.near_limit",
    values: {
      sort: "boiling",
      reference: "95.196",
      error: "0.804",
      limit: "1",
      guard_band: "0.478",
    },
    unit: "degC",
  });

  expect(words).toBe(
    "In boiling water it is off by +0.8\u00a0°C, ±\u00a01\u00a0°C allowed. The check itself is good to ±\u00a00.48\u00a0°C. Repeat it, or take a mass that is known better.",
  );
});

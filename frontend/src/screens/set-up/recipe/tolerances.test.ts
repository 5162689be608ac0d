import { expect, test } from "vitest";
import { percentTolerance } from "./tolerances.ts";

test("one percent of 60 g is 0.6 g", () => {
  expect(percentTolerance("60", "1")).toBe("0.6");
});

test("a tolerance is a round number", () => {
  expect(percentTolerance("333", "1")).toBe("3.3");
  expect(percentTolerance("15000", "1")).toBe("150");
});

test("a tie goes to the even digit", () => {
  expect(percentTolerance("225", "1")).toBe("2.2");
});

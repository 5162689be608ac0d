import { expect, test } from "vitest";
import { parseDecimal } from "../../calc/numbers.ts";
import { takenFrom } from "./use_weighing.ts";

const STANDING = { hill: "500", store: "9000" };

test("what stands in the kitchen is taken there", () => {
  expect(takenFrom(STANDING, "hill", parseDecimal("400"))).toBe("hill");
});

test("more than stands in the kitchen is taken where it stands", () => {
  expect(takenFrom(STANDING, "hill", parseDecimal("5000"))).toBe("store");
});

test("where it is enough nowhere the kitchen is named, and the lot goes below zero there", () => {
  expect(takenFrom(STANDING, "hill", parseDecimal("20000"))).toBe("hill");
});

test("a lot that stands nowhere is taken in the kitchen", () => {
  expect(takenFrom({}, "hill", parseDecimal("1"))).toBe("hill");
});

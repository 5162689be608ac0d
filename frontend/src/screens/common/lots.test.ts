import { expect, test } from "vitest";
import { amountText } from "./lots.ts";

test.each([
  ["0.0004", "kg", "0.4\u00a0g"],
  ["0.000001", "L", "0.001\u00a0mL"],
  ["0.25", "kg", "0.25\u00a0kg"],
  ["0", "kg", "0\u00a0kg"],
  ["10004", "g", "10.004\u00a0kg"],
  ["0.4", "g", "0.4\u00a0g"],
])("%s %s is read as %s", (amount, unit, words) => {
  expect(amountText(amount, unit)).toBe(words);
});

import { expect, test } from "vitest";
import { lifeMissing, withoutCurrency } from "./typed.ts";

test.each(["", "E", "EU", "EUR0", "\u20ac", "123"])("%s is no currency yet", (currency) => {
  expect(withoutCurrency({ currency })?.field).toBe("currency");
});

test("a currency is three letters", () => {
  expect(withoutCurrency({ currency: "EUR" })).toBe(null);
});

test.each(["", "0", "1.5", "9007199254740993"])("%s is no length of life", (life_length) => {
  expect(lifeMissing({ life_sort: "use_by", life_length })?.field).toBe("life_length");
});

test("a kind of date with a whole length is a rule", () => {
  expect(lifeMissing({ life_sort: "use_by", life_length: "18" })).toBe(null);
  expect(lifeMissing({ life_sort: "use_by", life_length: "18." })).toBe(null);
});

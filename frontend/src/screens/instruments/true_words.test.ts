import { expect, test } from "vitest";
import type { InstrumentShown } from "../common/batches.ts";
import { trueWords } from "./true_words.ts";

function instrument(sort: string, unit: string): InstrumentShown {
  return {
    id: "one",
    name: "One",
    sort,
    unit,
    division: "0.2",
    capacity: null,
    repeatability: null,
    bowl_tare: null,
    place: null,
    is_here: true,
  };
}

const [REFRACTOMETER, SCALE] = [instrument("refractometer", "Brix"), instrument("scale", "g")];

test("water is 0 by definition, not give or take 0", () => {
  const water = { value: "0", accuracy_class: "", tolerance: "0" };

  expect(trueWords(water, REFRACTOMETER)).toBe("pure water, 0 by definition");
});

test("another value of tolerance 0 was only said to be exact", () => {
  const sugar = { value: "12.5", accuracy_class: "", tolerance: "0.0" };

  expect(trueWords(sugar, REFRACTOMETER)).toBe("taken as exact");
});

test("a class says what it allows, and without one nothing is known", () => {
  const mass = { value: "500", accuracy_class: "M1", tolerance: "" };

  expect(trueWords(mass, SCALE)).toBe("M1, \u00b1\u00a00.025\u00a0g");
  expect(trueWords({ ...mass, accuracy_class: "" }, SCALE)).toBe("how true is not known");
});

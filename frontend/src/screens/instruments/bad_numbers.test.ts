import { expect, test } from "vitest";
import type { InstrumentShown } from "../common/batches.ts";
import { badKnown, badWater } from "./bad_numbers.ts";

function of(sort: string, fields: Record<string, string> = {}) {
  const instrument: InstrumentShown = {
    id: "one",
    name: "One",
    sort,
    unit: "g",
    division: "1",
    capacity: null,
    repeatability: null,
    bowl_tare: null,
    place: null,
    is_here: true,
  };
  return { instrument, fields };
}

test("a check weight weighs something and no more than the scale takes", () => {
  expect(badKnown("0", of("scale"))).toBe("A check weight weighs more than 0. Type what is on it.");
  expect(badKnown("501", of("scale", { capacity: "500" }))).toBe(
    "The scale takes 500\u00a0g at most. Type a lighter one.",
  );
  expect(badKnown("500", of("scale", { capacity: "500" }))).toBeNull();
  expect(badKnown("501", of("scale"))).toBeNull();
});

test("a buffer lies between 0 and 14", () => {
  expect(badKnown("40.1", of("ph_meter"))).toBe(
    "pH lies between 0 and 14. Type what the bottle says.",
  );
  expect(badKnown("14", of("ph_meter"))).toBeNull();
});

test("water reads 0 on a refractometer, a clock runs longer than 0", () => {
  expect(badKnown("0", of("refractometer"))).toBeNull();
  expect(badKnown("0", of("timer"))).toBe("A clock runs longer than 0. Type how long.");
});

test("nothing typed is not wrong yet", () => {
  expect(badKnown("", of("scale"))).toBeNull();
  expect(badWater("")).toBeNull();
});

test("only water whose density the formula knows is taken", () => {
  expect(badWater("40")).toBeNull();
  expect(badWater("40.5")).toContain("Let it cool or warm.");
});

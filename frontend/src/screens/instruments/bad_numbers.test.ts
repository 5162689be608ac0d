import { expect, test } from "vitest";
import type { InstrumentShown } from "../common/batches.ts";
import { badKnown, badReading, badWater } from "./bad_numbers.ts";
import { isSame } from "./plan.ts";
import type { Checking } from "./use_check.ts";

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
  expect(badKnown("40.1", of("ph_meter"))).toBe("pH lies between 0 and 14. Read it again.");
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

/** A check in which so much was read before. */
function reading(sort: string, read: Record<string, string[]>) {
  // as: badReading looks at nothing else that was typed
  return { ...of(sort), typed: { read } as Checking["typed"] };
}

test("a vessel full of water that is lighter than empty is a slip, whichever was typed last", () => {
  const lighter = "Full it weighs more than empty. Read it again.";
  expect(badReading("250", { sort: "water" }, reading("cup", { tare: ["250"] }))).toBe(lighter);
  expect(badReading("250.5", { sort: "water" }, reading("cup", { tare: ["250"] }))).toBeNull();
  expect(badReading("9", { sort: "water" }, reading("cup", {}))).toBeNull();
  expect(badReading("300", { sort: "tare" }, reading("cup", { water: ["310", "299"] }))).toBe(
    lighter,
  );
});

test("ice and boiling water that changed places are a slip", () => {
  const swapped = "Boiling water reads more than ice. Read it again.";
  expect(badReading("0", { sort: "boiling" }, reading("thermometer", { ice: ["98"] }))).toBe(
    swapped,
  );
  expect(badReading("98", { sort: "ice" }, reading("thermometer", { boiling: ["0"] }))).toBe(
    swapped,
  );
  expect(badReading("98", { sort: "boiling" }, reading("thermometer", { ice: ["-1"] }))).toBeNull();
});

test("a pH meter shows no 403, however wrong it is", () => {
  const shown = "pH lies between 0 and 14. Read it again.";
  expect(badReading("403", { sort: "buffer" }, reading("ph_meter", {}))).toBe(shown);
  expect(badReading("-7", { sort: "buffer" }, reading("ph_meter", {}))).toBe(shown);
  expect(badReading("1.2", { sort: "buffer" }, reading("ph_meter", {}))).toBeNull();
});

test("7 and 7.00 are one buffer", () => {
  const buffer = (value: string) => ({ value, accuracy_class: "", tolerance: "" });
  expect(isSame(buffer("7"), buffer("7.00"))).toBe(true);
  expect(isSame(buffer("7"), buffer("7.01"))).toBe(false);
});

import { expect, test } from "vitest";
import { isChangedIn, lackingIn, listIn, withNote, withNumbers } from "./numbers_in.ts";

const BODY = { lot: "MJ-1", lot_size: 12, gross: ["522.1", "523.4"], steps: [{ readings: ["0"] }] };
const GROSS = listIn(BODY.gross, { path: "gross", unit: "g", name: (number) => `pack ${number}` });

test("a number is put in its place and everything else stays", () => {
  expect(withNumbers(BODY, { "gross.1": "532.4" })).toEqual({ ...BODY, gross: ["522.1", "532.4"] });
  expect(withNumbers(BODY, { "steps.0.readings.0": "-1" }).steps).toEqual([{ readings: ["-1"] }]);
});

test("a count stays a whole number", () => {
  expect(withNumbers(BODY, { lot_size: "24" }).lot_size).toBe(24);
});

test("one that is rubbed out is gone from its list", () => {
  expect(withNumbers(BODY, { "gross.0": "" }).gross).toEqual(["523.4"]);
});

test("the same number in several places is corrected in all of them", () => {
  const body = { steps: [{ reference: "500" }, { reference: "1000" }, { reference: "500" }] };
  const mass = {
    path: "steps.0.reference",
    also: ["steps.2.reference"],
    name: "mass",
    unit: "g",
    value: "500",
    isOptional: false,
  };

  expect(withNumbers(body, { "steps.0.reference": "200" }, [mass]).steps).toEqual([
    { reference: "200" },
    { reference: "1000" },
    { reference: "200" },
  ]);
});

test("a note is put in, changed and taken out", () => {
  expect(withNote({ lot: "MJ-1" }, " two lids were bent ")).toEqual({
    lot: "MJ-1",
    note: "two lids were bent",
  });
  expect(withNote({ lot: "MJ-1", note: "old" }, " ")).toEqual({ lot: "MJ-1" });
});

test("what was recorded is left as it is", () => {
  withNumbers(BODY, { "gross.0": "1" });

  expect(BODY.gross).toEqual(["522.1", "523.4"]);
});

test("of a list one may be rubbed out, the only one may not", () => {
  const [only] = listIn(["3"], { path: "tares", unit: "g", name: () => "empty" });

  expect(lackingIn(GROSS, { "gross.0": "" })).toBeNull();
  expect(lackingIn(GROSS, { "gross.0": "-" })?.name).toBe("pack 1");
  expect(lackingIn(only === undefined ? [] : [only], { "tares.0": "" })?.path).toBe("tares.0");
});

test("typing the same again changes nothing", () => {
  expect(isChangedIn(GROSS, { "gross.0": "522.1" })).toBe(false);
  expect(isChangedIn(GROSS, { "gross.0": "522.10" })).toBe(true);
});

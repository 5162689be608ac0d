import { expect, test } from "vitest";
import { DENSITY_ROWS, SPREAD_ROWS } from "../../calc/tables/density.ts";
import { calledAlike, densityKey, densityKeys, densityOf, densityShown } from "./density.ts";

const TABLE = { rows: DENSITY_ROWS, ranges: SPREAD_ROWS };

test("brown sugar is proposed by name, packed and unpacked", () => {
  expect(calledAlike("Brown sugar", TABLE, 2)).toEqual([
    "sugar, brown; unpacked",
    "sugar, brown; packed",
  ]);
});

test("a name that is in no table proposes nothing", () => {
  expect(calledAlike("Moringa", TABLE, 4)).toEqual([]);
});

test("every row is found again by its key", () => {
  for (const row of DENSITY_ROWS) {
    expect(densityOf(densityKey(row), TABLE)?.row.ingredient).toBe(row.ingredient);
  }
});

test("a key stands once in the list", () => {
  expect(new Set(densityKeys(TABLE)).size).toBe(densityKeys(TABLE).length);
});

test("the density of salt comes with the published spread", () => {
  const salt = densityOf("salt, table", TABLE);

  // The largest portion, 292 g a US cup; FAO/INFOODS gives 1.22 to 1.38, the spoon 1.217.
  expect(salt && densityShown(salt)).toEqual({ value: "1.2342", low: "1.217", high: "1.38" });
});

import { expect, test } from "vitest";
import { BLANK_LINE, type LineTyped } from "./items.ts";
import { amountsOf } from "./shares.ts";

const MATERIALS: Record<string, { measured_by: string; density_of: string }> = {
  jar: { measured_by: "count", density_of: "" },
  water: { measured_by: "volume", density_of: "" },
};
const materialBy = (id: string) =>
  id === "" ? null : (MATERIALS[id] ?? { measured_by: "mass", density_of: "" });

function line(id: string, part: Partial<LineTyped>): LineTyped {
  return { ...BLANK_LINE, line: id, material: "flour", amount_unit: "g", ...part } as LineTyped; // as: a part of it
}

function amounts(lines: LineTyped[], makes = "", unit = "kg") {
  const found = amountsOf({ lines, makes, makes_unit: unit }, materialBy, null);
  return [...found.values()].map((each) =>
    each.is === "ready" ? `${each.amount} ${each.unit}` : each.is === "open" ? each.what : each.is,
  );
}

const FLOUR = line("1", { amount: "1", amount_unit: "kg", is_base: "yes" });
const WATER = line("2", { percent: "65", percent_of: "base" });

test("a share of the base is worked out from it", () => {
  expect(amounts([FLOUR, WATER])).toEqual(["1 kg", "650 g"]);
});

test("a base as bought counts with what its yield leaves", () => {
  const bought = { ...FLOUR, state: "as_bought", yield_percent: "80" };

  expect(amounts([bought, WATER])).toEqual(["1 kg", "520 g"]);
});

test("pieces and volumes are no part of the whole", () => {
  const jars = line("3", { material: "jar", amount: "4", amount_unit: "pc" });
  const drops = line("4", { material: "water", amount: "90", amount_unit: "mL" });
  const salt = line("5", { percent: "20", percent_of: "whole" });

  expect(amounts([FLOUR, jars, drops, salt])).toEqual(["1 kg", "4 pc", "90 mL", "250 g"]);
});

test("shares alone take what the recipe makes, and say so where that is no mass", () => {
  const lines = [
    line("1", { percent: "60", percent_of: "whole" }),
    line("2", { percent: "40", percent_of: "whole" }),
  ];

  expect(amounts(lines, "2")).toEqual(["1200 g", "800 g"]);
  expect(amounts(lines, "2", "L")).toEqual(["no_amount", "no_amount"]);
});

test("a share waits while another line is not complete, and says what it lacks itself", () => {
  const open = line("3", { amount: "" });

  expect(amounts([FLOUR, WATER, open])).toEqual(["1 kg", "others", "amount"]);
  expect(amounts([FLOUR, line("2", { percent_of: "base" })])).toEqual(["1 kg", "percent"]);
  expect(amounts([line("1", { amount: "1" }), WATER])).toEqual(["1 g", "no_base"]);
  expect(amounts([FLOUR, { ...WATER, material: "jar" }])).toEqual(["1 kg", "measure"]);
});

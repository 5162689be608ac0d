import { beforeEach, describe, expect, test, vi } from "vitest";
import { DEVICE, START_MS } from "../../simulation/bench.ts";
import { testHouse, welcome } from "../../simulation/house.ts";
import type { Body } from "../store/rows.ts";
import { takeIn } from "../store/take_in.ts";
import { deviceDb } from "./house.ts";
import { signIn } from "./session.ts";
import { isAddingUp, loadShelf } from "./shelf.ts";
import { allStock, cooperative, lotsOf, materials, members, nameOf, stockAt } from "./stock.ts";

function lot(code: string, places: Record<string, string>, more: Body = {}): [string, Body] {
  const total = Object.values(places).reduce((sum, one) => sum + Number(one), 0);
  const state = {
    lot: code,
    material: "fruit",
    condition: "fit",
    unit: "g",
    on_hand: String(total),
    places,
    life: null,
    made_on: "2026-11-01",
    ...more,
  };
  return [`lot:${code}`, state];
}

function definition(type: string, id: string, fields: Body): [string, Body] {
  return [`${type}:${id}`, { type, id, fields, defined_by: "e1", changed_at: null, findings: [] }];
}

beforeEach(async () => {
  await testHouse(() => welcome(DEVICE));
  await signIn("ama@hill", "a spoon of thyme");
  const sheets = [
    lot("LATE", { store: "500" }, { life: { sort: "best_before", on: "2027-01-01" } }),
    lot("SOON", { store: "100", stall: "20" }, { life: { sort: "use_by", on: "2026-11-12" } }),
    lot("NEVER", { store: "70" }),
    lot("OLDER", { store: "60" }, { made_on: "2026-10-01" }),
    lot("GONE", {}),
    lot("REFUSED", { store: "5" }, { condition: "refused" }),
    lot("BELOW", { stall: "-3" }),
    definition("material", "fruit", { name: "Quince" }),
    definition("material", "sugar", { name: "Beet sugar", is_retired: true }),
    definition("cooperative", "00000000-0000-4000-8000-00000000c001", { name: "Hill" }),
    ["member:m1", { member: "m1", name: "Ona", roles: ["coordinator"], has_left: false }],
  ] as [string, Body][];
  const pulled = sheets.map(([id, state], index) => ({
    type: "sheet" as const,
    id,
    seq: index + 1,
    data: { state, upto_seq: 0, entry_count: 9, fold: 1, is_open: false },
  }));
  await takeIn(await deviceDb(DEVICE), pulled, {}, START_MS);
  await loadShelf();
  await vi.waitUntil(() => !isAddingUp.value);
});

describe("lots of a material", () => {
  test("come first expired first, those without a date last, the older first", () => {
    expect(lotsOf("fruit").map((one) => one.lot)).toEqual(["SOON", "LATE", "OLDER", "NEVER"]);
  });

  test("at one place are those with something there, with what is there", () => {
    expect(lotsOf("fruit", "stall").map((one) => [one.lot, one.amount])).toEqual([["SOON", "20"]]);
  });
});

describe("stock", () => {
  test("of a place shows what is below zero first", () => {
    expect(stockAt("stall").map((one) => [one.lot, one.is_negative])).toEqual([
      ["BELOW", true],
      ["SOON", false],
    ]);
  });

  test("as a whole leaves out what is used up", () => {
    expect(allStock().map((one) => one.lot)).not.toContain("GONE");
  });
});

describe("what people set up", () => {
  test("is listed by name, retired or not", () => {
    expect(materials.value.map((one) => [one.name, one.is_retired])).toEqual([
      ["Beet sugar", true],
      ["Quince", false],
    ]);
    expect(cooperative.value?.name).toBe("Hill");
    expect(members.value.map((one) => one.name)).toEqual(["Ona"]);
  });

  test("is called by its name, and what is not known by its id", () => {
    expect(nameOf("material", "fruit")).toBe("Quince");
    expect(nameOf("member", "m1")).toBe("Ona");
    expect(nameOf("place", "attic")).toBe("attic");
    expect(nameOf("place", null)).toBe("");
  });
});

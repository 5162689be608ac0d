import { expect, test } from "vitest";
import { changesBetween } from "./changes.ts";

const JAM = {
  name: "Mango jam",
  sort: "product",
  pack_net: { amount: "250", unit: "g" },
  allergens: ["milk"],
  note: "Square jars",
};
const NAMES = ["name", "sort", "pack_net", "allergens", "note", "price"];

test("only what differs is a change", () => {
  const changes = changesBetween(JAM, { ...JAM, name: "Mango jam, mild" }, NAMES);

  expect(changes).toEqual({ name: { from: "Mango jam", to: "Mango jam, mild" } });
});

test("a field that was missing comes from null, and one left out goes to null", () => {
  const { note: _, ...withoutNote } = JAM;

  const changes = changesBetween(JAM, { ...withoutNote, price: "4.50" }, NAMES);

  expect(changes).toEqual({
    note: { from: "Square jars", to: null },
    price: { from: null, to: "4.50" },
  });
});

test("the order of fields within a group is no change", () => {
  const wanted = { ...JAM, pack_net: { unit: "g", amount: "250" } };

  expect(changesBetween(JAM, wanted, NAMES)).toEqual({});
});

test("digits count as they were typed", () => {
  const wanted = { ...JAM, pack_net: { amount: "250.0", unit: "g" } };

  expect(changesBetween(JAM, wanted, NAMES)).toEqual({
    pack_net: { from: { amount: "250", unit: "g" }, to: { amount: "250.0", unit: "g" } },
  });
});

test("fields the form does not hold stay as they are", () => {
  const retired = { ...JAM, is_retired: true };

  expect(changesBetween(retired, JAM, NAMES)).toEqual({});
});

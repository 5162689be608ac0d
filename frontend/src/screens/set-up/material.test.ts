import { expect, test } from "vitest";
import { parseBody } from "../../entries/parse.ts";
import { MATERIAL_PLAN } from "./material.ts";

const SUGAR = {
  name: "Cane sugar",
  sort: "ingredient",
  measured_by: "mass",
  letters: "SU",
  density_of: "sugar, granulated",
  life: { sort: "best_before", length: 24, unit: "months" },
  allergens: ["milk", "sulphites"],
  note: "Dry side of the store.",
};

test("a material that is only opened becomes the same fields again", () => {
  expect(MATERIAL_PLAN.bodyOf(MATERIAL_PLAN.typedOf(SUGAR))).toEqual(SUGAR);
});

test("a filled form is an entry this phone accepts", () => {
  const body = { material: "sugar", ...MATERIAL_PLAN.bodyOf(MATERIAL_PLAN.typedOf(SUGAR)) };

  expect(parseBody("material_defined", 1, body)).toEqual({ material: "sugar", ...SUGAR });
});

test("what does not go with its sort is left out", () => {
  const typed = {
    ...MATERIAL_PLAN.typedOf({ ...SUGAR, pack_word: "bag", price: "3.20" }),
    sort: "packaging",
  };

  const { density_of, pack_word, price, allergens } = MATERIAL_PLAN.bodyOf(typed);

  expect([density_of, pack_word, price, allergens]).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
});

test("only a product is said to dry, and only where it was ticked", () => {
  const flour = { ...SUGAR, sort: "product", loses_moisture: true };
  const { density_of, ...product } = flour;
  const typed = MATERIAL_PLAN.typedOf(flour);

  expect(MATERIAL_PLAN.bodyOf(typed)).toEqual(product);
  expect(MATERIAL_PLAN.bodyOf({ ...typed, sort: "ingredient" })).toEqual({ ...SUGAR });
  expect(MATERIAL_PLAN.bodyOf({ ...typed, loses_moisture: false })).not.toHaveProperty(
    "loses_moisture",
  );
});

test("a kind of date without a length is asked for", () => {
  const typed = { ...MATERIAL_PLAN.typedOf(SUGAR), life_length: "" };

  expect(MATERIAL_PLAN.missing(typed)?.field).toBe("life_length");
});

test("the order in which allergens are ticked is no difference", () => {
  const typed = { ...MATERIAL_PLAN.typedOf(SUGAR), allergens: ["sulphites", "milk"] };

  expect(MATERIAL_PLAN.bodyOf(typed).allergens).toEqual(["milk", "sulphites"]);
});

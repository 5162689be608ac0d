import { expect, test } from "vitest";
import {
  type Good,
  isSoldOut,
  named,
  type StallLot,
  shares,
  sizeKey,
  soldToday,
  sumOf,
} from "./goods.ts";

function lot(code: string, left: string): StallLot {
  return {
    lot: code,
    unit: "pc",
    left,
    sold: "0",
    life: null,
    made_on: null,
    pack_net: null,
    against: [],
  };
}

function good(left: string, sold: string): Good {
  return {
    key: "mj",
    material: "mj",
    name: "Mango jam",
    unit: "pc",
    price: "62",
    left,
    sold,
    came: left,
    kept_back: "0",
    lots: [],
  };
}

test("a sale is taken from the first lot while it has enough", () => {
  expect(shares("2", [lot("A", "3"), lot("B", "9")])).toEqual([{ lot: "A", amount: "2" }]);
});

test("a sale runs over into the next lot", () => {
  expect(shares("5", [lot("A", "3"), lot("B", "9")])).toEqual([
    { lot: "A", amount: "3" },
    { lot: "B", amount: "2" },
  ]);
});

test("what is more than there is goes on the last lot that had some", () => {
  expect(shares("5", [lot("A", "3"), lot("B", "1")])).toEqual([
    { lot: "A", amount: "3" },
    { lot: "B", amount: "2" },
  ]);
});

test("a product that is sold out is still sold, from its last lot", () => {
  expect(shares("1", [lot("A", "0"), lot("B", "-1")])).toEqual([{ lot: "B", amount: "1" }]);
});

test("a lot below zero is passed over while another has some", () => {
  expect(shares("1", [lot("A", "-2"), lot("B", "4")])).toEqual([{ lot: "B", amount: "1" }]);
});

test("the sum to ask is exact, and unknown without a price", () => {
  expect(sumOf("12.50", "3")).toBe("37.5");
  expect(sumOf(null, "3")).toBeNull();
});

test("what was sold today is the sum over all products", () => {
  expect(soldToday([good("9", "4"), good("0", "12")])).toBe("16");
});

test("none left and fewer than none left are both sold out", () => {
  expect(isSoldOut(good("0", "12"))).toBe(true);
  expect(isSoldOut(good("-1", "13"))).toBe(true);
  expect(isSoldOut(good("1", "11"))).toBe(false);
});

test("packs of one size are one thing to sell, however the size is written", () => {
  const grams = sizeKey("mj", { pack_net: { amount: "250", unit: "g" } });
  expect(sizeKey("mj", { pack_net: { amount: "0.25", unit: "kg" } })).toBe(grams);
  expect(sizeKey("mj", { pack_net: { amount: "500", unit: "g" } })).not.toBe(grams);
  expect(sizeKey("mj", { pack_net: null })).toBe("mj");
});

test("two sizes of a product are told apart by their name, a single size is not", () => {
  const of = (key: string, material: string, grams: string): Good => ({
    ...good("3", "0"),
    key,
    material,
    lots: [{ ...lot(key, "3"), pack_net: { amount: grams, unit: "g" } }],
  });
  const names = named([of("a", "mj", "250"), of("b", "mj", "500"), of("c", "qj", "250")]);
  expect(names.map(({ name }) => name)).toEqual([
    "Mango jam, 250\u00a0g",
    "Mango jam, 500\u00a0g",
    "Mango jam",
  ]);
});

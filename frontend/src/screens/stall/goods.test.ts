import { expect, test } from "vitest";
import { type Good, isSoldOut, type StallLot, shares, soldToday, sumOf } from "./goods.ts";

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

import { expect, test } from "vitest";
import { isOpen, neededDone, nextArea } from "./guidance.ts";

test("a fresh cooperative first says how it measures", () => {
  expect(nextArea({})).toBe("cooperative");
});

test("a place comes before instruments, and a recipe last", () => {
  expect(nextArea({ cooperative: 1 })).toBe("places");
  expect(nextArea({ cooperative: 1, places: 2, instruments: 1, materials: 3 })).toBe("recipes");
});

test("nothing is asked for once a batch can be made", () => {
  const soFar = { cooperative: 1, places: 1, instruments: 1, materials: 1, recipes: 1 };

  expect(nextArea(soFar)).toBeNull();
  expect(neededDone(soFar)).toEqual({ done: 5, all: 5 });
});

test("one who is alone is still asked for the next person", () => {
  expect(isOpen({ people: 1 }, "people")).toBe(true);
  expect(isOpen({ people: 2 }, "people")).toBe(false);
});

import { describe, expect, test } from "vitest";
import { namesakeOf, namesakes, sameNameSays } from "./namesakes.ts";

const STORE = { id: "1", name: "Store" };
const OLD_BARN = { id: "2", name: "Old barn", is_retired: true };
const ALL = [STORE, OLD_BARN];

describe("a name that is taken", () => {
  test.each(["Store", " store ", "STORE"])("is found as %j", (name) => {
    expect(namesakeOf(ALL, { id: "9", name })).toBe(STORE);
  });

  test("is found with any spaces inside and however its accents are coded", () => {
    expect(namesakeOf(ALL, { id: "9", name: "old   barn" })).toBe(OLD_BARN);
    const cafe = { id: "3", name: "Caf\u00e9" };
    expect(namesakeOf([cafe], { id: "9", name: "cafe\u0301" })).toBe(cafe);
  });

  test("is refused in one sentence that names the one that has it", () => {
    expect(sameNameSays(ALL, { id: "9", name: "store", before: null })).toBe(
      "Store is set up already. Choose it, or write another name.",
    );
    expect(sameNameSays(ALL, { id: "9", name: "old barn", before: null })).toBe(
      "Old barn is set up already and retired. Use it again, or write another name.",
    );
  });

  test("is no reason against itself, nor against changing something else of it", () => {
    const other = { id: "4", name: "Store" };

    expect(sameNameSays([STORE, other], { id: "1", name: "store", before: "Store" })).toBeNull();
    expect(sameNameSays(ALL, { id: "1", name: "Store", before: "Stall" })).toBeNull();
    expect(sameNameSays(ALL, { id: "9", name: "", before: null })).toBeNull();
  });
});

test("two of one name that came together are both told, not one that is retired", () => {
  const others = [
    { id: "5", name: "store" },
    { id: "6", name: "Stall" },
  ];
  const retired = { id: "7", name: "stall", is_retired: true };

  expect([...namesakes([...ALL, ...others, retired])]).toEqual(["1", "5"]);
});

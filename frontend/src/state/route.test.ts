import { describe, expect, test } from "vitest";
import { matched, pathOf } from "./route.ts";

describe("a path", () => {
  test("gives its parameters where the pattern fits", () => {
    expect(matched("/weigh-in/:batch/:line", "/weigh-in/b-1/2")).toEqual({
      batch: "b-1",
      line: "2",
    });
    expect(matched("/stock", "/stock")).toEqual({});
  });

  test("that is longer, shorter or another does not fit", () => {
    expect(matched("/weigh-in/:batch/:line", "/weigh-in/b-1")).toBeNull();
    expect(matched("/stock", "/stock/x")).toBeNull();
    expect(matched("/stock", "/stall")).toBeNull();
  });

  test("is read as it was written, odd signs and broken ones too", () => {
    expect(matched("/lot/:lot", "/lot/MJ%2F1")).toEqual({ lot: "MJ/1" });
    expect(matched("/lot/:lot", "/lot/%E0%A4%A")).toBeNull();
  });

  test.each([
    ["", "/"],
    ["#", "/"],
    ["#top", "/"],
    ["#/stock?x=1", "/stock"],
  ])("of the address %o is %s", (hash, path) => {
    expect(pathOf(hash)).toBe(path);
  });
});

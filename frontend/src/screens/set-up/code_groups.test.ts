import { expect, test } from "vitest";
import { groupsOf } from "./code_groups.ts";

test("ten signs are read out in four groups", () => {
  expect(groupsOf("ACDEFGHJKM")).toEqual(["ACD", "EFG", "HJ", "KM"]);
});

test("no sign is lost, however long the code", () => {
  for (const code of ["A", "ACD", "ACDEFGHJKMNPQ"]) {
    expect(groupsOf(code).join("")).toBe(code);
  }
});

import { expect, test } from "vitest";
import { codeText } from "./label.ts";

test("a house with an address puts the page of the lot on the label", () => {
  expect(codeText("MJ-261110-K7-1", "https://larder.example")).toBe(
    "https://larder.example/#/lot/MJ-261110-K7-1",
  );
});

test("without an address the code alone stands there", () => {
  expect(codeText("MJ-261110-K7-1", null)).toBe("MJ-261110-K7-1");
});

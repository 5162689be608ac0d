import { expect, test } from "vitest";
import { clockSentence } from "./moments.ts";

test("a clock within two minutes is not worth a word", () => {
  expect(clockSentence(null)).toBeNull();
  expect(clockSentence(120_000)).toBeNull();
  expect(clockSentence(-120_000)).toBeNull();
});

test("a phone behind the server is slow, one before it is fast", () => {
  expect(clockSentence(300_000)).toContain("5 min slow");
  expect(clockSentence(-180_000)).toContain("3 min fast");
});

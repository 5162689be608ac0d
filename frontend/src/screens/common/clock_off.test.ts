import { expect, test } from "vitest";
import { clockOffWords } from "./clock_off.ts";

const MINUTE_MS = 60_000;

test("two minutes are how clocks differ, and an older phone was told nothing", () => {
  expect(clockOffWords(2 * MINUTE_MS)).toBeNull();
  expect(clockOffWords(-2 * MINUTE_MS)).toBeNull();
  expect(clockOffWords(undefined)).toBeNull();
});

test("more is told in hours and minutes, behind where the server's clock was later", () => {
  expect(clockOffWords(190 * MINUTE_MS)).toBe(
    "The clock of that phone was 3\u00a0h 10\u00a0min behind.",
  );
  expect(clockOffWords(-3 * MINUTE_MS)).toBe("The clock of that phone was 3\u00a0min ahead.");
  expect(clockOffWords(24 * 60 * MINUTE_MS)).toBe("The clock of that phone was 24\u00a0h behind.");
});

test("beyond a day the date itself wants a look", () => {
  expect(clockOffWords(49 * 60 * MINUTE_MS)).toBe(
    "The clock of that phone was 2 days 1\u00a0h behind. Look whether its date is right.",
  );
  expect(clockOffWords(-400 * 24 * 60 * MINUTE_MS)).toBe(
    "The clock of that phone was 400 days ahead. Look whether its date is right.",
  );
});

import { describe, expect, test } from "vitest";
import { retryWaitMs } from "./backoff.ts";

/** A seeded chance (mulberry32), so that the draws are the same each time. */
function seededChance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

describe("the wait before trying again", () => {
  test.each([
    [0, 2_000],
    [1, 4_000],
    [4, 32_000],
    [5, 60_000],
    [12, 60_000],
  ])("after %i failures lies under its cap, on average at half of it", (failures, capMs) => {
    const chance = seededChance(20261110);
    const draws = Array.from({ length: 1_000 }, () => retryWaitMs(failures, chance, null));

    const meanMs = draws.reduce((sum, one) => sum + one, 0) / draws.length;

    expect(Math.max(...draws)).toBeLessThan(capMs);
    expect(Math.abs(meanMs - capMs / 2)).toBeLessThan((capMs / 2) * 0.05);
  });

  test("is never shorter than the server asked for", () => {
    expect(retryWaitMs(0, () => 0, 7_000)).toBe(7_000);
  });
});

import { afterEach, expect, test } from "vitest";
import { dueMs, nextDueS, noteTimer, runningTimers } from "./running_timers.ts";

const FORM = { how: "timer", by: "cold_hold", timer_began_ms: 1000, every_min: "10", at_s: [5] };

afterEach(() => {
  runningTimers.value = [];
});

test("the first reading is due at once, the next at a whole interval since the start", () => {
  expect(nextDueS({ at_s: [], every_min: "10" })).toBe(0);
  expect(nextDueS({ at_s: [5], every_min: "10" })).toBe(600);
  expect(nextDueS({ at_s: [1210, 5], every_min: "10" })).toBe(1800);
  expect(dueMs(FORM)).toBe(601_000);
});

test("a form that runs a timer is noted once, and gone when it is saved or is none any more", () => {
  noteTimer("heat/b1/set", FORM);
  noteTimer("heat/b1/set", { ...FORM, at_s: [5, 700] });
  noteTimer("heat/b2/", FORM);

  expect(runningTimers.value.map(({ batch, step }) => [batch, step])).toEqual([
    ["b1", "set"],
    ["b2", ""],
  ]);
  expect(runningTimers.value[0]?.at_s).toEqual([5, 700]);

  noteTimer("heat/b1/set", null);
  noteTimer("heat/b2/", { ...FORM, how: "typed" });
  expect(runningTimers.value).toEqual([]);
});

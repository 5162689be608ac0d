import { expect, test } from "vitest";
import type { Cause } from "../../calc/holds.ts";
import { causeWords, isLog, openLogs } from "./thing.ts";

const CHECKED: Cause = {
  entry: "s1",
  what: "outside",
  because: "check",
  step: "ph",
  judged_by: null,
  reason: null,
  at: "2026-06-01T08:01:00.000Z",
  author: "ana",
  stands: true,
  decided: null,
  decided_by: null,
};
const LOGGED: Cause = {
  ...CHECKED,
  entry: "h1",
  what: "not_proven",
  judged_by: "two_stage_cooling",
};

test("a log that holds says its verdict and by which rule, also where it names a step", () => {
  const words = causeWords(LOGGED, null);

  expect(words).toBe(
    "A log of temperature proves nothing: Cooling of cooked food, 57 to 21 to 5 \u00b0C",
  );
});

test("of what is open the logs are told apart from checks", () => {
  const released = { ...LOGGED, entry: "h2", decided: "release", decided_by: "d1" };
  const hold = { is_held: true, is_decided: false, since: CHECKED.at, decisions: [] };

  const logs = openLogs({ ...hold, causes: [CHECKED, LOGGED, released] });

  expect(logs.map(({ entry }) => entry)).toEqual(["h1"]);
});

test("a cause on a sheet of an earlier version is no log", () => {
  const { judged_by: _, ...earlier } = CHECKED;

  expect(isLog(Object.assign({}, CHECKED, earlier, { judged_by: undefined }))).toBe(false);
  expect(causeWords(CHECKED, null)).toBe("A check was outside its limit");
});

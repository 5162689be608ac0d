import { expect, test } from "vitest";
import type { InstrumentState } from "../../calc/instruments.ts";
import { fitnessAt, fitnessOn, undecided } from "./fitness.ts";

type Check = InstrumentState["checks"][number];

function check(entry: string, on: string, verdict: string): Check {
  return {
    entry,
    happened_at: `${on}T09:00:00.000Z`,
    on,
    author: "ona",
    unit: "g",
    verdict,
    says: `${verdict}.worst`,
    values: {},
    worst: null,
    points: [],
    bias: null,
    repeatability: null,
    hysteresis: null,
    cited: [],
    is_adjusted: false,
    check_scale: null,
    was: [],
  };
}

const PASSED = check("a", "2026-11-02", "fit");
const FAILED = check("b", "2026-11-12", "failed");
const DOUBT = { check: "b", failed_at: FAILED.happened_at, after: PASSED.happened_at, line: null };

test("an instrument nobody checked is not checked, however new", () => {
  expect(fitnessOn({ checks: [] }, "2026-11-12", []).is).toBe("not_checked");
});

test("it is due on the day its interval ends, not before", () => {
  const sheet = { checks: [PASSED], doubts: [], fields: { check_days: 30 } };

  expect(fitnessOn(sheet, "2026-12-01", []).is).toBe("fit");
  expect(fitnessOn(sheet, "2026-12-02", []).is).toBe("due");
});

test("only readings after the check count as uses", () => {
  const sheet = { checks: [PASSED], doubts: [], fields: { check_uses: 2 } };
  const uses = ["2026-11-01T08:00:00.000Z", "2026-11-03T08:00:00.000Z"];

  expect(fitnessOn(sheet, "2026-11-04", uses)).toMatchObject({ is: "fit", uses: 1, uses_left: 1 });
  expect(fitnessOn(sheet, "2026-11-04", [...uses, "2026-11-04T08:00:00.000Z"]).is).toBe("due");
});

test("what the server counted since the same check says due where this phone knows less", () => {
  const sheet = { checks: [PASSED], doubts: [], fields: { check_uses: 3 } };
  const here = ["2026-11-03T08:00:00.000Z"];
  const known = (count: number, check = "a") =>
    fitnessOn(sheet, "2026-11-04", here, { check, count });

  expect(known(3)).toMatchObject({ is: "due", uses: 3, uses_left: 0 });
  expect(known(2)).toMatchObject({ is: "fit", uses: 2, uses_left: 1 });
  expect(known(0)).toMatchObject({ is: "fit", uses: 1, uses_left: 2 });
  expect(known(9, "an earlier check")).toMatchObject({ is: "fit", uses: 1 });
});

test("what was counted for an instrument nobody checked changes nothing", () => {
  expect(fitnessOn({}, "2026-11-04", [], { check: "a", count: 9 })).toMatchObject({
    is: "not_checked",
    uses: 0,
  });
});

test("a failed check stands until something puts it right", () => {
  const checks = [PASSED, FAILED];
  const open = { checks, doubts: [{ ...DOUBT, until: null }] };
  const corrected = { checks, doubts: [{ ...DOUBT, until: FAILED.happened_at }] };

  expect(fitnessOn(open, "2026-11-13", []).is).toBe("failed");
  expect(fitnessOn(corrected, "2026-11-13", []).is).toBe("fit");
});

test("a check that cannot tell leaves the state as it was", () => {
  const unsure = check("c", "2026-11-20", "cannot_tell");

  expect(fitnessOn({ checks: [PASSED, unsure], doubts: [] }, "2026-11-21", []).is).toBe("fit");
  expect(fitnessOn({ checks: [unsure], doubts: [] }, "2026-11-21", []).is).toBe("not_checked");
});

test("a reading of the past is judged by what was so then", () => {
  const sheet = {
    checks: [PASSED, FAILED],
    doubts: [{ ...DOUBT, until: null }],
    fields: { check_uses: 2 },
  };
  const uses = ["2026-11-03T08:00:00.000Z", "2026-11-04T08:00:00.000Z"];
  const at = (day: string) => ({ at: `2026-11-${day}T10:00:00.000Z`, on: `2026-11-${day}` });

  expect(fitnessAt(sheet, at("01"), uses).is).toBe("not_checked");
  expect(fitnessAt(sheet, at("03"), uses).is).toBe("fit");
  expect(fitnessAt(sheet, at("05"), uses).is).toBe("due");
  expect(fitnessAt(sheet, at("13"), uses).is).toBe("failed");
});

test("what was put right later had failed until then", () => {
  const passedAgain = check("c", "2026-11-20", "fit");
  const doubts = [{ ...DOUBT, until: passedAgain.happened_at }];
  const sheet = { checks: [PASSED, FAILED, passedAgain], doubts };

  expect(fitnessAt(sheet, { at: "2026-11-15T10:00:00.000Z", on: "2026-11-15" }, []).is).toBe(
    "failed",
  );
  expect(fitnessAt(sheet, { at: "2026-11-21T10:00:00.000Z", on: "2026-11-21" }, []).is).toBe("fit");
});

test("a check that decided nothing is told beside the one that counts", () => {
  const open = check("c", "2026-11-20", "cannot_tell");
  const said = (checks: Check[]) =>
    undecided(fitnessOn({ checks, doubts: [] }, "2026-11-21", []), checks)?.entry ?? null;

  expect(said([PASSED, open])).toBe("c");
  expect(said([open, PASSED])).toBeNull();
  expect(said([open])).toBeNull();
});

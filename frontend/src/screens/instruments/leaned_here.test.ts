import { beforeEach, expect, test, vi } from "vitest";
import { DEVICE, START_MS } from "../../../simulation/bench.ts";
import { testHouse, welcome } from "../../../simulation/house.ts";
import { batchState } from "../../calc/batches.ts";
import { foldSubject } from "../../calc/folds.ts";
import { batchHeat } from "../../calc/heat_holds.ts";
import { instrumentState } from "../../calc/instruments.ts";
import type { Fact } from "../../calc/record.ts";
import { skillState } from "../../calc/skills.ts";
import type { LotState } from "../../calc/stock.ts";
import { deviceDb } from "../../state/house.ts";
import { signIn } from "../../state/session.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { isAddingUp, loadShelf, refold } from "../../state/shelf.ts";
import { takeIn } from "../../store/take_in.ts";
import { fillSeries } from "../charts/series.ts";
import { doubtOfBatch } from "../common/InQuestion.tsx";
import { standingAt, standingOf, wasDueIn } from "../common/instruments.ts";
import { leanedHere } from "./leaned_here.ts";

const ON = "2026-11";

function fact(id: string, kind: string, day: string, body: Fact["body"]): Fact {
  const happened_at = `${ON}-${day}T09:00:00.000Z`;
  const rest = { author: "ana", device: "k7", device_seq: 1, local_date: `${ON}-${day}`, seq: 1 };
  return { id, kind, happened_at, body, ...rest };
}

function check(id: string, day: string, shown: string): Fact {
  const step = { sort: "rising", reference: "500", tolerance: "0.025", readings: [shown] };
  const body = { instrument: "s1", unit: "g", division: "1", steps: [step] };
  return fact(id, "instrument_checked", day, body);
}

const SCALE = {
  instrument: "s1",
  name: "Bench scale",
  sort: "scale",
  unit: "g",
  division: "1",
  accuracy_class: "III",
  interval: "1",
  check_uses: 2,
};
const THERMOMETER = {
  instrument: "t1",
  name: "Probe",
  sort: "thermometer",
  unit: "degC",
  division: "0.1",
  judged_by: "own",
  most_error: "0.5",
  check_days: 3,
};
const FILLED = fact("f1", "fill_checked", "05", {
  lot: "J-1",
  on: `${ON}-05`,
  label: [{ amount: { amount: "340", unit: "g" } }],
  rules: "us",
  unit: "g",
  tares: ["20", "20"],
  gross: ["360", "360"],
  instrument: "s1",
  division: "1",
});
const WATER = { sort: "water", readings: ["236"], celsius: "20", division: "1" };

/** A phone that holds the sheets of a scale that passed on the 3rd and failed on the 7th. */
beforeEach(async () => {
  await testHouse(() => welcome(DEVICE));
  await signIn("ama@hill", "a spoon of thyme");
  const scale = instrumentState("instrument:s1", [
    fact("d1", "instrument_defined", "01", SCALE),
    check("k1", "03", "500"),
    check("k2", "07", "508"),
  ]);
  const thermometer = instrumentState("instrument:t1", [
    fact("d3", "instrument_defined", "01", THERMOMETER),
    fact("k4", "instrument_checked", "03", {
      instrument: "t1",
      unit: "degC",
      division: "0.1",
      steps: [{ sort: "ice", reference: "0", readings: ["0.1"] }],
    }),
  ]);
  const cup = instrumentState("instrument:c1", [
    fact("d2", "instrument_defined", "01", { instrument: "c1", name: "Cup", sort: "cup" }),
    fact("k3", "instrument_checked", "06", {
      instrument: "c1",
      unit: "g",
      check_scale: "s1",
      steps: [WATER],
    }),
  ]);
  const drill = fact("r1", "drill_done", "04", {
    member: "ana",
    questions: [],
    weighing: { instrument: "s1", unit: "g", division: "1", shown: ["502", "502"] },
  });
  const sheets: [string, object][] = [
    ["instrument:s1", scale],
    ["instrument:c1", cup],
    ["instrument:t1", thermometer],
    ["lot:J-1", foldSubject("lot:J-1", [FILLED], new Map([["instrument:s1", scale]]))],
    ["skill:ana", skillState("skill:ana", [drill])],
  ];
  const pulled = sheets.map(([id, state], index) => ({
    type: "sheet" as const,
    id,
    seq: index + 1,
    data: { state: { ...state }, upto_seq: 1, entry_count: 1, fold: 1, is_open: false },
  }));
  await takeIn(await deviceDb(DEVICE), pulled, {}, START_MS);
  await loadShelf();
  await vi.waitUntil(() => !isAddingUp.value);
});

test("packs weighed, practice and the water in a cup are uses of the scale", () => {
  expect(standingOf("s1", `${ON}-08`)).toMatchObject({ is: "failed" });
  expect(standingAt("s1", `${ON}-04T08:00:00.000Z`)).toMatchObject({ is: "fit", uses: 0 });
  expect(standingAt("s1", `${ON}-06T08:00:00.000Z`)).toMatchObject({ is: "due", uses: 2 });
  expect(standingAt("s1", `${ON}-06T10:00:00.000Z`)).toMatchObject({ is: "due", uses: 3 });
});

test("a batch says whether something in it was read on a scale that was due", () => {
  const readOn = (day: string) => {
    const reading = { instrument: "s1", unit: "g", division: "1", shown: "80" };
    const planned = { lines: [], steps: [{ step: "a", says: "Weigh." }] };
    return batchState("batch:b1", [
      fact("b1", "batch_started", "01", { batch: "b1", ...planned }),
      fact("b2", "step_done", day, { batch: "b1", step: "a", reading }),
    ]);
  };

  expect(wasDueIn(readOn("06"))).toBe(true);
  expect(wasDueIn(readOn("04"))).toBe(false);
  expect(doubtOfBatch(readOn("06"))).toBe("an instrument was due for a check");
  expect(doubtOfBatch(readOn("04"))).toBeNull();
});

test("a log is judged by the day it began, which a correction may have moved", () => {
  const loggedOn = (began: string) => {
    const log = { batch: "b1", instrument: "t1", unit: "degC", division: "0.1" };
    const rows = { came_by: "typed", at_s: [0, 60], temperatures: ["64", "63"] };
    const began_at = `${ON}-${began}T08:00:00.000Z`;
    return batchState(
      "batch:b1",
      [
        fact("b1", "batch_started", "01", { batch: "b1", lines: [], steps: [] }),
        fact("b2", "heat_log", "09", { ...log, ...rows, began_at }),
      ],
      undefined,
      batchHeat,
    );
  };

  expect(wasDueIn(loggedOn("08"))).toBe(true);
  expect(wasDueIn(loggedOn("04"))).toBe(false);
});

test("a chart of fills names those whose scale failed", () => {
  const lots = sheetsOf<LotState>("lot").value.map(({ state }) => ({ ...state, material: "jam" }));
  const [packs, checks] = lots.flatMap((lot) => fillSeries(lot, lots));

  expect(packs?.why).toContain("Bench scale failed a check.");
  expect(checks?.points.map(({ name }) => name)).toEqual(["5 Nov, J-1, its scale failed a check"]);
});

test("what the server counted over all phones stands on the shelf once it was pulled", async () => {
  const counted = (check: string, count: number, seq: number) => ({
    type: "uses" as const,
    id: "s1",
    seq,
    data: { check, count, counted_at: "2026-11-09T02:25:00.000Z" },
  });
  const db = await deviceDb(DEVICE);

  const touched = await takeIn(db, [counted("k2", 40, 9)], {}, START_MS);
  await refold(touched);
  expect(standingOf("s1", `${ON}-08`)).toMatchObject({ is: "failed", uses: 40 });

  await refold(await takeIn(db, [counted("k1", 41, 10)], {}, START_MS));
  expect(standingOf("s1", `${ON}-08`)).toMatchObject({ is: "failed", uses: 0 });

  await refold(await takeIn(db, [counted("k2", 42, 11)], {}, START_MS));
  await loadShelf();
  expect(standingOf("s1", `${ON}-08`).uses).toBe(42);
});

test("each of them is listed with what is known of it", () => {
  const leaned = leanedHere("s1", "k2");

  expect(leaned?.sheets.map((each) => [each.subject, each.readings.length])).toEqual([
    ["lot:J-1", 1],
  ]);
  expect(leaned?.elsewhere.map(({ entry, read, moves }) => [entry, read, moves])).toEqual([
    ["r1", "502.0", "-8"],
    ["k3", null, null],
  ]);
  expect(leaned?.lots).toEqual(["J-1"]);
});

test("a check that did not fail has nothing that leaned on it", () => {
  expect(leanedHere("s1", "k1")).toBeNull();
});

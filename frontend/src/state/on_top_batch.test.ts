import { expect, test } from "vitest";
import { type BatchState, batchState } from "../calc/batches.ts";
import { NOTHING_BESIDE } from "../calc/trusted.ts";
import { batchOnTop } from "./on_top_batch.ts";
import { fact } from "./on_top_parts.ts";
import "./judging.ts";

const START = fact("s1", "batch_started", { batch: "b1", code: "MJ-1", lines: [], steps: [] }, 1);
const WARM = {
  batch: "b1",
  unit: "degC",
  at_s: [0, 600],
  temperatures: ["4", "9"],
  judged: { by: "cold_hold", set_by: "the local code" },
};

function shown(server: BatchState, extra: Parameters<typeof batchOnTop>[2]["extra"]): BatchState {
  return batchOnTop("batch:b1", server, { extra, covered: [] }, NOTHING_BESIDE);
}

test("an own log that failed holds a batch of which not all entries are here", () => {
  const server = batchState("batch:b1", [START]);

  const batch = shown(server, [fact("h1", "heat_log", WARM, 2)]);

  expect(batch.hold?.is_held).toBe(true);
  expect(batch.hold?.causes.map(({ entry, what, judged_by }) => [entry, what, judged_by])).toEqual([
    ["h1", "fail", "cold_hold"],
  ]);
  expect(batch.findings.map(({ key }) => key)).toEqual(["heat_failed:h1", "held"]);
});

test("an own decision about it lets the batch go and settles what the log found", () => {
  const held = shown(batchState("batch:b1", [START]), [fact("h1", "heat_log", WARM, 2)]);
  const release = { decision: "release", decides: [{ entry: "h1" }], reason: "looked at" };

  const batch = shown(held, [fact("d1", "hold_decided", { batch: "b1", ...release }, 3)]);

  expect(batch.hold?.is_held).toBe(false);
  expect(batch.findings.map(({ key, is_settled }) => [key, is_settled])).toEqual([
    ["heat_failed:h1", true],
  ]);
});

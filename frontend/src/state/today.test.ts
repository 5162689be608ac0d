import { describe, expect, test } from "vitest";
import { type BatchState, batchState } from "../calc/batches.ts";
import { type Fact, TEXT_ORDER } from "../calc/record.ts";
import { nextActOf } from "./today.ts";

let written = 0;

function fact(kind: string, body: Fact["body"]): Fact {
  written += 1;
  return {
    id: `e${written}`,
    kind,
    author: "ama",
    device: "d1",
    device_seq: written,
    happened_at: `2026-11-10T08:${String(written).padStart(2, "0")}:00.000Z`,
    local_date: "2026-11-10",
    seq: null,
    body: { batch: "b1", ...body },
  };
}

const START = fact("batch_started", {
  code: "MJ-1",
  recipe: "jam",
  lines: [
    { line: "1", material: "fruit", amount: { amount: "10", unit: "kg" } },
    { line: "2", material: "sugar", amount: { amount: "6", unit: "kg" } },
  ],
  steps: [{ step: "1", says: "Boil" }],
});
const LAID_OUT = ["1", "2"].map((line) => fact("laid_out", { line, lots: [{ lot: "L-1" }] }));
const WEIGHED = ["1", "2"].map((line) =>
  fact("weigh_in", { line, lot: "L-1", reading: { unit: "kg", shown: "1" } }),
);

function next(facts: readonly Fact[]) {
  const state: BatchState = batchState("batch:b1", [START, ...facts]);
  return nextActOf(state);
}

describe("the next act", () => {
  test("is to lay out every line before anything is weighed in", () => {
    expect(next([])).toMatchObject({ act: "lay_out", line: "1", material: "fruit" });
    expect(next(LAID_OUT.slice(0, 1))).toMatchObject({ act: "lay_out", line: "2" });
  });

  test("is then to weigh in, line by line", () => {
    expect(next(LAID_OUT)).toMatchObject({ act: "weigh_in", line: "1", code: "MJ-1" });
    expect(next([...LAID_OUT, ...WEIGHED.slice(0, 1)])).toMatchObject({ line: "2" });
  });

  test("is then the steps, and at last to finish", () => {
    const weighed = [...LAID_OUT, ...WEIGHED];
    expect(next(weighed)).toMatchObject({ act: "step", step: "1", says: "Boil" });
    expect(next([...weighed, fact("step_done", { step: "1" })])).toMatchObject({ act: "finish" });
  });

  test("does not ask to lay out what is already in the bowl", () => {
    const facts = [...WEIGHED].sort((a, b) => TEXT_ORDER(a.id, b.id));
    expect(next(facts)).toMatchObject({ act: "step" });
  });
});

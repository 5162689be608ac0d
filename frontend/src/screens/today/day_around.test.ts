import { expect, test } from "vitest";
import { type BatchState, batchState } from "../../calc/batches.ts";
import type { Fact } from "../../calc/record.ts";
import { filledShort, toCheck, writtenLast } from "./day_around.ts";

function fact(id: string, kind: string, minute: string, body: Fact["body"]): Fact {
  return {
    id,
    kind,
    author: "ama",
    device: "phone",
    device_seq: Number(minute),
    happened_at: `2026-11-10T09:${minute}:00.000Z`,
    local_date: "2026-11-10",
    seq: null,
    body: { batch: "b", ...body },
  };
}

function batchOf(...facts: Fact[]): BatchState {
  return batchState("batch:b", facts);
}

test("what was written last comes first, lines and steps alike", () => {
  const batch = batchOf(
    fact("1", "batch_started", "01", {
      code: "MJ-261110-K7-1",
      lines: [{ line: "1", material: "sugar", amount: { amount: "100", unit: "g" } }],
      steps: [{ step: "1", says: "Boil.", measures: "temperature", unit: "degC" }],
    }),
    fact("2", "weigh_in", "05", {
      line: "1",
      material: "sugar",
      lot: "SU-1",
      reading: { unit: "g", shown: "100.2" },
    }),
    fact("3", "step_done", "09", { step: "1", reading: { unit: "degC", shown: "104" } }),
  );

  const written = writtenLast([batch]);

  expect(written.map(({ id, amount, unit }) => [id, amount, unit])).toEqual([
    ["3", "104", "degC"],
    ["2", "100.2", "g"],
  ]);
});

test("only the last five are listed", () => {
  const weighed = ["02", "03", "04", "05", "06", "07"].map((minute) =>
    fact(minute, "weigh_in", minute, {
      line: "1",
      material: "sugar",
      lot: "SU-1",
      reading: { unit: "g", shown: "1" },
    }),
  );
  const start = fact("1", "batch_started", "01", {
    lines: [{ line: "1", material: "sugar", amount: { amount: "6", unit: "g" } }],
    steps: [],
  });

  expect(writtenLast([batchOf(start, ...weighed)])).toHaveLength(5);
});

test("a lot stands out while its last fill check failed and packs are on hand", () => {
  const lot = (code: string, on_hand: string, ...verdicts: string[]) => ({
    lot: code,
    on_hand,
    fills: verdicts.map((verdict) => ({ verdict })),
  });

  const found = filledShort([
    lot("short", "3", "pass", "fail"),
    lot("mended", "3", "fail", "pass"),
    lot("sold out", "0", "fail"),
    lot("below zero", "-2", "fail"),
    lot("not weighed", "3"),
  ]);

  expect(found.map((each) => each.lot)).toEqual(["short"]);
});

test("instruments that want a check are counted, the gravest first", () => {
  expect(toCheck(["fit", "due", "not_checked", "failed", "due"])).toEqual([
    ["failed", 1],
    ["due", 2],
    ["not_checked", 1],
  ]);
  expect(toCheck(["fit"])).toEqual([]);
});

import { expect, test } from "vitest";
import type { HeldEntry } from "../../state/record.ts";
import { inForce, rivalsOf, voidedOf } from "./standing.ts";

function held(id: string, kind: string, body: HeldEntry["entry"]["body"]): HeldEntry {
  return {
    entry: {
      id,
      kind,
      version: 1,
      subjects: ["batch:b"],
      cooperative: "c",
      author: "ama",
      device: `phone-${id}`,
      device_seq: 1,
      recorded_at: "2026-11-10T09:00:00.000Z",
      tz: "UTC",
      utc_offset_min: 0,
      local_date: "2026-11-10",
      seen: "",
      happened_at: "2026-11-10T09:00:00.000Z",
      app_version: "0",
      body,
    },
    seq: null,
    is_waiting: true,
  };
}

const READ = held("a", "weigh_in", { reading: { shown: "60.4" } });

function corrected(id: string, shown: string): HeldEntry {
  const body = { reading: { shown } };
  return held(id, "correction", { corrects: "a", of_kind: "weigh_in", reason: "misread", body });
}

test("one correction counts", () => {
  expect(inForce([READ, corrected("b", "60.7")], "a")).toEqual({ reading: { shown: "60.7" } });
  expect(rivalsOf([READ, corrected("b", "60.7")], "a")).toEqual([]);
});

test("two corrections are rivals, and the old value counts", () => {
  const entries = [READ, corrected("b", "60.7"), corrected("c", "61.0")];

  expect(rivalsOf(entries, "a").map(({ entry }) => entry.id)).toEqual(["b", "c"]);
  expect(inForce(entries, "a")).toEqual({ reading: { shown: "60.4" } });
});

test("what is void no longer stands", () => {
  const gone = held("v", "void", { corrects: "a", of_kind: "weigh_in", reason: "slip" });

  expect(voidedOf([READ, gone], "weigh_in").map(({ entry }) => entry.id)).toEqual(["a"]);
  expect(inForce([READ, gone], "a")).toBeNull();
});

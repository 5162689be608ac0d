import { expect, test } from "vitest";
import type { HeldEntry } from "../../state/record.ts";
import type { Body } from "../../state/types.ts";
import { historyOf } from "../common/history.ts";
import { inForce } from "../common/standing.ts";
import { lotWords } from "./history.ts";

let made = 0;

function held(kind: string, body: Body, id = `e${made + 1}`): HeldEntry {
  made += 1;
  const at = `2026-11-10T08:${String(made).padStart(2, "0")}:00.000Z`;
  const entry = {
    id,
    kind,
    version: 1,
    subjects: ["lot:MJ-1"],
    cooperative: "c",
    author: "ama",
    device: "d",
    device_seq: made,
    recorded_at: at,
    tz: "UTC",
    utc_offset_min: 0,
    local_date: "2026-11-10",
    seen: "",
    happened_at: at,
    app_version: "0",
    body,
  };
  return { entry, seq: made, is_waiting: false };
}

function sale(amount: string): Body {
  return { lot: "MJ-1", amount: { amount, unit: "pc" }, place: "m1", on: "2026-11-10" };
}

function correction(corrects: string, amount: string, reason: string): Body {
  return { corrects, of_kind: "sale", reason, body: sale(amount) };
}

test("a corrected entry shows the old value, the new one, and why", () => {
  const first = held("sale", sale("5"));
  const second = held("correction", correction(first.entry.id, "4", "one came back"));

  const [row] = historyOf([first, second], lotWords("MJ-1", []));

  expect(row).toMatchObject({ is: "corrected", was: "5", amount: "4" });
  expect(row?.by?.reason).toBe("one came back");
});

test("a void stays in its place with its reason", () => {
  const first = held("sale", sale("5"));
  const second = held("void", { corrects: first.entry.id, of_kind: "sale", reason: "slip" });

  const rows = historyOf([first, second], lotWords("MJ-1", []));

  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ is: "void", amount: "5" });
  expect(rows[0]?.by?.reason).toBe("slip");
  expect(inForce([first, second], first.entry.id)).toBeNull();
});

test("two corrections stand side by side, and the old value counts", () => {
  const first = held("sale", sale("5"));
  const one = held("correction", correction(first.entry.id, "4", "counted again"));
  const other = held("correction", correction(first.entry.id, "6", "one more"));

  const [row] = historyOf([first, one, other], lotWords("MJ-1", []));

  expect(row).toMatchObject({ is: "contested", amount: "5", was: "5" });
  expect(row?.rivals.map((each) => each.amount)).toEqual(["4", "6"]);
});

test("the body in force is the corrected one", () => {
  const first = held("sale", sale("5"));
  const second = held("correction", correction(first.entry.id, "4", "slip"));

  expect(inForce([first, second], first.entry.id)).toEqual(sale("4"));
});

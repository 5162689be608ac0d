import { beforeEach, describe, expect, test } from "vitest";
import {
  allRows,
  emptyProfile,
  note,
  openedDevice,
  othersEntry,
  START_MS,
  savedNotes,
} from "../../simulation/bench.ts";
import { parsedChanges } from "../sync/pull.ts";
import { metaOf } from "./meta.ts";
import { resetReadSide } from "./prune.ts";
import { slips, usesRows } from "./reads.ts";
import type { Entry } from "./rows.ts";
import { saveEntry } from "./save.ts";
import { settle } from "./settle.ts";
import { type Pulled, type PulledSheet, takeIn } from "./take_in.ts";

beforeEach(emptyProfile);

function told(entry: Entry, seq: number): Pulled {
  return { type: "entry", id: entry.id, seq, data: { entry, received_at: entry.recorded_at } };
}

function sheetOf(subject: string, seq: number, isOpen: boolean): PulledSheet {
  const data = { state: {}, upto_seq: seq - 1, entry_count: 1, fold: 1, is_open: isOpen };
  return { type: "sheet", id: subject, seq, data };
}

describe("taking in a page", () => {
  test("writes rows and cursor together", async () => {
    const db = await openedDevice();

    await takeIn(db, [told(othersEntry(1), 1)], { cursor: "e/1" }, START_MS);

    expect(await allRows(db)).toHaveLength(1);
    expect((await metaOf(db)).cursor).toBe("e/1");
  });

  test("that breaks off leaves the old cursor and no rows", async () => {
    const db = await openedDevice();
    const unstorable = { ...othersEntry(2), body: { says: () => "no" } };

    const taking = takeIn(
      db,
      [told(othersEntry(1), 1), told(unstorable, 2)],
      { cursor: "e/2" },
      START_MS,
    );

    await expect(taking).rejects.toThrow();
    expect(await allRows(db)).toEqual([]);
    expect((await metaOf(db)).cursor).toBe("");
  });

  test("replaces the own copy of an entry without doubling it", async () => {
    const db = await openedDevice();
    const [own] = await savedNotes(db, 1);
    if (own === undefined) throw new Error("one was saved");
    await settle(db, [{ id: own.id, status: "created", code: "", detail: "" }], START_MS);

    await takeIn(db, [told(own, 9)], {}, START_MS);

    const rows = await allRows(db);
    expect(rows.map((row) => row.seq)).toEqual([9]);
    expect(rows[0]?.handed_over_ms).toBe(START_MS);
  });

  test("does not empty the outbox: only an answer to a push does", async () => {
    const db = await openedDevice();
    const [own] = await savedNotes(db, 1);
    if (own === undefined) throw new Error("one was saved");

    await takeIn(db, [told(own, 9), sheetOf("lot:MJ-261110-K7-1", 10, false)], {}, START_MS);

    expect(await slips(db)).toHaveLength(1);
    expect(await allRows(db)).toHaveLength(1);
  });

  test("with a closed sheet drops its entries, but none that an open subject needs", async () => {
    const db = await openedDevice();
    const done = othersEntry(1, { subjects: ["lot:A"] });
    const shared = othersEntry(2, { subjects: ["batch:b1", "lot:A"] });

    await takeIn(db, [told(done, 1), told(shared, 2)], {}, START_MS);
    await takeIn(db, [sheetOf("batch:b1", 3, true), sheetOf("lot:A", 4, false)], {}, START_MS);

    expect((await allRows(db)).map((row) => row.id)).toEqual([shared.id]);
  });

  test("keeps own entries of a closed sheet: a backup may not have them yet", async () => {
    const db = await openedDevice();
    const { entry } = await saveEntry(db, note({ subjects: ["lot:A"] }), START_MS);
    await settle(db, [{ id: entry.id, status: "created", code: "", detail: "" }], START_MS);

    await takeIn(db, [sheetOf("lot:A", 2, false)], {}, START_MS);

    expect(await allRows(db)).toHaveLength(1);
  });

  test("keeps how far off the clock was of the phone that handed an entry over", async () => {
    const db = await openedDevice();
    const entry = othersEntry(1);
    const [data] =
      parsedChanges([
        {
          type: "entry",
          id: entry.id,
          seq: 1,
          data: { entry, received_at: entry.recorded_at, skew_ms: 11_400_000 },
        },
      ]) ?? [];
    if (data === undefined) throw new Error("it was told");

    await takeIn(db, [data, told(othersEntry(2), 2)], {}, START_MS);

    expect((await allRows(db)).map((row) => row.skew_ms)).toEqual([11_400_000, undefined]);
  });

  test("keeps how often an instrument was used, as the server counted it last", async () => {
    const db = await openedDevice();
    const counted = (count: number, seq: number) =>
      parsedChanges([
        {
          type: "uses",
          id: "s1",
          seq,
          data: { check: "k1", count, counted_at: "2026-11-10T02:25:00.000Z" },
        },
      ]) ?? [];

    await takeIn(db, counted(4, 5), {}, START_MS);
    const touched = await takeIn(db, counted(7, 6), {}, START_MS);

    expect(touched).toEqual(["instrument:s1"]);
    expect(
      (await usesRows(db)).map(({ instrument, check, count }) => [instrument, check, count]),
    ).toEqual([["s1", "k1", 7]]);
    await resetReadSide(db, "another life");
    expect(await usesRows(db)).toEqual([]);
  });

  test("a count that is no count is nonsense", () => {
    const data = { check: "k1", count: "7", counted_at: "2026-11-10T02:25:00.000Z" };

    expect(parsedChanges([{ type: "uses", id: "s1", seq: 1, data }])).toBeNull();
  });

  test("does not go back to an older sheet", async () => {
    const db = await openedDevice();
    await takeIn(db, [sheetOf("lot:A", 5, true)], {}, START_MS);

    await takeIn(db, [sheetOf("lot:A", 4, false)], {}, START_MS);

    expect((await db.get("sheets", "lot:A"))?.seq).toBe(5);
  });

  test.each([
    ["before", [0, 1]],
    ["after", [1, 0]],
  ])("links a family whether the original comes %s its correction", async (_, order) => {
    const db = await openedDevice();
    const original = othersEntry(1, { subjects: ["lot:A"] });
    const correction = othersEntry(2, {
      kind: "correction",
      subjects: ["lot:B"],
      body: { corrects: original.id, of_kind: "note", reason: "wrong lot", body: {} },
    });
    const pulled = [told(original, 1), told(correction, 2)];

    for (const index of order) {
      const one = pulled[index];
      if (one !== undefined) await takeIn(db, [one], {}, START_MS);
    }

    const rows = await allRows(db);
    expect(rows.map((row) => row.linked)).toEqual([
      ["lot:A", "lot:B"],
      ["lot:A", "lot:B"],
    ]);
  });
});

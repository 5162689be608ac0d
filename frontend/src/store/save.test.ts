import { beforeEach, describe, expect, test, vi } from "vitest";
import { allRows, DEVICE, emptyProfile, note, openedDevice } from "../../simulation/bench.ts";
import { openDevice } from "./device.ts";
import { draftOf, putDraft } from "./drafts.ts";
import { metaOf, setMeta } from "./meta.ts";
import { slips } from "./reads.ts";
import { saveEntry, saveTogether } from "./save.ts";

beforeEach(emptyProfile);

describe("saving an entry", () => {
  test("is one strict readwrite transaction over entry, slip and counter", async () => {
    const db = await openedDevice();
    const opened = vi.spyOn(IDBDatabase.prototype, "transaction");

    await saveEntry(db, note(), 0);

    expect(opened).toHaveBeenCalledTimes(1);
    const [stores, mode, options] = opened.mock.calls[0] ?? [];
    expect(stores).toEqual(["entries", "outbox", "meta"]);
    expect(mode).toBe("readwrite");
    expect(options).toEqual({ durability: "strict" });
    opened.mockRestore();
  });

  test("numbers the entry and says what was seen", async () => {
    const db = await openedDevice();
    await setMeta(db, { cursor: "epoch/7" });

    await saveEntry(db, note(), 0);
    const { entry } = await saveEntry(db, note(), 0);

    expect(entry.device_seq).toBe(2);
    expect(entry.seen).toBe("epoch/7");
  });

  test("leaves nothing behind when the transaction is rolled back", async () => {
    const db = await openedDevice();
    // A slip that already has the next number makes the transaction fail at its second step.
    await db.put("outbox", { id: "x", kind: "note", device_seq: 1, saved_ms: 0, stuck: null });

    await expect(saveEntry(db, note(), 0)).rejects.toThrow();

    expect(await allRows(db)).toEqual([]);
    expect((await metaOf(db)).device_seq).toBe(0);
  });

  test("of the same id twice keeps one entry and answers the first", async () => {
    const db = await openedDevice();
    const draft = note();

    const first = await saveEntry(db, draft, 0);
    const second = await saveEntry(db, draft, 0);

    expect(second).toEqual(first);
    expect(await slips(db)).toHaveLength(1);
  });

  test("from two tabs at once numbers a thousand entries without gap or double", async () => {
    const tabs = [await openedDevice(), await openDevice(DEVICE)];

    const saved = await Promise.all(
      Array.from({ length: 1000 }, (_, index) => {
        const db = tabs[index % 2];
        if (db === undefined) throw new Error("there are two tabs");
        return saveEntry(db, note(), 0);
      }),
    );

    const numbers = saved.map(({ entry }) => entry.device_seq).sort((a, b) => a - b);
    expect(numbers).toEqual(Array.from({ length: 1000 }, (_, index) => index + 1));
  });

  test("links a correction and what it corrects to the subjects of both", async () => {
    const db = await openedDevice();
    const original = note({ subjects: ["lot:A"] });
    const correction = note({
      kind: "correction",
      subjects: ["lot:A", "lot:B"],
      body: { corrects: original.id, of_kind: "note", reason: "wrong lot", body: {} },
    });

    await saveEntry(db, original, 0);
    const { subjects } = await saveEntry(db, correction, 0);

    expect(subjects).toEqual(["lot:A", "lot:B"]);
    expect((await db.get("entries", original.id))?.linked).toEqual(["lot:A", "lot:B"]);
  });
});

describe("saving what belongs together", () => {
  test("keeps every entry, numbered in turn, and ends the draft", async () => {
    const db = await openedDevice();
    await putDraft(db, "receive", { price: "3" });

    const kept = await saveTogether(db, [note(), note()], { saved_ms: 7, form: "receive" });

    expect(kept.map(({ entry }) => entry.device_seq)).toEqual([1, 2]);
    expect((await slips(db)).map((slip) => slip.id)).toEqual(kept.map(({ entry }) => entry.id));
    expect((await metaOf(db)).device_seq).toBe(2);
    expect(await draftOf(db, "receive")).toBeNull();
  });

  test("keeps none of it, and the draft, when one cannot be kept", async () => {
    const db = await openedDevice();
    await putDraft(db, "receive", { price: "3" });
    await db.put("outbox", { id: "x", kind: "note", device_seq: 2, saved_ms: 0, stuck: null });
    const given = { saved_ms: 7, form: "receive" };

    await expect(saveTogether(db, [note(), note()], given)).rejects.toThrow();

    expect(await allRows(db)).toEqual([]);
    expect((await metaOf(db)).device_seq).toBe(0);
    expect(await draftOf(db, "receive")).toEqual({ price: "3" });
  });

  test("is one strict transaction", async () => {
    const db = await openedDevice();
    const opened = vi.spyOn(IDBDatabase.prototype, "transaction");

    await saveTogether(db, [note(), note()], { saved_ms: 7, form: "receive" });

    expect(opened.mock.calls.map(([, mode, options]) => [mode, options])).toEqual([
      ["readwrite", { durability: "strict" }],
    ]);
    opened.mockRestore();
  });
});

import { beforeEach, describe, expect, test } from "vitest";
import { DEVICE, emptyProfile, note } from "../../simulation/bench.ts";
import { openDevice, STEPS } from "./device.ts";
import type { EntryRow, Slip } from "./rows.ts";

beforeEach(emptyProfile);

const WAITING = 500;

describe("bringing a database up to date", () => {
  const olderVersions = STEPS.map((_, index) => index + 1).filter((one) => one < STEPS.length);

  test.each(olderVersions)("from version %i keeps a full outbox as it was", async (version) => {
    const before = await openDevice(DEVICE, {}, version);
    const rows: EntryRow[] = [];
    const slips: Slip[] = [];
    for (let device_seq = 1; device_seq <= WAITING; device_seq += 1) {
      const entry = { ...note(), device_seq, seen: "" };
      const { id, kind } = entry;
      slips.push({ id, kind, device_seq, saved_ms: 0, stuck: null });
      rows.push({
        id,
        entry,
        seq: null,
        received_at: null,
        linked: [...entry.subjects],
        handed_over_ms: null,
      });
    }
    const tx = before.transaction(["entries", "outbox"], "readwrite");
    for (const row of rows) void tx.objectStore("entries").put(row);
    for (const slip of slips) void tx.objectStore("outbox").put(slip);
    await tx.done;
    before.close();

    const after = await openDevice(DEVICE);

    expect(await after.getAllFromIndex("outbox", "device_seq")).toEqual(slips);
    const kept = new Map((await after.getAll("entries")).map((row) => [row.id, row]));
    expect(rows.map((row) => kept.get(row.id))).toEqual(rows);
    expect([...after.objectStoreNames]).toEqual([
      "attention",
      "drafts",
      "entries",
      "meta",
      "outbox",
      "sheets",
      "uses",
    ]);
  });

  test("lets a newer tab through instead of hanging", async () => {
    let hasGivenWay = false;
    await openDevice(
      DEVICE,
      {
        onGivenWay: () => {
          hasGivenWay = true;
        },
      },
      1,
    );

    const newer = await openDevice(DEVICE);

    expect(hasGivenWay).toBe(true);
    expect(newer.version).toBe(STEPS.length);
  });
});

/** What may leave this phone again, and what a reset throws away. */
import { committed, type DeviceDb, type StoreName } from "./device.ts";
import { type DeviceMeta, readMeta, writeMeta } from "./meta.ts";
import { heldSubjects, sheetRows } from "./reads.ts";
import type { EntryRow } from "./rows.ts";

const DAY_MS = 86_400_000;
export const OWN_ENTRIES_KEPT_DAYS = 30;

/**
 * Another device's entry may always go: the server has it. An own one stays until it was handed
 * over 30 days ago and stands in a proved backup (R24).
 */
export function isDroppable(row: EntryRow, meta: DeviceMeta, nowMs: number): boolean {
  if (row.entry.device !== meta.device) return true;
  if (row.handed_over_ms === null || !row.seq) return false; // neither null nor 0 is a number here
  // A clock that was set back must not shorten the wait, so only a positive age counts.
  const isOldEnough = nowMs - row.handed_over_ms >= OWN_ENTRIES_KEPT_DAYS * DAY_MS;
  return isOldEnough && meta.backed_up_seq !== null && row.seq <= meta.backed_up_seq;
}

/**
 * Drops entries that no open sheet needs; answers how many went. Subject by subject, each in a
 * transaction of its own: a thumb that saves meanwhile must not wait for all of them.
 */
export async function prune(db: DeviceDb, nowMs: number): Promise<number> {
  const sheets = await sheetRows(db);
  const closed = new Set(sheets.filter((row) => !row.is_open).map((row) => row.subject));
  let droppedCount = 0;
  for (const subject of await heldSubjects(db)) {
    if (closed.has(subject)) droppedCount += await pruneSubject(db, subject, closed, nowMs);
  }
  return droppedCount;
}

async function pruneSubject(
  db: DeviceDb,
  subject: string,
  closed: ReadonlySet<string>,
  nowMs: number,
): Promise<number> {
  const tx = db.transaction(["entries", "meta"], "readwrite");
  return committed(tx, async () => {
    const meta = await readMeta(tx.objectStore("meta"));
    const rows = await tx.objectStore("entries").index("linked").getAll(subject);
    const unneeded = rows.filter(
      (row) => row.linked.every((one) => closed.has(one)) && isDroppable(row, meta, nowMs),
    );
    await Promise.all(unneeded.map((row) => tx.objectStore("entries").delete(row.id)));
    return unneeded.length;
  });
}

/**
 * Throws the read side away, to be pulled anew; the outbox and own entries stay (R43).
 *
 * Numbers of another epoch mean nothing here, so own entries keep 0 until they come back.
 */
export async function resetReadSide(db: DeviceDb, epoch: string): Promise<void> {
  const tx = db.transaction(["entries", "sheets", "uses", "meta"], "readwrite");
  await committed(tx, async () => {
    const meta = await readMeta(tx.objectStore("meta"));
    const isNewEpoch = meta.epoch !== "" && meta.epoch !== epoch;
    await tx.objectStore("sheets").clear();
    await tx.objectStore("uses").clear();
    let cursor = await tx.objectStore("entries").openCursor();
    while (cursor !== null) {
      const row = cursor.value;
      if (row.entry.device !== meta.device) await cursor.delete();
      else if (isNewEpoch && row.handed_over_ms !== null) await cursor.update({ ...row, seq: 0 });
      cursor = await cursor.continue();
    }
    await writeMeta(tx.objectStore("meta"), {
      cursor: "",
      epoch,
      is_whole: false,
      must_reoffer: meta.must_reoffer || isNewEpoch,
      ...(isNewEpoch ? { backed_up_seq: null } : {}),
    });
  });
}

/** A revoked device keeps only what waits, out of sight (R64). */
export async function dropReadData(db: DeviceDb): Promise<void> {
  const stores: StoreName[] = ["entries", "outbox", "sheets", "uses", "drafts", "meta"];
  const tx = db.transaction(stores, "readwrite");
  await committed(tx, async () => {
    const waiting = new Set(await tx.objectStore("outbox").getAllKeys());
    await tx.objectStore("uses").clear();
    await Promise.all([tx.objectStore("sheets").clear(), tx.objectStore("drafts").clear()]);
    let cursor = await tx.objectStore("entries").openCursor();
    while (cursor !== null) {
      if (!waiting.has(cursor.value.id)) await cursor.delete();
      cursor = await cursor.continue();
    }
    await writeMeta(tx.objectStore("meta"), { cursor: "", is_whole: false });
  });
}

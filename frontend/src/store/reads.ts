/** Reading what a device's database holds. */
import type { DeviceDb } from "./device.ts";
import { familyOf } from "./families.ts";
import type { AttentionRow, EntryRow, SheetRow, Slip, UsesRow } from "./rows.ts";

/** All held about a subject, with its sheet as the server sent it, at one moment. */
export interface HeldAbout {
  subject: string;
  rows: EntryRow[];
  sheet: SheetRow | null;
}

export async function heldAbout(db: DeviceDb, subject: string): Promise<HeldAbout> {
  const tx = db.transaction(["entries", "sheets"]);
  const [rows, sheet] = await Promise.all([
    tx.objectStore("entries").index("linked").getAll(subject),
    tx.objectStore("sheets").get(subject),
  ]);
  await tx.done;
  return { subject, rows, sheet: sheet ?? null };
}

export function sheetRows(db: DeviceDb): Promise<SheetRow[]> {
  return db.getAll("sheets");
}

export function usesRows(db: DeviceDb): Promise<UsesRow[]> {
  return db.getAll("uses");
}

/** Every subject of which this phone holds an entry. */
export async function heldSubjects(db: DeviceDb): Promise<string[]> {
  const subjects: string[] = [];
  const tx = db.transaction("entries");
  let cursor = await tx.store.index("linked").openKeyCursor(null, "nextunique");
  while (cursor !== null) {
    subjects.push(cursor.key);
    cursor = await cursor.continue();
  }
  await tx.done;
  return subjects;
}

/** What waits, in the order it was written (R21). */
export function slips(db: DeviceDb): Promise<Slip[]> {
  return db.getAllFromIndex("outbox", "device_seq");
}

export function waitingCount(db: DeviceDb): Promise<number> {
  return db.count("outbox");
}

export async function entryRows(db: DeviceDb, ids: readonly string[]): Promise<EntryRow[]> {
  const tx = db.transaction("entries");
  const rows = await Promise.all(ids.map((id) => tx.store.get(id)));
  await tx.done;
  return rows.filter((row) => row !== undefined);
}

/** An entry with all that corrects it or is corrected by it, however far; none if not held. */
export async function familyRows(db: DeviceDb, id: string): Promise<EntryRow[]> {
  const tx = db.transaction("entries");
  const row = await tx.store.get(id);
  const family = row === undefined ? [] : await familyOf(tx.store, row);
  await tx.done;
  return family;
}

export function attentionRows(db: DeviceDb): Promise<AttentionRow[]> {
  return db.getAll("attention");
}

/** Ids of own entries that were handed over and are still held, for offering again (R93). */
export async function handedOverIds(db: DeviceDb): Promise<string[]> {
  const rows = await db.getAll("entries");
  return rows.filter((row) => row.handed_over_ms !== null).map((row) => row.id);
}

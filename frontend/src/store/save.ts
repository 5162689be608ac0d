/** Saving an entry on this phone: all of it or nothing (R5). */
import { committed, type DeviceDb } from "./device.ts";
import { linkFamily, namedBy } from "./families.ts";
import { readStamp, writeMeta } from "./meta.ts";
import type { Entry, EntryRow, Slip } from "./rows.ts";

/** An entry before the database has numbered it. */
export type Unnumbered = Omit<Entry, "device_seq" | "seen">;

/** A saved entry and every subject it is about. */
export interface Kept {
  entry: Entry;
  subjects: string[];
}

/**
 * Saves an entry with its slip in the outbox and the device's counter, in one transaction.
 *
 * Resolves when the disk has it; then, and only then, a screen may say "saved". Rejects with
 * nothing changed. Saving the same id again answers what was saved first (R7).
 */
export async function saveEntry(db: DeviceDb, draft: Unnumbered, savedMs: number): Promise<Kept> {
  try {
    return await saveNew(db, draft, savedMs);
  } catch (trouble) {
    const before = await keptBefore(db, draft.id, trouble);
    if (before === null) throw trouble;
    return before;
  }
}

async function saveNew(db: DeviceDb, draft: Unnumbered, savedMs: number): Promise<Kept> {
  const tx = db.transaction(["entries", "outbox", "meta"], "readwrite", { durability: "strict" });
  return committed(tx, async () => {
    const entries = tx.objectStore("entries");
    const stamp = await readStamp(tx.objectStore("meta"));
    const device_seq = stamp.device_seq + 1;
    const entry: Entry = { ...draft, device_seq, seen: stamp.cursor };
    const row = unsentRow(entry);
    const writing = Promise.all([
      entries.add(row),
      tx.objectStore("outbox").add(slipOf(entry, savedMs)),
      writeMeta(tx.objectStore("meta"), { device_seq }),
    ]);
    // Nothing is read after this: the disk need not wait until this page has heard of each write.
    if (row.corrects === undefined) tx.commit();
    await writing;
    const subjects = row.corrects === undefined ? row.linked : await linkFamily(entries, row);
    return { entry, subjects };
  });
}

/**
 * Saves the entries of one act and ends the form they were typed into, in one transaction: a phone
 * that dies in between has all of it and no draft, or none of it and the draft.
 *
 * None of them may correct another entry. Rejects with nothing changed.
 */
export async function saveTogether(
  db: DeviceDb,
  drafts: readonly Unnumbered[],
  given: { saved_ms: number; form: string },
): Promise<Kept[]> {
  const stores = ["entries", "outbox", "meta", "drafts"] as const;
  const tx = db.transaction(stores, "readwrite", { durability: "strict" });
  return committed(tx, async () => {
    const stamp = await readStamp(tx.objectStore("meta"));
    const rows = drafts.map((draft, at) =>
      unsentRow({ ...draft, device_seq: stamp.device_seq + at + 1, seen: stamp.cursor }),
    );
    await Promise.all([
      ...rows.map((row) => tx.objectStore("entries").add(row)),
      ...rows.map((row) => tx.objectStore("outbox").add(slipOf(row.entry, given.saved_ms))),
      writeMeta(tx.objectStore("meta"), { device_seq: stamp.device_seq + rows.length }),
      tx.objectStore("drafts").delete(given.form),
    ]);
    return rows.map(({ entry, linked }) => ({ entry, subjects: linked }));
  });
}

/** The id is taken: by the entry that was saved first. Asked only then, not before each save. */
async function keptBefore(db: DeviceDb, id: string, trouble: unknown): Promise<Kept | null> {
  const isTaken = trouble instanceof DOMException && trouble.name === "ConstraintError";
  const row = isTaken ? await db.get("entries", id) : undefined;
  return row === undefined ? null : { entry: row.entry, subjects: row.linked };
}

/** The line in the outbox that an entry gets when it is saved. */
export function slipOf(entry: Entry, savedMs: number): Slip {
  const { id, kind, device_seq } = entry;
  return { id, kind, device_seq, saved_ms: savedMs, stuck: null };
}

function unsentRow(entry: Entry): EntryRow {
  const corrects = namedBy(entry);
  return {
    id: entry.id,
    entry,
    seq: null,
    received_at: null,
    linked: [...entry.subjects].sort(),
    handed_over_ms: null,
    ...(corrects === undefined ? {} : { corrects }),
  };
}

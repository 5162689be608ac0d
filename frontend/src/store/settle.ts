/** What becomes of the outbox when the server has answered: only an answer empties it (R14). */
import { committed, type DeviceDb } from "./device.ts";
import type { AttentionRow, EntryRow } from "./rows.ts";
import { slipOf } from "./save.ts";

/** The server's word on one entry (R2); `retry` changes nothing and is not passed on to here. */
export interface Result {
  id: string;
  status: "created" | "exists" | "mismatch" | "quarantined";
  code: string;
  detail: string;
}

/** Takes in a push's results. Doing it twice changes nothing. Answers the subjects concerned. */
export async function settle(
  db: DeviceDb,
  results: readonly Result[],
  nowMs: number,
): Promise<string[]> {
  const tx = db.transaction(["entries", "outbox", "attention"], "readwrite");
  return committed(tx, async () => {
    const entries = tx.objectStore("entries");
    const outbox = tx.objectStore("outbox");
    const touched = new Set<string>();
    for (const result of results) {
      const [slip, row] = await Promise.all([outbox.get(result.id), entries.get(result.id)]);
      if (slip === undefined || row === undefined) continue;
      for (const subject of row.linked) touched.add(subject);
      await outbox.delete(result.id);
      if (result.status === "created" || result.status === "exists") {
        await entries.put({ ...row, handed_over_ms: nowMs });
      } else {
        // Outside the record: it must not be added up any more, but stays readable here.
        await entries.delete(result.id);
        await tx.objectStore("attention").put(keptAside(row, result, result.status, nowMs));
      }
    }
    return [...touched];
  });
}

/** Marks an entry whose push alone was refused; it stays in the outbox (R22). */
export async function markStuck(db: DeviceDb, id: string, code: string | null): Promise<void> {
  const tx = db.transaction("outbox", "readwrite");
  await committed(tx, async () => {
    const slip = await tx.store.get(id);
    if (slip !== undefined) await tx.store.put({ ...slip, stuck: code });
  });
}

/** Puts entries back into the outbox that a restored server has lost (R93). */
export async function offerAgain(db: DeviceDb, ids: readonly string[]): Promise<void> {
  const tx = db.transaction(["entries", "outbox"], "readwrite", { durability: "strict" });
  await committed(tx, async () => {
    for (const id of ids) {
      const row = await tx.objectStore("entries").get(id);
      if (row === undefined) continue;
      await tx.objectStore("outbox").put(slipOf(row.entry, row.handed_over_ms ?? 0));
      await tx.objectStore("entries").put({ ...row, seq: null, handed_over_ms: null });
    }
  });
}

function keptAside(
  row: EntryRow,
  result: Result,
  status: "mismatch" | "quarantined",
  nowMs: number,
): AttentionRow {
  const { id, code, detail } = result;
  return { id, status, code, detail, at_ms: nowMs, entry: row.entry };
}

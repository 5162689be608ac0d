/** What waits in the outbox of the person on the screen, entry by entry. */
import { entryRows, slips } from "../store/reads.ts";
import { withDb } from "./house.ts";
import type { Entry } from "./types.ts";

/** One entry that was saved here and not handed over yet. */
export interface WaitingEntry {
  entry: Entry;
  saved_ms: number;
  /** Why the server refused it alone, or null (R22). */
  stuck: string | null;
}

/** The oldest first, as they will be handed over (R21). */
export async function waitingEntries(): Promise<WaitingEntry[]> {
  const read = await withDb(async (db) => {
    const waiting = await slips(db);
    const rows = await entryRows(
      db,
      waiting.map((slip) => slip.id),
    );
    return { waiting, rows };
  });
  if (read === null) return [];
  const entries = new Map(read.rows.map((row) => [row.id, row.entry]));
  return read.waiting.flatMap(({ id, saved_ms, stuck }) => {
    const entry = entries.get(id);
    return entry === undefined ? [] : [{ entry, saved_ms, stuck }];
  });
}

/** Which waiting entries go into the next push (R21, R22). */
import type { EntryRow, Slip } from "../store/rows.ts";

export const PUSH_ENTRIES_MAX = 100;
export const PUSH_BYTES_MAX = 256 * 1024;
/** Room for the fields around the entries. */
const AROUND_BYTES = 1024;

export interface Choice {
  slips: readonly Slip[];
  /** Entries already answered `retry`, or refused, in this round. */
  heldBack: ReadonlySet<string>;
  entriesMax: number;
}

/** Ids in order of writing; what names a held-back entry waits with it. */
export function nextIds(choice: Choice): string[] {
  return choice.slips
    .filter((slip) => slip.stuck === null && !choice.heldBack.has(slip.id))
    .map((slip) => slip.id)
    .slice(0, choice.entriesMax + choice.heldBack.size);
}

/** Cuts rows down to what one push may hold; the first always goes, however large. */
export function portion(
  rows: readonly EntryRow[],
  choice: Choice,
): { rows: EntryRow[]; waitsWithAnother: string[] } {
  const kept: EntryRow[] = [];
  const waitsWithAnother: string[] = [];
  let bytes = AROUND_BYTES;
  for (const row of rows) {
    if (namesOneOf(row, choice.heldBack)) {
      waitsWithAnother.push(row.id);
      continue;
    }
    bytes += utf8Bytes(JSON.stringify(row.entry)) + 1;
    const isFull = kept.length >= choice.entriesMax || bytes > PUSH_BYTES_MAX;
    if (isFull && kept.length > 0) break;
    kept.push(row);
  }
  return { rows: kept, waitsWithAnother };
}

function namesOneOf(row: EntryRow, ids: ReadonlySet<string>): boolean {
  if (ids.size === 0) return false;
  const words = JSON.stringify(row.entry.body);
  for (const id of ids) if (words.includes(id)) return true;
  return false;
}

function utf8Bytes(text: string): number {
  return new TextEncoder().encode(text).byteLength;
}

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

/**
 * Cuts rows down to what one push may hold; the first always goes, however large. What names an
 * entry of the same push goes with the next one: the server may ask to bring the named one again.
 */
export function portion(
  rows: readonly EntryRow[],
  choice: Choice,
): { rows: EntryRow[]; waitsWithAnother: string[] } {
  const kept: EntryRow[] = [];
  const keptIds = new Set<string>();
  const waitsWithAnother: string[] = [];
  let bytes = AROUND_BYTES;
  for (const row of rows) {
    const words = JSON.stringify(row.entry);
    const named = idsIn(words).filter((id) => id !== row.id);
    if (named.some((id) => choice.heldBack.has(id))) {
      waitsWithAnother.push(row.id);
      continue;
    }
    if (named.some((id) => keptIds.has(id))) continue;
    bytes += utf8Bytes(words) + 1;
    const isFull = kept.length >= choice.entriesMax || bytes > PUSH_BYTES_MAX;
    if (isFull && kept.length > 0) break;
    kept.push(row);
    keptIds.add(row.id);
  }
  return { rows: kept, waitsWithAnother };
}

const UUID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;

function idsIn(words: string): string[] {
  return words.match(UUID) ?? [];
}

function utf8Bytes(text: string): number {
  return new TextEncoder().encode(text).byteLength;
}

/** What of the held entries the server's sheet contains, and what lies beyond it. */
import type { HeldAbout } from "../store/reads.ts";
import type { EntryRow, SheetRow } from "../store/rows.ts";
import { foldNumberOf, isUnderstood } from "./folding.ts";

/** Whether every entry the server counted is held, and this phone counts as the server does: by the
 * same fold, and knowing what each of them is. */
export function holdsAll({ subject, rows, sheet }: HeldAbout): boolean {
  if (sheet === null || foldNumberOf(subject) !== sheet.fold) return false;
  const counted = rows.filter((row) => isCounted(row, sheet));
  return counted.length === sheet.entry_count && counted.every(isUnderstood);
}

/** An entry that the server's sheet contains. */
export function isCounted(row: EntryRow, sheet: SheetRow): boolean {
  if (row.seq !== null) return row.seq > 0 && row.seq <= sheet.upto_seq;
  // Entries about definitions are not told to phones, so an own one gets its number late; but a
  // state often names the entries it stands on.
  return row.handed_over_ms !== null && JSON.stringify(sheet.state).includes(row.id);
}

/** An entry that the sheet does not contain. A number of an earlier life says: it does, or did. */
export function isBeyond(row: EntryRow, sheet: SheetRow): boolean {
  return row.seq !== 0 && !isCounted(row, sheet);
}

/** An entry of this device that the server has not confirmed. */
export function isWaiting(row: EntryRow, device: string): boolean {
  return row.entry.device === device && row.handed_over_ms === null;
}

/**
 * Whether the server should be asked for all entries about a subject: it is open, or has entries
 * beyond its sheet, and not all are held. Of a definition what waits lies on top without them.
 */
export function shouldAsk(held: HeldAbout, device: string): boolean {
  const { rows, sheet } = held;
  if (sheet === null || rows.length === 0 || holdsAll(held)) return false;
  if (foldNumberOf(held.subject) === null) return false;
  // Asking again would not make this app understand them.
  if (!rows.every(isUnderstood)) return false;
  const beyond = rows.filter((row) => isBeyond(row, sheet));
  return sheet.is_open || beyond.some((row) => !isWaiting(row, device));
}

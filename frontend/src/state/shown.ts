/** What a phone shows of a subject, from what it holds. Pure: the simulation asks it too. */

import type { HeldAbout } from "../store/reads.ts";
import type { EntryRow, SheetRow } from "../store/rows.ts";
import { folded, foldOf } from "./folding.ts";
import { onTop } from "./on_top.ts";
import type { Shown } from "./types.ts";

/**
 * The phone folds a subject itself while it holds every entry the server's sheet counts and has
 * the same fold; else it shows the server's state with its own newer entries on top.
 */
export function shownOf(held: HeldAbout, device: string): Shown<object> | null {
  const { subject, rows, sheet } = held;
  if (rows.length === 0 && sheet === null) return null;
  const waiting = rows.filter((row) => isWaiting(row, device)).length;
  const common = { subject, is_open: sheet?.is_open ?? true, waiting };
  if (sheet === null) {
    const state = folded(subject, rows);
    return state === null ? null : { ...common, state, from: "phone" };
  }
  if (holdsAll(held)) {
    const state = folded(subject, rows);
    if (state !== null) return { ...common, state, from: "phone" };
  }
  const extra = rows.filter((row) => isBeyond(row, sheet));
  if (extra.length === 0) return { ...common, state: sheet.state, from: "server" };
  return { ...common, state: onTop(subject, sheet, rows), from: "server_and_own" };
}

/** Whether every entry the server counted is held, and this phone counts as the server does. */
export function holdsAll({ subject, rows, sheet }: HeldAbout): boolean {
  if (sheet === null) return false;
  if (foldOf(subject)?.fold !== sheet.fold) return false;
  const counted = rows.filter((row) => row.seq !== null && row.seq <= sheet.upto_seq);
  return counted.length === sheet.entry_count;
}

/** An entry of this device that the server has not confirmed. */
export function isWaiting(row: EntryRow, device: string): boolean {
  return row.entry.device === device && row.handed_over_ms === null;
}

/** An entry the server's sheet does not contain yet. */
export function isBeyond(row: EntryRow, sheet: SheetRow): boolean {
  // Handed over but without a number: it was confirmed before a restore, so the sheet has it.
  if (row.seq === null) return row.handed_over_ms === null;
  return row.seq > sheet.upto_seq;
}

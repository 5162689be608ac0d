/** What a phone shows of a subject, from what it holds. Pure: the simulation asks it too. */

import type { Beside } from "../calc/folds.ts";
import { NOTHING_BESIDE } from "../calc/trusted.ts";
import type { HeldAbout } from "../store/reads.ts";
import { folded, isUnderstood } from "./folding.ts";
import { holdsAll, isBeyond, isWaiting } from "./held.ts";
import { onTop } from "./on_top.ts";
import type { Shown } from "./types.ts";

/**
 * `beside` holds the states, as this phone shows them, of what the entries lean on.
 * The phone folds a subject itself while it holds every entry the server's sheet counts and has
 * the same fold; else it shows the server's state with its own newer entries on top.
 */
export function shownOf(
  held: HeldAbout,
  device: string,
  beside: Beside = NOTHING_BESIDE,
): Shown<object> | null {
  const { subject, rows, sheet } = held;
  if (rows.length === 0 && sheet === null) return null;
  const waiting = rows.filter((row) => isWaiting(row, device)).length;
  const is_newer = !rows.every(isUnderstood);
  const common = { subject, is_open: sheet?.is_open ?? true, waiting, is_newer };
  if (sheet === null) {
    const state = folded(subject, rows, beside);
    return state === null ? null : { ...common, state, from: "phone" };
  }
  if (holdsAll(held)) {
    const state = folded(subject, rows, beside);
    if (state !== null) return { ...common, state, from: "phone" };
  }
  const extra = rows.filter((row) => isBeyond(row, sheet));
  if (extra.length === 0) return { ...common, state: sheet.state, from: "server" };
  return { ...common, state: onTop(subject, sheet, rows, beside), from: "server_and_own" };
}

/** What speaks against using or selling a lot on a day: it is held, recalled or expired. */

import { type Body, itemsIn, objectIn, textIn } from "./bodies.ts";
import { hasExpired } from "./shelf_life.ts";

export type Against = "held" | "recalled" | "expired";

/**
 * From the sheet of a lot, and that of the batch it came out of if there is one: what is held
 * back with its batch is let go with it. A best before that has passed speaks against nothing;
 * `on` is the day it would be used, YYYY-MM-DD.
 */
export function reasonsAgainst(lot: Body, batch: Body | null, on: string): Against[] {
  const holds = [lot, batch ?? {}].map((sheet) => objectIn(sheet, "hold") ?? {});
  const against: Against[] = [];
  if (holds.some(isRecalled)) against.push("recalled");
  else if (holds.some((hold) => hold.is_held === true)) against.push("held");
  const life = objectIn(lot, "life") ?? {};
  const last = textIn(life, "on");
  if (last !== null && textIn(life, "sort") !== "best_before" && hasExpired(last, on)) {
    against.push("expired");
  }
  return against;
}

function isRecalled(hold: Body): boolean {
  return itemsIn(hold, "causes").some(
    (cause) => textIn(cause, "because") === "recalled" && textIn(cause, "decided") !== "release",
  );
}

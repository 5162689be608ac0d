/** How often instruments were used since a check, as the server counted it over all phones. */
import { signal } from "@preact/signals";
import { usesRows } from "../store/reads.ts";
import type { UsesRow } from "../store/rows.ts";
import { current, withDb } from "./house.ts";

/** By instrument, for the person on the screen; what was told last stays true to its day offline. */
export const countedUses = signal<ReadonlyMap<string, UsesRow>>(new Map());

/** Reads the counts of the person on the screen again. */
export async function refreshUses(): Promise<void> {
  const device = current.value?.device;
  const rows = await withDb(usesRows);
  if (device !== current.value?.device) return;
  countedUses.value = new Map((rows ?? []).map((row) => [row.instrument, row]));
}

/** What waits, since when, what is kept aside, and how this phone's clock stands. */
import { batch, computed, signal } from "@preact/signals";
import { metaOf } from "../store/meta.ts";
import { attentionRows, entryRows, slips } from "../store/reads.ts";
import type { Slip } from "../store/rows.ts";
import { slipOf } from "../store/save.ts";
import type { Runner } from "../sync/runner.ts";
import { current, withDb } from "./house.ts";
import type { AttentionRow, Entry } from "./types.ts";

/** Own entries not handed over yet, the oldest first. */
export const waiting = signal<Slip[]>([]);
/** When the oldest of them was saved, in this phone's milliseconds (R23). */
export const oldestWaitingAt = computed(() =>
  waiting.value.reduce<number | null>(
    (oldest, slip) => (oldest === null ? slip.saved_ms : Math.min(oldest, slip.saved_ms)),
    null,
  ),
);
export const lastExchangeAt = signal<number | null>(null);
/** Kept aside by the server, or refused alone and still waiting (`stuck`). */
export const attention = signal<AttentionRow[]>([]);
/** The browser's guess; capture never depends on it. */
export const isOnlineHint = signal(true);
/** Server's clock minus this phone's; null until heard. Beyond two minutes a banner says so (R55). */
export const clockOffByMs = signal<number | null>(null);
/** A code why the last exchange did not go through, or null. */
export const lastTrouble = signal<string | null>(null);
/** The server's table of kinds is newer: nothing new is fetched until the app is updated (R91). */
export const mustUpgrade = signal(false);

let runner: Runner | null = null;

export function setRunner(started: Runner | null): void {
  runner = started;
}

/** A person tapped "hand over now". */
export function handOverNow(): void {
  runner?.poke("tapped");
}

/** One more waits: the whole outbox need not be read again, it may be long. */
export function noteSaved(entry: Entry, savedMs: number): void {
  if (waiting.value.some((slip) => slip.id === entry.id)) return;
  waiting.value = [...waiting.value, slipOf(entry, savedMs)];
}

/** Reads the outbox of the person on the screen again. */
export async function refreshOutbox(): Promise<void> {
  const device = current.value?.device;
  const read = await withDb(async (db) => {
    const [waitingSlips, aside, meta] = await Promise.all([
      slips(db),
      attentionRows(db),
      metaOf(db),
    ]);
    const stuck = waitingSlips.filter((slip) => slip.stuck !== null);
    const rows = await entryRows(
      db,
      stuck.map((slip) => slip.id),
    );
    return { waitingSlips, aside, meta, stuck, rows };
  });
  if (current.value?.device !== device) return;
  batch(() => {
    waiting.value = read?.waitingSlips ?? [];
    lastExchangeAt.value = read?.meta.last_exchange_ms ?? null;
    clockOffByMs.value = read?.meta.clock_off_ms ?? null;
    mustUpgrade.value = read?.meta.must_upgrade ?? false;
    attention.value = [...(read?.aside ?? []), ...(read === null ? [] : stuckRows(read))];
  });
}

function stuckRows(read: {
  stuck: readonly Slip[];
  rows: readonly { id: string; entry: AttentionRow["entry"] }[];
}): AttentionRow[] {
  return read.rows.map(({ id, entry }) => {
    const slip = read.stuck.find((one) => one.id === id);
    return {
      id,
      status: "stuck",
      code: slip?.stuck ?? "",
      detail: "",
      at_ms: slip?.saved_ms ?? 0,
      entry,
    };
  });
}

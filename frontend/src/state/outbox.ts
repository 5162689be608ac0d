/** What waits, since when, what is kept aside, and how this phone's clock stands. */
import { signal } from "@preact/signals";
import type { AttentionRow } from "./types.ts";

/** Own entries not handed over yet. */
export const waiting = signal<{ id: string; kind: string; saved_ms: number; stuck: string | null }[]>([]);
export const oldestWaitingAt = signal<number | null>(null);
export const lastExchangeAt = signal<number | null>(null);
export const attention = signal<AttentionRow[]>([]);
/** The browser's guess; capture never depends on it. */
export const isOnlineHint = signal(true);
/** Server's clock minus this phone's; null until heard. Beyond two minutes a banner says so (R55). */
export const clockOffByMs = signal<number | null>(null);
/** A code why the last exchange did not go through, or null. */
export const lastTrouble = signal<string | null>(null);

/** A person tapped "hand over now". */
export declare function handOverNow(): Promise<void>;

/** Sheets as signals: folded on this phone where it holds every entry, else as the server sent them. */
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Shown } from "./types.ts";

/** The sheet of one subject, `type:id`; null while nothing is known about it. */
export declare function sheet<T>(subject: string): ReadonlySignal<Shown<T> | null>;

/** Every sheet of one type this phone holds, sorted by subject. */
export declare function sheetsOf<T>(type: string): ReadonlySignal<Shown<T>[]>;

/** True until the first pull has been taken in whole: totals are incomplete (R40). */
export const isStillLoading = signal(false);

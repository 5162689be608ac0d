/** Starting, updating and keeping the app. */
import { signal } from "@preact/signals";

/** A new version waits; it comes in when the person agrees and no draft is open (R86). */
export const updateIsReady = signal(false);
/** Whether the browser promised not to clear our storage; null while not asked. */
export const isStorageKept = signal<boolean | null>(null);
/** Another tab holds an older version of the database: "close other tabs" (R90). */
export const isBlocked = signal(false);

export declare function start(): Promise<void>;
export declare function takeUpdate(): void;

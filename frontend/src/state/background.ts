/** Background sync, where a browser has it; nothing hangs on it (R19). */

interface SyncManager {
  register(tag: string): Promise<void>;
}

/** Asks the browser to wake the worker when there is signal again. */
export async function askBackgroundSync(): Promise<void> {
  if (typeof navigator === "undefined" || navigator.serviceWorker?.controller == null) return;
  const registration = await navigator.serviceWorker.ready;
  const sync = (registration as { sync?: SyncManager }).sync; // not in the library yet
  // A browser may forbid it; the page's own triggers remain.
  await sync?.register("outbox").catch(() => undefined);
}

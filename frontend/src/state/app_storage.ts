/** Asking the browser not to clear what this phone keeps (R66). */
import { signal } from "@preact/signals";

/** Whether the browser promised to keep our storage; null while it was not asked. */
export const isStorageKept = signal<boolean | null>(null);

/** Asks once, after the first save: by then the person has a reason to say yes. */
export async function askPersistence(): Promise<void> {
  if (isStorageKept.value !== null || typeof navigator === "undefined") return;
  if (navigator.storage?.persist === undefined) return;
  isStorageKept.value = false;
  isStorageKept.value = await navigator.storage.persist();
}

/** Typed form input that survives reload, crash and update (R12). */
import { signal } from "@preact/signals";
import { draftsUnder as allUnder, deleteDraft, draftOf, putDraft } from "../store/drafts.ts";
import type { Json } from "../store/rows.ts";
import { house, report, withDb } from "./house.ts";

const WRITE_AFTER_MS = 300;

export interface Draft<T extends Json> {
  load(): Promise<T | null>;
  /** Kept at once in memory, written within a moment. */
  save(typed: T): void;
  clear(): Promise<void>;
}

/** Forms with something typed and not saved; an update of the app waits for them (R86). */
export const dirtyDrafts = signal<readonly string[]>([]);

/** `cancel` stops the writing that is due; null while none is. */
const unwritten = new Map<string, { typed: Json; cancel: (() => void) | null }>();

/** The draft of one form: `draft("weigh-in/<batch>/<line>")`. */
export function draft<T extends Json>(key: string): Draft<T> {
  return {
    async load() {
      const kept = unwritten.get(key)?.typed ?? (await withDb((db) => draftOf(db, key)));
      return kept as T | null; // written by the same form under the same key
    },
    save(typed) {
      // What is due stays due: fast typing must not put the writing off for ever.
      const cancel =
        unwritten.get(key)?.cancel ?? house().world.after(WRITE_AFTER_MS, () => void write(key));
      unwritten.set(key, { typed, cancel });
      if (!dirtyDrafts.value.includes(key)) dirtyDrafts.value = [...dirtyDrafts.value, key];
    },
    async clear() {
      unwritten.get(key)?.cancel?.();
      unwritten.delete(key);
      dirtyDrafts.value = dirtyDrafts.value.filter((one) => one !== key);
      await withDb((db) => deleteDraft(db, key));
    },
  };
}

/** Half-filled forms whose key begins so, as they were written last. */
export async function draftsUnder(
  prefix: string,
): Promise<readonly { readonly key: string; readonly typed: Json }[]> {
  return (await withDb((db) => allUnder(db, prefix))) ?? [];
}

/** Writes what is typed into one form: nothing is due any more that could write it later. */
export async function writeDraft(key: string): Promise<void> {
  await write(key);
}

/** Writes at once what is still in memory: the page is about to go. */
export async function writeDrafts(): Promise<void> {
  await Promise.all([...unwritten.keys()].map(write));
}

async function write(key: string): Promise<void> {
  const before = unwritten.get(key);
  if (before === undefined) return;
  before.cancel?.();
  const kept = { typed: before.typed, cancel: null };
  unwritten.set(key, kept);
  try {
    await withDb((db) => putDraft(db, key, kept.typed));
    if (unwritten.get(key) === kept) unwritten.delete(key);
  } catch (trouble) {
    report("keeping a draft", trouble);
  }
}

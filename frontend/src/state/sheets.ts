/** Sheets as signals: folded on this phone where it holds every entry, else as the server sent them. */
import type { ReadonlySignal } from "@preact/signals";
import { listOf, slot } from "./shelf.ts";
import type { Shown } from "./types.ts";

export { isAddingUp, isStillLoading } from "./shelf.ts";

/** The sheet of one subject, `type:id`; null while nothing is known about it. */
export function sheet<T>(subject: string): ReadonlySignal<Shown<T> | null> {
  return slot(subject) as unknown as ReadonlySignal<Shown<T> | null>; // the caller knows its type's state
}

/** Every sheet of one type this phone holds, sorted by subject. */
export function sheetsOf<T>(type: string): ReadonlySignal<Shown<T>[]> {
  return listOf(type) as unknown as ReadonlySignal<Shown<T>[]>; // the caller knows its type's state
}

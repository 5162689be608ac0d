/** The entries about a subject that this phone holds, read anew whenever its sheet changes. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { entriesAbout, entriesHeld, type HeldEntry } from "../../state/record.ts";

/** In business order; empty until they are read. `sheet` is what changes when one is added. */
export function useHeld(subject: string, sheet: unknown): ReadonlySignal<readonly HeldEntry[]> {
  const held = useSignal<readonly HeldEntry[]>([]);
  useEffect(() => {
    let isLeft = false;
    const show = (entries: readonly HeldEntry[]): void => {
      if (!isLeft) held.value = entries;
    };
    // What is here shows at once; the server may be slow to answer, or silent.
    void entriesHeld(subject)
      .then(show)
      .then(() => entriesAbout(subject))
      .then(show);
    return () => {
      isLeft = true;
    };
  }, [subject, sheet, held]);
  return held;
}

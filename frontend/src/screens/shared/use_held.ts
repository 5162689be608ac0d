/** The entries about a subject that this phone holds, read anew whenever its sheet changes. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { entriesAbout, type HeldEntry } from "../../state/record.ts";

/** In business order; empty until they are read. `sheet` is what changes when one is added. */
export function useHeld(subject: string, sheet: unknown): ReadonlySignal<readonly HeldEntry[]> {
  const held = useSignal<readonly HeldEntry[]>([]);
  useEffect(() => {
    let isLeft = false;
    void entriesAbout(subject).then((entries) => {
      if (!isLeft) held.value = entries;
    });
    return () => {
      isLeft = true;
    };
  }, [subject, sheet, held]);
  return held;
}

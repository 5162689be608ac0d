/** A form whose typed input survives reload, crash and update (R12). */
import { type Signal, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { draft } from "../../state/drafts.ts";
import type { Json } from "../../state/types.ts";

/** A form of texts and ticks, flat, so that it can be kept as it is. */
export type Typed = { [field: string]: Json };

/** What was typed, a way to change a part of it, and a way to be done with it. */
export interface Drafted<T extends Typed> {
  typed: Signal<T>;
  type: (part: Partial<T>) => void;
  /** Ends the draft; the form is blank again, or shows what stands in the record now. */
  clear: (stands?: T) => void;
}

/** The form kept under `key`, beginning with `blank`; fields a draft does not know stay blank. */
export function useDrafted<T extends Typed>(key: string, blank: T): Drafted<T> {
  const typed = useSignal(blank);
  const kept = useMemo(() => draft<T>(key), [key]);
  useEffect(() => {
    let isLeft = false;
    void kept.load().then((before) => {
      // What a quick thumb typed before the draft was read counts more than the draft.
      if (before !== null && !isLeft && typed.value === blank)
        typed.value = { ...blank, ...before };
    });
    return () => {
      isLeft = true;
    };
    // The blank form is only looked at when a draft is opened.
  }, [kept]);
  return {
    typed,
    type(part) {
      typed.value = { ...typed.value, ...part };
      // What was rubbed out again is no form half filled: an update need not wait for it.
      if (JSON.stringify(typed.value) === JSON.stringify(blank)) void kept.clear();
      else kept.save(typed.value);
    },
    clear(stands = blank) {
      typed.value = stands;
      void kept.clear();
    },
  };
}

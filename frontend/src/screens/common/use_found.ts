/** What stands in the way of saving, or that it was saved, as long as it is still so. */
import { effect, type ReadonlySignal, type Signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Hindrance } from "./sentences.ts";

/** Nothing at first, and nothing again as soon as anything in the form is typed anew. */
export function useFound<Found = Hindrance>(typed: ReadonlySignal<unknown>): Signal<Found | null> {
  const found = useSignal<Found | null>(null);
  useEffect(
    () =>
      // At once and not after the next frame: that would take off what a save has found meanwhile.
      effect(() => {
        void typed.value;
        found.value = null;
      }),
    [typed],
  );
  return found;
}

/** What stands in the way of saving, as long as it is still so. */
import { type ReadonlySignal, type Signal, useSignal, useSignalEffect } from "@preact/signals";
import type { Hindrance } from "./sentences.ts";

/** Nothing at first, and nothing again as soon as anything in the form is typed anew. */
export function useFound(typed: ReadonlySignal<unknown>): Signal<Hindrance | null> {
  const found = useSignal<Hindrance | null>(null);
  useSignalEffect(() => {
    void typed.value;
    found.value = null;
  });
  return found;
}

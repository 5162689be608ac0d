/** A part of a screen that is fetched beside it: what most openings do without makes none wait. */
import { signal } from "@preact/signals";
import type { ComponentType } from "preact";
import { useEffect } from "preact/hooks";
import { Notice } from "../../parts/Plain.tsx";

/**
 * The part, drawn as soon as it is here; once fetched it is drawn at once. `missing` is said where
 * it cannot be fetched; without it the screen is whole without the part.
 */
export function later<Given extends object>(
  load: () => Promise<ComponentType<Given>>,
  missing: string | null = null,
): ComponentType<Given> {
  const fetched = signal<{ Part: ComponentType<Given> } | "missing" | null>(null);
  function fetchPart() {
    load().then(
      (Part) => {
        fetched.value = { Part };
      },
      () => {
        fetched.value = "missing"; // until it is asked for anew
      },
    );
  }
  return function Later(given: Given) {
    useEffect(() => {
      if (fetched.peek() === null || fetched.peek() === "missing") fetchPart();
    }, []);
    if (fetched.value === null) return null;
    if (fetched.value === "missing") return missing === null ? null : <Notice>{missing}</Notice>;
    const { Part } = fetched.value;
    return <Part {...given} />;
  };
}

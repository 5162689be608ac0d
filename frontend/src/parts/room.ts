/** How high a drawing may be so that all of its part stands above what stays in sight. */
import { useSignal } from "@preact/signals";
import type { RefObject } from "preact";
import { useLayoutEffect } from "preact/hooks";

/** Bounds of a height in px. */
export interface HeightBounds {
  least: number;
  most: number;
}

/**
 * A height in px for a drawing inside `part`: as high as there is room between the head and the
 * plate or bench, within the bounds. Measured anew after every drawing, for words change too.
 */
export function useRoom(
  part: RefObject<HTMLElement | null>,
  { least, most }: HeightBounds,
): number {
  const height = useSignal(least);
  const tries = useSignal(0);
  useLayoutEffect(() => {
    const again = () => {
      tries.value += 1;
    };
    window.addEventListener("resize", again);
    return () => window.removeEventListener("resize", again);
  }, [tries]);
  void tries.value;
  useLayoutEffect(() => {
    const here = part.current;
    const low = here?.closest(".frame")?.querySelector<HTMLElement>(".low");
    if (here === null || !low) return;
    const bottom = here.getBoundingClientRect().bottom + window.scrollY;
    const spare = window.innerHeight - low.offsetHeight - bottom;
    const fit = Math.round(Math.min(most, Math.max(least, height.value + spare)));
    if (fit !== height.value) height.value = fit;
  });
  return height.value;
}

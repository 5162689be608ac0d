/** The clock on a screen: the minute it is, for as long as the screen is shown. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { nowMs } from "./edge.ts";

const TICK_MS = 30_000;

/** This moment in milliseconds, heard again twice a minute. */
export function useNow(): ReadonlySignal<number> {
  const now = useSignal(nowMs());
  useEffect(() => {
    const timer = setInterval(() => {
      now.value = nowMs();
    }, TICK_MS);
    return () => clearInterval(timer);
  }, [now]);
  return now;
}

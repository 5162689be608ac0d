/** Moments of the outbox in words, and what is wrong with this phone's clock. */
import { momentWords } from "../../text/correct.ts";
import { clockWords } from "../../text/numbers.ts";
import { OUTBOX } from "../../text/outbox.ts";
import { dayOf, zone } from "../common/edge.ts";

const CLOCK_OFF_MS = 120_000; // beyond two minutes a person should know (R55)
const MINUTE_MS = 60_000;

/** "10:24" today, "10 Nov 10:24" before. */
export function momentOf(atMs: number, nowMs: number): string {
  const clock = clockWords(new Date(atMs).toISOString(), zone());
  const day = dayOf(atMs);
  return day === dayOf(nowMs) ? clock : momentWords(day, clock);
}

/** One sentence when the clock is off by more than two minutes, else null. */
export function clockSentence(offMs: number | null): string | null {
  if (offMs === null || Math.abs(offMs) <= CLOCK_OFF_MS) return null;
  return OUTBOX.clock(String(Math.round(Math.abs(offMs) / MINUTE_MS)), offMs > 0);
}

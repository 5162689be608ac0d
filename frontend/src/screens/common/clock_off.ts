/** What is said where the phone of an entry had a clock far off: its times are as it wrote them. */
import { CLOCK_OFF } from "../../text/correct.ts";

const MINUTE_MS = 60_000;
const OFF_MS = 2 * MINUTE_MS; // R33: less is how clocks differ
const DAY_MINUTES = 24 * 60; // R33: more, and the date may be another one

/** `skew_ms` is the server's clock less the phone's; null within two minutes, or where unknown. */
export function clockOffWords(skew_ms: number | undefined): string | null {
  if (skew_ms === undefined || Math.abs(skew_ms) <= OFF_MS) return null;
  const minutes = Math.round(Math.abs(skew_ms) / MINUTE_MS);
  const isDateInDoubt = Math.abs(skew_ms) > DAY_MINUTES * MINUTE_MS;
  const off = CLOCK_OFF.off(isDateInDoubt ? inDays(minutes) : inHours(minutes), skew_ms > 0);
  return isDateInDoubt ? `${off} ${CLOCK_OFF.review}` : off;
}

function inHours(minutes: number): string {
  return CLOCK_OFF.hours(Math.floor(minutes / 60), minutes % 60);
}

function inDays(minutes: number): string {
  const hours = Math.round(minutes / 60);
  return CLOCK_OFF.days(Math.floor(hours / 24), hours % 24);
}

/** Beside an entry: the clock of its phone was far off. */
import { clockOffWords } from "./clock_off.ts";

/** Nothing where it was not. */
export function ClockOff({ skew_ms }: { skew_ms: number | undefined }) {
  const words = clockOffWords(skew_ms);
  return words === null ? null : <span class="clock-off">{words}</span>;
}

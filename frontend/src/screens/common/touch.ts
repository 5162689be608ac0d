/** What a hand feels: one short tremble for saved, two where a value lies outside. */

const SHORT_MS = 30;
const PAUSE_MS = 90;

/** Where the phone can tremble. */
export function tremble(times: 1 | 2): void {
  const pattern = times === 1 ? [SHORT_MS] : [SHORT_MS, PAUSE_MS, SHORT_MS];
  if ("vibrate" in navigator) navigator.vibrate(pattern);
}

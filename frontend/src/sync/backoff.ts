/** How long to wait before trying again (R20). */

const FIRST_CAP_MS = 2_000;
const LAST_CAP_MS = 60_000;
/** After the network came back, phones of a whole market must not all knock at once. */
export const ONLINE_SPREAD_MS = 15_000;

/** A random wait under a cap that doubles with each failure; `Retry-After` is a minimum. */
export function retryWaitMs(
  failureCount: number,
  chance: () => number,
  retryAfterMs: number | null,
): number {
  const capMs = Math.min(LAST_CAP_MS, FIRST_CAP_MS * 2 ** failureCount);
  return Math.max(retryAfterMs ?? 0, Math.floor(chance() * capMs));
}

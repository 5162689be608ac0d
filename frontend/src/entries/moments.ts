/** What a clock says, as entries can write it however wrong it is. Apart: the first screen needs it. */

const FIRST_TYPED_DAY = "2000-01-01"; // R10
const LAST_TYPED_DAY = "2100-12-31";
const LAST_TYPED_YEAR = 2100;
// A day inside the years, so that the day in every zone can be written too.
const FIRST_MS = Date.UTC(1000, 0, 2);
const LAST_MS = Date.UTC(9999, 11, 30);

/**
 * A time in UTC as entries write it. A clock so wrong that its year has no four digits is written
 * as the nearest time that has: what was saved must go up all the same (R33).
 */
export function moment(atMs: number): string {
  return new Date(Math.min(Math.max(atMs, FIRST_MS), LAST_MS)).toISOString();
}

/** A day as a clock says it, or the first or last day a person may type. */
export function nearestTypedDay(day: string): string {
  if (Number.parseInt(day, 10) > LAST_TYPED_YEAR) return LAST_TYPED_DAY;
  return day < FIRST_TYPED_DAY ? FIRST_TYPED_DAY : day;
}

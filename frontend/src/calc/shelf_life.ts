/**
 * Days: how long goods keep, when they have expired, and which day it is at a place.
 *
 * A day is text, YYYY-MM-DD, in the cooperative's zone; an instant is YYYY-MM-DDTHH:MM:SS.mmmZ.
 * Zone databases are the edge's business: what is needed from them, the offset, comes in.
 * A day was printed on a pack, so nothing here changes one that stands in an entry.
 */

export type LifeSort = "use_by" | "best_before" | "expires_on";
export type LifeState = "keeps" | "last_day" | "past_best" | "expired";

const DAY = /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/;
const MONTH = /^[0-9]{4}-[0-9]{2}$/;
const INSTANT = /^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}Z$/;
const WALL = /^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}$/;
const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** The day this many days later. Throws for what is no day. */
export function addDays(on: string, days: number): string {
  return dayText(dayMs(on) + days * DAY_MS);
}

/**
 * The same day of the month this many months later, or that month's last day.
 * Always add from the original day: one month twice is not two months (31 January).
 */
export function addMonths(on: string, months: number): string {
  const start = new Date(dayMs(on));
  const month = start.getUTCFullYear() * 12 + start.getUTCMonth() + months;
  // Day 0 of the next month is the last of this one.
  const monthLast = new Date(Date.UTC(Math.floor(month / 12), (month % 12) + 1, 0));
  monthLast.setUTCDate(Math.min(start.getUTCDate(), monthLast.getUTCDate()));
  return dayText(monthLast.getTime());
}

/** The last day of YYYY-MM, which is what "best before end" of that month means (EU Reg. 1169/2011 Annex X, from memory). */
export function monthEnd(month: string): string {
  if (!MONTH.test(month)) throw new RangeError(`not a month: ${month}`);
  return addDays(addMonths(`${month}-01`, 1), -1);
}

/**
 * The last day of a life that was assigned to a product.
 * Months are added to the day of making. Days of a use by or expires on date count the day of
 * making as day 1 (US retail date marking, read); days of a best before date come after it.
 */
export function lastDay(
  madeOn: string,
  life: {
    readonly sort: LifeSort;
    readonly length: number;
    readonly unit: "days" | "months";
  },
): string {
  if (life.unit === "months") return addMonths(madeOn, life.length);
  if (life.sort === "best_before") return addDays(madeOn, life.length);
  return addDays(madeOn, life.length - 1);
}

/** The earliest of the known days; null when none is known. */
export function earliest(days: readonly (string | null)[]): string | null {
  let first: string | null = null;
  for (const day of days) {
    if (day !== null && (first === null || day < first)) first = day;
  }
  return first;
}

/**
 * The life of what was mixed: never beyond the earliest input, unless a step resets what limits
 * the inputs (a filled jar is not limited by its fresh fruit), which needs evidence.
 */
export function compositeLastDay(
  assigned: string | null,
  inputs: readonly (string | null)[],
  carriesThrough: boolean,
): string | null {
  return carriesThrough ? earliest([assigned, ...inputs]) : assigned;
}

/** The day of opening is day 1; never beyond the maker's day (Indiana 410 IAC 7-24-191). */
export function openedLastDay(openedOn: string, days: number, makersDay: string | null): string {
  const own = addDays(openedOn, days - 1);
  return makersDay !== null && makersDay < own ? makersDay : own;
}

/**
 * Freezing pauses a limit and does not reset it: what was used before is gone
 * (Minnesota Rules 4626.0400).
 */
export function thawedLastDay(
  thawedOn: string,
  limit: { readonly limit_days: number; readonly used_days: number },
): string {
  return addDays(thawedOn, limit.limit_days - limit.used_days - 1);
}

/** Whole days until the last day: 0 on it, negative after it. */
export function daysLeft(last: string, today: string): number {
  return Math.round((dayMs(last) - dayMs(today)) / DAY_MS);
}

/** The last day itself is usable, the next is not. */
export function hasExpired(last: string, today: string): boolean {
  return daysLeft(last, today) < 0;
}

/** What a last day says today: a best before date that has passed warns, the others block. */
export function lifeState(last: string, today: string, sort: LifeSort): LifeState {
  const left = daysLeft(last, today);
  if (left < 0) return sort === "best_before" ? "past_best" : "expired";
  return left === 0 ? "last_day" : "keeps";
}

/** The day on the wall at an instant, where clocks are this far ahead of UTC. */
export function localDay(at: string, utcOffsetMin: number): string {
  return dayText(instantMs(at) + utcOffsetMin * MINUTE_MS);
}

/** The instant of YYYY-MM-DDTHH:MM on a wall where clocks are this far ahead of UTC. */
export function instantOf(wall: string, utcOffsetMin: number): string {
  if (!WALL.test(wall)) throw new RangeError(`not a time on the wall: ${wall}`);
  return instantText(instantMs(`${wall}:00.000Z`) - utcOffsetMin * MINUTE_MS);
}

/** The instant this many minutes later. */
export function later(at: string, minutes: number): string {
  return instantText(instantMs(at) + minutes * MINUTE_MS);
}

/**
 * Whole minutes that passed between two instants: wall clocks are not subtracted, because they
 * jump. Parts of a minute are cut.
 */
export function elapsedMinutes(fromAt: string, toAt: string): number {
  const minutes = Math.trunc((instantMs(toAt) - instantMs(fromAt)) / MINUTE_MS);
  return minutes === 0 ? 0 : minutes; // never -0, which is written differently
}

function dayMs(text: string): number {
  if (!DAY.test(text)) throw new RangeError(`not a day: ${text}`);
  const ms = Date.parse(`${text}T00:00:00.000Z`);
  // Some engines turn 30 February into March instead of refusing it.
  if (Number.isNaN(ms) || dayText(ms) !== text) throw new RangeError(`not a day: ${text}`);
  return ms;
}

function instantMs(text: string): number {
  const ms = INSTANT.test(text) ? Date.parse(text) : Number.NaN;
  if (Number.isNaN(ms) || instantText(ms) !== text) {
    throw new RangeError(`not an instant: ${text}`);
  }
  return ms;
}

function dayText(ms: number): string {
  return instantText(ms).slice(0, 10);
}

function instantText(ms: number): string {
  return new Date(ms).toISOString();
}

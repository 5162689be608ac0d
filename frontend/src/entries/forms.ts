/** The written form of single values: ids, lot codes, days, moments, subjects. */

export const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
export const LOT_CODE = /^[A-Z0-9][A-Z0-9-]{0,39}$/;
export const ID = /^[A-Za-z0-9_-]{1,40}$/;
export const CAPITALS = /^[A-Z]+$/;
export const DECIMAL = /^-?[0-9]+(\.[0-9]+)?$/;
export const ZONE = /^[A-Z][A-Za-z0-9_+-]{0,31}(\/[A-Za-z0-9_+-]{1,32}){0,2}$/;
export const FIELD_NAME = /^[a-z][a-z0-9_]{0,39}$/;

const DAY = /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/;
const MOMENT = /^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}Z$/;
const SUBJECT = /^([a-z]{1,20}):(.{1,80})$/;
const BLANK = /^[ \t\r\n\u00a0]*$/;
const LONE_SURROGATE = /\p{Surrogate}/u; // with the u flag a whole pair does not match

const DAY_YEAR_FIRST = 2000;
const DAY_YEAR_LAST = 2100;

const TYPES_WITH_CODE = ["lot", "price"];

/** Nothing but spaces. */
export function isBlank(text: string): boolean {
  return BLANK.test(text);
}

/** Free of U+0000 and of halves of surrogate pairs: PostgreSQL takes neither (R10). */
export function isStorable(text: string): boolean {
  return !text.includes("\0") && !LONE_SURROGATE.test(text);
}

/** A day of the calendar, `2026-11-10`, of any year. */
export function isDay(text: string): boolean {
  if (!DAY.test(text) || text.startsWith("0000")) return false;
  const at = new Date(`${text}T00:00:00.000Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}

/** A time in UTC to the millisecond, `2026-11-10T08:15:00.000Z`, of any year. */
export function isMoment(text: string): boolean {
  if (!MOMENT.test(text) || text.startsWith("0000")) return false;
  const at = new Date(text);
  // The language takes 24:00 and 31 February for another time; entries never hold such.
  return !Number.isNaN(at.getTime()) && at.toISOString() === text;
}

/** Whether a day lies in the years a person may type (R10). */
export function isDayInRange(day: string): boolean {
  const year = Number(day.slice(0, 4));
  return year >= DAY_YEAR_FIRST && year <= DAY_YEAR_LAST;
}

/** `type:id` with a type of `types` and an id in the form that type has. */
export function isSubject(text: string, types: readonly string[]): boolean {
  const [, type = "", id = ""] = SUBJECT.exec(text) ?? [];
  if (!types.includes(type)) return false;
  if (TYPES_WITH_CODE.includes(type)) return LOT_CODE.test(id);
  if (type !== "day") return ID.test(id);
  const colon = id.lastIndexOf(":");
  return ID.test(id.slice(0, Math.max(colon, 0))) && isDay(id.slice(colon + 1));
}

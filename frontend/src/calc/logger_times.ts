/**
 * Times as loggers write them: 08:30, 1:02:03 PM, 2026-11-10T08:30Z, 10.11.2026, 11/10/26.
 *
 * A clock is read to the second. Whether 10/11 is a day or a month first is decided by all rows of
 * a file together: by a number above 12, else by what makes the log shorter.
 */

export const DAY_S = 86_400;
export const HALF_DAY_S = 43_200;

const CLOCK =
  "([0-9]{1,3}):([0-5][0-9])(?::([0-5][0-9])(?:[.,][0-9]{1,9})?)?(?: ?([ap])\\.?m\\.?)?";
const ZONE = "(?: ?(z|[+-][0-9]{2}:?[0-9]{2}))?";
const DATE =
  "(?:([0-9]{4})([-/.])([0-9]{1,2})\\2([0-9]{1,2})" +
  "|([0-9]{1,2})([-/.])([0-9]{1,2})\\6([0-9]{4}|[0-9]{2}))";
const MOMENT = new RegExp(`^(?:${DATE}(?:[t ,]+${CLOCK}${ZONE})?|${CLOCK})$`, "i");

/**
 * A time as it was written: seconds of the day (or elapsed), the day where there is one, in days
 * since 1970, and minutes ahead of UTC where that is said.
 *
 * `swapped_day` is the day with day and month the other way round, where the text leaves that
 * open; `day` is then the one with the day first, and either is null where there is no such day.
 */
export interface Moment {
  readonly second: number | null;
  readonly day: number | null;
  readonly swapped_day: number | null;
  readonly is_open: boolean;
  readonly offset_min: number | null;
}

/** What a cell says of a time, null for what is none: a day, a clock, or both. */
export function momentOf(text: string): Moment | null {
  const found = MOMENT.exec(text);
  if (found === null) return null;
  const [, year, , , , day] = found;
  if (year === undefined && day === undefined) {
    const second = secondOf(found, 14);
    if (second === null) return null;
    return { second, day: null, swapped_day: null, is_open: false, offset_min: null };
  }
  const hasClock = found[9] !== undefined;
  const second = hasClock ? secondOf(found, 9) : null;
  if (hasClock && (second === null || second >= DAY_S)) return null;
  return datedBy(found, second, offsetOf(found[13]));
}

/**
 * Whether two times say the same things, so that they can stand in one file: a day, a clock, a
 * place on earth.
 */
export function fits(moment: Moment, other: Moment): boolean {
  return (
    isDated(moment) === isDated(other) &&
    (moment.second === null) === (other.second === null) &&
    (moment.offset_min === null) === (other.offset_min === null)
  );
}

/**
 * Moments of one file, in its order, as seconds since 1970, or since midnight of the first where no
 * day is said; null where they do not fit together.
 *
 * Clocks without a day that fall by more than 12 hours have passed midnight.
 */
export function together(moments: readonly Moment[]): number[] | null {
  const first = moments[0];
  if (first === undefined || !moments.every((each) => fits(each, first))) return null;
  if (!isDated(first)) return pastMidnight(moments.map((each) => each.second ?? 0));
  const dayFirst = absolute(moments, "day");
  if (!moments.some((each) => each.is_open)) return dayFirst;
  const monthFirst = absolute(moments, "swapped_day");
  if (dayFirst === null || monthFirst === null) return dayFirst ?? monthFirst;
  // Of equal lengths the day first.
  return spanOf(monthFirst) < spanOf(dayFirst) ? monthFirst : dayFirst;
}

/** Whether it is certain on which days the moments were, and not only how far apart. */
export function isDayKnown(moments: readonly Moment[]): boolean {
  if (!moments.every(isDated)) return false;
  if (moments.every((each) => each.day === each.swapped_day)) return true;
  return (absolute(moments, "day") === null) !== (absolute(moments, "swapped_day") === null);
}

/** Seconds since 1970 as YYYY-MM-DDTHH:MM:SS. */
export function writtenTime(second: number): string {
  const day = Math.floor(second / DAY_S);
  const rest = second - day * DAY_S;
  const [year, month, ofMonth] = civil(day);
  const clock = [Math.floor(rest / 3600), Math.floor(rest / 60) % 60, rest % 60].map(twoDigits);
  const date = `${String(year).padStart(4, "0")}-${twoDigits(month)}-${twoDigits(ofMonth)}`;
  return `${date}T${clock.join(":")}`;
}

const isDated = (moment: Moment): boolean => moment.day !== null || moment.is_open;
const twoDigits = (x: number): string => String(x).padStart(2, "0");

/** Hour, minute, second and half of the day, from their place in what was found. */
function secondOf(found: RegExpExecArray, place: number): number | null {
  let hours = Number(found[place] ?? 0);
  const half = found[place + 3];
  if (half !== undefined) {
    if (hours < 1 || hours > 12) return null;
    hours = (hours % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  }
  return hours * 3600 + Number(found[place + 1] ?? 0) * 60 + Number(found[place + 2] ?? 0);
}

function datedBy(
  found: RegExpExecArray,
  second: number | null,
  offset_min: number | null,
): Moment | null {
  if (found[1] !== undefined) {
    const day = dayNumber(Number(found[1]), Number(found[3]), Number(found[4]));
    return day === null ? null : { second, day, swapped_day: day, is_open: false, offset_min };
  }
  const [first, middle, year] = [Number(found[5]), Number(found[7]), Number(found[8])];
  const fullYear = year < 100 ? year + 2000 : year;
  const day = dayNumber(fullYear, middle, first);
  // Points are written where the day comes first.
  const is_open = found[6] !== ".";
  const swapped_day = is_open ? dayNumber(fullYear, first, middle) : day;
  if (day === null && swapped_day === null) return null;
  return { second, day, swapped_day, is_open, offset_min };
}

function offsetOf(zone: string | undefined): number | null {
  if (zone === undefined) return null;
  if (zone.toLowerCase() === "z") return 0;
  const digits = zone.slice(1).replace(":", "");
  const minutes = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2));
  return zone.startsWith("-") && minutes !== 0 ? -minutes : minutes;
}

function pastMidnight(seconds: readonly number[]): number[] {
  let days = 0;
  return seconds.map((second, place) => {
    if ((seconds[place - 1] ?? 0) - second > HALF_DAY_S) days += 1;
    return second + days * DAY_S;
  });
}

function absolute(moments: readonly Moment[], which: "day" | "swapped_day"): number[] | null {
  const made: number[] = [];
  for (const each of moments) {
    const day = each[which];
    if (day === null) return null;
    made.push(day * DAY_S + (each.second ?? 0) - (each.offset_min ?? 0) * 60);
  }
  return made;
}

function spanOf(seconds: readonly number[]): number {
  let [low, high] = [Infinity, -Infinity];
  for (const second of seconds) {
    low = Math.min(low, second);
    high = Math.max(high, second);
  }
  return high - low;
}

/** Days since 1970-01-01 in the Gregorian calendar; null where there is no such day. */
function dayNumber(year: number, month: number, ofMonth: number): number | null {
  if (month < 1 || month > 12 || ofMonth < 1 || ofMonth > 31) return null;
  // Years that begin in March have their leap day last.
  const shifted = month <= 2 ? year - 1 : year;
  const march = month > 2 ? month - 3 : month + 9;
  const ofYear = Math.floor((153 * march + 2) / 5) + ofMonth - 1;
  const leapDays = Math.floor(shifted / 4) - Math.floor(shifted / 100) + Math.floor(shifted / 400);
  const number = 365 * shifted + leapDays + ofYear - 719_468;
  const [y, m, d] = civil(number);
  return y === year && m === month && d === ofMonth ? number : null;
}

/** Year, month and day of a number of days since 1970. */
function civil(number: number): readonly [number, number, number] {
  const days = number + 719_468;
  const era = Math.floor(days / 146_097);
  const ofEra = days - era * 146_097;
  const leapDays =
    Math.floor(ofEra / 1460) - Math.floor(ofEra / 36_524) + Math.floor(ofEra / 146_096);
  const ofEraYear = Math.floor((ofEra - leapDays) / 365);
  const ofYear =
    ofEra - (365 * ofEraYear + Math.floor(ofEraYear / 4) - Math.floor(ofEraYear / 100));
  const march = Math.floor((5 * ofYear + 2) / 153);
  const month = march < 10 ? march + 3 : march - 9;
  const year = ofEraYear + era * 400 + (month <= 2 ? 1 : 0);
  return [year, month, ofYear - Math.floor((153 * march + 2) / 5) + 1];
}

/** Moments of a log: from what a wall clock or a file says to what an entry keeps, and back. */
import { utcOffsetMin } from "../../entries/envelope.ts";
import { moment } from "../../entries/moments.ts";
import { typedNumber } from "../../parts/typing.ts";

const MINUTE_MS = 60_000;
const WALL = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/;

/** The moment of a wall clock "YYYY-MM-DDTHH:MM[:SS]" in a zone; null for what is no such time. */
export function momentOnWall(wall: string, zone: string): string | null {
  const asUtc = Date.parse(`${wall}${wall.length === "2026-11-10T08:00".length ? ":00" : ""}.000Z`);
  if (!WALL.test(wall) || Number.isNaN(asUtc)) return null;
  // The offset of the moment itself is only known once it is: the second look decides.
  const near = asUtc - utcOffsetMin(moment(asUtc), zone) * MINUTE_MS;
  return moment(asUtc - utcOffsetMin(moment(near), zone) * MINUTE_MS);
}

/** The wall clock of a moment as its day and its hour, for fields to show. */
export function wallOf(atMs: number, zone: string): { day: string; clock: string } {
  const at = moment(atMs);
  const wall = moment(Date.parse(at) + utcOffsetMin(at, zone) * MINUTE_MS);
  return { day: wall.slice(0, 10), clock: wall.slice(11, 16) };
}

/** Typed minutes as whole seconds; null while they are no number. */
export function secondsOf(minutes: string): number | null {
  const number = typedNumber(minutes);
  return number === null ? null : Math.round(Number(number) * 60);
}

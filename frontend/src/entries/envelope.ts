/** What stands around every body: who wrote the entry, where, when, about what (R8). */

import { type Content, type Entry, KINDS, type KindName } from "./kinds.ts";
import { subjectsOf } from "./links.ts";
import { moment } from "./moments.ts";

const CHANCE_BYTES = 10;
const MINUTE_MS = 60_000;

/** Everything an entry needs that is not in the content; the edge reads clock, chance and counter. */
export interface Circumstances {
  readonly cooperative: string;
  readonly author: string;
  readonly device: string;
  readonly device_seq: number;
  readonly now_ms: number;
  /** Ten bytes from crypto.getRandomValues. */
  readonly chance: Uint8Array;
  readonly tz: string;
  readonly seen: string;
  readonly app_version: string;
  /** When it happened, if the person says otherwise than now; a correction takes its entry's. */
  readonly happened_at?: string | undefined;
  /** What a corrected or voided entry was about. */
  readonly also_about?: readonly string[] | undefined;
}

/** The entry as it is stored, sent and fingerprinted. Its body has been parsed. */
export function makeEntry<K extends KindName>(
  content: Content<K>,
  circumstances: Circumstances,
): Entry<K> {
  const { now_ms, also_about = [] } = circumstances;
  const recorded_at = moment(now_ms);
  const happened_at = circumstances.happened_at ?? recorded_at;
  const about = [...subjectsOf(content.kind, content.body), ...also_about];
  return {
    ...content,
    id: uuidv7(now_ms, circumstances.chance),
    version: KINDS[content.kind].version,
    subjects: [...new Set(about)].sort(),
    cooperative: circumstances.cooperative,
    author: circumstances.author,
    device: circumstances.device,
    device_seq: circumstances.device_seq,
    recorded_at,
    tz: circumstances.tz,
    utc_offset_min: utcOffsetMin(happened_at, circumstances.tz),
    local_date: localDay(happened_at, circumstances.tz),
    seen: circumstances.seen,
    happened_at,
    app_version: circumstances.app_version,
  };
}

/** A UUID of version 7: 48 bits of Unix milliseconds, then 10 bytes of chance (RFC 9562). */
export function uuidv7(nowMs: number, chance: Uint8Array): string {
  if (chance.length !== CHANCE_BYTES) throw new RangeError("a UUID takes ten bytes of chance");
  const time = Math.max(0, Math.floor(nowMs)).toString(16).padStart(12, "0").slice(-12);
  const bytes = [...chance];
  bytes[0] = ((bytes[0] ?? 0) & 0x0f) | 0x70;
  bytes[2] = ((bytes[2] ?? 0) & 0x3f) | 0x80;
  const digits = time + bytes.map((byte) => byte.toString(16).padStart(2, "0")).join("");
  const cuts = [0, 8, 12, 16, 20, 32];
  return cuts
    .slice(1)
    .map((end, part) => digits.slice(cuts[part], end))
    .join("-");
}

/** The day of a moment in a zone, `2026-11-10`. */
export function localDay(at: string, tz: string): string {
  return wallClock(at, tz).toISOString().slice(0, 10);
}

/** How far a zone's clock is ahead of UTC at a moment, in whole minutes. */
export function utcOffsetMin(at: string, tz: string): number {
  return Math.round((wallClock(at, tz).getTime() - new Date(at).getTime()) / MINUTE_MS);
}

/** What the clock on the wall shows, held as if it were UTC, to the second. */
function wallClock(at: string, tz: string): Date {
  const parts = wallClockIn(tz).formatToParts(new Date(at));
  const read = (type: string) => Number(parts.find((part) => part.type === type)?.value);
  return new Date(
    Date.UTC(
      read("year"),
      read("month") - 1,
      read("day"),
      read("hour"),
      read("minute"),
      read("second"),
    ),
  );
}

const wallClocks = new Map<string, Intl.DateTimeFormat>();

/** Making one takes a hundred times as long as reading it, and each save reads it twice. */
function wallClockIn(tz: string): Intl.DateTimeFormat {
  let clock = wallClocks.get(tz);
  if (clock === undefined) {
    clock = new Intl.DateTimeFormat("en", {
      timeZone: tz,
      hourCycle: "h23",
      year: "numeric",
      month: "numeric",
      day: "numeric",
      hour: "numeric",
      minute: "numeric",
      second: "numeric",
    });
    wallClocks.set(tz, clock);
  }
  return clock;
}

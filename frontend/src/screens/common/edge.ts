/** Where screens ask the clock and chance; nothing below a screen asks them by itself. */
import { nearestTypedDay } from "../../entries/moments.ts";
import { cooperative } from "../../state/stock.ts";

/** The cooperative's zone; the phone's own while the cooperative is not known. */
export function zone(): string {
  const kept = cooperative.value?.fields.time_zone;
  return typeof kept === "string" ? kept : Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** The day a moment lies on in the cooperative's zone, "YYYY-MM-DD". */
export function dayOf(at: Date | string | number): string {
  const here = zone();
  if (calendar?.zone !== here) {
    const day = { year: "numeric", month: "2-digit", day: "2-digit" } as const;
    calendar = { zone: here, days: new Intl.DateTimeFormat("en-CA", { timeZone: here, ...day }) };
  }
  return calendar.days.format(new Date(at));
}

/** Kept, because making one costs more than a whole list of days read from it. */
let calendar: { zone: string; days: Intl.DateTimeFormat } | null = null;

/**
 * Today in the cooperative's zone. A clock outside the days a person may type shows the nearest of
 * them: a sale is not refused because the phone believes in 1970 (R33).
 */
export function today(): string {
  return nearestTypedDay(dayOf(Date.now()));
}

/** This moment in milliseconds, by this phone's clock. */
export function nowMs(): number {
  return Date.now();
}

/** Where others reach this house: its address on the web; null for one on this machine only. */
export function houseAddress(): string | null {
  return location.protocol === "https:" ? location.origin : null;
}

/** An id for something new: a source, a recipient. */
export function newId(): string {
  return crypto.randomUUID();
}

/** Bytes of chance: the seed of a drill. */
export function chanceBytes(count: number): Uint8Array {
  return crypto.getRandomValues(new Uint8Array(count));
}

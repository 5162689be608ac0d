/** The day as things on threads: done, in hand, still to come. Hours are for the drawing. */
import type { BatchState } from "../../calc/batches.ts";
import { daysLeft } from "../../calc/shelf_life.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { allStock, type LotInStock } from "../../state/stock.ts";
import { dayOf } from "../common/edge.ts";

const OPENS = 6;
const CLOSES = 18;
const MOST_PAST = 2; // what is done recedes; the batch sheet has all of it
const MOST_LATE = 3;

/** A moment as hours of its day in a zone: 10:24 is 10.4. */
export function hourOf(at: number | string, zone: string): number {
  const parts = new Intl.DateTimeFormat("en-GB", {
    hour: "numeric",
    minute: "numeric",
    hourCycle: "h23",
    timeZone: zone,
  }).formatToParts(new Date(at));
  const part = (type: string) => Number(parts.find((each) => each.type === type)?.value ?? 0);
  return part("hour") + part("minute") / 60;
}

/** The hours the glass shows: six to six, or as far as it is late or early. */
export function openHours(now: number): { opens: number; closes: number } {
  const opens = now < OPENS ? Math.floor(now / 2) * 2 : OPENS;
  const closes = now > CLOSES ? Math.ceil(now / 2) * 2 : CLOSES;
  return { opens, closes: Math.min(24, Math.max(closes, opens + 2)) };
}

/** Something that happened today, with its moment. */
export interface Past {
  id: string;
  at: string;
  batch: BatchState;
  what: "started" | "finished";
}

/** What happened today, the last ones, in their order. */
export function pastOf(today: string): Past[] {
  const batches = sheetsOf<BatchState>("batch").value.map(({ state }) => state);
  const all = batches.flatMap((batch): Past[] => [
    ...(batch.started_at === null
      ? []
      : [{ id: `s${batch.batch}`, at: batch.started_at, batch, what: "started" as const }]),
    ...(batch.finished_at === null
      ? []
      : [{ id: `f${batch.batch}`, at: batch.finished_at, batch, what: "finished" as const }]),
  ]);
  return all
    .filter((each) => dayOf(each.at) === today)
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .slice(-MOST_PAST);
}

/** Lots on their last day or past it, with something on hand. */
export function lateLots(today: string): LotInStock[] {
  return allStock()
    .filter((lot) => !lot.is_negative && lot.life !== null && daysLeft(lot.life.on, today) <= 0)
    .slice(0, MOST_LATE);
}

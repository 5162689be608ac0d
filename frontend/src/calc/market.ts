/** A stall-day sheet: what was sold and returned at one place on one day, and for how much. */

import { type Amount, amountIn, type Body, decimalIn, objectIn, sumOf, textIn } from "./bodies.ts";
import { type Decimal, difference, plain, product, total, ZERO } from "./numbers.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  finding,
  type Note,
  notesAbout,
  type Standing,
  settled,
  TEXT_ORDER,
} from "./record.ts";
import { idIn } from "./subjects.ts";

export const DAY_FOLD = 1;

/** One lot on one stall day; amounts in `unit`, takings null if a price is missing. */
export interface DayLot {
  readonly lot: string;
  readonly unit: string | null;
  readonly sold: string;
  readonly returned: string;
  readonly takings: string | null;
}

/** All sales and returns of one place and day; `sold` is null for lots of unlike units. */
export interface DayState {
  readonly place: string;
  readonly on: string;
  readonly lots: readonly DayLot[];
  readonly sold: string | null;
  readonly takings: string | null;
  readonly sales_count: number;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

interface LotDay {
  unit: string | null;
  readonly sold: (Amount | null)[];
  readonly returned: (Amount | null)[];
  readonly takings: (Decimal | null)[];
}

/**
 * Fold all entries about `day:<place>:<YYYY-MM-DD>`. Takings are price x amount in the unit of
 * the sale, less its discount, exact; nothing is rounded.
 */
export function dayState(subject: string, facts: Iterable<Fact>): DayState {
  const day = idIn(subject);
  const place = day.slice(0, Math.max(day.lastIndexOf(":"), 0));
  const on = day.slice(day.lastIndexOf(":") + 1);
  const record = asItStands(facts);
  const lots = new Map<string, LotDay>();
  const findings = [...record.findings];
  for (const entry of record.standing) {
    const isHere = textIn(entry.body, "place") === place && textIn(entry.body, "on") === on;
    if (isHere && SOLD.includes(entry.kind)) findings.push(...taken(lots, entry));
  }
  const days = [...lots.values()];
  const sales = days.flatMap((lot) => lot.sold);
  return {
    place,
    on,
    lots: [...lots].sort(([a], [b]) => TEXT_ORDER(a, b)).map(([lot, each]) => written(lot, each)),
    sold: soldOf(sales),
    takings: takingsOf(days.flatMap((lot) => lot.takings)),
    sales_count: sales.length,
    findings: settled(findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

const SOLD: readonly string[] = ["sale", "return"];

/** Take one entry in; an amount in another unit than the lot's first counts for nothing. */
function taken(lots: Map<string, LotDay>, entry: Standing): Finding[] {
  const amount = amountIn(entry.body, "amount");
  const code = textIn(entry.body, "lot") ?? "";
  const lot = lots.get(code) ?? { unit: null, sold: [], returned: [], takings: [] };
  lots.set(code, lot);
  lot.unit ??= amount?.unit ?? null;
  const known = amount !== null && amount.unit === lot.unit ? amount : null;
  if (entry.kind === "sale") {
    lot.sold.push(known);
    lot.takings.push(paid(entry.body));
  } else {
    lot.returned.push(known);
  }
  return known === null ? [finding(`unit:${entry.id}`, "unit", { entry: entry.id })] : [];
}

function paid(body: Body): Decimal | null {
  const amount = decimalIn(objectIn(body, "amount") ?? {}, "amount");
  const priceEach = decimalIn(body, "price_each");
  if (amount === null || priceEach === null) return null;
  return difference(product(priceEach, amount), decimalIn(body, "discount") ?? ZERO);
}

function written(lot: string, day: LotDay): DayLot {
  return {
    lot,
    unit: day.unit,
    sold: knownOf(day.sold),
    returned: knownOf(day.returned),
    takings: takingsOf(day.takings),
  };
}

function knownOf(amounts: readonly (Amount | null)[]): string {
  return plain(total(amounts.flatMap((each) => (each === null ? [] : [each.value]))));
}

function soldOf(sales: readonly (Amount | null)[]): string | null {
  if (sales.length === 0) return "0";
  const whole = sumOf(sales);
  return whole === null ? null : plain(whole.value);
}

function takingsOf(takings: readonly (Decimal | null)[]): string | null {
  const known = takings.filter((each) => each !== null);
  return known.length === takings.length ? plain(total(known)) : null;
}

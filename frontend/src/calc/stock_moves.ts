/** What each kind of entry does to one lot: to its places, its sums and where it went. */

import { type Amount, amountIn, itemsIn, sumOf, textIn } from "./bodies.ts";
import { type Decimal, difference, plain, total, ZERO } from "./numbers.ts";
import { type Finding, finding, type Standing, TEXT_ORDER } from "./record.ts";
import { weighed } from "./weighing.ts";

export const MAKING: readonly string[] = ["receipt", "output", "topped_up"];

/** What was seen at a place, and by how much the record differed then (counted - record). */
export interface Count {
  readonly entry: string;
  readonly place: string;
  readonly counted: string;
  readonly variance: string;
}

/** How much of a lot went to one target, and the last day it did. */
export interface Way {
  readonly amount: Decimal;
  readonly on: string;
}

/** A lot's running sums while its entries are walked in business order. */
export interface Ledger {
  readonly code: string;
  readonly unit: string | null;
  readonly places: Map<string, Decimal>;
  readonly sums: Map<string, Decimal>;
  readonly ways: Map<string, Way>;
  /** By day, less what was found. */
  readonly lost_on: Map<string, Decimal>;
  readonly counts: Count[];
  readonly findings: Finding[];
}

/** Whether a standing entry moves, makes or counts this lot. */
export function touchesLot(entry: Standing, code: string): boolean {
  if (!MOVES.has(entry.kind)) return false;
  if (textIn(entry.body, "lot") === code) return true;
  return (
    entry.kind === "topped_up" &&
    itemsIn(entry.body, "from").some((each) => textIn(each, "lot") === code)
  );
}

/** How much of the lot an entry is about, in base units; null where that is unknown. */
export function movedAmount(entry: Standing, code: string): Amount | null {
  if (entry.kind === "weigh_in") return weighed(entry.body);
  if (entry.kind !== "topped_up") return amountIn(entry.body, "amount");
  const isMaker = textIn(entry.body, "lot") === code;
  const poured = itemsIn(entry.body, "from").filter(
    (each) => isMaker || textIn(each, "lot") === code,
  );
  return sumOf(poured.map((each) => amountIn(each, "amount")));
}

/**
 * Take one entry into the ledger. An amount of another dimension than the lot's is a finding and
 * moves nothing, but its target is still named: a trace must not lose a way.
 */
export function walked(ledger: Ledger, entry: Standing): void {
  const amount = movedAmount(entry, ledger.code);
  const known = amount !== null && amount.unit === ledger.unit ? amount.value : null;
  if (known === null) {
    ledger.findings.push(finding(`unit:${entry.id}`, "unit", { entry: entry.id }));
    if (entry.kind === "count") return;
  }
  MOVES.get(entry.kind)?.(ledger, entry, known ?? ZERO);
}

function received(ledger: Ledger, entry: Standing, value: Decimal): void {
  if (textIn(entry.body, "condition") !== "refused") made(ledger, entry, value);
}

function made(ledger: Ledger, entry: Standing, value: Decimal): void {
  add(ledger, "made", value);
  put(ledger, entry, value);
}

function toppedUp(ledger: Ledger, entry: Standing, value: Decimal): void {
  const lot = textIn(entry.body, "lot");
  if (lot === ledger.code) {
    made(ledger, entry, value);
  } else {
    add(ledger, "used", value);
    take(ledger, entry, value);
    went(ledger, entry, `lot:${textOf(entry, "lot")}`, value);
  }
}

function used(ledger: Ledger, entry: Standing, value: Decimal): void {
  add(ledger, "used", value);
  take(ledger, entry, value);
  went(ledger, entry, `batch:${textOf(entry, "batch")}`, value);
}

function lost(ledger: Ledger, entry: Standing, value: Decimal): void {
  lose(ledger, entry, value);
  take(ledger, entry, value);
}

function transferred(ledger: Ledger, entry: Standing, value: Decimal): void {
  const fromPlace = textOf(entry, "from_place");
  const toPlace = textOf(entry, "to_place");
  if (fromPlace === toPlace) return;
  change(ledger, entry, fromPlace, value.negated());
  change(ledger, entry, toPlace, value);
}

function dispatched(ledger: Ledger, entry: Standing, value: Decimal): void {
  add(ledger, "dispatched", value);
  take(ledger, entry, value);
  went(ledger, entry, `recipient:${textOf(entry, "recipient")}`, value);
}

function sold(ledger: Ledger, entry: Standing, value: Decimal): void {
  add(ledger, "sold", value);
  take(ledger, entry, value);
  went(ledger, entry, dayOf(entry), value);
}

/** What comes back unfit is lost at once and never stands at a place. */
function returned(ledger: Ledger, entry: Standing, value: Decimal): void {
  add(ledger, "returned", value);
  if (textIn(entry.body, "condition") === "unfit") lose(ledger, entry, value);
  else put(ledger, entry, value);
  const recipient = textIn(entry.body, "recipient");
  const target = recipient === null ? dayOf(entry) : `recipient:${recipient}`;
  went(ledger, entry, target, value.negated());
}

/** A count sets the running balance; its variance is found anew at each fold. */
function counted(ledger: Ledger, entry: Standing, value: Decimal): void {
  const place = textOf(entry, "place");
  const variance = difference(value, ledger.places.get(place) ?? ZERO);
  add(ledger, "found", variance);
  dateLoss(ledger, entry, variance.negated());
  ledger.places.set(place, value);
  ledger.counts.push({
    entry: entry.id,
    place,
    counted: plain(value),
    variance: plain(variance),
  });
}

type Move = (ledger: Ledger, entry: Standing, value: Decimal) => void;

const MOVES: ReadonlyMap<string, Move> = new Map([
  ["receipt", received],
  ["output", made],
  ["topped_up", toppedUp],
  ["weigh_in", used],
  ["loss", lost],
  ["transfer", transferred],
  ["dispatch", dispatched],
  ["sale", sold],
  ["return", returned],
  ["count", counted],
]);

function textOf(entry: Standing, name: string): string {
  return textIn(entry.body, name) ?? "";
}

function dayOf(entry: Standing): string {
  return `day:${textOf(entry, "place")}:${textIn(entry.body, "on") ?? entry.local_date}`;
}

function add(ledger: Ledger, name: string, value: Decimal): void {
  ledger.sums.set(name, total([ledger.sums.get(name) ?? ZERO, value]));
}

function lose(ledger: Ledger, entry: Standing, value: Decimal): void {
  add(ledger, "lost", value);
  dateLoss(ledger, entry, value);
}

/** What went on a day without going anywhere; below zero it came from nowhere. */
function dateLoss(ledger: Ledger, entry: Standing, value: Decimal): void {
  const day = entry.local_date;
  ledger.lost_on.set(day, total([ledger.lost_on.get(day) ?? ZERO, value]));
}

function put(ledger: Ledger, entry: Standing, value: Decimal): void {
  change(ledger, entry, textOf(entry, "place"), value);
}

function take(ledger: Ledger, entry: Standing, value: Decimal): void {
  change(ledger, entry, textOf(entry, "place"), value.negated());
}

/** Move the balance of a place; the first entry that takes it below zero is named. */
function change(ledger: Ledger, entry: Standing, place: string, value: Decimal): void {
  const balance = total([ledger.places.get(place) ?? ZERO, value]);
  ledger.places.set(place, balance);
  const key = `negative:${place}`;
  if (balance.isNegative() && ledger.findings.every((each) => each.key !== key)) {
    ledger.findings.push(finding(key, "negative", { entry: entry.id, place }));
  }
}

function went(ledger: Ledger, entry: Standing, target: string, value: Decimal): void {
  const before = ledger.ways.get(target) ?? { amount: ZERO, on: entry.local_date };
  const isLater = TEXT_ORDER(entry.local_date, before.on) > 0;
  ledger.ways.set(target, {
    amount: total([before.amount, value]),
    on: isLater ? entry.local_date : before.on,
  });
}

/**
 * What was recorded about money beside the lots: a batch's labour and expenses, and the rates.
 *
 * The whole cost of a batch is worked out from these and from other sheets when somebody asks
 * (batch_costs.ts): a price that comes late moves it without a sheet being made anew.
 */

import { type Body, decimalIn, itemsIn, objectIn, textIn } from "./bodies.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  type Note,
  notesAbout,
  type Standing,
  settled,
  TEXT_ORDER,
} from "./record.ts";
import { idIn } from "./subjects.ts";

export const COST_FOLD = 2;
export const RATES_FOLD = 2;

/** Minutes of a member, or of somebody who is none and has only a name. */
export interface Worked {
  readonly entry: string;
  readonly member: string | null;
  readonly name: string | null;
  readonly minutes: string | null;
  readonly is_paid: boolean;
  readonly pay_per_hour: string | null;
  readonly author: string;
  readonly on: string;
}

/** Fuel, overhead or something else, in the currency it was paid in. */
export interface Spent {
  readonly entry: string;
  readonly part: string | null;
  readonly says: string | null;
  readonly amount: string | null;
  readonly currency: string | null;
  readonly author: string;
  readonly on: string;
}

/**
 * One product: `main` carries the cost, `by_product` lowers it by its value. `value_each` is of a
 * pack, or of a kg or L.
 */
export interface SharedBy {
  readonly lot: string | null;
  readonly sort: string | null;
  readonly value_each: string | null;
}

/** How the cost is shared among several products, as said last. */
export interface Shared {
  readonly entry: string;
  readonly by: string | null;
  readonly currency: string | null;
  readonly products: readonly SharedBy[];
  readonly author: string;
  readonly on: string;
}

/** What a batch cost beside its lots, as recorded, in business order. */
export interface CostState {
  readonly batch: string;
  readonly labour: readonly Worked[];
  readonly expenses: readonly Spent[];
  readonly shared: Shared | null;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/** A rate for each batch, labour hour or kg of good product, or in percent of a base. */
export interface Overhead {
  readonly by: string | null;
  readonly rate: string | null;
  readonly percent_of: string | null;
}

/** How a price is proposed: in percent of cost or price, in whole coins. */
export interface Proposal {
  readonly of: string | null;
  readonly percent: string | null;
  readonly commission_percent: string | null;
  readonly coin: string | null;
  readonly rule: string | null;
}

/** What counts from a day on, until the next. */
export interface Rates {
  readonly entry: string;
  readonly since: string;
  readonly pay_per_hour: string | null;
  readonly overhead: Overhead | null;
  readonly proposal: Proposal | null;
}

/** All rates of a cooperative, the earliest first; of two for one day the last counts. */
export interface RatesState {
  readonly cooperative: string;
  readonly rates: readonly Rates[];
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/** Fold all entries about `cost:<batch>`; of what was said of products the last counts. */
export function costState(subject: string, facts: Iterable<Fact>): CostState {
  const batch = idIn(subject);
  const record = asItStands(facts);
  const entries = record.standing.filter((each) => textIn(each.body, "batch") === batch);
  return {
    batch,
    labour: entries.filter((each) => each.kind === "labour").map(worked),
    expenses: entries.filter((each) => each.kind === "expense").map(spent),
    shared: lastShared(entries),
    findings: settled(record.findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

/** Fold all entries about `rates:<cooperative>`. */
export function ratesState(subject: string, facts: Iterable<Fact>): RatesState {
  const record = asItStands(facts);
  const rows = record.standing.filter((each) => each.kind === "rates_set").map(ratesOf);
  return {
    cooperative: idIn(subject),
    rates: rows.sort((a, b) => TEXT_ORDER(a.since, b.since)),
    findings: settled(record.findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

/** The row of a rates sheet in force on a day; empty before the first. */
export function ratesOn(state: object, on: string): Body {
  const rows = itemsIn({ ...state }, "rates");
  return rows.filter((row) => (textIn(row, "since") ?? "") <= on).at(-1) ?? {};
}

function worked(entry: Standing): Worked {
  return {
    entry: entry.id,
    member: textIn(entry.body, "member"),
    name: textIn(entry.body, "name"),
    minutes: numberIn(entry.body, "minutes"),
    is_paid: entry.body.is_paid !== false,
    pay_per_hour: numberIn(entry.body, "pay_per_hour"),
    author: entry.author,
    on: entry.local_date,
  };
}

function spent(entry: Standing): Spent {
  return {
    entry: entry.id,
    part: textIn(entry.body, "part"),
    says: textIn(entry.body, "says"),
    amount: numberIn(entry.body, "amount"),
    currency: textIn(entry.body, "currency"),
    author: entry.author,
    on: entry.local_date,
  };
}

function lastShared(entries: readonly Standing[]): Shared | null {
  const last = entries.filter((each) => each.kind === "cost_shared").at(-1);
  if (last === undefined) return null;
  return {
    entry: last.id,
    by: textIn(last.body, "by"),
    currency: textIn(last.body, "currency"),
    products: itemsIn(last.body, "products").map((each) => ({
      lot: textIn(each, "lot"),
      sort: textIn(each, "sort"),
      value_each: numberIn(each, "value_each"),
    })),
    author: last.author,
    on: last.local_date,
  };
}

function ratesOf(entry: Standing): Rates {
  const overhead = objectIn(entry.body, "overhead");
  const proposal = objectIn(entry.body, "proposal");
  return {
    entry: entry.id,
    since: textIn(entry.body, "since") ?? entry.local_date,
    pay_per_hour: numberIn(entry.body, "pay_per_hour"),
    overhead: overhead && {
      by: textIn(overhead, "by"),
      rate: numberIn(overhead, "rate"),
      percent_of: textIn(overhead, "percent_of"),
    },
    proposal: proposal && {
      of: textIn(proposal, "of"),
      percent: numberIn(proposal, "percent"),
      commission_percent: numberIn(proposal, "commission_percent"),
      coin: numberIn(proposal, "coin"),
      rule: textIn(proposal, "rule"),
    },
  };
}

/** The number as it was typed; null where it is none. */
function numberIn(body: Body, name: string): string | null {
  return decimalIn(body, name) === null ? null : textIn(body, name);
}

/**
 * How far lots spread: dispersion, recalls by recipient, shares, and a recall's reconciliation.
 *
 * Dispersion after Dupuy, Botta-Genoulaz and Guinet (2005), the definition recalled; recall size
 * as a measure after Dabbene and Gay (2011).
 */

import { percentOf } from "./balance.ts";
import { decimalIn, itemsIn, objectIn, textIn } from "./bodies.ts";
import {
  Decimal,
  difference,
  divided,
  ONE,
  plain,
  product,
  rounded,
  total,
  written,
  ZERO,
} from "./numbers.ts";
import { TEXT_ORDER } from "./record.ts";
import { idIn, typeIn } from "./subjects.ts";
import { type Edge, type Sheets, walkFrom } from "./trace.ts";

export const SHARE_PLACES = 6;
const WORKING_PLACES = 20; // shares are rounded to these at each mixing; only estimates rest on them
export const AVERAGE_PLACES = 1;
const GONE: readonly string[] = ["recipient", "day"];

/** Finished lots that hold some of each raw lot, and raw lots in each finished lot. */
export interface Dispersion {
  readonly downward: Readonly<Record<string, number>>;
  readonly upward: Readonly<Record<string, number>>;
  readonly sum_down: number;
  readonly sum_up: number;
  readonly batch_dispersion: number;
}

/** Finished lots that hold some of a lot and what of them went out, by recipient or day. */
export interface Recall {
  readonly lots: readonly string[];
  readonly went_out: string;
  readonly by_target: Readonly<Record<string, string>>;
  readonly missing: readonly string[];
}

/** How much would be recalled for each raw lot; `average` to one place, null without any. */
export interface RecallSize {
  readonly by_raw_lot: Readonly<Record<string, string>>;
  readonly worst: string;
  readonly average: string | null;
}

/** Where a recalled lot is; percentages to four places, null where nothing was sent. */
export interface Reconciliation {
  readonly accounted_inside: string;
  readonly unaccounted_inside: string;
  readonly trace_completeness_percent: string | null;
  readonly recovered_percent: string | null;
  readonly accounted_in_trade_percent: string | null;
  readonly still_out: string;
}

/** Codes of lots that were received. */
export function rawLots(sheets: Sheets): string[] {
  return lotsMadeBy(sheets, "receipt");
}

/** Codes of lots a batch put out that went into no batch and no other lot. */
export function finishedLots(sheets: Sheets): string[] {
  return lotsMadeBy(sheets, "output").filter((code) => {
    const state = objectIn({ state: sheets.get(`lot:${code}`) }, "state") ?? {};
    return !itemsIn(state, "went_to").some((each) =>
      /^(batch|lot):/.test(textIn(each, "to") ?? ""),
    );
  });
}

/** Down, up and batch dispersion over all lots at hand; the two sums are always equal. */
export function dispersion(sheets: Sheets): Dispersion {
  const raw = rawLots(sheets);
  const origins = finishedLots(sheets).map((code) => {
    const { reached } = walkFrom(`lot:${code}`, "back", sheets);
    return [code, raw.filter((each) => reached.has(`lot:${each}`))] as const;
  });
  const upward = Object.fromEntries(origins.map(([code, found]) => [code, found.length]));
  const downward = Object.fromEntries(
    raw.map((code) => [code, origins.filter(([, found]) => found.includes(code)).length]),
  );
  const sum_down = sumOfCounts(downward);
  const sum_up = sumOfCounts(upward);
  return { downward, upward, sum_down, sum_up, batch_dispersion: sum_down + sum_up };
}

/**
 * All that has to come back if a lot is bad: every lot a path leads to, however small the share,
 * and every recipient and stall day, also where all was returned.
 */
export function recall(lot: string, sheets: Sheets): Recall {
  const walk = walkFrom(`lot:${lot}`, "forward", sheets);
  const byTarget = new Map<string, Decimal>();
  for (const edge of walk.edges) {
    if (!GONE.includes(typeIn(edge.to))) continue;
    byTarget.set(edge.to, total([byTarget.get(edge.to) ?? ZERO, amountOf(edge)]));
  }
  const targets = [...byTarget].sort(([a], [b]) => TEXT_ORDER(a, b));
  return {
    lots: finishedLots(sheets).filter((code) => walk.reached.has(`lot:${code}`)),
    went_out: plain(total(byTarget.values())),
    by_target: Object.fromEntries(targets.map(([target, amount]) => [target, plain(amount)])),
    missing: walk.missing,
  };
}

/** The recall of each raw lot, the worst of them and their average. */
export function recallSize(sheets: Sheets): RecallSize {
  const sizes = rawLots(sheets).map((code) => [code, recall(code, sheets).went_out] as const);
  const amounts = sizes.map(([, size]) => decimalIn({ size }, "size") ?? ZERO);
  const [worst] = [...amounts].sort((a, b) => b.compare(a));
  const count = new Decimal(BigInt(amounts.length), 0);
  return {
    by_raw_lot: Object.fromEntries(sizes),
    worst: plain(worst ?? ZERO),
    average: count.isZero() ? null : written(divided(total(amounts), count, AVERAGE_PLACES)),
  };
}

/**
 * The share of one lot in another, by mass and as if every mixing were perfect, to six places.
 * What went in by another unit than mass is left out. An estimate of a dose, never a reason to
 * recall less.
 */
export function shareOf(lot: string, within: string, sheets: Sheets): string {
  const end = `lot:${within}`;
  const into = new Map<string, Edge[]>();
  for (const edge of walkFrom(end, "back", sheets).edges) {
    const others = into.get(edge.to);
    if (others === undefined) into.set(edge.to, [edge]);
    else others.push(edge);
  }
  const shares = new Map<string, Decimal>();
  for (const subject of inputsFirst(end, into)) {
    const mixed = (into.get(subject) ?? []).filter((edge) => !edge.from.startsWith("source:"));
    shares.set(subject, subject === `lot:${lot}` ? ONE : mixedShare(mixed, shares));
  }
  return plain(rounded(shares.get(end) ?? ZERO, SHARE_PLACES));
}

/**
 * Account for every pack of a recalled lot. `inside` is what is known without the trade: in
 * stock, wasted, kept as samples, used in other lots. `gone_for_good` was eaten or destroyed by
 * recipients, confirmed.
 */
export function reconciliation(given: {
  readonly produced: Decimal;
  readonly inside: readonly Decimal[];
  readonly dispatched: Decimal;
  readonly recovered: Decimal;
  readonly gone_for_good: Decimal;
}): Reconciliation {
  const { produced, dispatched, recovered } = given;
  const accounted = total([...given.inside, dispatched]);
  const inTrade = total([recovered, given.gone_for_good]);
  return {
    accounted_inside: plain(accounted),
    unaccounted_inside: plain(difference(produced, accounted)),
    trace_completeness_percent: percentText(percentOf(accounted, produced)),
    recovered_percent: percentText(percentOf(recovered, dispatched)),
    accounted_in_trade_percent: percentText(percentOf(inTrade, dispatched)),
    still_out: plain(difference(dispatched, inTrade)),
  };
}

function lotsMadeBy(sheets: Sheets, madeBy: string): string[] {
  const codes: string[] = [];
  for (const subject of sheets.keys()) {
    const state = objectIn({ state: sheets.get(subject) }, "state") ?? {};
    if (subject.startsWith("lot:") && textIn(state, "made_by") === madeBy)
      codes.push(idIn(subject));
  }
  return codes.sort(TEXT_ORDER);
}

function sumOfCounts(counts: Readonly<Record<string, number>>): number {
  return Object.values(counts).reduce((soFar, count) => soFar + count, 0);
}

function percentText(percent: Decimal | null): string | null {
  return percent === null ? null : written(percent);
}

function amountOf(edge: Edge): Decimal {
  return decimalIn({ amount: edge.amount }, "amount") ?? ZERO;
}

/** Each subject after all that flowed into it; a recorded circle is entered once. */
function inputsFirst(end: string, into: ReadonlyMap<string, readonly Edge[]>): string[] {
  const done: string[] = [];
  const seen = new Set<string>();
  const stack = [{ subject: end, hasInputs: false }];
  for (let top = stack.pop(); top !== undefined; top = stack.pop()) {
    if (top.hasInputs) {
      done.push(top.subject);
    } else if (!seen.has(top.subject)) {
      seen.add(top.subject);
      stack.push({ subject: top.subject, hasInputs: true });
      for (const edge of into.get(top.subject) ?? []) {
        stack.push({ subject: edge.from, hasInputs: false });
      }
    }
  }
  return done;
}

/** Share in a mixture: by mass where anything went in by mass, else by what there is. */
function mixedShare(mixed: readonly Edge[], shares: ReadonlyMap<string, Decimal>): Decimal {
  const inMass = mixed.filter((edge) => edge.unit === "g");
  const counted = inMass.length > 0 ? inMass : mixed;
  const whole = total(counted.map(amountOf));
  if (whole.isZero() || whole.isNegative()) return ZERO;
  const parts = counted.map((edge) => product(amountOf(edge), shares.get(edge.from) ?? ZERO));
  return divided(total(parts), whole, WORKING_PLACES);
}

/**
 * Hot and cold holding, and time as a control: FDA Food Code 3-501.16 and 3-501.19 as in 16 Del.
 * Admin. Code, read. At the limit itself food is held; at the hour it is discarded.
 */

import { coolingRow, type HeatVerdict } from "./cooling.ts";
import { NEAR_S } from "./crossings.ts";
import { type Gap, gaps, type HeatLog, limitInThousandths } from "./heat_logs.ts";
import type { Cited } from "./limits.ts";
import { parseDecimal } from "./numbers.ts";

export type HoldingSort = "hot" | "cold";
export type TimeSort = "time_4_h" | "time_6_h";

/** Between two looks at held food; a habit, so that it can still be put right within 4 h. */
export const HOLD_GAP_S = 7200;
const HOUR_S = 3600;

/** Readings in a row that were beyond the limit, and the worst of them in degrees. */
export interface Outside {
  readonly from_s: number;
  readonly to_s: number;
  readonly worst: number;
}

/**
 * Whether food was held; `outside_min` is the time beyond the limit by straight lines.
 * A log whose readings all held and that has gaps proves nothing about the gaps.
 */
export interface Holding {
  readonly verdict: HeatVerdict;
  readonly outside: readonly Outside[];
  readonly outside_min: number;
  readonly gaps: readonly Gap[];
  readonly cited: Cited;
}

/**
 * Whether food without temperature control was used in time; `discard_s` is the second of the log
 * at which it must be gone, `reasons` are keys of sentences.
 */
export interface TimeControl {
  readonly verdict: HeatVerdict;
  readonly reasons: readonly string[];
  readonly discard_s: number;
  readonly cited: Cited;
}

/** From the second food was taken out to the one it was used up. */
export interface Span {
  readonly out_s: number;
  readonly used_s: number;
}

/**
 * Hot food at or above 57 degC, cold food at or below 5 degC, at every reading.
 * Of readings that contradict each other the one nearer to harm counts.
 */
export function holdingOf(log: HeatLog, sort: HoldingSort, longestS = HOLD_GAP_S): Holding {
  const row = coolingRow(sort);
  const limit = limitInThousandths(parseDecimal(row.end_C), log.unit);
  const isHot = sort === "hot";
  // How far beyond the limit each reading is, above zero where it is.
  const beyond = isHot ? log.low.map((low) => limit - low) : log.high.map((high) => high - limit);
  const outside = outsideOf(log, beyond, { limit, sign: isHot ? -1 : 1 });
  const unseen = gaps(log, longestS);
  const proven = unseen.length > 0 ? "not_proven" : "pass";
  return {
    verdict: outside.length > 0 ? "fail" : proven,
    outside,
    outside_min: minutesBeyond(log.at_s, beyond),
    gaps: unseen,
    cited: { what: sort, source: row.source, basis: row.basis, note: "" },
  };
}

/**
 * Time as a control, from the second food was taken out to the one it was used up.
 *
 * 4 h: taken out at or below 5 or at or above 57 degC. 6 h: taken out at or below 5 degC and never
 * above 21 degC. Throws RangeError when it was used before it was taken out.
 */
export function timeControl(log: HeatLog, sort: TimeSort, span: Span): TimeControl {
  const { out_s, used_s } = span;
  if (used_s < out_s) throw new RangeError("food is used after it is taken out");
  const row = coolingRow(sort);
  const limitS = Number(row.limit_h) * HOUR_S;
  const start = startReason(log, sort, out_s);
  const isWatched = sort === "time_6_h";
  const broken = [
    ...(used_s - out_s >= limitS ? ["over_time"] : []),
    ...(start === "not_held_before" ? [start] : []),
    ...(isWatched ? tooWarm(log, limitInThousandths(parseDecimal(row.end_C), log.unit), span) : []),
  ];
  const unproven = [
    ...(start === "start_not_seen" ? [start] : []),
    ...(isWatched ? unseenIn(log, span) : []),
  ];
  const proven = unproven.length > 0 ? "not_proven" : "pass";
  return {
    verdict: broken.length > 0 ? "fail" : proven,
    reasons: [...broken, ...unproven],
    discard_s: out_s + limitS,
    cited: { what: sort, source: row.source, basis: row.basis, note: "" },
  };
}

function outsideOf(
  log: HeatLog,
  beyond: readonly number[],
  { limit, sign }: { readonly limit: number; readonly sign: number },
): Outside[] {
  const spans: Outside[] = [];
  let worst = 0;
  for (const [row, second] of log.at_s.entries()) {
    const excess = beyond[row] ?? 0;
    if (excess <= 0) {
      worst = 0;
      continue;
    }
    const began = worst > 0 ? (spans.pop()?.from_s ?? second) : second;
    worst = Math.max(worst, excess);
    spans.push({ from_s: began, to_s: second, worst: (limit + sign * worst) / 1000 });
  }
  return spans;
}

/** Time above zero of the straight lines between the readings. */
function minutesBeyond(atS: readonly number[], beyond: readonly number[]): number {
  let minutes = 0;
  let last: { readonly second: number; readonly excess: number } | null = null;
  for (const [row, second] of atS.entries()) {
    const excess = beyond[row] ?? 0;
    if (last !== null) {
      const stepMin = (second - last.second) / 60;
      if (last.excess > 0 && excess > 0) minutes = minutes + stepMin;
      else if (last.excess > 0 || excess > 0) {
        const share = Math.max(last.excess, excess) / Math.abs(last.excess - excess);
        minutes = minutes + stepMin * share;
      }
    }
    last = { second, excess };
  }
  return minutes;
}

/** What is wrong with the last reading before food was taken out; only a recent one says. */
function startReason(
  log: HeatLog,
  sort: TimeSort,
  outS: number,
): "start_not_seen" | "not_held_before" | null {
  const row = log.at_s.filter((second) => second <= outS).length - 1;
  const [second, low, high] = [log.at_s[row], log.low[row], log.high[row]];
  if (second === undefined || low === undefined || high === undefined || second < outS - NEAR_S) {
    return "start_not_seen";
  }
  const isCold = high <= limitInThousandths(parseDecimal(coolingRow("cold").end_C), log.unit);
  const isHot = low >= limitInThousandths(parseDecimal(coolingRow("hot").end_C), log.unit);
  return isCold || (isHot && sort === "time_4_h") ? null : "not_held_before";
}

function tooWarm(log: HeatLog, warmest: number, { out_s, used_s }: Span): string[] {
  const isWarm = log.at_s.some(
    (second, row) => out_s <= second && second <= used_s && (log.high[row] ?? 0) > warmest,
  );
  return isWarm ? ["too_warm"] : [];
}

/** Readings must follow one another within half an hour from one end to the other. */
function unseenIn(log: HeatLog, { out_s, used_s }: Span): string[] {
  const within = log.at_s.filter((second) => out_s <= second && second <= used_s);
  const seen = [out_s, ...within, used_s];
  const isUnseen = seen.some((second, place) => second - (seen[place - 1] ?? second) > NEAR_S);
  return isUnseen ? ["not_watched"] : [];
}

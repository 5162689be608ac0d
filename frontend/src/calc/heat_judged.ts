/**
 * What a time-temperature log comes to: how whole it is, and what it is judged by.
 *
 * A log proves nothing about its gaps, and where it does not say from when a clock runs, nothing is
 * proven either.
 */

import { type Body, decimalIn, objectIn, textIn } from "./bodies.ts";
import { type Cooling, type HeatVerdict, oneStageCooling, twoStageCooling } from "./cooling.ts";
import { type HeatLog, logIn } from "./heat_logs.ts";
import { type HoldingSort, holdingOf, type TimeSort, timeControl } from "./holding.ts";
import { lethality, ownReference, type Reference, referenceOf } from "./lethality.ts";
import type { Cited } from "./limits.ts";
import { asDouble, Decimal, plain, significant } from "./numbers.ts";

export const MINUTE_DIGITS = 6; // of a sum of doubles, as a sheet keeps it
/** A sum of doubles that is short of the wanted minutes by less than this is not short. */
export const SUM_ERROR = 1e-9;
const HOLDS: ReadonlyMap<string, HoldingSort> = new Map([
  ["hot_hold", "hot"],
  ["cold_hold", "cold"],
]);
const TIMES: ReadonlyMap<string, TimeSort> = new Map([
  ["time_4_h", "time_4_h"],
  ["time_6_h", "time_6_h"],
]);

/**
 * How whole a log is; temperatures in its unit. `repeated_count` rows say a second again,
 * `contradicted_count` seconds have readings that differ: then the worse counts.
 */
export interface HeatRows {
  readonly row_count: number;
  readonly left_out_count: number;
  readonly repeated_count: number;
  readonly contradicted_count: number;
  readonly span_s: number;
  readonly longest_gap_s: number;
  readonly lowest: string;
  readonly highest: string;
}

/** Minutes at the reference; `bridged_min` is what lines across gaps would add. */
export interface HeatSum {
  readonly minutes: string;
  readonly bridged_min: string;
  readonly wanted_min: string | null;
  readonly t_ref: string;
  readonly z: string;
  readonly unit: string;
  readonly base: string | null;
}

/** One stage of cooling in minutes: by the straight line, and the least and most it took. */
export interface HeatStage {
  readonly rule: string;
  readonly verdict: HeatVerdict;
  readonly reason: string | null;
  readonly limit_min: string;
  readonly minutes: string | null;
  readonly at_least_min: string | null;
  readonly at_most_min: string | null;
}

/** How often held food was beyond the limit, how far at worst, for how many minutes. */
export interface HeatOutside {
  readonly count: number;
  readonly worst: string;
  readonly minutes: string;
}

/**
 * What a log comes to. `rows` is null for one that cannot be read; the verdict is null where
 * nothing was asked. `reasons` are keys of sentences; `gap_count` counts the gaps this judgement
 * minds; `discard_s` is when food under time as a control must be gone.
 */
export interface HeatJudged {
  readonly by: string | null;
  readonly verdict: HeatVerdict | null;
  readonly reasons: readonly string[];
  readonly rows: HeatRows | null;
  readonly sum: HeatSum | null;
  readonly stages: readonly HeatStage[];
  readonly reheated_count: number;
  readonly outside: HeatOutside | null;
  readonly gap_count: number;
  readonly discard_s: number | null;
  readonly cited: readonly Cited[];
}

/**
 * What the body of a `heat_log` comes to, by what it asks to be judged by; with its rows as they
 * were read, or as they are `taken` where that is another thing.
 */
export function judgedLog(body: Body, taken: HeatLog | null = null): HeatJudged {
  const asked = objectIn(body, "judged") ?? {};
  const by = textIn(asked, "by");
  const log = taken ?? logIn(body);
  if (log === null) return judged(by, { reasons: ["unreadable"] });
  const rows = rowsOf(log, body);
  if (by === "lethality") return byLethality(log, asked, rows);
  const hold = HOLDS.get(by ?? "");
  if (hold !== undefined) return byHolding(log, hold, rows);
  const time = TIMES.get(by ?? "");
  if (time !== undefined) return byTime(log, { sort: time, asked }, rows);
  return byCooling(log, asked, rows);
}

function rowsOf(log: HeatLog, body: Body): HeatRows {
  const count = Array.isArray(body.at_s) ? body.at_s.length : 0;
  let [first, before, longest]: [number | null, number | null, number] = [null, null, 0];
  for (const second of log.at_s) {
    first ??= second;
    longest = Math.max(longest, second - (before ?? second));
    before = second;
  }
  return {
    row_count: count,
    left_out_count: Number.isSafeInteger(body.left_out) ? Number(body.left_out) : 0,
    repeated_count: count - log.at_s.length,
    contradicted_count: log.contradicted_s.length,
    span_s: (before ?? 0) - (first ?? 0),
    longest_gap_s: longest,
    lowest: degrees(log.low.reduce((low, each) => Math.min(low, each), Infinity)),
    highest: degrees(log.high.reduce((high, each) => Math.max(high, each), -Infinity)),
  };
}

function byLethality(log: HeatLog, asked: Body, rows: HeatRows): HeatJudged {
  const reference = referenceIn(asked);
  const unproven = { rows, verdict: "not_proven" } as const;
  if (reference === null) return judged("lethality", { ...unproven, reasons: ["no_reference"] });
  const found = lethalityOr(log, reference);
  if (found === null) return judged("lethality", { ...unproven, reasons: ["too_far"] });
  const wanted = decimalIn(asked, "wanted_min");
  let verdict: HeatVerdict | null = null;
  if (wanted !== null) {
    const enough = asDouble(wanted) * (1 - SUM_ERROR);
    verdict = found.minutes + found.bridged_min < enough ? "fail" : "not_proven";
    if (found.minutes >= enough) verdict = "pass";
  }
  return judged("lethality", {
    rows,
    verdict,
    reasons: verdict === "fail" ? ["too_little"] : verdict === "not_proven" ? ["gap"] : [],
    sum: {
      minutes: significant(found.minutes, MINUTE_DIGITS),
      bridged_min: significant(found.bridged_min, MINUTE_DIGITS),
      wanted_min: wanted === null ? null : plain(wanted),
      t_ref: plain(reference.t_ref),
      z: plain(reference.z),
      unit: reference.unit,
      base: reference.base === null ? null : plain(reference.base),
    },
    gap_count: found.gaps.length,
    cited: cited(reference.cited),
  });
}

function lethalityOr(log: HeatLog, reference: Reference) {
  try {
    return lethality(log, reference);
  } catch {
    return null; // too hot for this reference
  }
}

/** The reference asked for; null where it is not said whole. */
function referenceIn(asked: Body): Reference | null {
  const named = textIn(asked, "reference") ?? "";
  const [tRef, z] = [decimalIn(asked, "t_ref"), decimalIn(asked, "z")];
  try {
    if (named !== "own") return referenceOf(named);
    if (tRef === null || z === null) return null;
    return ownReference(tRef, { z, unit: textIn(asked, "reference_unit") ?? "" });
  } catch {
    return null;
  }
}

function byHolding(log: HeatLog, sort: HoldingSort, rows: HeatRows): HeatJudged {
  const found = holdingOf(log, sort);
  const sign = sort === "hot" ? -1 : 1;
  let outside: HeatOutside | null = null;
  if (found.outside.length > 0) {
    const furthest = found.outside.reduce(
      (far, each) => Math.max(far, sign * each.worst),
      -Infinity,
    );
    outside = {
      count: found.outside.length,
      worst: degrees(Math.round(furthest * sign * 1000)),
      minutes: significant(found.outside_min, MINUTE_DIGITS),
    };
  }
  const why: Readonly<Record<string, string>> = { fail: "outside", not_proven: "gap" };
  const reason = why[found.verdict];
  return judged(`${sort}_hold`, {
    rows,
    verdict: found.verdict,
    reasons: reason === undefined ? [] : [reason],
    outside,
    gap_count: found.gaps.length,
    cited: cited([found.cited]),
  });
}

function byTime(
  log: HeatLog,
  { sort, asked }: { readonly sort: TimeSort; readonly asked: Body },
  rows: HeatRows,
): HeatJudged {
  const [outS, usedS] = [secondIn(asked, "from_s"), secondIn(asked, "to_s")];
  const unproven = { rows, verdict: "not_proven" } as const;
  if (outS === null || usedS === null) {
    return judged(sort, { ...unproven, reasons: ["times_not_said"] });
  }
  if (usedS < outS) return judged(sort, { ...unproven, reasons: ["times_turned"] });
  const found = timeControl(log, sort, { out_s: outS, used_s: usedS });
  return judged(sort, {
    rows,
    verdict: found.verdict,
    reasons: found.reasons,
    discard_s: found.discard_s,
    cited: cited([found.cited]),
  });
}

function byCooling(log: HeatLog, asked: Body, rows: HeatRows): HeatJudged {
  const by = textIn(asked, "by");
  if (by === "two_stage_cooling") return cooled(by, twoStageCooling(log), rows);
  if (by !== "ambient_cooling" && by !== "received_cooling") return judged(null, { rows });
  const beginS = secondIn(asked, "from_s");
  if (beginS === null) {
    return judged(by, { rows, verdict: "not_proven", reasons: ["times_not_said"] });
  }
  const rule = by === "ambient_cooling" ? "ambient" : "received";
  return cooled(by, oneStageCooling(log, rule, beginS), rows);
}

function cooled(by: string, found: Cooling, rows: HeatRows): HeatJudged {
  const text = (x: Decimal | null) => (x === null ? null : plain(x));
  return judged(by, {
    rows,
    verdict: found.verdict,
    reasons: [...new Set(found.stages.map((each) => each.reason))].filter((each) => each !== null),
    stages: found.stages.map((each) => ({
      rule: each.rule,
      verdict: each.verdict,
      reason: each.reason,
      limit_min: plain(each.limit_min),
      minutes: text(each.minutes),
      at_least_min: text(each.at_least_min),
      at_most_min: text(each.at_most_min),
    })),
    reheated_count: found.reheated_count,
    cited: cited(found.stages.map((each) => each.cited)),
  });
}

function judged(by: string | null, more: Partial<HeatJudged>): HeatJudged {
  return {
    by,
    verdict: null,
    reasons: [],
    rows: null,
    sum: null,
    stages: [],
    reheated_count: 0,
    outside: null,
    gap_count: 0,
    discard_s: null,
    cited: [],
    ...more,
  };
}

function secondIn(asked: Body, name: string): number | null {
  const value = asked[name];
  return typeof value === "number" && Number.isSafeInteger(value) ? value : null;
}

/** As a sheet writes them: every field stands there. */
function cited(all: readonly Cited[]): Cited[] {
  return all.map(({ what, source, basis, note }) => ({ what, source, basis, note }));
}

function degrees(thousandths: number): string {
  return plain(new Decimal(BigInt(thousandths), 3));
}

/**
 * Cooling judged by a rule of time and temperature: pass, fail, not proven or unfinished.
 *
 * FDA Food Code 3-501.14 as adopted word for word in 16 Del. Admin. Code, read. Limits are
 * inclusive. A crossing lies on the straight line between two readings, which on a decaying curve
 * is late: careful for the end, not for the start, so to pass the clock starts at the last reading
 * before it. Without readings near a limit nothing is proven.
 */

import { Crossing, MINUTE_S, NEAR_S, Seconds } from "./crossings.ts";
import { type HeatLog, limitInThousandths } from "./heat_logs.ts";
import type { Cited } from "./limits.ts";
import { Decimal, divided, parseDecimal } from "./numbers.ts";
import { Reheat } from "./reheating.ts";
import { COOLING_ROWS, type CoolingRow } from "./tables/heat.ts";

export type HeatVerdict = "pass" | "fail" | "not_proven" | "unfinished";
export type OneStage = "ambient" | "received";

const HOUR_S = wholeNumber(3600);
const WORST_FIRST: readonly HeatVerdict[] = ["fail", "not_proven", "unfinished", "pass"];

/**
 * One stage of cooling: minutes by the straight line, what they are at least and at most, and why
 * it is not a pass: a key of a sentence.
 */
export interface Stage {
  readonly rule: string;
  readonly end_celsius: Decimal;
  readonly limit_min: Decimal;
  readonly verdict: HeatVerdict;
  readonly reason: string | null;
  readonly minutes: Decimal | null;
  readonly at_least_min: Decimal | null;
  readonly at_most_min: Decimal | null;
  readonly cited: Cited;
}

/**
 * The worst of its stages decides. `reheated_count` says how often the clock began anew because
 * food was shown to have been reheated.
 */
export interface Cooling {
  readonly verdict: HeatVerdict;
  readonly stages: readonly Stage[];
  readonly reheated_count: number;
  readonly contradicted_count: number;
}

/**
 * Cooked food: from 57 to 21 degC within 2 h and to 5 degC within 6 h in all, the clock started
 * when it first passes 57 degC after cooking or after being reheated.
 *
 * Reheated is what two readings or more in a row show at 74 degC for 15 s, reached within 2 h of the
 * coldest reading and while the 6 h were not over. A warmer one is only warm: the clock goes on.
 */
export function twoStageCooling(log: HeatLog): Cooling {
  const walk = new Walk(log);
  for (let row = 0; row < log.at_s.length && walk.whole === null; row++) walk.step(row);
  let first = judged("stage_1", { start: walk.start, end: walk.stage1, log });
  if (walk.hasWarmed && first.verdict === "pass") {
    first = { ...first, verdict: "not_proven", reason: "warmed_again" };
  }
  const whole = judged("whole", { start: walk.start, end: walk.whole, log });
  const stages = walk.reheat.isInVain ? [first, whole].map(inVain) : [first, whole];
  return worst(stages, log, walk.reheat.count);
}

/**
 * Food made from ambient ingredients, or received above 5 degC where law allows: 5 degC within 4 h
 * of `beginS`, the end of preparation or the receipt.
 */
export function oneStageCooling(log: HeatLog, rule: OneStage, beginS: number): Cooling {
  const row = coolingRow(rule);
  const start = Crossing.atReading(beginS, beginS);
  const first = log.at_s.findIndex((second) => second >= beginS);
  const end = first < 0 ? null : firstCold(log, first, start);
  let stage = judged(rule, { start, end, log });
  if (first >= 0 && stage.verdict === "pass" && row.start_C !== "") {
    const warmest = limitInThousandths(parseDecimal(row.start_C), log.unit);
    if (at(log.high, first) > warmest) {
      stage = { ...stage, verdict: "not_proven", reason: "not_ambient" };
    }
  }
  return worst([stage], log, 0);
}

/** A rule of tables/cooling_rule.csv. Throws RangeError for another. */
export function coolingRow(rule: string): CoolingRow {
  const found = COOLING_ROWS.find((row) => row.rule === rule);
  if (found === undefined) throw new RangeError(`no rule of cooling is called ${rule}`);
  return found;
}

/** What has been seen of a cooling so far, reading by reading. */
class Walk {
  start: Crossing | null = null;
  stage1: Crossing | null = null;
  whole: Crossing | null = null;
  hasWarmed = false;
  readonly reheat: Reheat;
  private readonly log: HeatLog;
  private readonly passed: number;
  private readonly mild: number;
  private readonly cold: number;

  constructor(log: HeatLog) {
    this.log = log;
    this.passed = limitInThousandths(parseDecimal(coolingRow("stage_1").start_C), log.unit);
    this.mild = endOf("stage_1", log);
    this.cold = endOf("whole", log);
    this.reheat = new Reheat(log, {
      hot: endOf("reheat", log),
      within_s: limitS("reheat"),
      whole_s: limitS("whole"),
      near_s: NEAR_S,
    });
  }

  /**
   * Of readings that contradict each other the colder starts the clock, the warmer must have
   * reached an end.
   */
  step(row: number): void {
    const { low, high } = this.log;
    const [coldest, warmest] = [at(low, row), at(high, row)];
    if (this.start === null && coldest < this.passed) {
      this.start = Crossing.into(this.log, low, { row, limit: this.passed });
    }
    if (this.start === null) return;
    if (this.reheat.step(row, this.start.earliest_s)) {
      this.beginAnew();
      return;
    }
    if (this.stage1 !== null) this.hasWarmed = this.hasWarmed || warmest > this.mild;
    else if (warmest <= this.mild) {
      this.stage1 = Crossing.into(this.log, high, { row, limit: this.mild });
    }
    if (warmest <= this.cold) this.whole = Crossing.into(this.log, high, { row, limit: this.cold });
  }

  private beginAnew(): void {
    this.start = null;
    this.stage1 = null;
    this.hasWarmed = false;
  }
}

function inVain(stage: Stage): Stage {
  const isWhy = stage.reason === "too_slow" || stage.reason === "warmed_again";
  return isWhy ? { ...stage, reason: "reheat_not_shown" } : stage;
}

/** When 5 degC was reached, from the reading `first` on. */
function firstCold(log: HeatLog, first: number, start: Crossing): Crossing | null {
  const limit = endOf("whole", log);
  const row = log.high.findIndex((warmest, number) => number >= first && warmest <= limit);
  if (row < 0) return null;
  if (row > first) return Crossing.into(log, log.high, { row, limit });
  // Cold at the first reading: since when, between the start and it, nobody knows.
  return Crossing.atReading(at(log.at_s, row), start.earliest_s);
}

function judged(
  rule: string,
  seen: { readonly start: Crossing | null; readonly end: Crossing | null; readonly log: HeatLog },
): Stage {
  const { start, end, log } = seen;
  const row = coolingRow(rule);
  const limit = limitS(rule);
  const lastS = end === null ? at(log.at_s, log.at_s.length - 1) : end.earliest_s;
  const hasLeast = start !== null && lastS !== null;
  const hasMost = start !== null && end !== null && start.earliest_s !== null;
  const least = hasLeast ? Math.max(lastS - start.latest_s, 0) : null;
  const most = hasMost ? end.latest_s - (start.earliest_s ?? 0) : null;
  const line = start !== null && end !== null ? end.line.since(start.line) : null;
  const { verdict, reason } = verdictOf(start, end, { least, most, line, limitS: limit });
  return {
    rule,
    end_celsius: parseDecimal(row.end_C),
    limit_min: divided(wholeNumber(limit), MINUTE_S, 0),
    verdict,
    reason,
    minutes: line === null || most === null ? null : line.minutes(),
    at_least_min: least === null ? null : Seconds.whole(least).minutes(),
    at_most_min: most === null ? null : Seconds.whole(most).minutes(),
    cited: { what: rule, source: row.source, basis: row.basis, note: "" },
  };
}

/** How long it took: at least, at most (seconds) and by the straight line, and how long it may. */
interface Spans {
  readonly least: number | null;
  readonly most: number | null;
  readonly line: Seconds | null;
  readonly limitS: number;
}

interface Ruling {
  readonly verdict: HeatVerdict;
  readonly reason: string | null;
}

function verdictOf(start: Crossing | null, end: Crossing | null, spans: Spans): Ruling {
  const { least, most, line, limitS } = spans;
  if (start === null) return { verdict: "unfinished", reason: "not_started" };
  // A crossing between two readings comes after the first of them.
  const isExact = most !== null && least === most;
  if (least !== null && (least > limitS || (least === limitS && !isExact))) {
    return { verdict: "fail", reason: "too_slow" };
  }
  if (end === null || line === null) return { verdict: "unfinished", reason: "not_finished" };
  if (most === null || start.earliest_s === null) {
    return { verdict: "not_proven", reason: "start_not_seen" };
  }
  if (most <= limitS) return { verdict: "pass", reason: null };
  if (!(start.isNear && end.isNear)) return { verdict: "not_proven", reason: "no_reading_near" };
  if (!end.line.since(Seconds.whole(start.earliest_s)).exceeds(limitS)) {
    return { verdict: "pass", reason: null };
  }
  if (line.exceeds(limitS)) return { verdict: "fail", reason: "too_slow" };
  return { verdict: "not_proven", reason: "start_between_readings" };
}

function worst(stages: readonly Stage[], log: HeatLog, reheatedCount: number): Cooling {
  const verdicts = stages.map((stage) => stage.verdict);
  return {
    verdict: WORST_FIRST.find((each) => verdicts.includes(each)) ?? "unfinished",
    stages,
    reheated_count: reheatedCount,
    contradicted_count: log.contradicted_s.length,
  };
}

function limitS(rule: string): number {
  return Number(parseDecimal(coolingRow(rule).limit_h).times(HOUR_S).units);
}

function endOf(rule: string, log: HeatLog): number {
  return limitInThousandths(parseDecimal(coolingRow(rule).end_C), log.unit);
}

function wholeNumber(x: number): Decimal {
  return new Decimal(BigInt(x), 0);
}

/** A number of an array by its place; a place that is not there is a defect. */
function at(numbers: readonly number[], place: number): number {
  const found = numbers[place];
  if (found === undefined) throw new Error("a log has no such row");
  return found;
}

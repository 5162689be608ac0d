/**
 * A time-temperature log with what is known of its thermometer: corrected, and judged with the
 * guard band of its readings, as any reading is.
 *
 * The correction is the one in force when the log began; a failed check puts the log in question
 * when any of its time lies in the stretch that the check does.
 */

import { type Body, textIn } from "./bodies.ts";
import type { HeatVerdict } from "./cooling.ts";
import { type HeatJudged, type HeatStage, judgedLog } from "./heat_judged.ts";
import { type HeatLog, logIn } from "./heat_logs.ts";
import { Decimal, parseDecimal, plain, product, rounded, significant } from "./numbers.ts";
import { guardBand } from "./readings.ts";
import { later } from "./shelf_life.ts";
import { meant, type Sheets, type TrustedReading, trustedReading } from "./trusted.ts";

const U_DIGITS = 3;
const THOUSAND = 1000;
const MINUTE_S = 60;
const MOST = 1e12; // thousandths: no correction makes more of a temperature
const WORST_FIRST: readonly HeatVerdict[] = ["fail", "not_proven", "unfinished", "pass"];

/**
 * What a sheet says of the thermometer of a log, in the unit of the log.
 *
 * `lowest` and `highest` are corrected, null where nothing corrects; `u` is the largest standard
 * uncertainty of a reading, null where the division is not known; `least_min` is the sum of heat if
 * every reading were as much colder as its guard band. `moves` is what a failed check would add at
 * most, `would_be` the verdict if that counted.
 */
export interface HeatTrust {
  readonly lowest: string | null;
  readonly highest: string | null;
  readonly u: string | null;
  readonly least_min: string | null;
  readonly found_by: string | null;
  readonly is_extrapolated: boolean;
  readonly failed_by: string | null;
  readonly moves: string | null;
  readonly would_be: HeatVerdict | null;
}

/** What a log comes to, its thermometer counted; `rows` as they were read. */
export interface TrustedHeat extends HeatJudged {
  /** Null for one that cannot be read. */
  readonly trust: HeatTrust | null;
}

/**
 * What the body of a `heat_log` comes to when its thermometer is taken for what it is.
 *
 * A pass is one only with every reading a guard band nearer to harm, a failure only with every one
 * a guard band further from it; else the log is not proven. Without a known doubt nothing passes.
 * `instruments` are sheets by subject.
 */
export function trustedLog(
  body: Body,
  made: { readonly happened_at: string; readonly instruments: Sheets },
): TrustedHeat {
  const log = logIn(body);
  if (log === null) return { ...judgedLog(body), trust: null };
  const taken = takenFor(log, readingsOf(log, body, made));
  const [judged, careful] = sure(body, taken, taken.log);
  const { rows } = judgedLog({ ...body, judged: {} }, log);
  return { ...judged, rows, trust: written(body, taken, careful) };
}

/**
 * A log as its thermometer is trusted. `guard` is the widest guard band in thousandths, `moved` the
 * log as a failed check would have it, `furthest` how far at most.
 */
interface Taken {
  readonly log: HeatLog;
  readonly first: TrustedReading;
  readonly is_extrapolated: boolean;
  readonly u: number | null;
  readonly guard: number | null;
  readonly moved: HeatLog | null;
  readonly furthest: Decimal | null;
}

type Readings = ReadonlyMap<number, TrustedReading>;

/** Each temperature that was read, as a reading of the thermometer the log names. */
function readingsOf(
  log: HeatLog,
  body: Body,
  { happened_at, instruments }: { readonly happened_at: string; readonly instruments: Sheets },
): Readings {
  const began = textIn(body, "began_at") ?? happened_at;
  const until = endOf(began, log.at_s.at(-1) ?? 0);
  const about = ["instrument", "division", "repeatability"].map((name) => [
    name,
    textIn(body, name),
  ]);
  const known = Object.fromEntries(about.filter(([, value]) => value !== null));
  const reading = (value: number): TrustedReading => {
    const shown = { reading: { ...known, unit: log.unit, shown: degrees(value) } };
    const found = trustedReading(shown, { happened_at: began, until, instruments });
    if (found === null) throw new Error("a log has a reading that was not shown");
    return found;
  };
  const values = [...new Set([...log.low, ...log.high])];
  const first = reading(log.low[0] ?? 0);
  // Without a line each stands as it was read.
  const isAlike = first.found_by === null && first.moves === null;
  return new Map(values.map((value) => [value, isAlike ? first : reading(value)]));
}

/** The last minute of a log; its beginning where that is no instant. */
function endOf(began: string, spanS: number): string {
  try {
    return later(began, Math.ceil(spanS / MINUTE_S));
  } catch {
    return began; // it is no instant
  }
}

function takenFor(log: HeatLog, readings: Readings): Taken {
  const all = [...readings.values()];
  const known = all.map(({ doubt }) => doubt).filter((doubt) => doubt !== null);
  const isKnown = known.length === all.length;
  const bands = known.map((doubt) => guardBand(doubt));
  const moves = all.map((each) => each.moves).filter((each) => each !== null);
  return {
    log: mapped(log, (value) => corrected(value, readingAt(readings, value))),
    first: readingAt(readings, log.low[0] ?? 0),
    is_extrapolated: all.some((each) => each.is_extrapolated),
    u: isKnown ? largest(known.map(({ u }) => u)) : null,
    // Never narrower than it is.
    guard: isKnown ? Math.ceil(largest(bands) * THOUSAND) : null,
    moved:
      moves.length === 0
        ? null
        : mapped(log, (value) => corrected(value, readingAt(readings, value), true)),
    furthest: furthestOf(moves),
  };
}

function largest(numbers: readonly number[]): number {
  return numbers.reduce((most, each) => Math.max(most, each), -Infinity);
}

/** Of two that are as far both ways the upward one, so that no order decides. */
function furthestOf(moves: readonly Decimal[]): Decimal | null {
  return moves.reduce<Decimal | null>((far, each) => {
    if (far === null) return each;
    const further = each.abs().compare(far.abs());
    return further > 0 || (further === 0 && each.compare(far) > 0) ? each : far;
  }, null);
}

function readingAt(readings: Readings, value: number): TrustedReading {
  const found = readings.get(value);
  if (found === undefined) throw new Error("a temperature of a log was not read");
  return found;
}

function corrected(value: number, reading: TrustedReading, isMoved = false): number {
  if (reading.found_by === null && !isMoved) return value;
  const stands = product(meant(reading, isMoved).net, parseDecimal(String(THOUSAND)));
  return Math.max(-MOST, Math.min(MOST, Number(plain(rounded(stands, 0)))));
}

function mapped(log: HeatLog, change: (value: number) => number): HeatLog {
  return { ...log, low: log.low.map(change), high: log.high.map(change) };
}

/**
 * The colder readings so much colder, the warmer ones warmer: each judgement takes the one that is
 * nearer to harm. With a negative width the one further from it.
 */
function widened(log: HeatLog, by: number): HeatLog {
  return { ...log, low: log.low.map((each) => each - by), high: log.high.map((each) => each + by) };
}

/**
 * A log judged with its guard band, and what it comes to nearest to harm; null where the doubt is
 * not known.
 */
function sure(body: Body, taken: Taken, log: HeatLog): [HeatJudged, HeatJudged | null] {
  const judged = judgedLog(body, log);
  if (taken.guard === null) {
    const why = "thermometer_unknown";
    return [decided(judged, { careful: null, kindest: judged, why }), null];
  }
  const careful = judgedLog(body, widened(log, taken.guard));
  const verdicts = [judged.verdict, ...judged.stages.map(({ verdict }) => verdict)];
  const kindest = verdicts.includes("fail") ? judgedLog(body, widened(log, -taken.guard)) : judged;
  return [decided(judged, { careful, kindest, why: "thermometer" }), careful];
}

interface Ends {
  readonly careful: HeatJudged | null;
  readonly kindest: HeatJudged;
  readonly why: string;
}

/** The verdicts that hold either way, the others not proven. */
function decided(judged: HeatJudged, { careful, kindest, why }: Ends): HeatJudged {
  const stages = judged.stages.map((stage, number): HeatStage => {
    const [worse, kinder] = [careful?.stages[number], kindest.stages[number]];
    const isSure = !isTurned(stage.verdict, worse?.verdict ?? null, kinder?.verdict ?? null);
    return isSure ? stage : { ...stage, verdict: "not_proven", reason: why };
  });
  if (stages.length > 0) {
    const reasons = stages.map(({ reason }) => reason).filter((reason) => reason !== null);
    const verdict =
      WORST_FIRST.find((each) => stages.some((stage) => stage.verdict === each)) ?? null;
    return { ...judged, verdict, stages, reasons: [...new Set(reasons)] };
  }
  if (!isTurned(judged.verdict, careful?.verdict ?? null, kindest.verdict)) return judged;
  return { ...judged, verdict: "not_proven", reasons: [why] };
}

function isTurned(
  verdict: HeatVerdict | null,
  careful: HeatVerdict | null,
  kindest: HeatVerdict | null,
): boolean {
  if (verdict === "pass") return careful !== "pass";
  return verdict === "fail" && kindest !== "fail";
}

function written(body: Body, taken: Taken, careful: HeatJudged | null): HeatTrust {
  const { first, moved, log } = taken;
  const isCorrected = first.found_by !== null;
  const lowest = log.low.reduce((least, each) => Math.min(least, each), Infinity);
  return {
    lowest: isCorrected ? degrees(lowest) : null,
    highest: isCorrected ? degrees(largest(log.high)) : null,
    u: taken.u === null ? null : significant(taken.u, U_DIGITS),
    least_min: careful?.sum?.minutes ?? null,
    found_by: first.found_by,
    is_extrapolated: taken.is_extrapolated,
    failed_by: first.failed_by,
    moves: taken.furthest === null ? null : plain(taken.furthest),
    would_be: moved === null ? null : sure(body, taken, moved)[0].verdict,
  };
}

function degrees(thousandths: number): string {
  return plain(new Decimal(BigInt(thousandths), 3));
}

/** The lines of a batch: what was planned, laid out, weighed in, and whether it is within. */

import { type Mass, U_DIGITS } from "./batch_steps.ts";
import {
  type Amount,
  amountIn,
  type Body,
  decimalIn,
  inBaseUnit,
  itemsIn,
  objectIn,
  type Quantity,
  quantityIn,
  sumOf,
  textIn,
} from "./bodies.ts";
import { asDouble, difference, ONE, plain, significant, total } from "./numbers.ts";
import { type Doubt, verdict } from "./readings.ts";
import { type Finding, finding, type Standing, type Was } from "./record.ts";
import {
  meant,
  type Sheets,
  type Trust,
  type TrustedReading,
  trustedReading,
  writtenTrust,
} from "./trusted.ts";
import { inBase } from "./units.ts";
import { scaledDoubt, sumDoubt, type Weighing, weighed, weighingOf } from "./weighing.ts";

/** One weigh-in as it stands, in the unit it was read in, with the corrections applied. */
export interface WeighIn {
  readonly entry: string;
  readonly lot: string | null;
  readonly net: string | null;
  readonly unit: string | null;
  readonly u: string | null;
  readonly instrument: string | null;
  readonly shown: string | null;
  readonly tare: string | null;
  readonly trust: Trust;
  readonly happened_at: string;
  readonly author: string;
  readonly was: readonly Was[];
}

/** What is left of 100 as bought, by whom (table, own, typed), and as what. */
export interface Yields {
  readonly percent: string | null;
  readonly by: string | null;
  readonly source: string | null;
  readonly prepared_as: string | null;
}

/**
 * One line; `in_base`, `corrected` and `u` in `unit`, which is g, mL or pc.
 * `in_base` adds up what was read; `corrected`, which the verdict is about, is null where no
 * correction was in force.
 */
export interface Line {
  readonly line: string;
  readonly material: string | null;
  readonly planned: Quantity | null;
  readonly below: string | null;
  readonly above: string | null;
  readonly level: string | null;
  readonly soluble_percent: string | null;
  readonly state: string | null;
  readonly yields: Yields | null;
  readonly laid_out: readonly string[];
  readonly in_base: string | null;
  readonly corrected: string | null;
  readonly unit: string | null;
  readonly u: string | null;
  readonly verdict: string | null;
  readonly prepared: string | null;
  readonly weigh_ins: readonly WeighIn[];
}

/** A line while its entries are gathered. */
export interface LineWork {
  readonly line: string;
  readonly plan: Body;
  unit: string | null;
  readonly weigh_ins: Standing[];
  /** One a weigh-in. */
  readonly readings: (TrustedReading | null)[];
  readonly laid_out: string[];
  /** As a step measured it. */
  prepared: Mass | null;
  /** A step or a loss says that it is prepared before the kettle. */
  is_prepared: boolean;
}

/** What went in on one line; null where nothing was weighed or a unit does not fit. */
export interface LineSum {
  readonly amount: Amount | null;
  readonly doubt: Doubt | null;
}

/**
 * The planned lines in the recipe's order, then those only the entries name.
 * `instruments` are the sheets of those that were read, by subject.
 */
export function gatheredLines(
  plan: readonly Body[],
  entries: readonly Standing[],
  instruments: Sheets,
): LineWork[] {
  const works = new Map<string, LineWork>();
  const workOn = (line: string, linePlan: Body): LineWork => {
    const work = works.get(line) ?? newLine(line, linePlan);
    works.set(line, work);
    return work;
  };
  for (const each of plan) workOn(textIn(each, "line") ?? "", each);
  for (const entry of entries) {
    const named = textIn(entry.body, "line");
    if (named === null || !ON_LINES.includes(entry.kind)) continue;
    gather(workOn(named, {}), entry, instruments);
  }
  return [...works.values()];
}

/** The net sum of a line in its base unit, and its doubt: variances add. */
export function lineSum(work: LineWork): LineSum {
  const amount = sumOf(work.weigh_ins.map((entry) => fitting(work, entry)));
  if (amount === null) return { amount: null, doubt: null };
  return { amount, doubt: sumDoubt(work.weigh_ins.map(baseDoubt)) };
}

/** A line as its sheet shows it, and what a person should look at. */
export function writtenLine(work: LineWork): readonly [Line, Finding[]] {
  const { amount } = lineSum(work);
  const plan = work.plan;
  const stands = linePutIn(work);
  const { doubt } = stands;
  const says = verdictOn(plan, stands);
  const line: Line = {
    line: work.line,
    material: textIn(plan, "material") ?? firstMaterial(work.weigh_ins),
    planned: quantityIn(plan, "amount"),
    below: textIn(plan, "below"),
    above: textIn(plan, "above"),
    level: textIn(plan, "level"),
    soluble_percent: textIn(plan, "soluble_percent"),
    state: textIn(plan, "state"),
    yields: yieldsIn(plan),
    laid_out: work.laid_out,
    in_base: amount === null ? null : plain(amount.value),
    corrected: correctedSum(work, stands),
    unit: amount === null ? work.unit : amount.unit,
    u: doubt === null ? null : significant(doubt.u, U_DIGITS),
    verdict: says,
    prepared: work.prepared === null ? null : plain(work.prepared.amount.value),
    weigh_ins: work.weigh_ins.map((entry, i) => writtenWeighIn(entry, work.readings[i] ?? null)),
  };
  return [line, lineFindings(work, says)];
}

function yieldsIn(plan: Body): Yields | null {
  const said = objectIn(plan, "yields");
  if (said === null) return null;
  return {
    percent: textIn(said, "percent"),
    by: textIn(said, "by"),
    source: textIn(said, "source"),
    prepared_as: textIn(said, "prepared_as"),
  };
}

/** The verdict of a line if the errors that failed checks found counted. */
export function lineIfMoved(work: LineWork): string | null {
  return verdictOn(work.plan, linePutIn(work, true));
}

function correctedSum(work: LineWork, { amount }: LineSum): string | null {
  const isCorrected = work.readings.some((each) => each !== null && each.found_by !== null);
  return amount !== null && isCorrected ? plain(amount.value) : null;
}

/** What the readings of a line stand for: corrected where a correction was in force. */
export function linePutIn(work: LineWork, isMoved = false): LineSum {
  if (lineSum(work).amount === null) return { amount: null, doubt: null };
  const readings = work.readings.filter((each) => each !== null);
  const stands = readings.map((each) => meant(each, isMoved));
  return {
    amount: sumOf(stands.map((each) => inBaseUnit(each.net, each.unit))),
    doubt: sumDoubt(stands.map(inBaseDoubt)),
  };
}

const ON_LINES: readonly string[] = ["weigh_in", "laid_out", "loss"];

function newLine(line: string, plan: Body): LineWork {
  const unit = amountIn(plan, "amount")?.unit ?? null;
  return {
    line,
    plan,
    unit,
    weigh_ins: [],
    readings: [],
    laid_out: [],
    prepared: null,
    is_prepared: false,
  };
}

function gather(work: LineWork, entry: Standing, instruments: Sheets): void {
  if (entry.kind === "weigh_in") weighIn(work, entry, instruments);
  else if (entry.kind === "laid_out") layOut(work, entry);
  else if (textIn(entry.body, "stage") === "preparation") work.is_prepared = true;
}

/** A line without a plan takes the dimension of its first weigh-in. */
function weighIn(work: LineWork, entry: Standing, instruments: Sheets): void {
  const { body, happened_at } = entry;
  work.weigh_ins.push(entry);
  work.readings.push(trustedReading(body, { happened_at, instruments }));
  work.unit ??= weighed(entry.body)?.unit ?? null;
}

function layOut(work: LineWork, entry: Standing): void {
  for (const each of itemsIn(entry.body, "lots")) {
    const lot = textIn(each, "lot");
    if (lot !== null && !work.laid_out.includes(lot)) work.laid_out.push(lot);
  }
}

/** The net amount where its unit measures what the line is planned in. */
function fitting(work: LineWork, entry: Standing): Amount | null {
  const amount = weighed(entry.body);
  return amount !== null && amount.unit === work.unit ? amount : null;
}

function baseDoubt(entry: Standing): Doubt | null {
  const weighing = weighingOf(entry.body);
  return weighing === null ? null : inBaseDoubt(weighing);
}

function inBaseDoubt({ doubt, unit }: Weighing): Doubt | null {
  return scaledDoubt(doubt, asDouble(inBase(ONE, unit)));
}

function verdictOn(plan: Body, { amount, doubt }: LineSum): string | null {
  if (amount === null) return null;
  const planned = amountIn(plan, "amount");
  const unit = textIn(objectIn(plan, "amount") ?? {}, "unit");
  const below = inBaseUnit(decimalIn(plan, "below"), unit);
  const above = inBaseUnit(decimalIn(plan, "above"), unit);
  if (planned === null) return null;
  const low = below === null ? null : difference(planned.value, below.value);
  const high = above === null ? null : total([planned.value, above.value]);
  return verdict(amount.value, { low, high, level: decimalIn(plan, "level") }, doubt);
}

function firstMaterial(weighIns: readonly Standing[]): string | null {
  const [first] = weighIns;
  return first === undefined ? null : textIn(first.body, "material");
}

function writtenWeighIn(entry: Standing, trusted: TrustedReading | null): WeighIn {
  const reading = objectIn(entry.body, "reading") ?? {};
  const doubt = trusted?.doubt ?? null;
  return {
    entry: entry.id,
    lot: textIn(entry.body, "lot"),
    net: trusted === null ? null : plain(trusted.read.net),
    unit: trusted?.read.unit ?? null,
    u: doubt === null ? null : significant(doubt.u, U_DIGITS),
    instrument: textIn(reading, "instrument"),
    shown: textIn(reading, "shown"),
    tare: textIn(reading, "tare"),
    trust: writtenTrust(trusted),
    happened_at: entry.happened_at,
    author: entry.author,
    was: entry.was,
  };
}

function lineFindings(work: LineWork, says: string | null): Finding[] {
  const unfitting = work.weigh_ins.filter((entry) => fitting(work, entry) === null);
  const findings = unfitting.map((entry) =>
    finding(`unit:${entry.id}`, "unit", { entry: entry.id }),
  );
  const last = work.weigh_ins.at(-1);
  if (last !== undefined && (says === "outside" || says === "cannot_tell")) {
    const detail = { line: work.line };
    findings.push(finding(`${says}:${work.line}`, says, { entry: last.id, detail }));
  }
  return findings;
}

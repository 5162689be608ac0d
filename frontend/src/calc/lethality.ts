/**
 * Lethality: minutes at a reference temperature that did as much as the minutes of a log.
 *
 * L = 10^((T - Tref) / z), F = trapezoid sum of L over the real time steps (general method, read
 * in process safety notes); log reduction = F / D. Tref and z are kept with every result: 121.11 in
 * place of 121.1 degC moves F0 by 0.2 %. A sum says what the probe felt, not that a batch is fit.
 */

import { exponential, logarithm } from "./elementary.ts";
import { GAP_S, type Gap, gaps, type HeatLog } from "./heat_logs.ts";
import { type Cited, leansOnMemory } from "./limits.ts";
import { asDouble, type Decimal, parseDecimal, plain, significant, ZERO } from "./numbers.ts";
import { LETHAL_ROWS } from "./tables/heat.ts";

export const LN_10 = Math.LN10;
export const ACID_PH_MAX = parseDecimal("4.6"); // 21 CFR 114.3, read: above it food is low-acid
/** From here on the longer of the two processes, FPT 2014 Table 4. */
export const MILD_PH = parseDecimal("4.1");
export const FIVE_LOGS = 5;
/** A rate beyond e^100 means a wrong reference; one below e^-100 is nothing. */
export const EXPONENT_MAX = 100;

/**
 * The temperature at which a minute counts as one, and how fast that changes: ten-fold per z
 * degrees, or by the factor `base` each degree where a source says it so.
 */
export interface Reference {
  readonly t_ref: Decimal;
  readonly z: Decimal;
  readonly unit: string;
  readonly base: Decimal | null;
  readonly needed_min: Decimal | null;
  readonly cited: readonly Cited[];
}

/** A steady temperature, in degC or degF. */
export interface Held {
  readonly temperature: Decimal;
  readonly unit: string;
}

/**
 * Minutes at the reference, or pasteurization units, and what they rest on.
 *
 * What straight lines across gaps would add is kept apart in `bridged_min` and is not in
 * `minutes`; of readings that contradict each other the colder counts.
 */
export interface Lethality {
  readonly minutes: number;
  readonly bridged_min: number;
  readonly gaps: readonly Gap[];
  readonly contradicted_count: number;
  readonly reference: Reference;
}

/** F0 by the two reference temperatures in use: 121.1 degC and 250 degF = 121.11 degC. */
export interface SterilizingValue {
  readonly at_121_1: Lethality;
  readonly at_250_f: Lethality;
}

/** How much of a published 5-log process for acidified vegetables a log amounts to. */
export interface FiveLog {
  readonly lethality: Lethality;
  readonly log_reduction: number;
}

/**
 * A reference of tables/lethal_references.csv by its use: "f0", "beer", "tomato_beverages" and so
 * on. Throws RangeError for another.
 */
export function referenceOf(use: string): Reference {
  const row = LETHAL_ROWS.find((each) => each.use === use);
  if (row === undefined) throw new RangeError(`no reference of lethality is called ${use}`);
  return {
    t_ref: parseDecimal(row.t_ref),
    z: parseDecimal(row.z),
    unit: row.unit,
    base: row.base === "" ? null : parseDecimal(row.base),
    needed_min: row.needed_min === "" ? null : parseDecimal(row.needed_min),
    cited: [{ what: use, source: row.source, basis: row.basis, note: row.note }],
  };
}

/**
 * A reference that a process authority or a recipe names. Throws RangeError unless z is above zero
 * and the unit is degC or degF.
 */
export function ownReference(
  tRef: Decimal,
  { z, unit }: { readonly z: Decimal; readonly unit: string },
): Reference {
  if (z.compare(ZERO) <= 0 || (unit !== "degC" && unit !== "degF")) {
    throw new RangeError("a reference has a z above zero, in degC or degF");
  }
  return { t_ref: tRef, z, unit, base: null, needed_min: null, cited: [] };
}

/**
 * The published 5-log process of acidified vegetables for this equilibrium pH, null above 4.6,
 * where food is low-acid. At 4.1 itself the longer one.
 */
export function acidifiedReference(ph: Decimal): Reference | null {
  if (ph.compare(ACID_PH_MAX) > 0) return null;
  return referenceOf(ph.compare(MILD_PH) >= 0 ? "acidified_from_4_1" : "acidified_below_4_1");
}

/**
 * Minutes at the reference that one minute at this temperature is worth. Throws RangeError where it
 * is so far from the reference that no number says so.
 */
export function lethalRate(held: Held, reference: Reference): number {
  return rateOf(held.unit, reference)(asDouble(held.temperature));
}

/** The sum of a log. Steps longer than `longestS` are gaps: nobody knows what happened. */
export function lethality(log: HeatLog, reference: Reference, longestS = GAP_S): Lethality {
  let [minutes, bridged] = [0, 0];
  for (const [stepS, stepMin] of stepsOf(log, reference)) {
    if (stepS > longestS) bridged = bridged + stepMin;
    else minutes = minutes + stepMin;
  }
  return {
    minutes,
    bridged_min: bridged,
    gaps: gaps(log, longestS),
    contradicted_count: log.contradicted_s.length,
    reference,
  };
}

/** The sum up to each reading of a log, gaps left out, to be drawn beside it. */
export function lethalitySoFar(log: HeatLog, reference: Reference, longestS = GAP_S): number[] {
  let soFar = 0;
  const sums = [0];
  for (const [stepS, stepMin] of stepsOf(log, reference)) {
    if (stepS <= longestS) soFar = soFar + stepMin;
    sums.push(soFar);
  }
  return sums;
}

/** F0 of a log by both reference temperatures, z 10 degC. */
export function sterilizingValue(log: HeatLog, longestS = GAP_S): SterilizingValue {
  return {
    at_121_1: lethality(log, referenceOf("f0"), longestS),
    at_250_f: lethality(log, referenceOf("f0_250_f"), longestS),
  };
}

/** What a log amounts to of the 5-log process for this pH, in logs; null above pH 4.6. */
export function fiveLog(log: HeatLog, ph: Decimal, longestS = GAP_S): FiveLog | null {
  const reference = acidifiedReference(ph);
  if (reference === null || reference.needed_min === null) return null;
  const found = lethality(log, reference, longestS);
  const logs = (FIVE_LOGS * found.minutes) / asDouble(reference.needed_min);
  return { lethality: found, log_reduction: logs };
}

/** Minutes at the reference that so many at a steady temperature are worth. */
export function equivalentMinutes(minutes: Decimal, held: Held, reference: Reference): number {
  return asDouble(minutes) * lethalRate(held, reference);
}

/**
 * Minutes at a steady temperature that are worth so many at the reference. Throws RangeError where
 * the temperature is worth nothing.
 */
export function minutesAt(referenceMin: Decimal, held: Held, reference: Reference): number {
  const rate = lethalRate(held, reference);
  if (rate === 0) throw new RangeError("this temperature is worth nothing");
  return asDouble(referenceMin) / rate;
}

/**
 * Decimal reductions of an organism: F / D, both at one reference. Throws RangeError unless D is
 * above zero.
 */
export function logReduction(minutes: number, dMin: Decimal): number {
  if (dMin.compare(ZERO) <= 0) throw new RangeError("a D value is above zero");
  return minutes / asDouble(dMin);
}

/**
 * The general method on paper: the sum of the rates, the end points by half, times the step
 * between readings.
 */
export function minutesOfEqualSteps(rateSum: Decimal, stepMin: Decimal): number {
  return asDouble(rateSum) * asDouble(stepMin);
}

/** The result as JSON for a sheet: Tref and z beside the minutes they belong to. */
export function writtenLethality(found: Lethality, digits: number) {
  const { reference } = found;
  return {
    minutes: significant(found.minutes, digits),
    bridged_min: significant(found.bridged_min, digits),
    gaps: found.gaps,
    contradicted_count: found.contradicted_count,
    t_ref: plain(reference.t_ref),
    z: plain(reference.z),
    unit: reference.unit,
    base: reference.base === null ? null : plain(reference.base),
    cited: reference.cited,
    leans_on_memory: leansOnMemory(reference.cited),
  };
}

/** 10^((T - Tref) / z) of readings in one unit, with everything worked out that is alike. */
function rateOf(unit: string, reference: Reference): (degrees: number) => number {
  const tRef = asDouble(reference.t_ref);
  const { base } = reference;
  const lnPerDegree = base === null ? LN_10 / asDouble(reference.z) : logarithm(asDouble(base));
  const rate = (degrees: number) => {
    const exponent = (degrees - tRef) * lnPerDegree;
    if (exponent > EXPONENT_MAX) throw new RangeError("too hot for this reference");
    return exponent < -EXPONENT_MAX ? 0 : exponential(exponent);
  };
  if (unit === reference.unit) return rate;
  // NIST SP 811 (2008) App. B.8
  if (reference.unit === "degF") return (degrees) => rate(degrees * 1.8 + 32);
  return (degrees) => rate((degrees - 32) / 1.8);
}

/** The length of each step in seconds and the minutes at the reference it is worth. */
function* stepsOf(log: HeatLog, reference: Reference): Generator<readonly [number, number]> {
  const rate = rateOf(log.unit, reference);
  let before: { readonly at: number; readonly rate: number } | null = null;
  for (const [row, second] of log.at_s.entries()) {
    const now = { at: second, rate: rate((log.low[row] ?? 0) / 1000) };
    if (before !== null) {
      const stepS = second - before.at;
      yield [stepS, (before.rate + now.rate) * 0.5 * (stepS / 60)];
    }
    before = now;
  }
}

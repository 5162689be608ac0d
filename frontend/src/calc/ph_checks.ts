/** Checking a pH meter with two or three buffers. */

import { type Body, decimalIn, textIn } from "./bodies.ts";
import {
  type CheckResult,
  judged,
  PLACES,
  type Point,
  readingDoubt,
  readingsIn,
  summedUp,
} from "./checks.ts";
import {
  asDouble,
  Decimal,
  difference,
  divided,
  HUNDRED,
  parseDecimal,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import { mean } from "./readings.ts";

export const SORT = "buffer";
export const PERCENT_PLACES = 1;
export const NEUTRAL = parseDecimal("7");
/**
 * mV a pH at 25 degC: ln 10 x R x 298.15 K / F with the CODATA constants, computed. The slope of a
 * perfect electrode grows with the temperature in kelvin.
 */
export const THEORY_MV = parseDecimal("59.16");
const THEORY_AT = parseDecimal("298.15");
const KELVIN_ZERO = parseDecimal("273.15");

/** What is known of a pH meter; `allowed_error` is set by the cooperative. */
export interface PhMeter {
  readonly division: Decimal | null;
  readonly repeatability: Decimal | null;
  readonly allowed_error: Decimal | null;
}

/**
 * `offset` is the error at the buffer nearest to 7, `span_percent` what the meter makes of the way
 * from the lowest to the highest buffer, `slope_percent` that of its electrode.
 */
export interface PhCheck {
  readonly result: CheckResult;
  readonly offset: Decimal | null;
  readonly span_percent: Decimal | null;
  readonly slope_percent: Decimal | null;
}

/**
 * What steps of the sort `buffer` say about a pH meter.
 *
 * Each has `reference` (pH the bottle gives at the buffer's temperature) with `tolerance`,
 * `readings`, and `millivolts` and `celsius` where the meter shows them. A step without a reading
 * or a reference is left out.
 */
export function phCheck(meter: PhMeter, steps: readonly Body[]): PhCheck {
  const judgedSteps = steps.map((step, number) => ({ step, point: pointAt(meter, number, step) }));
  const points = judgedSteps.flatMap(({ point }) => (point === null ? [] : [point]));
  const buffers = judgedSteps.filter(({ point }) => point !== null).map(({ step }) => step);
  return {
    result: summedUp(points, { repeatability: null, hysteresis: null }),
    offset: offsetOf(points),
    span_percent: spanPercent(points),
    slope_percent: slopePercent(buffers),
  };
}

/**
 * Slope of the electrode in percent of 59.16 mV a pH (25 degC), by least squares.
 *
 * Where every buffer has a temperature, the theory at their mean. Null unless two or more buffers
 * of different pH have `millivolts`.
 */
export function slopePercent(steps: readonly Body[]): Decimal | null {
  const shown = steps.flatMap((step) => {
    const [ph, mv] = [decimalIn(step, "reference"), decimalIn(step, "millivolts")];
    return ph === null || mv === null ? [] : [{ ph, mv }];
  });
  const count = new Decimal(BigInt(shown.length), 0);
  const phs = total(shown.map(({ ph }) => ph));
  const millivolts = total(shown.map(({ mv }) => mv));
  const products = product(count, total(shown.map(({ ph, mv }) => product(ph, mv))));
  const over = difference(product(phs, millivolts), products);
  const squares = product(count, total(shown.map(({ ph }) => product(ph, ph))));
  const under = difference(squares, product(phs, phs));
  const kelvin = meanKelvin(steps);
  if (under.compare(ZERO) <= 0 || kelvin.compare(ZERO) <= 0) return null;
  // percent = 100 x slope x 298.15 / (59.16 x T), in one division so that it is rounded once
  const theory = product(product(under, THEORY_MV), kelvin);
  return divided(product(product(over, HUNDRED), THEORY_AT), theory, PERCENT_PLACES);
}

function pointAt(meter: PhMeter, number: number, step: Body): Point | null {
  const readings = readingsIn(step);
  const reference = decimalIn(step, "reference");
  if (textIn(step, "sort") !== SORT || readings.length === 0 || reference === null) return null;
  const { division, repeatability, allowed_error } = meter;
  const doubt = readingDoubt(readings, {
    division,
    spread: repeatability === null ? null : { u: asDouble(repeatability), degrees: null },
    tolerance: decimalIn(step, "tolerance"),
  });
  const measured = { step: number, sort: SORT, value: mean(readings, PLACES), reference, doubt };
  return judged(measured, allowed_error === null ? null : { amount: allowed_error, cited: [] });
}

/** Error at the buffer nearest to 7; of two as near the first. */
function offsetOf(points: readonly Point[]): Decimal | null {
  let nearest: Point | null = null;
  for (const each of points) {
    if (nearest === null || awayFromNeutral(each).compare(awayFromNeutral(nearest)) < 0) {
      nearest = each;
    }
  }
  return nearest === null ? null : nearest.error;
}

function awayFromNeutral(point: Point): Decimal {
  return difference(point.reference, NEUTRAL).abs();
}

/** Way between the readings of the outermost buffers in percent of the way between them. */
function spanPercent(points: readonly Point[]): Decimal | null {
  const [first, ...others] = points;
  if (first === undefined) return null;
  let [low, high] = [first, first];
  for (const each of others) {
    if (each.reference.compare(low.reference) < 0) low = each;
    if (each.reference.compare(high.reference) > 0) high = each;
  }
  const way = difference(high.reference, low.reference);
  if (way.compare(ZERO) <= 0) return null;
  const shown = total([way, difference(high.error, low.error)]);
  return divided(product(shown, HUNDRED), way, PERCENT_PLACES);
}

/** Mean temperature of the buffers; 298.15 K where one was not noted. */
function meanKelvin(steps: readonly Body[]): Decimal {
  const known = steps.map((step) => decimalIn(step, "celsius")).filter((each) => each !== null);
  if (known.length === 0 || known.length < steps.length) return THEORY_AT;
  return total([mean(known, PLACES), KELVIN_ZERO]);
}

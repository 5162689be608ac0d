/** Checking a thermometer in ice and in water that boils under the air pressure of the place. */

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
import type { Cited } from "./limits.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  parseDecimal,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import { mean, repeatSd } from "./readings.ts";
import { BOILING_ROWS, type BoilingRow } from "./tables/checks.ts";

export const BOILING_PLACES = 3;
export const METRES_IN_FOOT = parseDecimal("0.3048");
/** The air of a day presses up to about 18 hPa more or less than its altitude says: 0.5 degC. */
export const WEATHER_TOLERANCE = parseDecimal("0.5");
const WEATHER: Cited = {
  what: "weather",
  source: "own allowance for the air pressure of the day where only the altitude is known",
  basis: "common-practice",
  note: "",
};
const ICE = ZERO; // degC: melting ice with water between the pieces

/** What is known of a thermometer, in degC; `allowed_error` is set by the cooperative. */
export interface Thermometer {
  readonly division: Decimal | null;
  readonly repeatability: Decimal | null;
  readonly allowed_error: Decimal | null;
}

/** degC at which water boils, how far the weather may move it, and who says so. */
export interface BoilingPoint {
  readonly celsius: Decimal;
  readonly tolerance: Decimal;
  readonly cited: readonly Cited[];
}

/**
 * Where water boils at an altitude on a day of usual air pressure.
 *
 * A straight line between the printed rows, one for each 1000 ft. Throws RangeError below -304.8 m
 * and above 3048 m.
 */
export function boilingPointAtAltitude(altitudeM: Decimal): BoilingPoint {
  const places = BOILING_ROWS.map((row) => product(parseDecimal(row.altitude_ft), METRES_IN_FOOT));
  const { celsius, cited } = between(altitudeM, places);
  return { celsius, tolerance: WEATHER_TOLERANCE, cited: [...cited, WEATHER] };
}

/**
 * Where water boils under the air pressure of the place, not reduced to sea level.
 *
 * The pressures of the rows are computed from their altitudes by the model they were printed with.
 * Throws RangeError below 711.31 and above 1049.46 hPa.
 */
export function boilingPointAtPressure(pressureHPa: Decimal): BoilingPoint {
  const pressures = BOILING_ROWS.map((row) => parseDecimal(row.pressure_hPa).negated());
  return { ...between(pressureHPa.negated(), pressures), tolerance: ZERO };
}

/**
 * What the steps say about a thermometer.
 *
 * Sorts: `ice`; `boiling` with `pressure_hPa` or `altitude_m`; `comparison` with the `reference`
 * another thermometer showed. A `tolerance` of the step counts before the usual one. A step
 * without a reading, or of which no reference is known, is left out.
 */
export function thermometerCheck(thermometer: Thermometer, steps: readonly Body[]): CheckResult {
  const points = steps
    .map((step, number) => pointAt(thermometer, number, step))
    .filter((each) => each !== null);
  const spreads = steps
    .map(readingsIn)
    .filter((readings) => readings.length >= 2)
    .map(repeatSd);
  const repeatability = spreads.length > 0 ? Math.max(...spreads) : null;
  return summedUp(points, { repeatability, hysteresis: null });
}

function pointAt(thermometer: Thermometer, number: number, step: Body): Point | null {
  const readings = readingsIn(step);
  const reference = referenceOf(step);
  if (readings.length === 0 || reference === null) return null;
  const { division, repeatability, allowed_error } = thermometer;
  const doubt = readingDoubt(readings, {
    division,
    spread: repeatability === null ? null : { u: asDouble(repeatability), degrees: null },
    tolerance: decimalIn(step, "tolerance") ?? reference.tolerance,
  });
  const measured = {
    step: number,
    sort: textIn(step, "sort") ?? "",
    value: mean(readings, PLACES),
    reference: reference.celsius,
    doubt,
  };
  const limit = allowed_error === null ? null : { amount: allowed_error, cited: reference.cited };
  return judged(measured, limit);
}

function referenceOf(step: Body): BoilingPoint | null {
  const sort = textIn(step, "sort");
  const compared = decimalIn(step, "reference");
  if (sort === "ice") return { celsius: ICE, tolerance: ZERO, cited: [] };
  if (sort === "comparison" && compared !== null) {
    return { celsius: compared, tolerance: ZERO, cited: [] };
  }
  return sort === "boiling" ? boilingOf(step) : null;
}

/** By the pressure of the day where it was noted, else by the altitude. */
function boilingOf(step: Body): BoilingPoint | null {
  const pressure = decimalIn(step, "pressure_hPa");
  const altitude = decimalIn(step, "altitude_m");
  try {
    if (pressure !== null) return boilingPointAtPressure(pressure);
    return altitude === null ? null : boilingPointAtAltitude(altitude);
  } catch (refused) {
    // beyond the table
    if (refused instanceof RangeError) return null;
    throw refused;
  }
}

/** A straight line between the two rows around a place; the places rise. */
function between(at: Decimal, places: readonly Decimal[]): { celsius: Decimal; cited: Cited[] } {
  for (const [number, high] of places.entries()) {
    const low = places[number - 1];
    const [before, after] = [BOILING_ROWS[number - 1], BOILING_ROWS[number]];
    if (low === undefined || before === undefined || after === undefined) continue;
    if (at.compare(low) < 0 || at.compare(high) > 0) continue;
    const over = total([
      product(parseDecimal(before.boiling_point_C), difference(high, at)),
      product(parseDecimal(after.boiling_point_C), difference(at, low)),
    ]);
    const celsius = divided(over, difference(high, low), BOILING_PLACES);
    // At a row itself the other one says nothing.
    const [isBefore, isAfter] = [at.compare(high) !== 0, at.compare(low) !== 0];
    return { celsius, cited: once([...(isBefore ? [before] : []), ...(isAfter ? [after] : [])]) };
  }
  throw new RangeError("no boiling point is known for this altitude or pressure");
}

/** What rows say of themselves; rows of one source once. */
function once(rows: readonly BoilingRow[]): Cited[] {
  const cited = new Map(rows.map(({ source, basis }) => [`${basis} ${source}`, { source, basis }]));
  return [...cited.values()].map((each) => ({ what: "boiling_point", ...each, note: "" }));
}

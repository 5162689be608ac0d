/** The reading in a body: what was weighed or counted, in its unit and in base units, with doubt. */

import {
  type Amount,
  type Body,
  decimalIn,
  inBaseUnit,
  objectIn,
  quantityIn,
  textIn,
  textsIn,
} from "./bodies.ts";
import { asDouble, type Decimal, ONE, parseDecimal } from "./numbers.ts";
import { combinedU, DEGREES_MAX, type Doubt, doubtOf, mean, net } from "./readings.ts";
import { celsius, fahrenheit } from "./temperature.ts";
import { converted, inBase, UNITS } from "./units.ts";

export const PLACES = 6; // as many as a body may hold; a mean or a converted reading is rounded to them
const FAHRENHEIT_STEPS = 1.8; // degF in one degC, NIST SP 811 (2008) App. B.8
const COUNTED: Doubt = { u: 0, degrees: null }; // pieces are counted without doubt

/**
 * What one reading or count says, net, in the unit it was read in, and its doubt there.
 * `doubt` is null where the division of the instrument is not known.
 */
export interface Weighing {
  readonly net: Decimal;
  readonly unit: string;
  readonly doubt: Doubt | null;
}

/**
 * The `reading` of a body, or what was `counted`; null where there is neither.
 * `shown` is the first reading and `repeats` are further ones of the same load: their mean counts.
 */
export function weighingOf(body: Body): Weighing | null {
  const counted = quantityIn(body, "counted");
  if (counted !== null) {
    return { net: parseDecimal(counted.amount), unit: counted.unit, doubt: COUNTED };
  }
  const reading = objectIn(body, "reading") ?? {};
  const load = loadOf(reading);
  const unit = textIn(reading, "unit");
  if (load === null || unit === null) return null;
  const doubt = doubtIn(reading, readingsOf(reading));
  return { net: net(load, decimalIn(reading, "tare")), unit, doubt };
}

/** What was shown, the bowl included: the mean of repeats; null where nothing was. */
export function loadOf(reading: Body): Decimal | null {
  const readings = readingsOf(reading);
  const [shown] = readings;
  if (shown === undefined) return null;
  return readings.length > 1 ? mean(readings, PLACES) : shown;
}

/** What was weighed or counted, in g, mL or pc; null where the unit measures no amount. */
export function weighed(body: Body): Amount | null {
  const weighing = weighingOf(body);
  return weighing === null ? null : inBaseUnit(weighing.net, weighing.unit);
}

/**
 * The same in another unit, value and doubt; null where the two measure different things.
 * Without a unit, or with the same one (also one of no table, such as pH), nothing changes.
 */
export function inUnit(weighing: Weighing, unit: string | null): Weighing | null {
  if (unit === null || unit === weighing.unit) return weighing;
  const known = UNITS.get(weighing.unit);
  const wanted = UNITS.get(unit);
  if (known === undefined || wanted === undefined) return null;
  if (known.dimension !== wanted.dimension) return null;
  if (known.dimension === "temperature") return inDegrees(weighing, unit);
  const factor = asDouble(inBase(ONE, weighing.unit)) / asDouble(inBase(ONE, unit));
  const value = converted(weighing.net, weighing.unit, unit, PLACES);
  return { net: value, unit, doubt: scaledDoubt(weighing.doubt, factor) };
}

/** The same doubt in a unit of which `factor` make one of the old. */
export function scaledDoubt(doubt: Doubt | null, factor: number): Doubt | null {
  return doubt === null ? null : { u: doubt.u * factor, degrees: doubt.degrees };
}

/**
 * Doubt of a sum of independent weighings in one unit; null where one is not known.
 * Variances add; degrees of freedom by Welch-Satterthwaite (JCGM 100:2008 G.4.1), cut to a whole
 * number.
 */
export function sumDoubt(doubts: readonly (Doubt | null)[]): Doubt | null {
  const known = doubts.filter((each) => each !== null);
  if (known.length < doubts.length || known.length === 0) return null;
  const u = combinedU(known.map((each) => each.u));
  let under = 0;
  for (const each of known) {
    if (each.degrees === null) continue;
    under = under + (each.u * each.u * each.u * each.u) / Math.max(each.degrees, 1);
  }
  const degrees = under > 0 ? (u * u * u * u) / under : DEGREES_MAX;
  return { u, degrees: degrees < DEGREES_MAX ? Math.trunc(degrees) : null };
}

/** The first reading and its repeats; none without a first. */
function readingsOf(reading: Body): Decimal[] {
  const shown = decimalIn(reading, "shown");
  if (shown === null) return [];
  const numbers = textsIn(reading, "repeats").map((repeat) => decimalIn({ repeat }, "repeat"));
  return [shown, ...numbers.filter((each) => each !== null)];
}

function doubtIn(reading: Body, readings: readonly Decimal[]): Doubt | null {
  const division = decimalIn(reading, "division");
  if (division === null || division.isZero() || division.isNegative()) return null;
  return doubtOf({
    division,
    readings: decimalIn(reading, "tare") === null ? 1 : 2,
    repeatability: decimalIn(reading, "repeatability"),
    repeats: readings.length > 1 ? readings : [],
  });
}

/** Between degC and degF; K is read by no kitchen thermometer, so nothing is given in it. */
function inDegrees(weighing: Weighing, unit: string): Weighing | null {
  if (weighing.unit.startsWith("delta") || !["degC", "degF"].includes(unit)) return null;
  const inCelsius = celsius(weighing.net, weighing.unit, PLACES);
  const isFahrenheit = weighing.unit === "degF";
  if (unit === "degC") {
    const factor = isFahrenheit ? 1 / FAHRENHEIT_STEPS : 1;
    return { net: inCelsius, unit, doubt: scaledDoubt(weighing.doubt, factor) };
  }
  const doubt = scaledDoubt(weighing.doubt, FAHRENHEIT_STEPS);
  return { net: fahrenheit(inCelsius), unit, doubt };
}

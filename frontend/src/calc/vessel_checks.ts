/** Checking a spoon, a cup or a cylinder with weighed water. */

import { type Body, decimalIn, textIn } from "./bodies.ts";
import { type CheckResult, judged, type Point, readingsIn, summedUp } from "./checks.ts";
import { cylinderLimit, type Limit, measureLimit } from "./limits.ts";
import { asDouble, type Decimal, difference, ONE, ZERO } from "./numbers.ts";
import { rectangularU, repeatSd } from "./readings.ts";
import { COLDEST, heldVolume, millilitresPerGram, WARMEST } from "./water.ts";

/**
 * How far a kitchen thermometer in the water may be off when the step does not say: 1 degC, own
 * definition. At 25 degC it moves a cup by 0.02 %.
 */
export const CELSIUS_TOLERANCE = ONE;
export const FACTOR_PLACES = 6;

/** A measure: what it holds at its upper mark, mL, and for a cylinder its class. */
export interface Vessel {
  readonly sort: "spoon" | "cup" | "cylinder";
  readonly capacity_mL: Decimal;
  readonly cylinder_class: string | null;
}

/**
 * Plus or minus how many mL a graduation may be off: 5 % of it on a household measure, one figure
 * for all marks of a cylinder. Null for a cylinder whose class is not known.
 */
export function vesselLimit(vessel: Vessel, graduation: Decimal): Limit | null {
  if (vessel.sort !== "cylinder") return measureLimit(graduation, vessel.sort);
  const { cylinder_class } = vessel;
  if (cylinder_class !== "A" && cylinder_class !== "B") return null;
  return cylinderLimit(vessel.capacity_mL, cylinder_class);
}

/**
 * What steps of the sort `water` say about a vessel.
 *
 * Each has `readings` (g on the scale, one a filling, a spoon levelled anew each time), a `tare`
 * where the scale was not set to zero with the vessel on it, `celsius` of the water with its
 * `celsius_tolerance`, `division` and `repeatability` of the scale, and `reference` (mL) where it
 * is not the upper mark. A step without a reading, or with water that is not between 0 and 40
 * degC, is left out. Repeatability is in mL.
 */
export function vesselCheck(vessel: Vessel, steps: readonly Body[]): CheckResult {
  const points: Point[] = [];
  const spreads: number[] = [];
  for (const [number, step] of steps.entries()) {
    const masses = massesIn(step);
    const celsius = decimalIn(step, "celsius");
    if (textIn(step, "sort") !== "water" || masses.length === 0 || celsius === null) continue;
    if (celsius.compare(COLDEST) < 0 || celsius.compare(WARMEST) > 0) continue;
    points.push(pointAt(vessel, number, step, celsius));
    if (masses.length >= 2) {
      spreads.push(repeatSd(masses) * asDouble(millilitresPerGram(celsius, FACTOR_PLACES)));
    }
  }
  const repeatability = spreads.length > 0 ? Math.max(...spreads) : null;
  return summedUp(points, { repeatability, hysteresis: null });
}

function pointAt(vessel: Vessel, number: number, step: Body, celsius: Decimal): Point {
  const division = decimalIn(step, "division");
  const tolerance = decimalIn(step, "celsius_tolerance") ?? CELSIUS_TOLERANCE;
  const held = heldVolume(
    massesIn(step),
    { celsius, celsius_u: rectangularU(tolerance) },
    {
      division: division ?? ZERO,
      readings: decimalIn(step, "tare") === null ? 1 : 2,
      repeatability: decimalIn(step, "repeatability"),
    },
  );
  const graduation = decimalIn(step, "reference") ?? vessel.capacity_mL;
  const isKnown = division !== null && division.compare(ZERO) > 0;
  const measured = {
    step: number,
    sort: "water",
    value: held.volume,
    reference: graduation,
    doubt: isKnown ? held.doubt : null,
  };
  return judged(measured, vesselLimit(vessel, graduation));
}

function massesIn(step: Body): Decimal[] {
  const tare = decimalIn(step, "tare") ?? ZERO;
  return readingsIn(step).map((each) => difference(each, tare));
}

/** Checking a scale: zero, tare, known masses up and down, off centre, repeats. */

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
  type Cited,
  divisionTolerance,
  type Limit,
  scaleClass,
  scaleErrorLimit,
} from "./limits.ts";
import { asDouble, type Decimal, difference, plain, ZERO } from "./numbers.ts";
import { type Doubt, mean, repeatSd } from "./readings.ts";

export type Rules = "r76_initial" | "r76_in_service" | "hb133";

export const REPEATS_LEAST = 5; // readings of one load before a spread is the scale's repeatability
// Nothing lies on the scale, or only what was tared: the display must say 0.
const EMPTY_SORTS: readonly string[] = ["zero", "tare", "return_to_zero"];

/**
 * What is known of a scale, in its unit; g where its class must be told by divisions.
 * `e` is the verification interval, else the division stands for it.
 */
export interface Scale {
  readonly division: Decimal | null;
  readonly e: Decimal | null;
  readonly accuracy_class: string | null;
  readonly capacity: Decimal | null;
  readonly repeatability: Decimal | null;
  readonly rules: Rules;
}

/**
 * How far a scale may be off at a load, under the rules it is checked by.
 *
 * Without a class on it, the class its divisions allow. Null where nothing is published for such
 * a scale or load.
 */
export function scaleLimit(scale: Scale, load: Decimal): Limit | null {
  const step = scale.e === null || scale.rules === "hb133" ? scale.division : scale.e;
  if (step === null || step.compare(ZERO) <= 0 || load.compare(ZERO) < 0) return null;
  const [accuracyClass, cited] = classOf(scale, step);
  if (accuracyClass === null) return null;
  try {
    const limit = limitBy(scale.rules, load, step, accuracyClass);
    return { amount: limit.amount, cited: [...limit.cited, ...cited] };
  } catch (refused) {
    // another class, or a load beyond the last band
    if (refused instanceof RangeError) return null;
    throw refused;
  }
}

/**
 * What the steps say about a scale.
 *
 * Sorts: `zero`, `tare`, `return_to_zero` (reference 0), `rising`, `falling`, `off_centre`
 * (reference a known mass), `repeats` (one load, five times or more; its mass need not be known).
 * A step without a reading or a reference is left out.
 */
export function scaleCheck(scale: Scale, steps: readonly Body[]): CheckResult {
  const known = spreadOf(scale, steps);
  const points = steps
    .map((step, number) => pointAt(scale, number, step, known))
    .filter((each) => each !== null);
  const repeated = repeatsIn(steps);
  return summedUp(points, {
    repeatability: repeated === null ? null : repeated.u,
    hysteresis: hysteresisOf(steps),
  });
}

function limitBy(rules: Rules, load: Decimal, step: Decimal, accuracyClass: string): Limit {
  if (rules === "hb133") {
    return divisionTolerance(load, { division: step, accuracy_class: accuracyClass });
  }
  const when = rules === "r76_initial" ? "initial" : "in_service";
  return scaleErrorLimit(load, { e: step, accuracy_class: accuracyClass }, when);
}

function classOf(scale: Scale, step: Decimal): readonly [string | null, readonly Cited[]] {
  if (scale.accuracy_class !== null) return [scale.accuracy_class, []];
  const byDivisions = scale.capacity === null ? null : scaleClass(scale.capacity, step);
  return byDivisions === null ? [null, []] : [byDivisions.accuracy_class, byDivisions.cited];
}

function pointAt(scale: Scale, number: number, step: Body, known: Doubt | null): Point | null {
  const sort = textIn(step, "sort") ?? "";
  const readings = readingsIn(step);
  const reference = EMPTY_SORTS.includes(sort) ? ZERO : decimalIn(step, "reference");
  if (reference === null || readings.length === 0) return null;
  const doubt = readingDoubt(readings, {
    division: scale.division,
    spread: known,
    tolerance: decimalIn(step, "tolerance"),
  });
  const measured = { step: number, sort, value: mean(readings, PLACES), reference, doubt };
  return judged(measured, scaleLimit(scale, reference));
}

/** Spread of a single reading: from the repeats of this check, else the scale's own. */
function spreadOf(scale: Scale, steps: readonly Body[]): Doubt | null {
  const repeated = repeatsIn(steps);
  if (repeated !== null) return repeated;
  if (scale.repeatability === null) return null;
  return { u: asDouble(scale.repeatability), degrees: null };
}

/** The largest standard deviation among steps that repeat one load often enough. */
function repeatsIn(steps: readonly Body[]): Doubt | null {
  let found: Doubt | null = null;
  for (const step of steps) {
    const readings = readingsIn(step);
    if (textIn(step, "sort") !== "repeats" || readings.length < REPEATS_LEAST) continue;
    const spread = { u: repeatSd(readings), degrees: readings.length - 1 };
    if (found === null || spread.u > found.u) found = spread;
  }
  return found;
}

/** The largest difference between rising and falling readings of the same mass. */
function hysteresisOf(steps: readonly Body[]): Decimal | null {
  const falling = meansOf(steps, "falling");
  let most: Decimal | null = null;
  for (const [mass, shown] of meansOf(steps, "rising")) {
    const back = falling.get(mass);
    if (back === undefined) continue;
    const apart = difference(back, shown).abs();
    if (most === null || apart.compare(most) > 0) most = apart;
  }
  return most;
}

/** Mean reading by reference; of two steps alike the later one. */
function meansOf(steps: readonly Body[], sort: string): ReadonlyMap<string, Decimal> {
  const found = new Map<string, Decimal>();
  for (const step of steps) {
    const reference = decimalIn(step, "reference");
    const readings = readingsIn(step);
    if (textIn(step, "sort") !== sort || reference === null || readings.length === 0) continue;
    // Python compares numbers where this compares texts: both take 200 and 200.0 for one mass.
    found.set(plain(reference), mean(readings, PLACES));
  }
  return found;
}

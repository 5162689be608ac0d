/**
 * Normal, Student's t and Fisher's F: what lies below a value, and where a level is reached.
 *
 * Formulas: NIST Digital Library of Mathematical Functions 8.17 (incomplete beta, its continued
 * fraction 8.17.22), 7.9 (tail of the normal) and 5.11 (Stirling's series), memory; every figure
 * is held against scipy and against plain integration in tests.
 */

import { exponential, logarithm, logOnePlus } from "./elementary.ts";

export type Sides = 1 | 2;

/** Degrees of freedom of a ratio of variances: of the one above, and of the one below. */
export interface RatioDegrees {
  readonly over: number;
  readonly under: number;
}

/** Parts of a distribution below and above a value; the smaller one keeps all its digits. */
export interface Shares {
  readonly below: number;
  readonly above: number;
}

export const LEVEL_MIN = 0.5;
export const LEVEL_MAX = 0.9999;
export const NEWTON_STEPS_MAX = 100;
export const FRACTION_STEPS_MAX = 10_000;

const NORMAL_SERIES_BELOW = 3; // beyond, the continued fraction is quicker and keeps all digits
const NORMAL_SERIES_TERMS = 60;
const NORMAL_FRACTION_TERMS = 60;
const ROOT_TWO_PI = 2.5066282746310002;
const TWO_PI = 6.283185307179586;
const STIRLING_FROM = 12; // from here on the series below has 16 digits
/** Coefficients of 1/a, 1/a^3, ... of Stirling's series, the last one first. */
const STIRLING = [-691 / 360360, 1 / 1188, -1 / 1680, 1 / 1260, -1 / 360, 1 / 12] as const;
const TINY = 1e-300; // stands for a zero in the continued fraction
const CLOSE = 1e-16;
const STEP_CLOSE = 1e-9; // each step squares the error, so the next one would be below a digit

/** Share of the standard normal distribution below x. */
export function normalCumulative(x: number): number {
  const halfOutside = 0.5 * normalWithin(Math.abs(x)).above;
  return x >= 0 ? 1 - halfOutside : halfOutside;
}

/**
 * The z below which (sides 1), or within -z and z (sides 2), lies `level` of the normal
 * distribution; to 1e-12 of itself. Throws for a level outside 0.5 to 0.9999.
 */
export function normalQuantile(level: number, sides: Sides): number {
  const wanted = wantedWithin(level, sides);
  let z = 0;
  for (let count = 0; count < NEWTON_STEPS_MAX; count++) {
    const step = newtonStep(normalWithin(z), wanted, normalDensity(z));
    z += step;
    if (Math.abs(step) <= STEP_CLOSE * z) break;
  }
  return z;
}

/** Share of Student's distribution below t. Throws for degrees below 1. */
export function tCumulative(t: number, degrees: number): number {
  const halfOutside = 0.5 * tBeyond(t, degrees);
  return t >= 0 ? 1 - halfOutside : halfOutside;
}

/**
 * Chance of a value at least as far from zero as t, on either side: the two-sided p.
 * Throws for degrees below 1.
 */
export function tBeyond(t: number, degrees: number): number {
  return fShares(t * t, { over: 1, under: degrees }).above;
}

/**
 * The t below which (sides 1), or within -t and t (sides 2), lies `level` of Student's
 * distribution; to 1e-12 of itself.
 *
 * Throws for a level outside 0.5 to 0.9999 or degrees below 1. Newton's steps begin at the
 * normal quantile, which is always the smaller one, and only go up.
 */
export function tQuantile(
  level: number,
  { degrees, sides }: { readonly degrees: number; readonly sides: Sides },
): number {
  const wanted = wantedWithin(level, sides);
  let t = normalQuantile(level, sides);
  if (!(degrees >= 1)) throw new RangeError(`no distribution with ${degrees} degrees`);
  if (t === 0) return t;
  const ratio = { over: 1, under: degrees };
  for (let count = 0; count < NEWTON_STEPS_MAX; count++) {
    // Student's density is this front over t.
    const density = betaFront(t * t, ratio) / t;
    const step = newtonStep(fShares(t * t, ratio), wanted, density);
    t += step;
    if (Math.abs(step) <= STEP_CLOSE * t) break;
  }
  return t;
}

/** Share of Fisher's distribution below f. */
export function fCumulative(f: number, degrees: RatioDegrees): number {
  return fShares(f, degrees).below;
}

/** Chance of a ratio of variances of at least f: the p of an F test. */
export function fBeyond(f: number, degrees: RatioDegrees): number {
  return fShares(f, degrees).above;
}

/**
 * Both shares of Fisher's distribution at f, by the incomplete beta function.
 * Throws for f below 0 and degrees below 1.
 */
export function fShares(f: number, degrees: RatioDegrees): Shares {
  const { over, under } = degrees;
  if (!(f >= 0 && over >= 1 && under >= 1)) {
    throw new RangeError(`no share of F at ${f} with ${over} and ${under} degrees`);
  }
  const weight = over * f + under;
  if (weight === Infinity) return { below: 1, above: 0 };
  const [a, b] = [0.5 * over, 0.5 * under];
  const [x, y] = [(over * f) / weight, under / weight];
  if (x === 0) return { below: 0, above: 1 };
  const front = betaFront(f, degrees);
  const lead = over * (under / weight) * 0.5 * (1 - f);
  if (x < (a + 1) / (a + b + 2)) {
    const below = front * betaFraction(a, b, { x, lead });
    return { below, above: 1 - below };
  }
  const above = front * betaFraction(b, a, { x: y, lead: -lead });
  return { below: 1 - above, above };
}

/** A level as what lies between -z and z, and what lies outside; both differences are exact from 0.5 on. */
function wantedWithin(level: number, sides: Sides): Shares {
  if (!(level >= LEVEL_MIN && level <= LEVEL_MAX)) {
    throw new RangeError(`a level of ${level} is not between ${LEVEL_MIN} and ${LEVEL_MAX}`);
  }
  if (sides === 1) return { below: 2 * level - 1, above: 2 * (1 - level) };
  return { below: level, above: 1 - level };
}

/**
 * How far to go on from a value with these shares within and outside -value and value. The
 * smaller of the wanted shares leads: it holds the digits.
 */
function newtonStep(found: Shares, wanted: Shares, density: number): number {
  if (wanted.below < 0.5) return (wanted.below - found.below) / (2 * density);
  return (found.above - wanted.above) / (2 * density);
}

/** What of the normal distribution lies between -z and z, and outside, for z >= 0. */
function normalWithin(z: number): Shares {
  const density = normalDensity(z);
  if (z < NORMAL_SERIES_BELOW) {
    let series = 1;
    for (let term = NORMAL_SERIES_TERMS; term > 0; term--) {
      series = 1 + (series * z * z) / (2 * term + 1);
    }
    const within = 2 * density * z * series;
    return { below: within, above: 1 - within };
  }
  let fraction = z;
  for (let term = NORMAL_FRACTION_TERMS; term > 0; term--) fraction = z + term / fraction;
  const outside = (2 * density) / fraction;
  return { below: 1 - outside, above: outside };
}

function normalDensity(z: number): number {
  return exponential(-0.5 * z * z) / ROOT_TWO_PI;
}

/**
 * x^a y^b / B(a, b) for a, b half the degrees and x : y as over f : under.
 *
 * Around f = 1 the two powers nearly cancel and so do the gamma functions; written as ratios to
 * their sum, and by Stirling's errors, no digits go with them.
 */
function betaFront(f: number, { over, under }: RatioDegrees): number {
  const [a, b, weight] = [0.5 * over, 0.5 * under, over * f + under];
  const powerX = logRatio((f * (over + under)) / weight, (under * (f - 1)) / weight);
  const powerY = logRatio((over + under) / weight, (over * (1 - f)) / weight);
  const errors = stirlingError(a + b) - stirlingError(a) - stirlingError(b);
  const scale = Math.sqrt(a * (b / (TWO_PI * (a + b))));
  return scale * exponential(a * powerX + b * powerY + errors);
}

/** ln(ratio), where `excess` is ratio - 1 worked out without loss. */
function logRatio(ratio: number, excess: number): number {
  return Math.abs(excess) < 0.25 ? logOnePlus(excess) : logarithm(ratio);
}

/** ln Gamma(a) less Stirling's (a - 1/2) ln a - a + ln(2 pi) / 2. */
function stirlingError(from: number): number {
  let [a, shift] = [from, 0];
  while (a < STIRLING_FROM) {
    shift = shift + ((a + 0.5) * logOnePlus(1 / a) - 1);
    a += 1;
  }
  let series = 0;
  for (const coefficient of STIRLING) series = series / (a * a) + coefficient;
  return shift + series / a;
}

/**
 * The incomplete beta function over its front: the even part of the continued fraction 8.17.22,
 * by Lentz's method. `lead` is a (1 - x) - b x, which the caller knows without loss.
 */
function betaFraction(
  a: number,
  b: number,
  { x, lead }: { readonly x: number; readonly lead: number },
): number {
  let fraction = notZero((a * (lead + 1)) / (a + 1));
  let [over, under] = [fraction, 0];
  for (let m = 1; m < FRACTION_STEPS_MAX; m++) {
    const odd = a + (2 * m - 1);
    const numerator = ((a + (m - 1)) / odd) * ((a + b + (m - 1)) / odd) * (m * (b - m) * x * x);
    const denominator =
      m + (m * (b - m) * x) / odd + ((a + m) * (lead + 1 + m * (2 - x))) / (odd + 2);
    under = 1 / notZero(denominator + numerator * under);
    over = notZero(denominator + numerator / over);
    const factor = over * under;
    fraction *= factor;
    if (Math.abs(factor - 1) <= CLOSE) break;
  }
  return 1 / fraction;
}

function notZero(x: number): number {
  return Math.abs(x) > TINY ? x : TINY;
}

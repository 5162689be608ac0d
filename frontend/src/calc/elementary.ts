/**
 * Exponential, logarithm and sums of doubles by + - * / alone, so that every machine and both
 * languages get the same bits: their own libraries differ in the last one.
 */

/** ln 2 in two parts; the first has its last 20 bits zero, so that a whole multiple is exact. */
const LN_2_HIGH = 0.6931471803691238;
const LN_2_LOW = 1.9082149292705877e-10;
const LN_2 = Math.LN2;
const SQRT_HALF = Math.SQRT1_2;

/** Below this e^x is less than the smallest double. */
export const EXPONENT_MIN = -745.0;
export const EXPONENT_MAX = 709.0;
const EXPONENTIAL_TERMS = 18; // 0.35^18 / 18! is below 1e-24
const LOGARITHM_TERMS = 12; // 0.1716^25 / 25 is below 1e-20

/** Sum of doubles from left to right. */
export function added(values: readonly number[]): number {
  let soFar = 0;
  for (const value of values) soFar = soFar + value;
  return soFar;
}

/** e^x, to about two units of the last digit; 0 far below zero. Throws above 709, where a double ends. */
export function exponential(x: number): number {
  if (x > EXPONENT_MAX) throw new RangeError(`e^${x} is too large`);
  if (x < EXPONENT_MIN) return 0;
  const halvings = Math.floor(x / LN_2 + 0.5);
  const rest = x - halvings * LN_2_HIGH - halvings * LN_2_LOW;
  let series = 1;
  for (let term = EXPONENTIAL_TERMS; term > 0; term--) series = 1 + (series * rest) / term;
  return scaled(series, halvings);
}

/** Natural logarithm. Throws unless x is above zero and finite. */
export function logarithm(x: number): number {
  if (!(x > 0 && x < Infinity)) throw new RangeError(`no logarithm of ${x}`);
  let [reduced, doublings] = [x, 0];
  while (reduced < SQRT_HALF) {
    reduced *= 2;
    doublings -= 1;
  }
  while (reduced > 2 * SQRT_HALF) {
    reduced *= 0.5;
    doublings += 1;
  }
  const nearOne = twiceArtanh((reduced - 1) / (reduced + 1));
  return doublings * LN_2_HIGH + (nearOne + doublings * LN_2_LOW);
}

/** ln(1 + x) without loss where x is small. Throws unless x is above -1. */
export function logOnePlus(x: number): number {
  if (x > SQRT_HALF - 1 && x < 2 * SQRT_HALF - 1) return twiceArtanh(x / (2 + x));
  return logarithm(1 + x);
}

/** ln((1 + s) / (1 - s)) for |s| <= 0.1716, by its series. */
function twiceArtanh(s: number): number {
  const square = s * s;
  let series = 0;
  for (let term = LOGARITHM_TERMS; term >= 0; term--) series = series * square + 1 / (2 * term + 1);
  return 2 * s * series;
}

/** x times a power of two, each step exact. */
function scaled(x: number, doublings: number): number {
  const step = doublings > 0 ? 2 : 0.5;
  let made = x;
  for (let times = Math.abs(doublings); times > 0; times--) made *= step;
  return made;
}

/**
 * Temperatures: a reading and a difference are changed by different rules.
 * NIST SP 811 (2008) App. B.8 and SP 1038 (2006) n.33, both read.
 */

import type { Decimal } from "./numbers.ts";
import { difference, divided, parseDecimal, product, rounded, total } from "./numbers.ts";

const TWO = parseDecimal("2");
const HALF = parseDecimal("0.5");
const FAHRENHEIT_ZERO = parseDecimal("32");
const FAHRENHEIT_STEPS = parseDecimal("1.8");
const KELVIN_ZERO = parseDecimal("273.15");

/** A temperature shown in degF, K or degC as degC, rounded once. Throws for another unit, also for a difference. */
export function celsius(reading: Decimal, code: string, places: number): Decimal {
  if (code === "degF") {
    return divided(difference(reading, FAHRENHEIT_ZERO), FAHRENHEIT_STEPS, places);
  }
  if (code === "K") return rounded(difference(reading, KELVIN_ZERO), places);
  if (code === "degC") return rounded(reading, places);
  throw new RangeError(`${code} is not a temperature`);
}

/**
 * A converted temperature to the nearest 0.5 degC, as SP 1038 4.4.1.3 asks: 165 F is 74.0.
 * Throws for another unit, also for a difference.
 */
export function celsiusToHalf(reading: Decimal, code: string): Decimal {
  return product(halvesOf(reading, code), HALF);
}

/**
 * A difference of temperatures in degC: 9 F cooler is 5 C cooler, 32 is never subtracted.
 * Throws for a reading.
 */
export function celsiusInterval(change: Decimal, code: string, places: number): Decimal {
  if (code === "delta_degF") return divided(change, FAHRENHEIT_STEPS, places);
  if (code === "delta_degC") return rounded(change, places);
  throw new RangeError(`${code} is not a difference of temperatures`);
}

/** Exact degF of a temperature in degC. */
export function fahrenheit(degreesCelsius: Decimal): Decimal {
  return total([product(degreesCelsius, FAHRENHEIT_STEPS), FAHRENHEIT_ZERO]);
}

/** Exact K of a temperature in degC. */
export function kelvin(degreesCelsius: Decimal): Decimal {
  return total([degreesCelsius, KELVIN_ZERO]);
}

function halvesOf(reading: Decimal, code: string): Decimal {
  if (code === "degF") {
    return divided(product(difference(reading, FAHRENHEIT_ZERO), TWO), FAHRENHEIT_STEPS, 0);
  }
  if (code === "K") return rounded(product(difference(reading, KELVIN_ZERO), TWO), 0);
  if (code === "degC") return rounded(product(reading, TWO), 0);
  throw new RangeError(`${code} is not a temperature`);
}

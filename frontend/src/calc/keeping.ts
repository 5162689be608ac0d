/**
 * How long a quality lasts at another temperature, and how much of it a history has used.
 *
 * Q10: life x Q10^((at - T) / 10). Arrhenius: life x exp(E / R (1 / T - 1 / at)), in kelvin. Square
 * root: life x ((at - T_min) / (T - T_min))^2. Shares of a life add up (Charm 1972, McMeekin 1988,
 * as named by the DTU Aqua page after Dalgaard 2002, read); temperatures are never averaged first.
 * Quality only: a model may shorten a date and never lengthens one, and the clock of food out of
 * chill stands above it.
 */

import { exponential, logarithm } from "./elementary.ts";
import type { Cited } from "./limits.ts";
import { asDouble, type Decimal, ONE, ZERO } from "./numbers.ts";

export type LifeKind = "q10" | "arrhenius_kJ" | "arrhenius_kcal" | "square_root";
export type ChillVerdict = "chill_again" | "sell_now" | "throw_out";

export const KELVIN_ZERO = 273.15;
export const TEN = 10;
export const HOURS_IN_DAY = 24;
export const CHILL_AGAIN_BELOW_MIN = 120;
export const SELL_BELOW_MIN = 240;
const GAS_CONSTANT = { arrhenius_kJ: 0.008314, arrhenius_kcal: 0.001987 }; // energy / (mol K)
const CLOCK: Cited = {
  what: "out_of_chill",
  source: "2-hour/4-hour rule: under 2 h chill again, under 4 h sell, 4 h or more throw out",
  basis: "read-secondary",
  note: "UK (NI) SR 2006/3 Sch. 4 para 5, read: display is defended for less than four hours",
};

/**
 * A life in days at one temperature (degC), and how it changes: by Q10, by an activation energy in
 * kJ/mol or kcal/mol, or by the temperature (degC) at which nothing spoils.
 */
export interface LifeModel {
  readonly kind: LifeKind;
  readonly parameter: Decimal;
  readonly life_days: Decimal;
  readonly at: Decimal;
}

/**
 * The share of a life that is used, the days left where it is stored, and the one temperature that
 * would have used as much. Never shown without its caution.
 */
export interface LifeUsed {
  readonly used: number;
  readonly left_days: number;
  readonly effective_celsius: number;
  readonly caution: "shelf_life";
}

/** All minutes out of chill together, and what may still be done. */
export interface OutOfChill {
  readonly minutes: number;
  readonly verdict: ChillVerdict;
  readonly cited: readonly Cited[];
  readonly caution: "holding";
}

/** A life and the temperature it was found at, degC. */
export type LifeTest = readonly [life: Decimal, celsius: Decimal];

/**
 * Q10 from two storage tests: (life cold / life warm)^(10 / difference).
 * Throws for lives not above 0 and unless the second is warmer.
 */
export function q10OfLives(cold: LifeTest, warm: LifeTest): number {
  const [long, atCold] = cold;
  const [short, atWarm] = warm;
  const isNothing = long.compare(ZERO) <= 0 || short.compare(ZERO) <= 0;
  if (isNothing || atWarm.compare(atCold) <= 0) {
    throw new RangeError("two lives above 0, the second at the warmer place");
  }
  const step = TEN / (asDouble(atWarm) - asDouble(atCold));
  return exponential(step * logarithm(asDouble(long) / asDouble(short)));
}

/**
 * Days at this temperature.
 *
 * Throws for a life or parameter not above 0, below absolute zero, and for a square root at or
 * below the temperature where nothing spoils.
 */
export function lifeAt(model: LifeModel, celsius: Decimal): number {
  return life(checked(model), asDouble(celsius));
}

/**
 * What (hours, degC) one after the other have used: the sum of hours / life.
 *
 * Left is never below 0. Throws as lifeAt does, for hours below 0 and for a history without any.
 */
export function lifeUsed(
  model: LifeModel,
  history: readonly (readonly [hours: Decimal, celsius: Decimal])[],
  storedAt: Decimal,
): LifeUsed {
  const known = checked(model);
  let used = 0;
  let days = 0;
  for (const [hours, celsius] of history) {
    if (hours.isNegative()) throw new RangeError("time does not run back");
    used += asDouble(hours) / HOURS_IN_DAY / life(known, asDouble(celsius));
    days += asDouble(hours) / HOURS_IN_DAY;
  }
  if (days === 0) throw new RangeError("a history has some hours");
  const left = Math.max(0, 1 - used) * life(known, asDouble(storedAt));
  return {
    used,
    left_days: left,
    effective_celsius: celsiusFor(known, days / used),
    caution: "shelf_life",
  };
}

/**
 * The times out of chill, in minutes, added up over all days: none of them is forgotten.
 * Throws for a time below 0.
 */
export function outOfChill(minutes: readonly number[]): OutOfChill {
  if (minutes.some((each) => each < 0)) throw new RangeError("time does not run back");
  const together = minutes.reduce((sum, each) => sum + each, 0);
  let verdict: ChillVerdict = "throw_out";
  if (together < CHILL_AGAIN_BELOW_MIN) verdict = "chill_again";
  else if (together < SELL_BELOW_MIN) verdict = "sell_now";
  return { minutes: together, verdict, cited: [CLOCK], caution: "holding" };
}

function checked(model: LifeModel): LifeModel {
  const isScale = model.kind === "square_root";
  const isNothing = !isScale && model.parameter.compare(ZERO) <= 0;
  if (model.life_days.compare(ZERO) <= 0 || isNothing) {
    throw new RangeError("a life and what changes it are more than nothing");
  }
  if (model.kind === "q10" && model.parameter.compare(ONE) === 0) {
    throw new RangeError("a Q10 of 1 changes nothing");
  }
  return model;
}

function life(model: LifeModel, celsius: number): number {
  const days = asDouble(model.life_days);
  const [at, parameter] = [asDouble(model.at), asDouble(model.parameter)];
  if (model.kind === "q10") {
    return days * exponential(((at - celsius) / TEN) * logarithm(parameter));
  }
  if (model.kind === "square_root") {
    if (celsius <= parameter || at <= parameter) {
      throw new RangeError("nothing spoils so cold by this model");
    }
    const ratio = (at - parameter) / (celsius - parameter);
    return days * ratio * ratio;
  }
  const energy = parameter / GAS_CONSTANT[model.kind];
  return days * exponential(energy * (1 / kelvin(celsius) - 1 / kelvin(at)));
}

/** The temperature at which the life is this many days. */
function celsiusFor(model: LifeModel, wanted: number): number {
  const days = asDouble(model.life_days);
  const [at, parameter] = [asDouble(model.at), asDouble(model.parameter)];
  if (model.kind === "q10") {
    return at - (TEN * logarithm(wanted / days)) / logarithm(parameter);
  }
  if (model.kind === "square_root") {
    return parameter + (at - parameter) * Math.sqrt(days / wanted);
  }
  const energy = parameter / GAS_CONSTANT[model.kind];
  return 1 / (1 / kelvin(at) + logarithm(wanted / days) / energy) - KELVIN_ZERO;
}

function kelvin(celsius: number): number {
  if (celsius <= -KELVIN_ZERO) throw new RangeError("below absolute zero");
  return celsius + KELVIN_ZERO;
}

/** Tolerances in percent of an amount, as one writes them into a recipe. */
import {
  divided,
  HUNDRED,
  parseDecimal,
  plain,
  product,
  significant,
} from "../../../calc/numbers.ts";

const WORKING_PLACES = 6; // as many as a body may hold
const DIGITS = 2; // a tolerance is a round number: 1 % of 333 g is 3.3 g

/** So many percent of an amount, to two digits, in the unit of the amount. */
export function percentTolerance(amount: string, percent: string): string {
  const whole = product(parseDecimal(amount), parseDecimal(percent));
  const exact = divided(whole, HUNDRED, WORKING_PLACES);
  return plain(parseDecimal(significant(exact, DIGITS)));
}

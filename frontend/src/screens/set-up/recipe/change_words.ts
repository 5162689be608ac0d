/** By how much a number changed: the difference and its percent of what it was. */
import { amountIn, quantityIn } from "../../../calc/bodies.ts";
import {
  type Decimal,
  difference,
  divided,
  HUNDRED,
  parseDecimal,
  plain,
  product,
} from "../../../calc/numbers.ts";
import { fromBase } from "../../../calc/units.ts";
import { signedWords } from "../../../text/numbers.ts";
import { DIFFERS } from "../../../text/set_up_recipe.ts";

const PLACES = 6;
const PERCENT_PLACES = 1;
const NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * `+6 g, +10 %` of two amounts or two numbers; null where nothing can be subtracted. Amounts in two
 * units are told in the new one; a percent is told of its own difference, in points.
 */
export function changeWords(from: unknown, to: unknown, unit: string | null): string | null {
  const pair = amounts(from, to) ?? numbers(from, to);
  if (pair === null) return null;
  const by = difference(pair.now, pair.was);
  if (by.isZero()) return null;
  const shownUnit = pair.unit ?? unit;
  const told = pair.unit === null ? by : fromBase(by, pair.unit, PLACES);
  if (shownUnit === "%") return DIFFERS.points(signedWords(plain(told)));
  const words = signedWords(plain(told), shownUnit);
  if (pair.was.isZero()) return words;
  const percent = divided(product(by, HUNDRED), pair.was, PERCENT_PLACES);
  return `${words}, ${signedWords(plain(percent), "%")}`;
}

interface Pair {
  was: Decimal;
  now: Decimal;
  /** The unit amounts in base units are told in; null for bare numbers. */
  unit: string | null;
}

function amounts(from: unknown, to: unknown): Pair | null {
  const [was, now] = [amountIn({ each: from }, "each"), amountIn({ each: to }, "each")];
  if (was === null || now === null || was.unit !== now.unit) return null;
  return { was: was.value, now: now.value, unit: quantityIn({ each: to }, "each")?.unit ?? null };
}

function numbers(from: unknown, to: unknown): Pair | null {
  const [was, now] = [numberOf(from), numberOf(to)];
  return was === null || now === null ? null : { was, now, unit: null };
}

function numberOf(value: unknown): Decimal | null {
  const text = typeof value === "number" ? String(value) : value;
  return typeof text === "string" && NUMBER.test(text) ? parseDecimal(text) : null;
}

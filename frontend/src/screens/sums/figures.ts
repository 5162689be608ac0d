/** From typed digits to decimals, and from results to as many digits as a kitchen can use. */
import { asDouble, Decimal, parseDecimal, plain, rounded } from "../../calc/numbers.ts";
import { inBase } from "../../calc/units.ts";
import { typedNumber } from "../../parts/typing.ts";
import { amountWords } from "../../text/numbers.ts";
import { SUMS } from "../../text/sums.ts";
import type { Missing, Refused, Row, Typed } from "./plan.ts";

const DIGITS = 4; // what a kitchen scale can tell apart
const PLACES_MAX = 4; // as far as the sums are worked out

/** A number as it was typed; null while it is none. */
export function numberIn(typed: Typed, key: string): Decimal | null {
  const text = typedNumber(typed[key] ?? "");
  return text === null ? null : parseDecimal(text);
}

/** A mass typed in `unit`, in g. */
export function gramsIn(typed: Typed, key: string, unit: string): Decimal | null {
  const amount = numberIn(typed, key);
  return amount === null ? null : inBase(amount, unit);
}

/** Decimals of what was typed: what the scale shows. */
export function placesTyped(typed: Typed, key: string): number {
  return (typed[key] ?? "").split(".")[1]?.length ?? 0;
}

/** Four digits that mean something, never fewer decimals than `least`, ties to even. */
export function shown(x: Decimal, least = 0): string {
  const size = x.isZero() ? 0 : Math.floor(Math.log10(Math.abs(asDouble(x))));
  const places = Math.min(PLACES_MAX, Math.max(least, DIGITS - 1 - size, 0));
  const text = rounded(x, places).toString();
  return places > least ? trimmed(text, least) : text;
}

/** Zeros at the end say nothing beyond what was asked for. */
function trimmed(text: string, least: number): string {
  const [whole = "", decimals = ""] = text.split(".");
  const kept = decimals.slice(0, least) + decimals.slice(least).replace(/0+$/, "");
  return kept === "" ? whole : `${whole}.${kept}`;
}

/** As shown(), but never more than it is: what must not be passed is rounded down. */
export function shownBelow(x: Decimal): string {
  const text = shown(x);
  const near = parseDecimal(text);
  if (near.compare(x) <= 0) return text;
  const step = new Decimal(1n, near.scale);
  return plain(near.minus(step));
}

/** A worked-out result. */
export function workedOut(
  name: string,
  amount: Decimal | null,
  unit: string,
  more: Pick<Row, "formula" | "inputs" | "source" | "uncertainty"> = {},
): Row {
  return {
    name,
    amount: amount === null ? null : shown(amount),
    unit,
    basis: "computed",
    ...(amount === null ? {} : { exact: asDouble(amount) }),
    ...more,
  };
}

/** A figure of a published table, as printed. */
export function printed(name: string, amount: Decimal, unit: string, source: string): Row {
  return { name, amount: plain(amount), unit, basis: "booked", source };
}

/** An input as it opens under a result. */
export function input(name: string, typed: Typed, key: string, unit: string) {
  return { name, value: amountWords(typedNumber(typed[key] ?? ""), unit) };
}

/** What is not typed yet. */
export function missing(key: string, what: string): Missing {
  return { is: "missing", key, sentence: SUMS.type_first(what) };
}

/** The first of these that is blank. */
export function firstBlank(
  typed: Typed,
  asked: readonly (readonly [key: string, what: string])[],
): Missing | null {
  const blank = asked.find(([key]) => numberIn(typed, key) === null);
  return blank === undefined ? null : missing(...blank);
}

/** What cannot be done, without anything further to say of it. */
export function refused(sentence: string): Refused {
  return { is: "refused", sentence, rows: [], cited: [] };
}

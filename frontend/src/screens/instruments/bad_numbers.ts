/** Numbers typed before a check that cannot be meant: one sentence each. */
import { decimalIn } from "../../calc/bodies.ts";
import { parseDecimal, plain } from "../../calc/numbers.ts";
import { COLDEST, WARMEST } from "../../calc/water.ts";
import { typedNumber } from "../../parts/typing.ts";
import { BAD } from "../../text/checks.ts";
import { amountWords } from "../../text/numbers.ts";
import type { Stage } from "./plan.ts";
import type { Checking } from "./use_check.ts";

const PH_MOST = 14;
/** Steps of which the second always shows more than the first. */
const PAIRS: readonly (readonly [string, keyof typeof BAD.pairs])[] = [
  ["tare", "water"],
  ["ice", "boiling"],
];

/** A known value that no check weight, bottle or clock can have; null while nothing is typed. */
export function badKnown(
  text: string,
  { instrument, fields }: Pick<Checking, "instrument" | "fields">,
): string | null {
  const typed = typedNumber(text);
  if (typed === null) return null;
  const value = parseDecimal(typed);
  if (instrument.sort === "ph_meter") return Number(typed) > PH_MOST ? BAD.ph : null;
  if (instrument.sort === "timer") return value.isZero() ? BAD.no_time : null;
  if (instrument.sort !== "scale") return null;
  if (value.isZero()) return BAD.no_mass;
  const most = decimalIn(fields, "capacity");
  if (most === null || value.compare(most) <= 0) return null;
  return BAD.too_heavy(amountWords(plain(most), instrument.unit));
}

/** Water of which nobody knows what a millilitre weighs; null while nothing is typed. */
export function badWater(text: string): string | null {
  const typed = typedNumber(text);
  if (typed === null) return null;
  const celsius = parseDecimal(typed);
  return celsius.compare(COLDEST) < 0 || celsius.compare(WARMEST) > 0 ? BAD.water : null;
}

/**
 * A reading that no such instrument shows at this step, or that another step belies; null while
 * nothing is typed. A slip would fail the instrument and call back all that leaned on it.
 */
export function badReading(
  text: string,
  stage: Pick<Stage, "sort">,
  { instrument, typed: { read } }: Pick<Checking, "instrument" | "typed">,
): string | null {
  const typed = typedNumber(text);
  if (typed === null) return null;
  const value = Number(typed);
  if (instrument.sort === "ph_meter") return value < 0 || value > PH_MOST ? BAD.ph : null;
  const pair = PAIRS.find((each) => each.includes(stage.sort));
  if (pair === undefined) return null;
  const [low, high] = pair;
  const isLow = stage.sort === low;
  const others = (read[isLow ? high : low] ?? []).map(Number);
  const isAlike = others.some((each) => (isLow ? value >= each : value <= each));
  return isAlike ? BAD.pairs[high] : null;
}

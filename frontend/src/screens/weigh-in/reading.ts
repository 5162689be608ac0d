/** From what is typed to what it means: net, doubt, verdict, and the number to stop at. */
import { objectIn, textsIn } from "../../calc/bodies.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  ONE,
  parseDecimal,
  plain,
  rounded,
  significant,
  total,
  ZERO,
} from "../../calc/numbers.ts";
import { type Doubt, guardBand, type Verdict, verdict } from "../../calc/readings.ts";
import { meant, type TrustedReading } from "../../calc/trusted.ts";
import { converted, dimensionOf, inBase, isUnit } from "../../calc/units.ts";
import { inUnit, PLACES, scaledDoubt, sumDoubt, weighingOf } from "../../calc/weighing.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Body, Json } from "../../state/types.ts";
import type { BatchLine, InstrumentShown } from "../common/batches.ts";
import { asGoodAs } from "../common/trust.ts";
import { type Plan, planOf } from "./plan.ts";
import { canRead } from "./which_instrument.ts";

/** What a person has typed on this line so far. */
export interface WeighTyped {
  [field: string]: Json;
  shown: string;
  tare: string;
  repeats: string[];
  unit: string;
  instrument: string;
  lot: string;
  despite: string;
  /** Where the keypad types to. */
  into: string;
}

/** What the screen shows. Amounts are text: `net`, `off`, `stop_at` in the unit read, else the line's. */
export interface Weighed {
  net: string | null;
  /** With the correction of its instrument in force, in the unit read; null where there is none. */
  corrected: string | null;
  level: string | null;
  low: string | null;
  high: string | null;
  target: string;
  /** What a verdict allows for, one-sided 95 %, in the unit of the line. */
  reach: string | null;
  reach_read: string | null;
  verdict: Verdict | null;
  is_over: boolean;
  is_exact: boolean;
  off: string | null;
  stop_at: string | null;
}

const U_DIGITS = 2;

/** What was counted or read, as it goes into the body; null while no number is typed. */
export function measured(
  typed: WeighTyped,
  instrument: InstrumentShown | null,
  isCounted: boolean,
): Body | null {
  if (isCounted) {
    const count = typedNumber(typed.shown);
    return count === null ? null : { counted: { amount: count, unit: typed.unit } };
  }
  const reading = readingOf(typed, instrument);
  return reading === null ? null : { reading };
}

function readingOf(typed: WeighTyped, instrument: InstrumentShown | null): Body | null {
  const now = typedNumber(typed.shown);
  const [first, ...more] = now === null ? typed.repeats : [...typed.repeats, now];
  if (first === undefined) return null;
  const tare = typedNumber(typed.tare);
  return {
    ...(instrument === null ? {} : { instrument: instrument.id }),
    unit: typed.unit,
    shown: first,
    ...(tare === null ? {} : { tare }),
    // Division and repeatability are kept with the reading: the instrument may be set up anew.
    ...(instrument?.division ? { division: instrument.division } : {}),
    ...(instrument?.repeatability ? { repeatability: instrument.repeatability } : {}),
    ...(more.length > 0 ? { repeats: more } : {}),
  };
}

/** The doubt of what already lies in the bowl; its degrees of freedom are not on the sheet. */
function doubtAlready(line: BatchLine, unit: string): (Doubt | null)[] {
  if (line.in_base === null) return [];
  if (line.u === null) return [null];
  const perBase = 1 / asDouble(inBase(ONE, unit));
  return [scaledDoubt({ u: Number(line.u), degrees: null }, perBase)];
}

/** As many places as the division of the instrument has. */
function placesOf(division: string | null): number {
  return division === null ? 1 : (division.split(".")[1]?.length ?? 0);
}

/** How one reads: in which unit, with which bowl, on which steps. */
interface ReadBy {
  unit: string;
  tare: string | null;
  division: string | null;
  /** The same reading with what is known of its instrument. */
  trusted?: TrustedReading | null;
  /** What the correction adds about where one stops: the display must show that much less. */
  correction?: Decimal;
}

/** Everything the screen says about a line and a measurement that may not be typed yet. */
export function weighed(line: BatchLine, body: Body | null, by: ReadBy): Weighed | null {
  const plan = planOf(line);
  if (plan === null) return null;
  const { trusted = null } = by;
  const read = trusted?.read ?? (body === null ? null : weighingOf(body));
  const weighing = trusted === null ? read : meant(trusted);
  const here = weighing === null ? null : inUnit(weighing, plan.unit);
  const level = here === null ? plan.already : total([plan.already ?? ZERO, here.net]);
  const doubt = here === null ? null : sumDoubt([...doubtAlready(line, plan.unit), here.doubt]);
  return {
    net: textOf(read?.net),
    corrected:
      trusted === null || trusted.found_by === null
        ? null
        : asGoodAs(plain(trusted.value), reachOf(trusted.doubt)),
    level: textOf(level),
    low: textOf(plan.low),
    high: textOf(plan.high),
    target: plain(plan.amount),
    reach: reachOf(doubt),
    reach_read: reachOf(weighing?.doubt),
    verdict: here === null || level === null ? null : verdict(level, plan, doubt),
    ...offTarget(plan, level, {
      ...by,
      // A corrected figure has digits of its own; one that was read has those of the display.
      reach: trusted === null || trusted.found_by === null ? null : reachOf(trusted.doubt),
    }),
    stop_at: stopAt(plan, by),
  };
}

function textOf(amount: Decimal | null | undefined): string | null {
  return amount === null || amount === undefined ? null : plain(amount);
}

function reachOf(doubt: Doubt | null | undefined): string | null {
  return doubt === null || doubt === undefined ? null : significant(guardBand(doubt), U_DIGITS);
}

function offTarget(plan: Plan, level: Decimal | null, by: ReadBy & { reach: string | null }) {
  if (level === null) return { is_over: false, is_exact: false, off: null };
  const off = difference(level, plan.amount);
  const words = asRead(off.abs(), {
    from: plan.unit,
    to: by.unit,
    places: placesOf(by.division),
  });
  return {
    is_over: !off.isNegative() && !off.isZero(),
    is_exact: off.isZero(),
    off: words === null || by.reach === null ? words : onStep(parseDecimal(words), by.division),
  };
}

/** An amount in the unit that is read, at the places the display has; null across dimensions. */
function asRead(amount: Decimal, as: { from: string; to: string; places: number }): string | null {
  if (as.from === as.to) return plain(rounded(amount, Math.max(as.places, amount.scale)));
  if (!isUnit(as.from) || !isUnit(as.to) || dimensionOf(as.from) !== dimensionOf(as.to))
    return null;
  return plain(converted(amount, as.from, as.to, Math.max(as.places, 1)));
}

/** What the display must show, the bowl included: the plan less what is in, plus the bowl. */
function stopAt(plan: Plan, by: ReadBy): string | null {
  if (!isUnit(plan.unit) || !isUnit(by.unit)) return null;
  if (dimensionOf(plan.unit) !== dimensionOf(by.unit)) return null;
  const rest = difference(plan.amount, plan.already ?? ZERO);
  const inRead = converted(rest, plan.unit, by.unit, PLACES);
  const tare = by.tare === null ? ZERO : parseDecimal(by.tare);
  const shows = difference(total([inRead, tare]), by.correction ?? ZERO);
  return onStep(shows, by.division);
}

/** The nearest number that the display can show: one of 2 g steps never shows 969. */
function onStep(amount: Decimal, division: string | null): string {
  const step = division === null ? null : parseDecimal(division);
  const places = placesOf(division);
  if (step === null || step.isZero()) return rounded(amount, places).toString();
  return rounded(divided(amount, step, 0).times(step), places).toString();
}

/** Why a reading cannot be, as a key of the words; null when it can. */
export function readingRefusal(
  body: Body | null,
  instrument: InstrumentShown | null,
): "over_capacity" | "below_bowl" | null {
  const reading = body === null ? null : objectIn(body, "reading");
  const weighing = body === null ? null : weighingOf(body);
  if (reading === null || weighing === null) return null;
  const read = [String(reading.shown), ...textsIn(reading, "repeats")].map(parseDecimal);
  const limit = capacityIn(weighing.unit, instrument);
  if (limit !== null && read.some((each) => each.compare(limit) > 0)) return "over_capacity";
  return weighing.net.isNegative() ? "below_bowl" : null;
}

function capacityIn(unit: string, instrument: InstrumentShown | null): Decimal | null {
  if (instrument === null || instrument.capacity === null) return null;
  const capacity = parseDecimal(instrument.capacity);
  if (instrument.unit === unit) return capacity;
  return canRead(instrument, unit) ? converted(capacity, instrument.unit, unit, PLACES) : null;
}

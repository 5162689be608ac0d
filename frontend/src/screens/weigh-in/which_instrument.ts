/** Which instruments can read a line, which can tell, and which one to take. */
import {
  type Answer,
  type LineToWeigh,
  proposed,
  type Weigher,
  weighs,
} from "../../calc/minimum_weight.ts";
import { asDouble, type Decimal, parseDecimal, ZERO } from "../../calc/numbers.ts";
import { converted, dimensionOf, isUnit } from "../../calc/units.ts";
import { PLACES } from "../../calc/weighing.ts";
import type { BatchLine, InstrumentShown } from "../common/batches.ts";
import { type Plan, planOf } from "./plan.ts";

/** Whether this instrument reads what the line is planned in. */
export function canRead(instrument: InstrumentShown, unit: string): boolean {
  if (!isUnit(instrument.unit) || !isUnit(unit)) return instrument.unit === unit;
  return dimensionOf(instrument.unit) === dimensionOf(unit);
}

/** Whether it can say "within" for this line: fine enough, and not too small. */
export function canTell(instrument: InstrumentShown, line: BatchLine): boolean {
  return weighsOn(instrument, line) === "can_weigh";
}

/** Whether an instrument can weigh a line, or why not. */
export function weighsOn(instrument: InstrumentShown, line: BatchLine): Answer {
  const plan = planOf(line);
  if (plan === null || !canRead(instrument, plan.unit)) return "unknown";
  return weighs(toWeigh(line, plan), weigherOf(instrument, plan.unit, "fit")).answer;
}

/**
 * The instrument to take, of those at hand: one that can weigh the line, a fit one before a due,
 * unchecked or failed one, then the finest. Null where none can.
 */
export function proposedFor(
  line: BatchLine,
  all: readonly InstrumentShown[],
  stateOf: (id: string) => string,
): InstrumentShown | null {
  const plan = planOf(line);
  if (plan === null) return null;
  const weighers = all
    .filter((each) => each.is_here && canRead(each, plan.unit))
    .map((each) => weigherOf(each, plan.unit, stateOf(each.id)));
  const id = proposed(toWeigh(line, plan), weighers);
  return all.find((each) => each.id === id) ?? null;
}

/** A net mass rests on two readings, bowl and load. */
function toWeigh(line: BatchLine, plan: Plan): LineToWeigh {
  const [below, above] = [decimalOf(line.below), decimalOf(line.above)];
  return { target: plan.amount, below, above, tare: ZERO, accuracy_percent: null };
}

/** What is known of an instrument, in the unit of the line. */
function weigherOf(instrument: InstrumentShown, unit: string, state: string): Weigher {
  const inUnitOf = (amount: string | null) =>
    amount === null ? null : converted(parseDecimal(amount), instrument.unit, unit, PLACES);
  return {
    instrument: instrument.id,
    division: inUnitOf(instrument.division),
    capacity: inUnitOf(instrument.capacity),
    repeatability: inUnitOf(instrument.repeatability),
    state,
  };
}

function decimalOf(text: string | null): Decimal | null {
  return text === null ? null : parseDecimal(text);
}

/** Its smallest step in the unit of the line, for putting the finest first. */
function stepIn(instrument: InstrumentShown, unit: string): number {
  if (instrument.division === null) return Number.POSITIVE_INFINITY;
  const step = parseDecimal(instrument.division);
  if (instrument.unit === unit) return asDouble(step);
  return asDouble(converted(step, instrument.unit, unit, PLACES));
}

/** Instruments that read a line's unit: those at hand first, of these the ones that can tell. */
export function instrumentsFor(
  line: BatchLine,
  all: readonly InstrumentShown[],
): InstrumentShown[] {
  const unit = line.planned?.unit ?? line.unit ?? "g";
  const reading = all.filter((each) => canRead(each, unit));
  const rank = (each: InstrumentShown) => (each.is_here ? 0 : 2) + (canTell(each, line) ? 0 : 1);
  return reading.sort((a, b) => rank(a) - rank(b) || stepIn(a, unit) - stepIn(b, unit));
}

/** A step's reading against its limits. */
import {
  type Decimal,
  difference,
  parseDecimal,
  plain,
  significant,
  ZERO,
} from "../../calc/numbers.ts";
import { guardBand, type Verdict, verdict } from "../../calc/readings.ts";
import { meant, type TrustedReading } from "../../calc/trusted.ts";
import { converted, isUnit } from "../../calc/units.ts";
import { inUnit, PLACES, weighingOf } from "../../calc/weighing.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Body, Json } from "../../state/types.ts";
import type { BatchStep, InstrumentShown } from "../common/batches.ts";
import { canRead } from "../weigh-in/which_instrument.ts";

const U_DIGITS = 2;

/** What a person has typed on this step so far. */
export interface StepTyped {
  [field: string]: Json;
  shown: string;
  tare: string;
  instrument: string;
  action: string;
  into: string;
}

/** Texts in the unit of the step; `off` is how far beyond the nearer limit. */
export interface Checked {
  value: string;
  /** The correction of its instrument is in it. */
  is_corrected: boolean;
  reach: string | null;
  verdict: Verdict | null;
  is_low: boolean;
  off: string | null;
}

/** The reading as it goes into the body; null while no number is typed. */
export function stepReading(
  typed: StepTyped,
  step: BatchStep,
  instrument: InstrumentShown | null,
): Body | null {
  const shown = typedNumber(typed.shown);
  if (shown === null) return null;
  const tare = typedNumber(typed.tare);
  return {
    ...(instrument === null ? {} : { instrument: instrument.id }),
    unit: instrument?.unit ?? step.unit ?? "",
    shown,
    ...(tare === null ? {} : { tare }),
    ...(instrument?.division ? { division: instrument.division } : {}),
    ...(instrument?.repeatability ? { repeatability: instrument.repeatability } : {}),
  };
}

/** What the reading decides; null without one, or in a unit that is not the step's. */
export function checked(
  step: BatchStep,
  reading: Body | null,
  found: TrustedReading | null = null,
): Checked | null {
  const weighing = reading === null ? null : weighingOf({ reading });
  const stands = found === null ? weighing : meant(found);
  const here = stands === null ? null : inUnit(stands, step.unit);
  if (here === null) return null;
  const low = step.low === null ? null : parseDecimal(step.low);
  const high = step.high === null ? null : parseDecimal(step.high);
  const isLow = low !== null && here.net.compare(low) < 0;
  return {
    value: plain(here.net),
    is_corrected: found !== null && found.found_by !== null,
    reach: here.doubt === null ? null : significant(guardBand(here.doubt), U_DIGITS),
    verdict: verdict(here.net, { low, high }, here.doubt),
    is_low: isLow,
    off: beyond(here.net, isLow ? low : high),
  };
}

function beyond(value: Decimal, limit: Decimal | null): string | null {
  return limit === null ? null : plain(difference(value, limit).abs());
}

/** Instruments that read the step's unit: those at hand, of these what takes most, a kettle is heavy. */
export function instrumentsForStep(
  step: BatchStep,
  all: readonly InstrumentShown[],
): InstrumentShown[] {
  const unit = step.unit;
  if (unit === null) return [];
  const reading = all.filter((each) => canRead(each, unit));
  return reading.sort(
    (a, b) =>
      Number(b.is_here) - Number(a.is_here) || capacityIn(unit, b).compare(capacityIn(unit, a)),
  );
}

function capacityIn(unit: string, { capacity, unit: own }: InstrumentShown): Decimal {
  if (capacity === null) return ZERO;
  const most = parseDecimal(capacity);
  return own === unit || !isUnit(own) || !isUnit(unit) ? most : converted(most, own, unit, PLACES);
}

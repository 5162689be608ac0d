/** A step's reading against its limits. */

import type { Strength } from "../../calc/brine.ts";
import type { Cited } from "../../calc/limits.ts";
import {
  type Decimal,
  difference,
  parseDecimal,
  plain,
  significant,
  ZERO,
} from "../../calc/numbers.ts";
import { guardBand } from "../../calc/readings.ts";
import { type How, stepValue, valueVerdict } from "../../calc/step_values.ts";
import type { TrustedReading } from "../../calc/trusted.ts";
import { converted, isUnit } from "../../calc/units.ts";
import { PLACES, type Weighing } from "../../calc/weighing.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Body, Json } from "../../state/types.ts";
import type { BatchStep, InstrumentShown } from "../common/batches.ts";
import { canRead } from "../weigh-in/which_instrument.ts";
import { readUnit } from "./asked.ts";

const U_DIGITS = 2;

/** What a person has typed on this step so far. */
export interface StepTyped {
  [field: string]: Json;
  shown: string;
  tare: string;
  instrument: string;
  action: string;
  into: string;
  celsius: string;
  scale: string;
  normality: string;
  sample: string;
  sample_unit: string;
  burette: string;
  blank: string;
}

/** Texts in the unit of the step; `off` is how far beyond the nearer limit. */
export interface Checked {
  value: string;
  /** The unit of the value: that of the limit. */
  unit: string | null;
  /** What was read, where something else was worked out from it. */
  raw: { value: string; unit: string } | null;
  how: How;
  table: string | null;
  cited: readonly Cited[];
  /** The correction of its instrument is in it. */
  is_corrected: boolean;
  reach: string | null;
  verdict: string | null;
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
    unit: instrument?.unit ?? readUnit(step) ?? "",
    shown,
    ...(tare === null ? {} : { tare }),
    ...divisionOf(step, instrument),
    ...(instrument?.repeatability ? { repeatability: instrument.repeatability } : {}),
  };
}

/** A clock is read to the whole minute where no timer is set up. */
function divisionOf(step: BatchStep, instrument: InstrumentShown | null): Body {
  if (instrument?.division) return { division: instrument.division };
  return step.measures === "minutes" && instrument === null ? { division: "1" } : {};
}

/** What a body decides; null where nothing was measured, or in a unit that is not the step's. */
export function checked(
  step: BatchStep,
  body: Body,
  found: TrustedReading | null,
  strength: Strength | null = null,
): Checked | null {
  const plan = { ...step };
  const made = stepValue(plan, body, found, { strength });
  if (made === null || (made.value === null && made.how === "read")) return null;
  const { value, raw, how, table, cited } = made;
  const shown = value ?? raw;
  return {
    value: shown === null ? "" : plain(shown.net),
    unit: shown?.unit ?? step.unit,
    raw: raw === null || how === "read" ? null : { value: plain(raw.net), unit: raw.unit },
    how,
    table,
    cited,
    is_corrected: found !== null && found.found_by !== null,
    reach: value?.doubt ? significant(guardBand(value.doubt), U_DIGITS) : null,
    verdict: valueVerdict(plan, made),
    ...beyondOf(step, value),
  };
}

/** On which side of the limits a value lies, and how far beyond the nearer one. */
function beyondOf(step: BatchStep, value: Weighing | null): Pick<Checked, "is_low" | "off"> {
  if (value === null) return { is_low: false, off: null };
  const low = step.low === null ? null : parseDecimal(step.low);
  const high = step.high === null ? null : parseDecimal(step.high);
  const is_low = low !== null && value.net.compare(low) < 0;
  return { is_low, off: beyond(value.net, is_low ? low : high) };
}

function beyond(value: Decimal, limit: Decimal | null): string | null {
  return limit === null ? null : plain(difference(value, limit).abs());
}

/** Instruments that read the step's unit: those at hand, of these what takes most, a kettle is heavy. */
export function instrumentsForStep(
  step: BatchStep,
  all: readonly InstrumentShown[],
): InstrumentShown[] {
  const unit = readUnit(step);
  if (unit === null || step.measures === "acidity") return [];
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

/**
 * What the check of a step is about: what was read, or what is worked out from it.
 *
 * A refractometer's degrees at 20 degC, the salt a salometer stands for, the acid of a titration,
 * the salt or sugar that was weighed in; anything else stands as it was read.
 */

import { type Titration, titratableAcidity } from "./acidity.ts";
import { amountIn, type Body, decimalIn, objectIn, textIn } from "./bodies.ts";
import { type Strength, salometerPercent } from "./brine.ts";
import { brixCorrection } from "./brix.ts";
import type { Cited } from "./limits.ts";
import { asDouble, type Decimal, difference, ZERO } from "./numbers.ts";
import { type Doubt, rectangularU, resolutionU, verdict } from "./readings.ts";
import { meant, type TrustedReading } from "./trusted.ts";
import { inUnit, scaledDoubt, sumDoubt, type Weighing } from "./weighing.ts";

export type How = "read" | "corrected" | "cannot_correct" | "salometer" | "titrated" | "weighed";

export const PERCENT = "%";
export const WEIGHED: readonly string[] = ["salt_weighed", "sugar_weighed"];
const READINGS_OF_A_BURETTE = 2; // where it stood before and after
const RATIO_U_MAX = 1e9; // beyond it a doubt says nothing

/**
 * What was read, and what the verdict is about; `value` is null where the two differ and it
 * cannot be worked out. `table` names the printed one a correction is from.
 */
export interface StepValue {
  readonly how: How;
  readonly raw: Weighing | null;
  readonly value: Weighing | null;
  readonly table: string | null;
  readonly cited: readonly Cited[];
}

/** What a step's value leans on beside its reading. */
export interface Beside {
  /** What was weighed in, for a step that asks for it. */
  readonly strength?: Strength | null;
  /** As if the error that a failed check of the instrument found counted. */
  readonly isMoved?: boolean;
}

/** The value of a step that was done; null where nothing was measured. */
export function stepValue(
  plan: Body,
  body: Body,
  trusted: TrustedReading | null,
  { strength = null, isMoved = false }: Beside = {},
): StepValue | null {
  const measures = textIn(plan, "measures") ?? "";
  if (measures === "acidity") return titrated(objectIn(body, "titration"));
  if (WEIGHED.includes(measures)) return strength === null ? null : weighedIn(strength);
  if (trusted === null) return null;
  const stands = meant(trusted, isMoved);
  if (measures === "salometer") return salometer(stands, trusted.read, textIn(body, "scale"));
  const unit = textIn(plan, "unit");
  const raw = inUnit(trusted.read, unit);
  const value = inUnit(stands, unit);
  const celsius = decimalIn(body, "celsius");
  if (measures === "brix" && celsius !== null && value !== null) return at20(value, raw, celsius);
  return { ...NOTHING, how: "read", raw, value };
}

/**
 * Within the limits of the step or not; what was read and cannot be worked out tells nothing.
 * Null without a limit, and where the unit measures another thing.
 */
export function valueVerdict(plan: Body, value: StepValue | null): string | null {
  const limits = {
    low: decimalIn(plan, "low"),
    high: decimalIn(plan, "high"),
    level: decimalIn(plan, "level"),
  };
  if (value === null || (limits.low === null && limits.high === null)) return null;
  if (value.value === null) return value.how === "read" ? null : "cannot_tell";
  return verdict(value.value.net, limits, value.value.doubt);
}

const NOTHING = { raw: null, value: null, table: null, cited: [] };

/**
 * u of the printed correction is its tolerance / sqrt(3); that of the temperature is not counted:
 * the correction moves by less than 0.1 % a degree.
 */
function at20(stands: Weighing, raw: Weighing | null, celsius: Decimal): StepValue {
  const { percent, tolerance, table, cited } = brixCorrection(stands.net, celsius);
  if (percent === null || tolerance === null) return { ...NOTHING, how: "cannot_correct", raw };
  const printed = { u: rectangularU(tolerance), degrees: null };
  const doubt = sumDoubt([stands.doubt, printed]);
  const value = { net: percent, unit: stands.unit, doubt };
  return { how: "corrected", raw, value, table, cited };
}

function salometer(stands: Weighing, raw: Weighing, scale: string | null): StepValue {
  const found = answered(() => salometerPercent(stands.net, scale ?? ""));
  // No scale was said, or no brine shows this.
  if (found === null) return { ...NOTHING, how: "salometer", raw };
  const degrees = asDouble(found.degrees);
  const factor = degrees > 0 ? asDouble(found.percent) / degrees : 0;
  const doubt = factor > 0 ? scaledDoubt(stands.doubt, factor) : null;
  const value = { net: found.percent, unit: PERCENT, doubt };
  return { how: "salometer", raw, value, table: scale, cited: found.cited };
}

/**
 * u counts what can be read off the burette; the strength of the alkali and the size of the sample
 * are taken as they are said.
 */
function titrated(body: Body | null): StepValue | null {
  const asked = body === null ? null : titrationOf(body);
  if (body === null || asked === null) return null;
  const found = answered(() => titratableAcidity(asked));
  if (found === null) return { ...NOTHING, how: "titrated" };
  const runIn = asDouble(difference(asked.naoh_mL, asked.blank_mL));
  const division = decimalIn(body, "division");
  const readings = READINGS_OF_A_BURETTE * (asked.blank_mL.isZero() ? 1 : 2);
  let doubt: Doubt | null = null;
  if (division !== null && division.compare(ZERO) > 0 && runIn > 0) {
    const u = (asDouble(found.percent) / runIn) * resolutionU(division, readings);
    doubt = u < RATIO_U_MAX ? { u, degrees: null } : null;
  }
  const value = { net: found.percent, unit: PERCENT, doubt };
  return { ...NOTHING, how: "titrated", value, cited: found.cited };
}

function titrationOf(body: Body): Titration | null {
  const acid = textIn(body, "acid");
  const naoh_N = decimalIn(body, "normality");
  const naoh_mL = decimalIn(body, "titre");
  const sample = amountIn(body, "sample");
  if (acid === null || naoh_N === null || naoh_mL === null || sample === null) return null;
  return {
    acid,
    naoh_N,
    naoh_mL,
    sample: sample.value,
    sample_unit: sample.unit === "g" ? "g" : "mL",
    blank_mL: decimalIn(body, "blank") ?? ZERO,
  };
}

function weighedIn({ percent, u }: Strength): StepValue {
  const value = { net: percent, unit: PERCENT, doubt: { u, degrees: null } };
  return { ...NOTHING, how: "weighed", value };
}

/** What a calculation answers; null where it refuses what it was given. */
function answered<Answer>(ask: () => Answer): Answer | null {
  try {
    return ask();
  } catch (refusal) {
    if (refusal instanceof RangeError) return null;
    throw refusal;
  }
}

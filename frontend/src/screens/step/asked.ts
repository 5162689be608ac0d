/** What a step's check asks for beside its reading, and the body it becomes. */

import type { BatchState } from "../../calc/batches.ts";
import { type Strength, weighedStrength } from "../../calc/brine.ts";
import { parseDecimal, ZERO } from "../../calc/numbers.ts";
import { WEIGHED } from "../../calc/step_values.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Body } from "../../state/types.ts";
import { STEP } from "../../text/step.ts";
import type { BatchStep } from "../common/batches.ts";
import type { StepTyped } from "./check.ts";

/** A number that is typed on the keypad: its field, its word on the side key, its unit. */
export interface AskedNumber {
  field: "shown" | "tare" | "celsius" | "normality" | "sample" | "burette" | "blank";
  word: string;
  asks: string;
  unit: string | null;
}

const CELSIUS: AskedNumber = {
  field: "celsius",
  word: STEP.at_celsius,
  asks: STEP.celsius_asks,
  unit: "degC",
};
/** What a titration asks for beside what was run in; the blank last. */
function titrationAsked(sampleUnit: SampleUnit): readonly AskedNumber[] {
  return [
    { field: "normality", word: STEP.normality, asks: STEP.normality_asks, unit: "N" },
    { field: "sample", word: STEP.sample, asks: STEP.sample_asks, unit: sampleUnit },
    { field: "burette", word: STEP.burette, asks: STEP.burette_asks, unit: "mL" },
    { field: "blank", word: STEP.blank, asks: STEP.blank_asks, unit: "mL" },
  ];
}

/** In what the sample was measured. */
export type SampleUnit = "mL" | "g";

/** By volume unless it was said to be weighed. */
export function sampleUnit(typed: StepTyped): SampleUnit {
  return typed.sample_unit === "g" ? "g" : "mL";
}

/** The numbers asked for beside the first one. */
export function alsoAsked(step: BatchStep, typed: StepTyped): readonly AskedNumber[] {
  if (step.measures === "brix") return [CELSIUS];
  return step.measures === "acidity" ? titrationAsked(sampleUnit(typed)) : [];
}

/** Worked out from the lines: nothing is read. */
export function isWorkedOut(step: BatchStep): boolean {
  return WEIGHED.includes(step.measures ?? "");
}

/** The unit of what is read where it is not the unit of the limit. */
export function readUnit(step: BatchStep): string | null {
  if (step.measures === "salometer") return "salometer";
  return step.measures === "acidity" ? "mL" : step.unit;
}

/** What goes into the body beside the reading. */
export function besideReading(step: BatchStep, typed: StepTyped): Body {
  const celsius = typedNumber(typed.celsius);
  if (step.measures === "brix" && celsius !== null) return { celsius };
  if (step.measures === "salometer" && typed.scale !== "") return { scale: typed.scale };
  return {};
}

/** The titration as typed; null while a number of it is missing or the blank took more. */
export function titrationOf(step: BatchStep, typed: StepTyped): Body | null {
  const [titre, normality, sample, division, blank] = [
    typed.shown,
    typed.normality,
    typed.sample,
    typed.burette,
    typed.blank,
  ].map(typedNumber);
  if (!titre || !normality || !sample || step.acid === null || hasTooMuchBlank(typed)) return null;
  return {
    acid: step.acid,
    normality,
    titre,
    ...(blank ? { blank } : {}),
    sample: { amount: sample, unit: sampleUnit(typed) },
    ...(division ? { division } : {}),
  };
}

/** A blank takes no more than the sample did. */
function hasTooMuchBlank(typed: StepTyped): boolean {
  const [titre, blank] = [typed.shown, typed.blank].map(typedNumber);
  return !!titre && !!blank && parseDecimal(blank).compare(parseDecimal(titre)) > 0;
}

/** Salt or sugar of what is weighed in so far; null until every line by mass is. */
export function strengthSoFar(step: BatchStep, batch: BatchState): Strength | null {
  const counts = new Map((step.counts ?? []).map((each) => [each.line, each.percent]));
  const parts = batch.lines
    .filter((line) => line.unit === "g")
    .map((line) => ({
      amount: line.prepared ?? line.corrected ?? line.in_base,
      percent: counts.get(line.line) ?? "0",
      u: line.u,
    }));
  if (!isWorkedOut(step) || parts.some((part) => part.amount === null || part.u === null)) {
    return null;
  }
  return weighedStrength(
    parts.map(({ amount, percent, u }) => ({
      amount: amount === null ? ZERO : parseDecimal(amount),
      percent: parseDecimal(percent),
      u: Number(u),
    })),
  );
}

/** What is still missing before it can be judged, in words; null when nothing is. */
export function stillAsked(step: BatchStep, typed: StepTyped): string | null {
  if (isWorkedOut(step)) return STEP.weigh_first;
  if (typedNumber(typed.shown) === null) return STEP.type_first;
  if (step.measures === "salometer" && typed.scale === "") return STEP.scale_first;
  if (step.measures !== "acidity") return null;
  if (step.acid === null) return STEP.no_acid;
  if (hasTooMuchBlank(typed)) return STEP.blank_too_much;
  return titrationOf(step, typed) === null ? STEP.titration_first : null;
}

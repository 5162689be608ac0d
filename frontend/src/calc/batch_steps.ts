/** The steps of a batch: what was planned, what was read, and whether each check is within. */

import { type Amount, type Body, inBaseUnit, itemsIn, objectIn, textIn } from "./bodies.ts";
import type { Strength } from "./brine.ts";
import { asDouble, difference, ONE, plain, significant } from "./numbers.ts";
import type { Doubt } from "./readings.ts";
import { type Finding, finding, type Standing } from "./record.ts";
import { type StepValue, stepValue, valueVerdict } from "./step_values.ts";
import {
  meant,
  type Sheets,
  type Trust,
  type TrustedReading,
  trustedReading,
  writtenTrust,
} from "./trusted.ts";
import { inBase } from "./units.ts";
import { inUnit, scaledDoubt, weighingOf } from "./weighing.ts";

export const U_DIGITS = 3; // a standard uncertainty is shown and kept to three significant digits

/** A published figure a value leans on. */
export interface Figure {
  readonly what: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

/**
 * What was worked out from a reading or a titration, or from what was weighed in; `value` is null
 * where that cannot be told. `table` is the printed one, or the scale.
 */
export interface Computed {
  readonly how: string;
  readonly value: string | null;
  readonly unit: string | null;
  readonly u: string | null;
  readonly table: string | null;
  readonly cited: readonly Figure[];
}

/**
 * A step carried out; `value` as it was read, in `unit`, and `u` of what it stands for; null where
 * it measures another thing or nothing. The verdict is about what was `computed`, else about the
 * corrected value.
 */
export interface Done {
  readonly entry: string;
  readonly value: string | null;
  readonly unit: string | null;
  readonly u: string | null;
  readonly computed: Computed | null;
  readonly verdict: string | null;
  readonly instrument: string | null;
  readonly trust: Trust;
  readonly action: string | null;
  readonly happened_at: string;
  readonly author: string;
}

/** How much of a line counts as the salt or sugar that is worked out. */
export interface Counted {
  readonly line: string;
  readonly percent: string;
}

/** One step with its limits and all times it was done, in business order. */
export interface Step {
  readonly step: string;
  readonly says: string | null;
  readonly measures: string | null;
  readonly line: string | null;
  readonly acid: string | null;
  readonly counts: readonly Counted[];
  readonly minutes: string | null;
  readonly unit: string | null;
  readonly low: string | null;
  readonly high: string | null;
  readonly level: string | null;
  readonly set_by: string | null;
  readonly caution: string | null;
  readonly done: readonly Done[];
}

/** A step while its entries are gathered. */
export interface StepWork {
  readonly step: string;
  readonly plan: Body;
  readonly done: Standing[];
  /** One a time done. */
  readonly readings: (TrustedReading | null)[];
  /** Of what was weighed in, where the step asks for it. */
  strength: Strength | null;
}

/** A mass in g that a step measured, and its doubt in g. */
export interface Mass {
  readonly amount: Amount;
  readonly doubt: Doubt | null;
}

/**
 * The planned steps in the recipe's order, then those only the entries name.
 * `instruments` are the sheets of those that were read, by subject.
 */
export function gatheredSteps(
  plan: readonly Body[],
  entries: readonly Standing[],
  instruments: Sheets,
): StepWork[] {
  const works = new Map<string, StepWork>();
  const workOn = (step: string, stepPlan: Body): StepWork => {
    const work = works.get(step) ?? {
      step,
      plan: stepPlan,
      done: [],
      readings: [],
      strength: null,
    };
    works.set(step, work);
    return work;
  };
  for (const each of plan) workOn(textIn(each, "step") ?? "", each);
  for (const entry of entries) {
    const named = textIn(entry.body, "step");
    if (named === null || entry.kind !== "step_done") continue;
    const work = workOn(named, {});
    work.done.push(entry);
    const { body, happened_at } = entry;
    work.readings.push(trustedReading(body, { happened_at, instruments }));
  }
  return [...works.values()];
}

/**
 * The last mass read in a step that measures this (of this line); the last, because a kettle that
 * is not done yet is weighed again.
 */
export function measuredMass(
  works: readonly StepWork[],
  measures: string,
  line: string | null,
): Mass | null {
  const masses = works
    .filter(
      (work) => textIn(work.plan, "measures") === measures && textIn(work.plan, "line") === line,
    )
    .flatMap((work) => work.done.map(massOf).filter((mass) => mass !== null));
  return masses.at(-1) ?? null;
}

/**
 * A step as its sheet shows it, and the checks that failed or that the instrument could not
 * decide: the first of each, also where a later reading was within.
 */
export function writtenStep(work: StepWork): readonly [Step, Finding[]] {
  const plan = work.plan;
  const done = work.done.map((entry, i) => writtenDone(work, entry, work.readings[i] ?? null));
  const step: Step = {
    step: work.step,
    says: textIn(plan, "says"),
    measures: textIn(plan, "measures"),
    line: textIn(plan, "line"),
    acid: textIn(plan, "acid"),
    counts: itemsIn(plan, "counts").map((each) => ({
      line: textIn(each, "line") ?? "",
      percent: textIn(each, "percent") ?? "0",
    })),
    minutes: textIn(plan, "minutes"),
    unit: textIn(plan, "unit"),
    low: textIn(plan, "low"),
    high: textIn(plan, "high"),
    level: textIn(plan, "level"),
    set_by: textIn(plan, "set_by"),
    caution: textIn(plan, "caution"),
    done,
  };
  return [step, stepFindings(work, done)];
}

/** The verdict of one reading of a step if the error a failed check found counted. */
export function stepIfMoved(work: StepWork, number: number): string | null {
  const trusted = work.readings[number] ?? null;
  if (trusted === null) return null;
  const body = work.done[number]?.body ?? {};
  const { strength } = work;
  return valueVerdict(work.plan, stepValue(work.plan, body, trusted, { strength, isMoved: true }));
}

/** The verdict of any body a step was done with, in force or not. */
export function stepVerdict(
  { plan, strength }: StepWork,
  body: Body,
  read: { readonly happened_at: string; readonly instruments: Sheets },
): string | null {
  return valueVerdict(plan, stepValue(plan, body, trustedReading(body, read), { strength }));
}

function writtenDone(work: StepWork, entry: Standing, trusted: TrustedReading | null): Done {
  const { plan, strength } = work;
  const found = stepValue(plan, entry.body, trusted, { strength });
  const raw = found?.raw ?? null;
  const unit = raw === null ? textIn(plan, "unit") : raw.unit;
  const standsFor = trusted === null ? null : inUnit(meant(trusted), unit);
  const doubt = standsFor?.doubt ?? null;
  return {
    entry: entry.id,
    value: raw === null ? null : plain(raw.net),
    unit: raw?.unit ?? null,
    u: doubt === null ? null : significant(doubt.u, U_DIGITS),
    computed: writtenComputed(found),
    verdict: valueVerdict(plan, found),
    instrument: textIn(objectIn(entry.body, "reading") ?? {}, "instrument"),
    trust: trustIn(unit, trusted),
    action: textIn(entry.body, "action"),
    happened_at: entry.happened_at,
    author: entry.author,
  };
}

function writtenComputed(found: StepValue | null): Computed | null {
  if (found === null || found.how === "read") return null;
  const { how, value, table, cited } = found;
  const doubt = value?.doubt ?? null;
  return {
    how,
    value: value === null ? null : plain(value.net),
    unit: value?.unit ?? null,
    u: doubt === null ? null : significant(doubt.u, U_DIGITS),
    table,
    cited: cited.map(({ what, source, basis, note }) => ({ what, source, basis, note })),
  };
}

/** The trust of a reading with its figures in the unit of the step. */
function trustIn(unit: string | null, trusted: TrustedReading | null): Trust {
  const written = writtenTrust(trusted);
  if (trusted === null) return written;
  const now = inUnit(meant(trusted), unit);
  const moved = inUnit(meant(trusted, true), unit);
  if (now === null || moved === null) return { ...written, corrected: null, moves: null };
  return {
    ...written,
    corrected: trusted.found_by === null ? null : plain(now.net),
    moves: trusted.moves === null ? null : plain(difference(moved.net, now.net)),
  };
}

function massOf(entry: Standing): Mass | null {
  const weighing = weighingOf(entry.body);
  const amount = weighing === null ? null : inBaseUnit(weighing.net, weighing.unit);
  if (weighing === null || amount === null || amount.unit !== "g") return null;
  const factor = asDouble(inBase(ONE, weighing.unit));
  return { amount, doubt: scaledDoubt(weighing.doubt, factor) };
}

const SAYS: readonly (readonly [string, string])[] = [
  ["outside", "step_outside"],
  ["cannot_tell", "step_cannot_tell"],
];

function stepFindings(work: StepWork, done: readonly Done[]): Finding[] {
  const unread = work.done.filter(
    (entry, i) => done[i]?.value === null && weighingOf(entry.body) !== null,
  );
  const findings = unread.map((entry) => finding(`unit:${entry.id}`, "unit", { entry: entry.id }));
  for (const [says, what] of SAYS) {
    const first = done.find((each) => each.verdict === says);
    if (first === undefined) continue;
    const detail = { step: work.step };
    findings.push(finding(`${what}:${work.step}`, what, { entry: first.entry, detail }));
  }
  return findings;
}

/** A batch sheet: what was planned, what went in and came out, and where the mass went. */

import { type Balance, batchBalance } from "./batch_balance.ts";
import { failedInstruments } from "./batch_doubts.ts";
import { failedChecks } from "./batch_holds.ts";
import { gatheredLines, type Line, type LineWork, writtenLine } from "./batch_lines.ts";
import {
  type Loss,
  type LotIn,
  type LotOut,
  lotsIn,
  lotsOut,
  type Output,
  writtenLoss,
  writtenOutput,
} from "./batch_output.ts";
import {
  gatheredSteps,
  measuredMass,
  type Step,
  type StepWork,
  writtenStep,
} from "./batch_steps.ts";
import { stepStrength } from "./batch_strength.ts";
import { decimalIn, itemsIn, type Quantity, quantityIn, textIn } from "./bodies.ts";
import type { BatchHeat } from "./heat_holds.ts";
import type { HeatResult } from "./heat_results.ts";
import { decidedFindings, type Hold, heldFindings, holdState } from "./holds.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  finding,
  type Note,
  notesAbout,
  type Standing,
  settled,
} from "./record.ts";
import { idIn } from "./subjects.ts";
import { NOTHING_BESIDE, type Sheets } from "./trusted.ts";

// 1 knew no checks of instruments, 2 no logs of temperature, 3 no holds, 4 took logs as read,
// 5 held nothing back for them.
export const BATCH_FOLD = 6;

/** All entries about one batch, added up. */
export interface BatchState {
  readonly batch: string;
  readonly code: string | null;
  readonly recipe: string | null;
  readonly recipe_version: string | null;
  readonly product: string | null;
  readonly place: string | null;
  readonly started_on: string | null;
  readonly started_at: string | null;
  readonly author: string | null;
  readonly is_finished: boolean;
  readonly finished_at: string | null;
  readonly makes: Quantity | null;
  readonly scaled_by: string | null;
  readonly pack_net: Quantity | null;
  readonly lines: readonly Line[];
  readonly steps: readonly Step[];
  readonly heat: readonly HeatResult[];
  readonly outputs: readonly Output[];
  readonly losses: readonly Loss[];
  readonly lots_in: readonly LotIn[];
  readonly lots_out: readonly LotOut[];
  readonly balance: Balance;
  /** Null where nothing was ever held or decided. */
  readonly hold: Hold | null;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/** What the logs of temperature among the facts of a batch come to; of them `entries` stand. */
export type HeatOf = (
  facts: Iterable<Fact>,
  entries: readonly Standing[],
  batch: string,
  instruments: Sheets,
) => BatchHeat;
const NO_HEAT: HeatOf = () => ({ results: [], findings: [], causes: [] });

/**
 * Fold all entries about `batch:<id>`; without its start it shows what is known.
 * `beside` holds the sheets of the instruments its readings lean on, by subject. `heatOf` is
 * batchHeat; a phone fetches it for a batch that has logs, and without it they are left out.
 */
export function batchState(
  subject: string,
  facts: Iterable<Fact>,
  beside: Sheets = NOTHING_BESIDE,
  heatOf = NO_HEAT,
): BatchState {
  const batch = idIn(subject);
  const held = [...facts];
  const record = asItStands(held);
  const entries = record.standing.filter((each) => textIn(each.body, "batch") === batch);
  const starts = entries.filter((each) => each.kind === "batch_started");
  const plan = starts[0]?.body ?? {};
  const steps = gatheredSteps(itemsIn(plan, "steps"), entries, beside);
  const lines = gatheredLines(itemsIn(plan, "lines"), entries, beside);
  for (const work of lines) notePreparation(work, steps);
  for (const step of steps) step.strength = stepStrength(step, lines);
  const heat = heatOf(held, entries, batch, beside);
  const checks = [...failedChecks(steps, held, batch, beside), ...heat.causes];
  const hold = holdState(subject, held, record.standing, checks);
  const writtenLines = lines.map(writtenLine);
  const writtenSteps = steps.map(writtenStep);
  const target = decimalIn(plan, "target_solids_percent");
  const [balance, tooMuch] = batchBalance(lines, steps, entries, target);
  const findings = [
    ...record.findings,
    ...startFindings(starts, entries),
    ...tooMuch,
    ...writtenLines.flatMap(([, found]) => found),
    ...writtenSteps.flatMap(([, found]) => found),
    ...heat.findings,
    ...failedInstruments(lines, steps, heat.results),
    ...heldFindings(hold),
  ];
  return {
    ...headOf(batch, starts, entries),
    lines: writtenLines.map(([line]) => line),
    steps: writtenSteps.map(([step]) => step),
    heat: heat.results,
    outputs: entries.filter((each) => each.kind === "output").map(writtenOutput),
    losses: entries.filter((each) => each.kind === "loss").map(writtenLoss),
    lots_in: lotsIn(entries),
    lots_out: lotsOut(entries),
    balance,
    hold: hold.causes.length + hold.decisions.length === 0 ? null : hold,
    findings: decidedFindings(settled(findings, record.standing, subject), hold),
    notes: notesAbout(record.standing, subject),
  };
}

function headOf(batch: string, starts: readonly Standing[], entries: readonly Standing[]) {
  const start = starts[0];
  const plan = start?.body ?? {};
  const finish = entries.filter((each) => each.kind === "batch_finished").at(-1);
  return {
    batch,
    code: textIn(plan, "code"),
    recipe: textIn(plan, "recipe"),
    recipe_version: textIn(plan, "recipe_version"),
    product: textIn(plan, "product"),
    place: textIn(plan, "place"),
    started_on: start?.local_date ?? null,
    started_at: start?.happened_at ?? null,
    author: start?.author ?? null,
    is_finished: finish !== undefined,
    finished_at: finish?.happened_at ?? null,
    makes: quantityIn(plan, "makes"),
    scaled_by: textIn(plan, "scaled_by"),
    pack_net: quantityIn(plan, "pack_net"),
  };
}

/** A line that a step weighs after preparation enters the kettle as prepared. */
function notePreparation(work: LineWork, steps: readonly StepWork[]): void {
  work.prepared = measuredMass(steps, "prepared_mass", work.line);
  const isWeighed = steps.some(
    ({ plan }) =>
      textIn(plan, "measures") === "prepared_mass" && textIn(plan, "line") === work.line,
  );
  work.is_prepared = work.is_prepared || isWeighed;
}

function startFindings(starts: readonly Standing[], entries: readonly Standing[]): Finding[] {
  const [first] = entries;
  const [start, second] = starts;
  if (first !== undefined && start === undefined) {
    return [finding("not_started", "not_started", { entry: first.id })];
  }
  return second === undefined ? [] : [finding("two_starts", "two_starts", { entry: second.id })];
}

/** A batch of which the server knows more entries than this phone: own work on its lines and steps. */
import type { BatchState } from "../calc/batches.ts";
import type { Beside } from "../calc/folds.ts";
import type { Fact } from "../calc/record.ts";
import {
  type Beyond,
  fact,
  findingsUnder,
  foldedAs,
  mergedFindings,
  mergedHold,
  mergedNotes,
  shifted,
} from "./on_top_parts.ts";

type Line = BatchState["lines"][number];
type Step = BatchState["steps"][number];

/**
 * Own weigh-ins, steps, outputs and losses are added to their lists. What is worked out over the
 * whole batch, its balance, stays as the server last had it: half of the entries give none.
 */
export function batchOnTop(
  subject: string,
  state: BatchState,
  beyond: Beyond,
  beside: Beside,
): BatchState {
  const plan = state.started_at === null ? [] : [planned(state)];
  const made = foldedAs<BatchState>(subject, [...plan, ...beyond.extra], beside);
  if (state.started_at === null && made.started_at !== null) return made;
  const hold = mergedHold(state.hold, made.hold);
  const own = new Set(beyond.extra.map((each) => each.id));
  return {
    ...state,
    is_finished: state.is_finished || made.is_finished,
    finished_at: made.finished_at ?? state.finished_at,
    lines: state.lines.map((line) =>
      lineOnTop(
        line,
        made.lines.find((one) => one.line === line.line),
      ),
    ),
    steps: state.steps.map((step) =>
      stepOnTop(
        step,
        made.steps.find((one) => one.step === step.step),
      ),
    ),
    // A sheet of an earlier version knows none.
    heat: [...(state.heat ?? []), ...made.heat.filter((each) => own.has(each.entry))],
    outputs: [...state.outputs, ...made.outputs.filter((each) => own.has(each.entry))],
    losses: [...state.losses, ...made.losses.filter((each) => own.has(each.entry))],
    lots_in: lotsOnTop(state.lots_in, made.lots_in),
    lots_out: lotsOnTop(state.lots_out, made.lots_out),
    hold: hold.causes.length + hold.decisions.length === 0 ? null : hold,
    findings: findingsUnder(hold, mergedFindings(state.findings, made.findings, [])),
    notes: mergedNotes(state.notes, made.notes),
  };
}

/** The start of the batch as its sheet tells it. */
function planned(state: BatchState): Fact {
  const lines = state.lines.map(({ line, material, planned: amount, below, above, level }) =>
    present({ line, material, amount, below, above, level }),
  );
  const steps = state.steps.map(({ done: _, ...step }) => present(step));
  const { batch, code, recipe, place, product, makes } = state;
  const body = { ...present({ batch, code, recipe, place, product, makes }), lines, steps };
  return { ...fact("sheet:start", "batch_started", body, 0), happened_at: state.started_at ?? "" };
}

/** A sum with own amounts in it has no verdict until its doubt is known as a whole. */
function lineOnTop(line: Line, made: Line | undefined): Line {
  if (made === undefined) return line;
  const laid_out = [...new Set([...line.laid_out, ...made.laid_out])];
  if (made.weigh_ins.length === 0) return { ...line, laid_out };
  if (line.weigh_ins.length === 0) return { ...made, laid_out };
  return {
    ...line,
    laid_out,
    in_base: shifted(line.in_base, "0", made.in_base),
    corrected: null,
    u: null,
    verdict: null,
    weigh_ins: [...line.weigh_ins, ...made.weigh_ins],
  };
}

function stepOnTop(step: Step, made: Step | undefined): Step {
  return made === undefined ? step : { ...step, done: [...step.done, ...made.done] };
}

function lotsOnTop<T extends { readonly lot: string; readonly amount: string }>(
  server: readonly T[],
  made: readonly T[],
): T[] {
  const lots = new Map(server.map((each) => [each.lot, each]));
  for (const each of made) {
    const known = lots.get(each.lot);
    const amount = shifted(known?.amount ?? "0", "0", each.amount) ?? each.amount;
    lots.set(each.lot, { ...(known ?? each), amount });
  }
  return [...lots.values()].sort((a, b) => (a.lot < b.lot ? -1 : 1));
}

/** Without what is not there: a body has no nulls. */
function present(body: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(body).filter(([, value]) => value !== null));
}

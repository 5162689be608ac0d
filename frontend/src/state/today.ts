/** What is under way and what comes next. */
import { computed, type ReadonlySignal } from "@preact/signals";
import type { BatchState } from "../calc/batches.ts";
import { TEXT_ORDER } from "../calc/record.ts";
import { sheetsOf } from "./sheets.ts";

export interface NextAct {
  act: "lay_out" | "weigh_in" | "step" | "finish";
  batch: string;
  code: string;
  /** The line or step, where the act has one. */
  line?: string;
  step?: string;
  material?: string;
  says?: string;
}
export interface UnderWay {
  batch: string;
  code: string;
  recipe: string;
  place: string;
  started_at: string;
  lines_count: number;
  laid_out_count: number;
  weighed_count: number;
  steps_count: number;
  steps_done_count: number;
  next: NextAct;
}

/** Batches not finished, the one started last first. */
export const underWay: ReadonlySignal<UnderWay[]> = computed(() =>
  sheetsOf<BatchState>("batch")
    .value.filter(({ state }) => !state.is_finished && state.started_at !== null)
    .map(({ state }) => summary(state))
    .sort((a, b) => TEXT_ORDER(b.started_at, a.started_at) || TEXT_ORDER(a.batch, b.batch)),
);

/** All is laid out before anything is weighed in; steps follow, then the batch is finished. */
export function nextActOf(state: BatchState): NextAct {
  const about = { batch: state.batch, code: state.code ?? "" };
  const toLayOut = state.lines.find((line) => !isLaidOut(line));
  if (toLayOut !== undefined) return { ...about, act: "lay_out", ...onLine(toLayOut) };
  const toWeighIn = state.lines.find((line) => line.weigh_ins.length === 0);
  if (toWeighIn !== undefined) return { ...about, act: "weigh_in", ...onLine(toWeighIn) };
  const toDo = state.steps.find((step) => step.done.length === 0);
  if (toDo === undefined) return { ...about, act: "finish" };
  return {
    ...about,
    act: "step",
    step: toDo.step,
    ...(toDo.says === null ? {} : { says: toDo.says }),
  };
}

type Line = BatchState["lines"][number];

function summary(state: BatchState): UnderWay {
  return {
    batch: state.batch,
    code: state.code ?? "",
    recipe: state.recipe ?? "",
    place: state.place ?? "",
    started_at: state.started_at ?? "",
    lines_count: state.lines.length,
    laid_out_count: state.lines.filter(isLaidOut).length,
    weighed_count: state.lines.filter((line) => line.weigh_ins.length > 0).length,
    steps_count: state.steps.length,
    steps_done_count: state.steps.filter((step) => step.done.length > 0).length,
    next: nextActOf(state),
  };
}

/** What is already in the bowl needs no tick on the bench. */
function isLaidOut(line: Line): boolean {
  return line.laid_out.length > 0 || line.weigh_ins.length > 0;
}

function onLine(line: Line): { line: string; material?: string } {
  return { line: line.line, ...(line.material === null ? {} : { material: line.material }) };
}

/** What is under way and what comes next. */
import type { ReadonlySignal } from "@preact/signals";

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
  started_at: string;
  lines_count: number;
  laid_out_count: number;
  weighed_count: number;
  steps_count: number;
  steps_done_count: number;
  next: NextAct;
}

/** Batches not finished, newest first. */
export declare const underWay: ReadonlySignal<UnderWay[]>;
/** The next act of the batch last touched, or null. */
export declare const nextAct: ReadonlySignal<NextAct | null>;

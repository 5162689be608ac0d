/** What stands around the day: what to look at, what to use first, what was written last. */
import type { BatchState } from "../../calc/batches.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import { daysLeft } from "../../calc/shelf_life.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { allStock, type LotInStock } from "../../state/stock.ts";

const SOON_DAYS = 7;
const MOST_SOON = 4;
const MOST_WRITTEN = 5;

/** Something written into a batch. `amount` and `unit` as they were read, where something was. */
export interface Written {
  id: string;
  at: string;
  batch: BatchState;
  /** The material of the line, or the words of the step. */
  material: string | null;
  says: string | null;
  amount: string | null;
  unit: string | null;
}

/** The entries of all batches written last, the newest first. */
export function writtenLast(batches: readonly BatchState[]): Written[] {
  return batches
    .flatMap(writtenInto)
    .sort((a, b) => TEXT_ORDER(b.at, a.at) || TEXT_ORDER(b.id, a.id))
    .slice(0, MOST_WRITTEN);
}

function writtenInto(batch: BatchState): Written[] {
  const weighed = batch.lines.flatMap((line) =>
    line.weigh_ins.map(
      (each): Written => ({
        id: each.entry,
        at: each.happened_at,
        batch,
        material: line.material,
        says: null,
        amount: each.net,
        unit: each.unit,
      }),
    ),
  );
  const stepped = batch.steps.flatMap((step) =>
    step.done.map(
      (each): Written => ({
        id: each.entry,
        at: each.happened_at,
        batch,
        material: null,
        says: step.says,
        amount: each.value,
        unit: step.unit,
      }),
    ),
  );
  return [...weighed, ...stepped];
}

/** Batches with something open that a person should look at. */
export function toLookAt(): BatchState[] {
  return sheetsOf<BatchState>("batch")
    .value.map(({ state }) => state)
    .filter((batch) => batch.findings.some((each) => !each.is_settled));
}

/** The failed checks of instruments that were read for this batch and that nobody has settled. */
export function failedFor(batch: BatchState): string[] {
  return batch.findings
    .filter((each) => each.what === "instrument_failed" && !each.is_settled)
    .flatMap(({ entry }) => entry ?? []);
}

/** Lots below zero somewhere. */
export function belowZero(): LotInStock[] {
  return allStock().filter((lot) => lot.is_negative);
}

/** Lots whose date comes within a week, the soonest first; those of today hang on the day itself. */
export function useFirst(today: string): LotInStock[] {
  return allStock()
    .filter(({ life, is_negative }) => {
      const left = life === null ? null : daysLeft(life.on, today);
      return left !== null && !is_negative && left > 0 && left <= SOON_DAYS;
    })
    .slice(0, MOST_SOON);
}

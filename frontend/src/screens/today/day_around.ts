/** What stands around the day: what to look at, what to use first, what was written last. */
import type { BatchState } from "../../calc/batches.ts";
import type { Hold } from "../../calc/holds.ts";
import { parseDecimal } from "../../calc/numbers.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import { daysLeft } from "../../calc/shelf_life.ts";
import type { LotState } from "../../calc/stock.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { allStock, type LotInStock } from "../../state/stock.ts";
import type { Fitness } from "../common/fitness.ts";

const NOTHING = parseDecimal("0");
const SOON_DAYS = 7;
const MOST_SOON = 4;
const MOST_WRITTEN = 5;
const TO_CHECK: readonly Fitness[] = ["failed", "due", "not_checked"];

/** What of a lot says whether it is filled; a sheet of an earlier version knows no fills. */
interface Filled {
  on_hand: string;
  fills?: readonly { verdict: string }[];
}

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

/** Ways to what is held back and waits for a decision, batches before lots. */
export function toDecide(): string[] {
  const waits = ({ hold }: { hold: Hold | null }) => hold?.is_held === true && !hold.is_decided;
  const batches = sheetsOf<BatchState>("batch").value.filter(({ state }) => waits(state));
  const lots = sheetsOf<LotState>("lot").value.filter(({ state }) => waits(state));
  return [
    ...batches.map(({ state }) => `#/batch/${state.batch}/hold`),
    ...lots.map(({ state }) => `#/lot/${state.lot}/hold`),
  ];
}

/** The failed checks of instruments that were read for this batch and that nobody has settled. */
export function failedFor(batch: BatchState): string[] {
  return batch.findings
    .filter((each) => each.what === "instrument_failed" && !each.is_settled)
    .flatMap(({ entry }) => entry ?? []);
}

/** The last fill check of these lots failed, and some of their packs are still on hand. */
export function filledShort<Lot extends Filled>(lots: readonly Lot[]): Lot[] {
  return lots.filter(
    ({ fills, on_hand }) =>
      fills?.at(-1)?.verdict === "fail" && parseDecimal(on_hand).compare(NOTHING) > 0,
  );
}

/** How many of these are failed, due or were never checked, the gravest first; fit ones do not count. */
export function toCheck(standings: readonly Fitness[]): [Fitness, number][] {
  return TO_CHECK.map((is): [Fitness, number] => [
    is,
    standings.filter((each) => each === is).length,
  ]).filter(([, count]) => count > 0);
}

/** Lots below zero somewhere. */
export function belowZero(): LotInStock[] {
  return allStock().filter((lot) => lot.is_negative);
}

/** Lots whose date comes within a week, the soonest first; those of today hang on the day itself. */
export function useFirst(today: string): LotInStock[] {
  return allStock()
    .filter(({ life, is_negative, held }) => {
      const left = life === null ? null : daysLeft(life.on, today);
      return left !== null && !is_negative && held === null && left > 0 && left <= SOON_DAYS;
    })
    .slice(0, MOST_SOON);
}

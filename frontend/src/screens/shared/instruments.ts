/** Sheets of instruments as screens ask for them, and the readings this phone knows of each. */
import { computed } from "@preact/signals";
import type { BatchState } from "../../calc/batches.ts";
import type { InstrumentState } from "../../calc/instruments.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import { isStillLoading, sheet, sheetsOf } from "../../state/sheets.ts";
import { today } from "./edge.ts";
import { fitnessOn, type Standing } from "./fitness.ts";

/** One reading of a batch: where it stands and what it was. */
export interface UsedAt {
  batch: BatchState;
  entry: string;
  /** The line or the step. */
  at: string;
  is_step: boolean;
  happened_at: string;
}

/** Every reading on the batch sheets of this phone, by instrument, the earliest first. */
const used = computed(() => {
  const found = new Map<string, UsedAt[]>();
  for (const { state: batch } of sheetsOf<BatchState>("batch").value) {
    for (const each of readingsOf(batch)) {
      const { instrument, ...reading } = each;
      found.set(instrument, [...(found.get(instrument) ?? []), reading]);
    }
  }
  for (const all of found.values())
    all.sort((a, b) => TEXT_ORDER(a.happened_at, b.happened_at) || TEXT_ORDER(a.entry, b.entry));
  return found;
});

function readingsOf(batch: BatchState): (UsedAt & { instrument: string })[] {
  const weighed = batch.lines.flatMap(({ line, weigh_ins }) =>
    weigh_ins.map((each) => ({ ...each, batch, at: line, is_step: false })),
  );
  const stepped = batch.steps.flatMap(({ step, done }) =>
    done.map((each) => ({ ...each, batch, at: step, is_step: true })),
  );
  return [...weighed, ...stepped].flatMap(({ instrument, entry, at, is_step, happened_at }) =>
    instrument === null ? [] : [{ instrument, batch, entry, at, is_step, happened_at }],
  );
}

/** The readings of an instrument on the batch sheets of this phone. */
export function usesOf(instrument: string): readonly UsedAt[] {
  return used.value.get(instrument) ?? [];
}

/** More may have been read with it than this phone has been told. */
export function mayKnowMore(): boolean {
  return isStillLoading.value;
}

/** The sheet of an instrument; null while this phone knows nothing about it. */
export function instrumentSheet(id: string): InstrumentState | null {
  return sheet<InstrumentState>(`instrument:${id}`).value?.state ?? null;
}

/** Whether it may be relied on today. */
export function standingOf(id: string, on = today()): Standing {
  const uses = usesOf(id).map((each) => each.happened_at);
  return fitnessOn(instrumentSheet(id) ?? {}, on, uses);
}

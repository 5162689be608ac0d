/** Sheets of instruments as screens ask for them, and the readings this phone knows of each. */
import { computed } from "@preact/signals";
import type { BatchState } from "../../calc/batches.ts";
import type { FillCheck } from "../../calc/fill_trust.ts";
import type { HeatResult } from "../../calc/heat_results.ts";
import type { InstrumentState } from "../../calc/instruments.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import { later } from "../../calc/shelf_life.ts";
import type { SkillState } from "../../calc/skills.ts";
import type { LotState } from "../../calc/stock.ts";
import { isStillLoading, sheet, sheetsOf } from "../../state/sheets.ts";
import { countedUses } from "../../state/uses.ts";
import { dayOf, today } from "./edge.ts";
import { fitnessAt, fitnessOn, type Standing } from "./fitness.ts";

/** One reading of a batch: where it stands and what it was. */
export interface UsedAt {
  batch: BatchState;
  entry: string;
  /** The line or the step, or the log itself. */
  at: string;
  kind: "weigh_in" | "step_done" | "heat_log";
  happened_at: string;
  /** When it was read last: a log takes hours. */
  until: string;
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
    weigh_ins.map((each) => ({ ...each, at: line, kind: "weigh_in" as const })),
  );
  const stepped = batch.steps.flatMap(({ step, done }) =>
    done.map((each) => ({ ...each, at: step, kind: "step_done" as const })),
  );
  // A sheet of an earlier version knows no logs.
  const logged = (batch.heat ?? []).map((each) => ({
    ...each,
    at: each.entry,
    kind: "heat_log" as const,
    happened_at: beganOf(each),
  }));
  return [...weighed, ...stepped, ...logged].flatMap((each) => {
    const { instrument, entry, at, kind, happened_at } = each;
    if (instrument === null) return [];
    const spanS = "rows" in each ? (each.rows?.span_s ?? 0) : 0;
    const until = spanS === 0 ? happened_at : later(happened_at, Math.ceil(spanS / 60));
    return [{ instrument, batch, entry, at, kind, happened_at, until }];
  });
}

/** When a log of temperatures began: corrected, it may have begun at another time than was first said. */
export function beganOf(log: Pick<HeatResult, "began_at" | "happened_at">): string {
  return log.began_at ?? log.happened_at;
}

/** A use of an instrument beside batches: packs weighed, a drill, the water in a vessel. */
export interface UsedElsewhere {
  kind: "fill_checked" | "drill_done" | "instrument_checked";
  subject: string;
  entry: string;
  happened_at: string;
  /** Where packs were weighed. */
  fill: FillCheck | null;
  /** The mean of a drill's weighing. */
  read: { shown: string; unit: string } | null;
}

/** All of them on the sheets of this phone, by instrument, the earliest first. */
const elsewhere = computed(() => {
  const found = new Map<string, UsedElsewhere[]>();
  const add = (instrument: string | null | undefined, use: UsedElsewhere) => {
    // A sheet of an earlier version does not say which instrument it was.
    if (instrument) found.set(instrument, [...(found.get(instrument) ?? []), use]);
  };
  const none = { fill: null, read: null };
  for (const { subject, state } of sheetsOf<LotState>("lot").value) {
    for (const fill of state.fills ?? []) {
      const { entry, happened_at } = fill;
      add(fill.instrument, { ...none, kind: "fill_checked", subject, entry, happened_at, fill });
    }
  }
  for (const { subject, state } of sheetsOf<SkillState>("skill").value) {
    for (const { entry, happened_at, weighing } of state.drills) {
      const read = weighing === null ? null : { shown: weighing.mean, unit: weighing.unit };
      const use = { ...none, kind: "drill_done" as const, subject, entry, happened_at, read };
      add(weighing?.instrument, use);
    }
  }
  for (const { subject, state } of sheetsOf<InstrumentState>("instrument").value) {
    for (const { entry, happened_at, check_scale } of state.checks ?? []) {
      add(check_scale, { ...none, kind: "instrument_checked", subject, entry, happened_at });
    }
  }
  for (const all of found.values()) all.sort((a, b) => TEXT_ORDER(a.happened_at, b.happened_at));
  return found;
});

/** Whether something in a batch was read with an instrument that was due for a check by then. */
export function wasDueIn(batch: BatchState): boolean {
  return readingsOf(batch).some(
    ({ instrument, happened_at }) => standingAt(instrument, happened_at).is === "due",
  );
}

/** The readings of an instrument on the batch sheets of this phone. */
export function usesOf(instrument: string): readonly UsedAt[] {
  return used.value.get(instrument) ?? [];
}

/** What it was used for beside batches, as far as this phone knows. */
export function usesElsewhere(instrument: string): readonly UsedElsewhere[] {
  return elsewhere.value.get(instrument) ?? [];
}

/** More may have been read with it than this phone has been told. */
export function mayKnowMore(): boolean {
  return isStillLoading.value;
}

/** The sheet of an instrument; null while this phone knows nothing about it. */
export function instrumentSheet(id: string): InstrumentState | null {
  return sheet<InstrumentState>(`instrument:${id}`).value?.state ?? null;
}

/**
 * Whether it may be relied on today. The readings on this phone and the server's count may each
 * know of some that the other does not; the larger one decides.
 */
export function standingOf(id: string, on = today()): Standing {
  const uses = [...usesOf(id), ...usesElsewhere(id)].map((each) => each.happened_at);
  return fitnessOn(instrumentSheet(id) ?? {}, on, uses, countedUses.value.get(id) ?? null);
}

/** Whether it might be relied on when something was read with it. */
export function standingAt(id: string, happened_at: string): Standing {
  const uses = [...usesOf(id), ...usesElsewhere(id)].map((each) => each.happened_at);
  return fitnessAt(instrumentSheet(id) ?? {}, { at: happened_at, on: dayOf(happened_at) }, uses);
}

/** The server's state with this phone's newer entries on top, where not all entries are held. */

import type { BatchState } from "../calc/batches.ts";
import type { DefinitionState, RecipeState } from "../calc/definitions.ts";
import type { Beside } from "../calc/folds.ts";
import type { PriceState } from "../calc/lot_prices.ts";
import type { DayLot, DayState } from "../calc/market.ts";
import type { LotState } from "../calc/stock.ts";
import { idIn, typeIn } from "../calc/subjects.ts";
import type { EntryRow, SheetRow } from "../store/rows.ts";
import { factOf, isUnderstood } from "./folding.ts";
import { isBeyond, isCounted } from "./held.ts";
import { batchOnTop } from "./on_top_batch.ts";
import { lotOnTop } from "./on_top_lot.ts";
import {
  type Beyond,
  fact,
  foldedAs,
  mergedFindings,
  mergedNotes,
  shifted,
} from "./on_top_parts.ts";

/** Lays entries on the state of a type whose folds may have to be fetched. */
export type OnTop = (subject: string, state: unknown, beyond: Beyond) => object;

let judgedHere: ReadonlyMap<string, OnTop> = new Map();

/** From here on entries are laid on sheets of these types so. */
export function takeInOnTop(judged: ReadonlyMap<string, OnTop>): void {
  judgedHere = judged;
}

/**
 * A state in the form the subject's fold gives; `beside` holds the states of what it leans on.
 */
export function onTop(
  subject: string,
  sheet: SheetRow,
  rows: readonly EntryRow[],
  beside: Beside,
): object {
  const beyond = beyondSheet(sheet, rows);
  const state: unknown = sheet.state; // the server's fold made it, of the same form
  switch (sheet.type) {
    case "lot":
      return lotOnTop(subject, state as LotState, beyond, beside);
    case "batch":
      return batchOnTop(subject, state as BatchState, beyond, beside);
    case "day":
      return dayOnTop(subject, state as DayState, beyond);
    case "recipe":
      return recipeOnTop(subject, state as RecipeState, beyond);
    case "price":
      return priceOnTop(subject, state as PriceState, beyond);
    default: {
      // Of an instrument, while no check must be judged, the checks of its sheet stay as they are.
      const judged = judgedHere.get(sheet.type) ?? null;
      if (judged !== null) return judged(subject, state, beyond);
      return definitionOnTop(subject, state as DefinitionState, beyond);
    }
  }
}

/**
 * A correction of an entry that is not held is left out: the sheet contains that entry, so the
 * correction alone would count it twice. It shows when the server has taken it in.
 */
function beyondSheet(sheet: SheetRow, rows: readonly EntryRow[]): Beyond {
  const held = new Map(rows.map((row) => [row.id, row]));
  const covered = new Map<string, EntryRow>();
  const extra: EntryRow[] = [];
  for (const row of rows) {
    if (!isBeyond(row, sheet) || !isUnderstood(row)) continue;
    const ancestors = ancestorsOf(row, held);
    if (ancestors === null) continue;
    extra.push(row);
    for (const named of ancestors) {
      if (isCounted(named, sheet)) covered.set(named.id, named);
    }
  }
  return { extra: extra.map(factOf), covered: [...covered.values()].map(factOf) };
}

/** What an entry corrects, up to the root; null where one of them is not held. */
function ancestorsOf(row: EntryRow, held: ReadonlyMap<string, EntryRow>): EntryRow[] | null {
  const ancestors: EntryRow[] = [];
  let named = row.corrects;
  while (named !== undefined && ancestors.length <= held.size) {
    const before = held.get(named);
    if (before === undefined) return null;
    ancestors.push(before);
    named = before.corrects;
  }
  return ancestors;
}

/** Fields in force go in as one definition; the extra entries fold on top of it (R49). */
export function definitionOnTop(
  subject: string,
  state: DefinitionState,
  beyond: Beyond,
): DefinitionState {
  const type = typeIn(subject);
  const body = { ...state.fields, [type]: idIn(subject) };
  const base =
    state.defined_by === null ? [] : [fact(state.defined_by, `${type}_defined`, body, 0)];
  const extra = beyond.extra.filter((each) => each.id !== state.defined_by);
  const made = foldedAs<DefinitionState>(subject, [...base, ...extra]);
  return {
    ...state,
    fields: { ...(state.defined_by === null ? state.fields : {}), ...made.fields },
    defined_by: state.defined_by ?? made.defined_by,
    changed_at: made.changed_at ?? state.changed_at,
    findings: mergedFindings(state.findings, made.findings, []),
    notes: mergedNotes(state.notes, made.notes),
  };
}

/** Versions never change, so those known go in as they were published (R50). */
function recipeOnTop(subject: string, state: RecipeState, beyond: Beyond): object {
  const base = state.versions.map((version, index) => ({
    ...fact(version.entry, "recipe_published", version.body, index),
    author: version.author,
    local_date: version.published_on,
  }));
  const made = foldedAs<RecipeState>(subject, [...base, ...beyond.extra]);
  return {
    ...made,
    findings: mergedFindings(state.findings, made.findings, []),
    notes: mergedNotes(state.notes, made.notes),
  };
}

function priceOnTop(subject: string, state: PriceState, beyond: Beyond): object {
  const made = foldedAs<PriceState>(subject, beyond.extra);
  return made.price === null ? state : { ...made, notes: mergedNotes(state.notes, made.notes) };
}

function dayOnTop(subject: string, state: DayState, beyond: Beyond): object {
  const before = foldedAs<DayState>(subject, beyond.covered);
  const after = foldedAs<DayState>(subject, [...beyond.covered, ...beyond.extra]);
  const codes = [...new Set([...state.lots, ...after.lots].map((lot) => lot.lot))].sort();
  return {
    ...state,
    lots: codes.map((code) => dayLot(code, state, before, after)),
    sold: shifted(state.sold, before.sold, after.sold),
    takings: shifted(state.takings, before.takings, after.takings),
    sales_count: state.sales_count + after.sales_count - before.sales_count,
    findings: mergedFindings(state.findings, after.findings, before.findings),
    notes: mergedNotes(state.notes, after.notes),
  };
}

function dayLot(code: string, state: DayState, before: DayState, after: DayState): DayLot {
  const [own, was, is] = [state, before, after].map((day) =>
    day.lots.find((lot) => lot.lot === code),
  );
  return {
    lot: code,
    unit: own?.unit ?? is?.unit ?? null,
    sold: shifted(own?.sold ?? "0", was?.sold ?? "0", is?.sold ?? "0") ?? "0",
    returned: shifted(own?.returned ?? "0", was?.returned ?? "0", is?.returned ?? "0") ?? "0",
    takings: shifted(
      own === undefined ? "0" : own.takings,
      was === undefined ? "0" : was.takings,
      is === undefined ? "0" : is.takings,
    ),
  };
}

/** Which fold adds up which type of subject, and what it is given. */
import { BATCH_FOLD, batchState } from "../calc/batches.ts";
import { DEFINITION_FOLD, definitionState, RECIPE_FOLD, recipeState } from "../calc/definitions.ts";
import { DAY_FOLD, dayState } from "../calc/market.ts";
import type { Fact } from "../calc/record.ts";
import { LOT_FOLD, lotState, PRICE_FOLD, priceState } from "../calc/stock.ts";
import { isKindName } from "../entries/links.ts";
import { lifted } from "../entries/upcast.ts";
import type { EntryRow } from "../store/rows.ts";

export interface Fold {
  /** Goes up with each change of the fold; another number than the server's: not compared. */
  fold: number;
  state(subject: string, facts: readonly Fact[]): object;
}

const DEFINITION: Fold = { fold: DEFINITION_FOLD, state: definitionState };

const FOLDS: ReadonlyMap<string, Fold> = new Map<string, Fold>([
  ["lot", { fold: LOT_FOLD, state: lotState }],
  ["price", { fold: PRICE_FOLD, state: priceState }],
  ["batch", { fold: BATCH_FOLD, state: batchState }],
  ["day", { fold: DAY_FOLD, state: dayState }],
  ["recipe", { fold: RECIPE_FOLD, state: recipeState }],
  ["cooperative", DEFINITION],
  ["place", DEFINITION],
  ["material", DEFINITION],
  ["source", DEFINITION],
  ["recipient", DEFINITION],
  ["instrument", DEFINITION],
]);

/** The fold of a subject's type; undefined where only the server adds up (`member`). */
export function foldOf(subject: string): Fold | undefined {
  return FOLDS.get(subject.slice(0, subject.indexOf(":")));
}

/** A subject's state from rows; null where the phone has no fold for it. */
export function folded(subject: string, rows: readonly EntryRow[]): object | null {
  return foldOf(subject)?.state(subject, rows.map(factOf)) ?? null;
}

/** An entry as a fold is given it, its body in today's form. */
export function factOf(row: EntryRow): Fact {
  const { entry } = row;
  const isKnown = isKindName(entry.kind);
  return {
    id: entry.id,
    kind: entry.kind,
    author: entry.author,
    device: entry.device,
    device_seq: entry.device_seq,
    happened_at: entry.happened_at,
    local_date: entry.local_date,
    seq: row.seq,
    body: isKnown ? lifted(entry.kind, entry.version, entry.body) : entry.body,
  };
}

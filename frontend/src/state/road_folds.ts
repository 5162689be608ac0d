/**
 * The folds that the road from delivery to buyer needs, and which sheets ask for more: what checks
 * of instruments, fill checks and logs of temperature say, practice and costs are a part of the app
 * of its own (judging.ts).
 */

import { BATCH_FOLD, batchState } from "../calc/batches.ts";
import {
  DEFINITION_FOLD,
  DEFINITION_TYPES,
  definitionState,
  INSTRUMENT_FOLD,
  RECIPE_FOLD,
  recipeState,
} from "../calc/definitions.ts";
import type { Fold } from "../calc/folds.ts";
import type { InstrumentState } from "../calc/instruments.ts";
import { PRICE_FOLD, priceState } from "../calc/lot_prices.ts";
import { DAY_FOLD, dayState } from "../calc/market.ts";
import type { Fact } from "../calc/record.ts";
import { LOT_FOLD, lotState } from "../calc/stock.ts";
import { typeIn } from "../calc/subjects.ts";

/** A fold and its number, by type of subject. */
export type Folds = ReadonlyMap<string, readonly [Fold, number]>;

const JUDGED_TYPES: readonly unknown[] = ["skill", "cost", "rates", "asked"];
const JUDGED_KINDS: readonly unknown[] = ["heat_log", "fill_checked", "instrument_checked"];

/** Without any entry that must be judged these give what all folds give. */
export const ROAD_FOLDS: Folds = new Map<string, readonly [Fold, number]>([
  ...DEFINITION_TYPES.map((type) => [type, [definitionState, DEFINITION_FOLD]] as const),
  ["instrument", [uncheckedState, INSTRUMENT_FOLD]],
  ["recipe", [recipeState, RECIPE_FOLD]],
  ["lot", [lotState, LOT_FOLD]],
  ["price", [priceState, PRICE_FOLD]],
  ["batch", [batchState, BATCH_FOLD]],
  ["day", [dayState, DAY_FOLD]],
]);

/** Whether a sheet is right only with all folds: by its type, or by one of these entries. */
export function mustBeJudged(
  subject: string,
  entries: readonly { readonly kind: string; readonly body: object }[],
): boolean {
  if (JUDGED_TYPES.includes(typeIn(subject))) return true;
  return entries.some(
    ({ kind, body }) =>
      // A correction or void of such an entry stands for it where it is not here.
      JUDGED_KINDS.includes(kind) || ("of_kind" in body && JUDGED_KINDS.includes(body.of_kind)),
  );
}

function uncheckedState(subject: string, facts: Iterable<Fact>): InstrumentState {
  return { ...definitionState(subject, facts), checks: [], corrections: [], doubts: [] };
}

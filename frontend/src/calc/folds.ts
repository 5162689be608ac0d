/** Which fold makes the sheet of which type of subject, under which number. */

import { BATCH_FOLD, type BatchState, batchState } from "./batches.ts";
import { objectIn, textIn } from "./bodies.ts";
import {
  DEFINITION_FOLD,
  type DefinitionState,
  definitionState,
  RECIPE_FOLD,
  type RecipeState,
  recipeState,
} from "./definitions.ts";
import { DAY_FOLD, type DayState, dayState } from "./market.ts";
import type { Fact } from "./record.ts";
import { SKILL_FOLD, type SkillState, skillState } from "./skills.ts";
import {
  LOT_FOLD,
  type LotState,
  lotState,
  PRICE_FOLD,
  type PriceState,
  priceState,
} from "./stock.ts";
import { typeIn } from "./subjects.ts";

export type State =
  | DefinitionState
  | RecipeState
  | LotState
  | PriceState
  | BatchState
  | DayState
  | SkillState;
export type Fold = (subject: string, facts: Iterable<Fact>) => State;

export const DEFINITION_TYPES: readonly string[] = [
  "cooperative",
  "place",
  "material",
  "source",
  "recipient",
  "instrument",
];

/**
 * A number goes up when its fold gives another state for the same entries: older sheets are then
 * stale by themselves.
 */
export const FOLDS: ReadonlyMap<string, readonly [Fold, number]> = new Map([
  ...DEFINITION_TYPES.map((type) => entryOf(type, definitionState, DEFINITION_FOLD)),
  entryOf("recipe", recipeState, RECIPE_FOLD),
  entryOf("lot", lotState, LOT_FOLD),
  entryOf("price", priceState, PRICE_FOLD),
  entryOf("batch", batchState, BATCH_FOLD),
  entryOf("day", dayState, DAY_FOLD),
  entryOf("skill", skillState, SKILL_FOLD),
]);

/** The state of any subject `type:id` from all entries about it. Throws for a type without a fold. */
export function foldSubject(subject: string, facts: Iterable<Fact>): State {
  return foldOf(subject)[0](subject, facts);
}

/** The number of the fold of a subject's type. Throws for a type without one. */
export function foldNumber(subject: string): number {
  return foldOf(subject)[1];
}

/**
 * Whether nothing more is expected, as far as can be said without a clock: of a lot that was made
 * and stands nowhere any more, of a finished batch; of a day and of a
 * member's practice never, of a definition always.
 */
export function isFinished(subject: string, state: object): boolean {
  const known = objectIn({ state }, "state") ?? {};
  switch (typeIn(subject)) {
    case "lot":
      return (
        textIn(known, "maker") !== null && Object.keys(objectIn(known, "places") ?? {}).length === 0
      );
    case "batch":
      return known.is_finished === true;
    case "day":
    case "skill":
      return false;
    default:
      return true;
  }
}

function entryOf(type: string, fold: Fold, number: number): [string, readonly [Fold, number]] {
  return [type, [fold, number]];
}

function foldOf(subject: string): readonly [Fold, number] {
  const known = FOLDS.get(typeIn(subject));
  if (known === undefined) throw new RangeError(`no fold for ${subject}`);
  return known;
}

/** Which fold makes the sheet of which type of subject, under which number. */

import { ASKED_FOLD, type AskedState, askedState } from "./asked_prices.ts";
import { BATCH_FOLD, type BatchState, batchState } from "./batches.ts";
import { type Body, objectIn, textIn } from "./bodies.ts";
import {
  DEFINITION_FOLD,
  DEFINITION_TYPES,
  type DefinitionState,
  definitionState,
  INSTRUMENT_FOLD,
  RECIPE_FOLD,
  type RecipeState,
  recipeState,
} from "./definitions.ts";
import { failedScales, fillChecks } from "./fill_trust.ts";
import { batchHeat } from "./heat_holds.ts";
import { type InstrumentState, instrumentState } from "./instruments.ts";
import { PRICE_FOLD, type PriceState, priceState } from "./lot_prices.ts";
import { DAY_FOLD, type DayState, dayState } from "./market.ts";
import {
  COST_FOLD,
  type CostState,
  costState,
  RATES_FOLD,
  type RatesState,
  ratesState,
} from "./money.ts";
import type { Fact } from "./record.ts";
import { SKILL_FOLD, type SkillState, skillState } from "./skills.ts";
import { type FillsOf, LOT_FOLD, type LotState, lotState } from "./stock.ts";
import { typeIn } from "./subjects.ts";
import { NOTHING_BESIDE } from "./trusted.ts";

export type State =
  | DefinitionState
  | InstrumentState
  | RecipeState
  | LotState
  | PriceState
  | BatchState
  | DayState
  | SkillState
  | CostState
  | RatesState
  | AskedState;
/** Sheets of other subjects that its entries lean on, by subject. */
export type Beside = ReadonlyMap<string, object>;
export type Fold = (subject: string, facts: Iterable<Fact>, beside: Beside) => State;

/** Sheets of these types are leaned on: by which types, and by which parts of their state. */
export const LEANED_ON: ReadonlyMap<
  string,
  { readonly types: readonly string[]; readonly parts: readonly string[] }
> = new Map([["instrument", { types: ["batch", "lot"], parts: ["corrections", "doubts"] }]]);

const judgedFills: FillsOf = (standing, code, scales) => {
  const fills = fillChecks(standing, code, scales);
  return [fills, failedScales(fills)];
};

/**
 * A number goes up when its fold gives another state for the same entries: older sheets are then
 * stale by themselves.
 */
export const FOLDS: ReadonlyMap<string, readonly [Fold, number]> = new Map([
  ...DEFINITION_TYPES.map((type) => entryOf(type, definitionState, DEFINITION_FOLD)),
  entryOf("instrument", instrumentState, INSTRUMENT_FOLD),
  entryOf("recipe", recipeState, RECIPE_FOLD),
  entryOf("lot", (...about) => lotState(...about, judgedFills), LOT_FOLD),
  entryOf("price", priceState, PRICE_FOLD),
  entryOf("batch", (...about) => batchState(...about, batchHeat), BATCH_FOLD),
  entryOf("day", dayState, DAY_FOLD),
  entryOf("skill", skillState, SKILL_FOLD),
  entryOf("cost", costState, COST_FOLD),
  entryOf("rates", ratesState, RATES_FOLD),
  entryOf("asked", askedState, ASKED_FOLD),
]);

/**
 * The state of any subject `type:id` from all entries about it, and from the sheets they lean on
 * as far as there are any. Throws for a type without a fold.
 */
export function foldSubject(
  subject: string,
  facts: Iterable<Fact>,
  beside: Beside = NOTHING_BESIDE,
): State {
  return foldOf(subject)[0](subject, facts, beside);
}

/**
 * Types of the subjects to fold anew when this sheet becomes another; none if what they lean on
 * stays as it was.
 */
export function leaningTypes(
  subject: string,
  before: object | null,
  after: object,
): readonly string[] {
  const leanedOn = LEANED_ON.get(typeIn(subject));
  if (leanedOn === undefined) return [];
  const was: Body = { ...before };
  const is: Body = { ...after };
  const isOther = leanedOn.parts.some(
    (part) => JSON.stringify(was[part]) !== JSON.stringify(is[part]),
  );
  return isOther ? leanedOn.types : [];
}

/** The number of the fold of a subject's type. Throws for a type without one. */
export function foldNumber(subject: string): number {
  return foldOf(subject)[1];
}

/**
 * Whether nothing more is expected, as far as can be said without a clock: of a lot that was made
 * and stands nowhere any more, of a finished batch; of a day, an instrument and a member's practice
 * never, of another definition always.
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
    case "instrument":
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

/** A recipe as it is being written: all that is typed, and the version it becomes. */
import { itemsIn, textIn } from "../../../calc/bodies.ts";
import { parseDecimal } from "../../../calc/numbers.ts";
import { typedNumber } from "../../../parts/typing.ts";
import type { Body, Json } from "../../../state/types.ts";
import type { Fields } from "../changes.ts";
import {
  lifeField,
  lifeTyped,
  numberField,
  quantityField,
  quantityTyped,
  textsOf,
  wordsField,
} from "../typed.ts";
import {
  BLANK_LINE,
  BLANK_PACK,
  BLANK_STEP,
  type LineTyped,
  lineBody,
  lineTyped,
  type PackTyped,
  type PublishedAmount,
  packBody,
  packTyped,
  type StepTyped,
  stepBody,
  stepTyped,
} from "./items.ts";

/** The whole recipe as typed. `based_on` is the version it began from, "" for a new recipe. */
export interface RecipeTyped {
  [field: string]: Json;
  recipe: string;
  based_on: string;
  name: string;
  product: string;
  makes: string;
  makes_unit: string;
  packs: string;
  target_solids_percent: string;
  loss_percent: string;
  does_not_scale: string;
  life_sort: string;
  life_length: string;
  life_unit: string;
  note: string;
  lines: LineTyped[];
  steps: StepTyped[];
  pack_sizes: PackTyped[];
}

const RECIPE_TEXTS = [
  "name",
  "product",
  "target_solids_percent",
  "loss_percent",
  "does_not_scale",
  "note",
];

/** A recipe nobody has published yet. */
export function blankRecipe(recipe: string): RecipeTyped {
  return {
    recipe,
    based_on: "",
    name: "",
    product: "",
    makes: "",
    makes_unit: "kg",
    packs: "",
    target_solids_percent: "",
    loss_percent: "",
    does_not_scale: "",
    life_sort: "",
    life_length: "",
    life_unit: "months",
    note: "",
    lines: [],
    steps: [],
    pack_sizes: [],
  };
}

/** A draft of an older app with the fields that came since. */
export function wholeDraft(typed: RecipeTyped): RecipeTyped {
  return {
    ...typed,
    lines: typed.lines.map((line) => ({ ...BLANK_LINE, ...line })),
    steps: typed.steps.map((step) => ({ ...BLANK_STEP, ...step })),
    pack_sizes: typed.pack_sizes.map((pack) => ({ ...BLANK_PACK, ...pack })),
  };
}

/** A published version as the beginning of the next one. */
export function recipeTyped(recipe: string, version: { entry: string; body: Fields }): RecipeTyped {
  const { body } = version;
  const packs = body.packs;
  return {
    ...blankRecipe(recipe),
    based_on: version.entry,
    ...textsOf(body, RECIPE_TEXTS),
    ...quantityTyped(body, "makes", "kg"),
    ...lifeTyped(body),
    packs: typeof packs === "number" ? String(packs) : "",
    lines: itemsIn(body, "lines").map(lineTyped),
    steps: itemsIn(body, "steps").map(stepTyped),
    pack_sizes: itemsIn(body, "pack_sizes").map(packTyped),
  };
}

/** The version this becomes; `amounts` are the lines' amounts, converted where they had to be. */
export function versionBody(
  typed: RecipeTyped,
  given: { number: number; amounts: ReadonlyMap<string, PublishedAmount> },
): Body {
  const packs = Number(typed.packs);
  return {
    recipe: typed.recipe,
    number: given.number,
    name: typed.name.trim(),
    product: typed.product,
    ...quantityField(typed, "makes"),
    ...(Number.isSafeInteger(packs) && packs > 0 ? { packs } : {}),
    lines: typed.lines.map((line) => lineBody(line, given.amounts.get(line.line))),
    steps: typed.steps.map(stepBody),
    ...numberField(typed, "target_solids_percent"),
    ...numberField(typed, "loss_percent"),
    ...(typed.pack_sizes.length === 0 ? {} : { pack_sizes: typed.pack_sizes.map(packBody) }),
    ...lifeField(typed),
    ...wordsField(typed, "does_not_scale"),
    ...wordsField(typed, "note"),
  };
}

/** Whether more than nothing is typed. */
export function isSome(typed: string): boolean {
  const number = typedNumber(typed);
  return number !== null && !parseDecimal(number).isZero();
}

/** The next whole number as the id of a line or step: never one that stands there. */
export function nextId(ids: readonly string[]): string {
  const numbers = ids.map((id) => (/^\d{1,6}$/.test(id) ? Number(id) : 0));
  return String(Math.max(0, ...numbers) + 1);
}

/** The list with one item a place higher. */
export function movedUp<Item>(items: readonly Item[], at: number): Item[] {
  const [before, item] = [items[at - 1], items[at]];
  if (before === undefined || item === undefined) return [...items];
  return [...items.slice(0, at - 1), item, before, ...items.slice(at + 1)];
}

/** The number after the highest that was published. */
export function nextVersionNumber(versions: readonly { number: number }[]): number {
  return Math.max(0, ...versions.map((version) => version.number)) + 1;
}

/** A text of an unknown body, "" where there is none. */
export function textOf(body: Fields, name: string): string {
  return textIn(body, name) ?? "";
}

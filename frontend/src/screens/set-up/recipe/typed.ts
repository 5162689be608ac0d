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

/** A line as typed; below and above are in the unit it will be published in. */
export interface LineTyped {
  [field: string]: Json;
  line: string;
  material: string;
  amount: string;
  amount_unit: string;
  below: string;
  above: string;
  soluble_percent: string;
  note: string;
}

/** A step as typed; `measures` "" checks nothing. */
export interface StepTyped {
  [field: string]: Json;
  step: string;
  says: string;
  measures: string;
  line: string;
  unit: string;
  low: string;
  high: string;
  set_by: string;
  caution: string;
  /** The acid an acidity is reckoned as. */
  acid: string;
  /** Lines that count as salt or sugar, each with its percent: "3:100 5:62". */
  counted: string;
}

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
  life_sort: string;
  life_length: string;
  life_unit: string;
  note: string;
  lines: LineTyped[];
  steps: StepTyped[];
}

export const BLANK_LINE: LineTyped = {
  line: "",
  material: "",
  amount: "",
  amount_unit: "",
  below: "",
  above: "",
  soluble_percent: "",
  note: "",
};

export const BLANK_STEP: StepTyped = {
  step: "",
  says: "",
  measures: "",
  line: "",
  unit: "",
  low: "",
  high: "",
  set_by: "",
  caution: "",
  acid: "",
  counted: "",
};

const LINE_TEXTS = ["line", "material", "below", "above", "soluble_percent", "note"];

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
    life_sort: "",
    life_length: "",
    life_unit: "months",
    note: "",
    lines: [],
    steps: [],
  };
}

/** A published version as the beginning of the next one. */
export function recipeTyped(recipe: string, version: { entry: string; body: Fields }): RecipeTyped {
  const { body } = version;
  const packs = body.packs;
  return {
    ...blankRecipe(recipe),
    based_on: version.entry,
    ...textsOf(body, ["name", "product", "target_solids_percent", "note"]),
    ...quantityTyped(body, "makes", "kg"),
    ...lifeTyped(body),
    packs: typeof packs === "number" ? String(packs) : "",
    lines: itemsIn(body, "lines").map(lineTyped),
    steps: itemsIn(body, "steps").map((step) => ({
      ...BLANK_STEP,
      ...textsOf(step, Object.keys(BLANK_STEP)),
      counted: itemsIn(step, "counts")
        .map((each) => `${textOf(each, "line")}:${textOf(each, "percent")}`)
        .join(" "),
    })),
  };
}

function lineTyped(line: Fields): LineTyped {
  return {
    ...BLANK_LINE,
    ...textsOf(line, LINE_TEXTS),
    ...quantityTyped(line, "amount", "g"),
  };
}

/** A line's amount as it will be published, and the words about where it comes from. */
export interface PublishedAmount {
  amount: string;
  unit: string;
  note: string | null;
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
    ...lifeField(typed),
    ...wordsField(typed, "note"),
  };
}

function lineBody(line: LineTyped, published: PublishedAmount | undefined): Body {
  const notes = [line.note.trim(), published?.note ?? ""].filter((words) => words !== "");
  return {
    line: line.line,
    material: line.material,
    amount: { amount: published?.amount ?? "", unit: published?.unit ?? line.amount_unit },
    ...numberField(line, "below"),
    ...numberField(line, "above"),
    ...numberField(line, "soluble_percent"),
    ...(notes.length === 0 ? {} : { note: notes.join(" ") }),
  };
}

/** Limits belong to a check; without one they are not published. */
function stepBody(step: StepTyped): Body {
  const isChecked = step.measures !== "";
  return {
    step: step.step,
    says: step.says.trim(),
    ...(isChecked
      ? {
          measures: step.measures,
          ...wordsField(step, "line"),
          ...wordsField(step, "unit"),
          ...numberField(step, "low"),
          ...numberField(step, "high"),
          ...wordsField(step, "set_by"),
          ...(step.measures === "acidity" ? wordsField(step, "acid") : {}),
          ...countsField(step),
        }
      : {}),
    ...wordsField(step, "caution"),
  };
}

function countsField(step: StepTyped): Body {
  const isWeighed = step.measures === "salt_weighed" || step.measures === "sugar_weighed";
  if (!isWeighed || step.counted === "") return {};
  return {
    counts: step.counted.split(" ").map((each) => {
      const [line = "", percent = ""] = each.split(":");
      return { line, percent };
    }),
  };
}

/** The counted lines with one more or fewer: sugar by its soluble solids, salt as a whole. */
export function toggledCount(step: StepTyped, line: LineTyped): string {
  const all = step.counted.split(" ").filter(Boolean);
  const others = all.filter((each) => each.split(":")[0] !== line.line);
  if (others.length < all.length) return others.join(" ");
  const solids = step.measures === "sugar_weighed" ? typedNumber(line.soluble_percent) : null;
  return [...others, `${line.line}:${solids ?? "100"}`].join(" ");
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

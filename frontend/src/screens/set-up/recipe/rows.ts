/** A recipe as plain rows with our own columns: what a file of recipes holds. */
import { itemsIn, quantityIn } from "../../../calc/bodies.ts";
import type { Fields } from "../changes.ts";
import type { LineTyped, PackTyped, StepTyped } from "./items.ts";
import { type RecipeTyped, recipeTyped } from "./typed.ts";

/** The columns that only a line, a step or the recipe itself has. */
const OF_LINES = [
  "percent",
  "percent_of",
  "is_base",
  "state",
  "yield_percent",
  "yield_by",
  "yield_source",
  "prepared_as",
  "below",
  "above",
  "level",
  "soluble_percent",
] as const;
const OF_STEPS = [
  "measures",
  "acid",
  "counted",
  "line",
  "minutes",
  "low",
  "high",
  "set_by",
  "caution",
] as const;
const OF_RECIPES = [
  "loss_percent",
  "target_solids_percent",
  "life_sort",
  "life_length",
  "life_unit",
  "does_not_scale",
] as const;

/** The columns a line, step or recipe has under the same name in a row and in the form. */
export const LINE_COLUMNS = [...OF_LINES, "note"] as const;
export const STEP_COLUMNS = [...OF_STEPS, "level"] as const;
export const HEAD_COLUMNS = ["packs", ...OF_RECIPES, "note"] as const;

/** In the order of the file. A row is of one part of a recipe; cells that say nothing are empty. */
export const COLUMNS = [
  "recipe",
  "part",
  "id",
  "what",
  "amount",
  "unit",
  "packs",
  "word",
  ...OF_LINES,
  ...OF_STEPS,
  "limit_unit",
  ...OF_RECIPES,
  "note",
  "version",
] as const;

export type Column = (typeof COLUMNS)[number];
export type Row = Readonly<Partial<Record<Column, string>>>;
export type Part = "recipe" | "pack" | "line" | "step";
export const PARTS: readonly Part[] = ["recipe", "pack", "line", "step"];

/** A version to write down. */
export interface WrittenVersion {
  entry: string;
  number: number;
  body: Fields;
}

/** The rows of one version; `nameOf` is the name of a material by its id. */
export function rowsOf(version: WrittenVersion, nameOf: (id: string) => string): Row[] {
  const typed = recipeTyped("", version);
  const amounts = itemsIn(version.body, "lines").map((line) => quantityIn(line, "amount"));
  const rows: Row[] = [
    headRow(typed, version.number, nameOf),
    ...typed.pack_sizes.map((pack) => packRow(pack, nameOf)),
    ...typed.lines.map((line, at) => lineRow(line, amounts[at] ?? null, nameOf)),
    ...typed.steps.map(stepRow),
  ];
  return rows.map((row) => told({ recipe: typed.name, ...row }));
}

function headRow(typed: RecipeTyped, version: number, nameOf: (id: string) => string): Row {
  return {
    part: "recipe",
    what: nameOf(typed.product),
    amount: typed.makes,
    unit: typed.makes_unit,
    ...picked(typed, HEAD_COLUMNS),
    // Without a kind of date there is no rule, and months of nothing say nothing.
    life_unit: typed.life_sort === "" ? "" : typed.life_unit,
    version: String(version),
  };
}

function packRow(pack: PackTyped, nameOf: (id: string) => string): Row {
  const { size, net, net_unit, word, packaging } = pack;
  return {
    part: "pack",
    id: size,
    what: packaging === "" ? "" : nameOf(packaging),
    amount: net,
    unit: net_unit,
    word,
  };
}

/** The amount of a share is told too; whoever reads the row again takes the share. */
function lineRow(
  line: LineTyped,
  amount: { amount: string; unit: string } | null,
  nameOf: (id: string) => string,
): Row {
  return {
    part: "line",
    id: line.line,
    what: nameOf(line.material),
    amount: amount?.amount ?? "",
    unit: amount?.unit ?? "",
    ...picked(line, LINE_COLUMNS),
  };
}

function stepRow(step: StepTyped): Row {
  return {
    part: "step",
    id: step.step,
    what: step.says,
    limit_unit: step.unit,
    ...picked(step, STEP_COLUMNS),
  };
}

function picked(typed: Readonly<Record<string, unknown>>, columns: readonly Column[]): Row {
  return Object.fromEntries(
    columns.map((column) => [column, typeof typed[column] === "string" ? typed[column] : ""]),
  );
}

/** Only the cells that say something, in the order of the columns. */
function told(row: Row): Row {
  return Object.fromEntries(
    COLUMNS.flatMap((column) => {
      const cell = row[column] ?? "";
      return cell === "" ? [] : [[column, cell]];
    }),
  );
}

/** The text of a file being brought in, what can be read of it, and what becomes of each recipe. */
import { parseBody } from "../../../entries/parse.ts";
import { isRefusal, sentence } from "../../../entries/refusals.ts";
import { folded } from "../../../parts/Choices.tsx";
import { draft } from "../../../state/drafts.ts";
import { materials, type Recipe, recipes } from "../../../state/stock.ts";
import { fieldWords } from "../../../text/refusals.ts";
import { newId } from "../../common/edge.ts";
import { rowsIn, type Wrong } from "./file_text.ts";
import type { PublishedAmount } from "./items.ts";
import { publishedAmounts } from "./publishing.ts";
import { type ReadFile, type ReadRecipe, recipesIn } from "./reading.ts";
import type { Part } from "./rows.ts";
import { type RecipeTyped, versionBody } from "./typed.ts";
import { openDraft, recipeDrafts } from "./use_recipe.ts";

const AS_MADE = 1; // the version of recipe_published that a form makes

const ANY_AMOUNT: PublishedAmount = { amount: "1", unit: "g", note: null };

/** All that can be said of a text. */
export function readImport(text: string): ReadFile {
  const { rows, wrong } = rowsIn(text);
  const found = recipesIn(rows, idsOf);
  const told = [...wrong, ...found.wrong];
  const bad = wrongNumbers(told);
  const refused = found.recipes.flatMap((each) =>
    wrongRows(each, bad) > 0 ? [] : refusalOf(each),
  );
  return { ...found, wrong: [...told, ...refused].sort((a, b) => a.number - b.number) };
}

/** The ids of the materials that are called so, whatever its capitals and accents. */
function idsOf(name: string): string[] {
  return materials.value
    .filter((each) => !each.is_retired && folded(each.name.trim()) === folded(name.trim()))
    .map(({ id }) => id);
}

/** The rows in which something is wrong. */
export function wrongNumbers(wrong: readonly Wrong[]): ReadonlySet<number> {
  return new Set(wrong.map(({ number }) => number));
}

/** How many rows of a recipe are to be put right, of all that are. */
export function wrongRows(recipe: ReadRecipe, bad: ReadonlySet<number>): number {
  return new Set(
    Object.values(recipe.rows)
      .flat()
      .filter((each) => bad.has(each)),
  ).size;
}

/** What an entry would refuse, said of the row and column it stands in. */
function refusalOf(recipe: ReadRecipe): Wrong[] {
  const typed = { ...recipe.typed, recipe: "imported" };
  const body = versionBody(typed, { number: 1, amounts: someAmounts(typed) });
  const parsed = parseBody("recipe_published", AS_MADE, body);
  if (!isRefusal(parsed)) return [];
  const { field } = parsed;
  const [, list = "", at = "0"] = /^(\w+)\[(\d+)\]/.exec(field) ?? [];
  const parts: Record<string, Part> = { lines: "line", steps: "step", pack_sizes: "pack" };
  const number = recipe.rows[parts[list] ?? "recipe"][Number(at)] ?? 1;
  return [{ number, column: columnOf(field), sentence: sentence(parsed, fieldWords(field)) }];
}

/** A share whose amount cannot follow from the others yet has any: the form says what is missing. */
function someAmounts(typed: RecipeTyped): Map<string, PublishedAmount> {
  const any = typed.lines.map(({ line }) => [line, ANY_AMOUNT] as const);
  return new Map([...any, ...publishedAmounts(typed)]);
}

function columnOf(field: string): string {
  const COLUMN: Record<string, string> = { name: "recipe", product: "what", makes: "amount" };
  const last = field.split(".").at(-1) ?? field;
  const groups: Record<string, string> = {
    "yields.percent": "yield_percent",
    "yields.source": "yield_source",
    "yields.prepared_as": "prepared_as",
    "life.length": "life_length",
  };
  const group = Object.keys(groups).find((end) => field.endsWith(end));
  if (group !== undefined) return groups[group] ?? last;
  return COLUMN[last] ?? (last === "says" || last === "material" ? "what" : last);
}

/** The recipe here of the name of one in the file. */
export function sameNamed(recipe: ReadRecipe): Recipe | null {
  return recipes.value.find((each) => folded(each.name.trim()) === named(recipe)) ?? null;
}

function named(recipe: ReadRecipe): string {
  return folded(recipe.name.trim());
}

/** Where the draft is written, or null where another draft stands there already. */
export async function openImported(recipe: ReadRecipe): Promise<string | null> {
  const here = sameNamed(recipe);
  const drafts = await recipeDrafts();
  if (here === null && drafts.some(({ name }) => folded(name.trim()) === named(recipe)))
    return null;
  const param = here?.id ?? newId();
  const typed: RecipeTyped = {
    ...recipe.typed,
    recipe: param,
    based_on: here?.latest.entry ?? "",
    ...(here === null ? {} : { name: here.name }),
  };
  return (await openDraft(param, typed)) ? `/set-up/recipes/${param}` : null;
}

/** The form of a new material with this name in it, unless one is half filled already. */
export async function beginMaterial(missing: ReadFile["missing"][number]): Promise<string> {
  const kept = draft<{
    id: string;
    seen: null;
    form: { name: string; sort: string };
  }>("set-up/material/new");
  const sorts: Partial<Record<Part, string>> = { recipe: "product", pack: "packaging" };
  if ((await kept.load()) === null) {
    const form = { name: missing.name, sort: sorts[missing.part] ?? "ingredient" };
    kept.save({ id: newId(), seen: null, form });
  }
  return "/set-up/materials/new";
}

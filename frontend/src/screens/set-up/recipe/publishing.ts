/** From what is typed to the version it becomes: what is still missing, then the one entry. */
import { KINDS } from "../../../entries/kinds.ts";
import { parseBody } from "../../../entries/parse.ts";
import { isRefusal } from "../../../entries/refusals.ts";
import { record } from "../../../state/record.ts";
import { nameOf } from "../../../state/stock.ts";
import type { Body, Saved } from "../../../state/types.ts";
import { amountWords } from "../../../text/numbers.ts";
import { LINE, RECIPE, RECIPE_MISSING } from "../../../text/set_up_recipe.ts";
import { densityTable } from "../../common/density.ts";
import type { Hindrance } from "../../common/sentences.ts";
import { lifeMissing } from "../typed.ts";
import type { LineTyped, PublishedAmount } from "./items.ts";
import { type AmountOfLine, amountsOf } from "./shares.ts";
import { isSome, nextVersionNumber, type RecipeTyped, versionBody } from "./typed.ts";
import { lineMaterial, type RecipeAtWork } from "./use_recipe.ts";

/** The number the next version gets. */
export function nextNumber(recipe: RecipeAtWork): number {
  return nextVersionNumber(recipe.published?.versions ?? []);
}

/** The version as it would be published now; lines that are not complete have no amount. */
export function bodyNow(recipe: RecipeAtWork): Body {
  return versionBody(recipe.typed, {
    number: nextNumber(recipe),
    amounts: publishedAmounts(recipe.typed),
  });
}

/** The amounts of the lines that have one, by line. */
export function publishedAmounts(typed: RecipeTyped): Map<string, PublishedAmount> {
  const found = amountsNow(typed);
  return new Map(
    typed.lines.flatMap((line) => {
      const amount = publishedAmount(line, found.get(line.line));
      return amount === null ? [] : [[line.line, amount] as const];
    }),
  );
}

/** By line, with what this phone knows of materials and densities. */
export function amountsNow(typed: RecipeTyped): ReadonlyMap<string, AmountOfLine> {
  return amountsOf(typed, lineMaterial, densityTable.value);
}

function publishedAmount(line: LineTyped, found: AmountOfLine | undefined): PublishedAmount | null {
  if (found?.is !== "ready") return null;
  const { amount, unit, by } = found;
  if (by === null) return { amount, unit, note: null };
  const written = amountWords(line.amount, line.amount_unit);
  return { amount, unit, note: LINE.measured(written, by.found.row.source) };
}

/** The first open thing, or null when the version can be published. */
export function missingOf(typed: RecipeTyped): Hindrance | null {
  if (typed.name.trim() === "") return { field: "name", sentence: RECIPE_MISSING.name };
  if (typed.product === "") return { field: "product", sentence: RECIPE_MISSING.product };
  if (!isSome(typed.makes)) return { field: "makes", sentence: RECIPE_MISSING.makes };
  if (typed.lines.length === 0) return { field: "lines", sentence: RECIPE_MISSING.lines };
  const amounts = amountsNow(typed);
  for (const line of typed.lines) {
    const sentence = lineMissing(line, amounts.get(line.line));
    if (sentence !== null) return { field: "lines", sentence };
  }
  if (typed.steps.some((step) => step.says.trim() === "")) {
    return { field: "steps", sentence: RECIPE_MISSING.step };
  }
  if (typed.pack_sizes.some((pack) => !isSome(pack.net))) {
    return { field: "pack_sizes", sentence: RECIPE_MISSING.pack };
  }
  return lifeMissing(typed);
}

/** What a line lacks, in words; null for a complete one. */
export function lineMissing(line: LineTyped, found: AmountOfLine | undefined): string | null {
  const name = nameOf("material", line.material);
  if (line.prepared_as.trim() !== "" && !isSome(line.yield_percent)) {
    return RECIPE_MISSING.yields(name);
  }
  if (found === undefined || found.is === "ready") return null;
  if (found.is === "loading") return RECIPE.loading;
  if (found.what === "material") return RECIPE_MISSING.line_material;
  return RECIPE_MISSING[found.what](name);
}

/**
 * Whether a version holds what this app does not know: a version made here from it would lose that
 * (R91). Every version was read by the table of its own app, so a refusal is a newer table's.
 */
export function isOfNewerApp(version: Body): boolean {
  return isRefusal(parseBody("recipe_published", KINDS.recipe_published.version, version));
}

/** Whether a line's amount rests on the density table. */
export function needsDensity(typed: RecipeTyped): boolean {
  return [...amountsOf(typed, lineMaterial, null).values()].some(({ is }) => is === "loading");
}

/** The one entry; a version never changes afterwards. */
export function publish(recipe: RecipeAtWork): Promise<Saved> {
  return record("recipe_published", bodyNow(recipe));
}

/** What the version being written changes against the latest one, one sentence each. */
import { objectIn, textIn } from "../../../calc/bodies.ts";
import { Part } from "../../../parts/Plain.tsx";
import { nameOf } from "../../../state/stock.ts";
import { amountWords, figure } from "../../../text/numbers.ts";
import { CHECKS, DIFFERS, RECIPE } from "../../../text/set_up_recipe.ts";
import type { Fields } from "../changes.ts";
import { valueWords } from "../values.ts";
import { type Difference, differences } from "./differences.ts";
import { bodyNow } from "./publishing.ts";
import type { RecipeAtWork } from "./use_recipe.ts";

const LIMITS = ["below", "above", "low", "high"];

/** Nothing for a first version. */
export function Differences({ recipe }: { recipe: RecipeAtWork }) {
  const latest = recipe.published?.latest;
  if (latest === undefined) return null;
  const found = differences(latest.body, bodyNow(recipe));
  return (
    <Part title={RECIPE.changes(figure(String(latest.number)))}>
      {found.length === 0 && <p class="second">{RECIPE.no_change}</p>}
      <ul class="differences">
        {found.map((each) => (
          <li key={JSON.stringify(each)}>{words(each)}</li>
        ))}
      </ul>
    </Part>
  );
}

function words(difference: Difference): string {
  if (difference.of === "recipe") {
    const { field, from, to } = difference;
    return DIFFERS.changed(DIFFERS.fields[field] ?? field, shown(field, from), shown(field, to));
  }
  if (!("item" in difference)) return DIFFERS[difference.of];
  const name = nameOfItem(difference);
  if (difference.change !== "changed") return DIFFERS[difference.change](name);
  const { field, from, to } = difference;
  const named = `${name}, ${DIFFERS.fields[field] ?? field}`;
  const unit = unitOf(difference.item);
  return DIFFERS.changed(named, shown(field, from, unit), shown(field, to, unit));
}

function nameOfItem(difference: Extract<Difference, { item: unknown }>): string {
  if (difference.of === "line") {
    return nameOf("material", textIn(difference.item, "material"));
  }
  return DIFFERS.step(figure(String(difference.at + 1)));
}

/** The unit the limits of a line or step are in. */
function unitOf(item: Fields): string | null {
  return textIn(item, "unit") ?? textIn(objectIn(item, "amount") ?? {}, "unit");
}

function shown(field: string, value: unknown, unit: string | null = null): string {
  if (LIMITS.includes(field) && typeof value === "string") return amountWords(value, unit);
  if (field === "measures" && typeof value === "string") return CHECKS[value] ?? value;
  return valueWords(field, value);
}

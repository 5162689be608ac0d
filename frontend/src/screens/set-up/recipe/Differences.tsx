/** What the version being written changes against the latest one, one sentence each. */
import { Part } from "../../../parts/Plain.tsx";
import { figure } from "../../../text/numbers.ts";
import { RECIPE } from "../../../text/set_up_recipe.ts";
import { differenceWords } from "./difference_words.ts";
import { differences } from "./differences.ts";
import { bodyNow } from "./publishing.ts";
import type { RecipeAtWork } from "./use_recipe.ts";

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
          <li key={JSON.stringify(each)}>{differenceWords(each)}</li>
        ))}
      </ul>
    </Part>
  );
}

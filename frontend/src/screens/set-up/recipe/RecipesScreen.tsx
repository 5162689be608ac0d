/** The recipes, each with its latest version. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { type Quantity, quantityIn, textIn } from "../../../calc/bodies.ts";
import { Choices } from "../../../parts/Choices.tsx";
import { Cup } from "../../../parts/Cup.tsx";
import { Part } from "../../../parts/Plain.tsx";
import { goTo } from "../../../state/route.ts";
import { recipes } from "../../../state/stock.ts";
import { amountWords, dayWords, figure } from "../../../text/numbers.ts";
import { FILES } from "../../../text/recipe_files.ts";
import { SAME_NAME } from "../../../text/same_name.ts";
import { RECIPE } from "../../../text/set_up_recipe.ts";
import { amountText, materialOf } from "../../common/lots.ts";
import { namesakes } from "../../common/namesakes.ts";
import { AreaFrame } from "../AreaFrame.tsx";
import { KeptLine } from "../KeptLine.tsx";
import { mayWrite } from "../who.ts";
import { type RecipeDraft, recipeDrafts } from "./use_recipe.ts";
import "../set_up.css";

/** `#/set-up/recipes`. */
export function Screen() {
  const twins = namesakes(recipes.value);
  return (
    <AreaFrame
      area="recipes"
      items={recipes.value.map(({ id, name, latest }) => {
        const makes = quantityIn(latest.body, "makes");
        const number = figure(String(latest.number));
        return {
          id,
          name,
          sub: `${RECIPE.version(number)}, ${dayWords(latest.published_on, true)}`,
          right: twins.has(id) ? (
            <span class="shout">{SAME_NAME.mark}</span>
          ) : (
            makesWords(makes, textIn(latest.body, "product"))
          ),
        };
      })}
      mayAdd={mayWrite("recipe_published")}
    >
      <KeptLine at="/set-up/recipes" />
      <p class="key-row">
        <Cup href="#/set-up/recipe-import">{FILES.import_title}</Cup>
        {recipes.value.length > 0 && (
          <Cup href="#/set-up/recipes/all/export">{FILES.export_all}</Cup>
        )}
      </p>
      <Drafts />
    </AreaFrame>
  );
}

/** Recipes half written on this phone: typed here, or out of a file; nothing while there are none. */
function Drafts() {
  const drafts = useSignal<readonly RecipeDraft[]>([]);
  useEffect(() => {
    void recipeDrafts().then((found) => {
      drafts.value = found;
    });
  }, []);
  if (drafts.value.length === 0) return null;
  return (
    <Part title={FILES.drafts}>
      <Choices
        name={FILES.drafts}
        items={drafts.value.map(({ param, name, is_next }) => ({
          id: param,
          name: name === "" ? FILES.no_name : name,
          isRecorded: name !== "",
          sub: is_next ? FILES.draft_next : FILES.draft_first,
        }))}
        chosen={null}
        onChoose={(param) => goTo(`/set-up/recipes/${param}`)}
      />
    </Part>
  );
}

/** Pieces are called by the product's pack word. */
function makesWords(makes: Quantity | null, product: string | null): string {
  if (makes?.unit === "pc") return amountText(makes.amount, makes.unit, materialOf(product));
  return amountWords(makes?.amount, makes?.unit);
}

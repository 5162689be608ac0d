/** A recipe: written as a draft from its latest version, published as the next one. */

import { type Signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { Caution } from "../../../parts/Caution.tsx";
import { BackKey, Cup, MainKey } from "../../../parts/Cup.tsx";
import { Foot, Frame } from "../../../parts/Frame.tsx";
import { Notice, Refusal } from "../../../parts/Plain.tsx";
import { goTo } from "../../../state/route.ts";
import { recipes } from "../../../state/stock.ts";
import { cautionsOfSteps } from "../../../text/cautions.ts";
import { dayWords, figure } from "../../../text/numbers.ts";
import { SAME_NAME } from "../../../text/same_name.ts";
import { AREAS, SET_UP } from "../../../text/set_up.ts";
import { RECIPE } from "../../../text/set_up_recipe.ts";
import { ChartKeyLater } from "../../common/ChartKeyLater.ts";
import { readDensities } from "../../common/density.ts";
import { focusFirst } from "../../common/focus.ts";
import { HeadGauge } from "../../common/HeadGauge.tsx";
import { namesakes, sameNameSays } from "../../common/namesakes.ts";
import type { Hindrance } from "../../common/sentences.ts";
import { tremble } from "../../common/touch.ts";
import { FormKeys } from "../FormKeys.tsx";
import { type Bound, focusRefused, hindranceOf } from "../form.ts";
import { tellKept } from "../kept.ts";
import { NotHere } from "../NotHere.tsx";
import { whoMayWrite } from "../who.ts";
import { Differences } from "./Differences.tsx";
import { differences } from "./differences.ts";
import { OwnYields } from "./OwnYields.tsx";
import {
  bodyNow,
  isOfNewerApp,
  missingOf,
  needsDensity,
  nextNumber,
  publish,
} from "./publishing.ts";
import { RecipeFields } from "./RecipeFields.tsx";
import { closeRecipe, type RecipeAtWork, useBound, useRecipe } from "./use_recipe.ts";
import { Lines, PackSizes, Steps } from "./Written.tsx";
import "../../common/rows.css";
import "../set_up.css";

const BACK = "/set-up/recipes";
const NUMBERS = {
  makes: {
    units: () => ["kg", "g", "lb", "oz", "L", "mL", "us_gal", "pc"],
    unitField: "makes_unit",
  },
  packs: { isWhole: true },
  target_solids_percent: {},
  loss_percent: {},
  life_length: { isWhole: true },
};

/** `#/set-up/recipes/:recipe`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const recipe = useRecipe(params.recipe ?? "new");
  if (recipe === null) return null;
  const isUnknown = recipe.param !== "new" && recipe.published === null && !recipe.isTyped;
  return isUnknown ? <NotHere area="recipes" /> : <RecipeForm recipe={recipe} />;
}

function RecipeForm({ recipe }: { recipe: RecipeAtWork }) {
  const { typed, published } = recipe;
  const found = useSignal<Hindrance | null>(null);
  const form = { ...useBound(typed, recipe.type, NUMBERS), found: found.value };
  const needs = needsDensity(typed);
  useEffect(() => {
    if (needs) void readDensities();
  }, [needs]);
  return (
    <Frame
      where={AREAS.recipes?.title ?? ""}
      title={published?.name ?? AREAS.recipes?.new_title ?? ""}
      isRecorded={published !== null}
      gauge={<HeadGauge />}
      calm={versionWords(recipe, form.canWrite)}
      benchName={SET_UP.bench}
      hasKeypad
      bench={
        <>
          <FormKeys form={form} />
          <Foot>
            <BackKey href={`#${BACK}`} />
            <PublishKey recipe={recipe} form={form} found={found} />
          </Foot>
        </>
      }
      side={published !== null && form.canWrite && <Differences recipe={recipe} />}
    >
      <Refusal sentence={found.value?.sentence ?? null} />
      {published !== null && namesakes(recipes.value).has(published.id) && (
        <Notice>{SAME_NAME.says(published.name)}</Notice>
      )}
      {isOvertaken(recipe) && (
        <Notice>{RECIPE.newer(figure(String(published?.latest.number ?? "")))}</Notice>
      )}
      <RecipeFields form={form} part="head" />
      <Lines recipe={recipe} canWrite={form.canWrite} />
      <OwnYields recipe={recipe} lines={typed.lines} canWrite={form.canWrite} />
      <Steps recipe={recipe} canWrite={form.canWrite} />
      <Caution about={[...cautionsOfSteps(recipe.typed.steps), "scaling"]} />
      <PackSizes recipe={recipe} canWrite={form.canWrite} />
      <RecipeFields form={form} part="more" />
      {published !== null && <ChartKeyLater of={{ is: "yields", recipe: recipe.param }} />}
      {published !== null && (
        <div class="form-acts">
          {published.versions.length > 1 && (
            <Cup href={`#/set-up/recipes/${recipe.param}/compare`}>{RECIPE.compare}</Cup>
          )}
          <Cup href={`#/set-up/recipes/${recipe.param}/export`}>{RECIPE.export_one}</Cup>
          <Cup href="#/sums">{RECIPE.sums}</Cup>
        </div>
      )}
      {recipe.isTyped && form.canWrite && (
        <div class="form-acts">
          <Cup onPress={() => void rubOut(recipe)}>{SET_UP.rub_out}</Cup>
        </div>
      )}
    </Frame>
  );
}

/** A draft that came out of a file is gone with its text: the way leads back to the list. */
async function rubOut(recipe: RecipeAtWork): Promise<void> {
  if (recipe.published !== null || recipe.param === "new") return recipe.clear();
  await closeRecipe(recipe);
  goTo(BACK);
}

function versionWords(recipe: RecipeAtWork, canWrite: boolean): string {
  const { published } = recipe;
  if (published === null) return RECIPE.first;
  const { latest } = published;
  if (!canWrite) {
    return RECIPE.latest(figure(String(latest.number)), dayWords(latest.published_on, true));
  }
  return RECIPE.next(figure(String(published.latest.number)), figure(String(nextNumber(recipe))));
}

/** Somebody published while this draft was being written. */
function isOvertaken({ typed, published }: RecipeAtWork): boolean {
  return published !== null && typed.based_on !== published.latest.entry;
}

function PublishKey(props: { recipe: RecipeAtWork; form: Bound; found: Signal<Hindrance | null> }) {
  const { recipe, form, found } = props;
  const missing = missingOf(recipe.typed);
  const latest = recipe.published?.latest.body;
  const isSame = latest !== undefined && differences(latest, bodyNow(recipe)).length === 0;
  const number = figure(String(nextNumber(recipe)));
  const isBeyond = latest !== undefined && isOfNewerApp(latest);
  const hindered = isBeyond
    ? RECIPE.needs_newer
    : (missing?.sentence ?? (isSame ? RECIPE.same : null));

  async function send() {
    const { recipe: id, name: typedName } = recipe.typed;
    const taken = sameNameSays(recipes.value, {
      id,
      name: typedName,
      before: recipe.published?.name ?? null,
    });
    if (taken !== null) {
      found.value = { field: "name", sentence: taken };
      return focusRefused(found.value);
    }
    const answer = await publish(recipe);
    found.value = hindranceOf(answer);
    if (!("saved" in answer)) return focusRefused(found.value);
    tremble(1);
    const { name } = recipe.typed;
    tellKept({ entry: answer.saved.id, name, isNew: recipe.published === null, back: BACK });
    await closeRecipe(recipe);
    goTo(BACK);
  }
  return (
    <MainKey
      words={RECIPE.publish(number)}
      notReady={form.canWrite ? hindered : whoMayWrite()}
      onNotReady={() => {
        const field = missing?.field ?? "name";
        if (field in form.numbers) form.open.value = field;
        focusFirst(field);
      }}
      onPress={() => void send()}
    />
  );
}

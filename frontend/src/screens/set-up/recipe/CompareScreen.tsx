/** Two versions of a recipe line by line: what was added, taken out, changed, and by how much. */
import { useSignal } from "@preact/signals";
import { type Body, objectIn, textIn } from "../../../calc/bodies.ts";
import { Caution } from "../../../parts/Caution.tsx";
import { BackKey, MainKey } from "../../../parts/Cup.tsx";
import { SelectField } from "../../../parts/Fields.tsx";
import { Foot, Frame } from "../../../parts/Frame.tsx";
import { Notice, Part } from "../../../parts/Plain.tsx";
import { type Recipe, type RecipeVersion, recipes } from "../../../state/stock.ts";
import { cautionsOfSteps } from "../../../text/cautions.ts";
import { amountWords, dayWords, figure } from "../../../text/numbers.ts";
import { COMPARE } from "../../../text/recipe_files.ts";
import { DIFFERS, RECIPE } from "../../../text/set_up_recipe.ts";
import { HeadGauge } from "../../common/HeadGauge.tsx";
import { NotHere } from "../NotHere.tsx";
import { type ComparedItem, compared } from "./compared.ts";
import { fieldWords, itemName } from "./difference_words.ts";
import "../../common/rows.css";
import "../set_up.css";

/** `#/set-up/recipes/:recipe/compare`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const recipe = recipes.value.find(({ id }) => id === params.recipe);
  return recipe === undefined ? <NotHere area="recipes" /> : <Compare recipe={recipe} />;
}

function Compare({ recipe }: { recipe: Recipe }) {
  return (
    <Frame
      where={COMPARE.where}
      title={recipe.name}
      isRecorded
      gauge={<HeadGauge />}
      calm={COMPARE.calm}
      benchName={COMPARE.bench}
      bench={
        <Foot>
          <BackKey href={`#/set-up/recipes/${recipe.id}`} />
          <MainKey words={COMPARE.back} href={`#/set-up/recipes/${recipe.id}`} />
        </Foot>
      }
    >
      {recipe.versions.length < 2 ? (
        <Notice>{COMPARE.only_one}</Notice>
      ) : (
        <TwoVersions recipe={recipe} />
      )}
    </Frame>
  );
}

/** The latest version against the one before it, until others are chosen. */
function TwoVersions({ recipe }: { recipe: Recipe }) {
  const { versions, latest } = recipe;
  const earlier = versions.filter(({ entry }) => entry !== latest.entry).at(-1) ?? latest;
  const from = useSignal(earlier.entry);
  const to = useSignal(latest.entry);
  return (
    <>
      <div class="two-fields">
        <VersionField label={COMPARE.from} chosen={from} versions={versions} />
        <VersionField label={COMPARE.to} chosen={to} versions={versions} />
      </div>
      <Sides before={versionOf(recipe, from.value)} after={versionOf(recipe, to.value)} />
    </>
  );
}

function versionOf({ versions, latest }: Recipe, entry: string): RecipeVersion {
  return versions.find((each) => each.entry === entry) ?? latest;
}

function VersionField(props: {
  label: string;
  chosen: { value: string };
  versions: readonly RecipeVersion[];
}) {
  const { label, chosen, versions } = props;
  return (
    <SelectField
      label={label}
      value={chosen.value}
      onValue={(entry) => (chosen.value = entry)}
      options={versions.map(({ entry, number, published_on }) => ({
        value: entry,
        word: `${RECIPE.version(figure(String(number)))}, ${dayWords(published_on, true)}`,
      }))}
    />
  );
}

function Sides({ before, after }: { before: RecipeVersion; after: RecipeVersion }) {
  const { recipe, lines, steps, order } = compared(before.body, after.body);
  return (
    <>
      <p aria-live="polite">{COMPARE.sum(countOf(lines), countOf(steps), recipe.length)}</p>
      {recipe.length > 0 && (
        <Part title={COMPARE.recipe}>
          <ul class="differences">
            {recipe.map((each) => (
              <li key={each.field}>{fieldWords(each, each)}</li>
            ))}
          </ul>
        </Part>
      )}
      <Items title={RECIPE.lines} items={lines} />
      <Items title={RECIPE.steps} items={steps} />
      {order.map((each) => (
        <Notice key={each.of}>{DIFFERS[each.of]}</Notice>
      ))}
      <Caution about={cautionsOfSteps(steps.map(({ item }) => measuredIn(item)))} />
    </>
  );
}

function measuredIn(step: Body): { measures: string | null } {
  return { measures: textIn(step, "measures") };
}

function countOf(items: readonly ComparedItem[]): number {
  return items.filter((each) => each.is !== "same").length;
}

function Items({ title, items }: { title: string; items: readonly ComparedItem[] }) {
  if (items.length === 0) return null;
  return (
    <Part title={title}>
      <ul class="compared">
        {items.map((each) => (
          <li key={`${each.id} ${each.is}`} class={each.is}>
            <span class="rec">{nameWords(each)}</span>
            <span class={each.is === "same" ? "second" : "shout"}>
              <span aria-hidden="true">{COMPARE.mark[each.is]}</span> {COMPARE.is[each.is]}
            </span>
            {each.changes.length > 0 && (
              <ul class="differences">
                {each.changes.map((change) => (
                  <li key={change.field}>{fieldWords(change, change, each.item)}</li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}

/** A line by its material and amount, a step by its number and words. */
function nameWords(each: ComparedItem): string {
  const name = itemName(each);
  if (each.of === "step") return `${name}: ${textIn(each.item, "says") ?? ""}`;
  const amount = objectIn(each.item, "amount") ?? {};
  return `${name}, ${amountWords(textIn(amount, "amount"), textIn(amount, "unit"))}`;
}

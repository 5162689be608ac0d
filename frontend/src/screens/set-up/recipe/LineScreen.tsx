/** One line of a recipe: what goes in, how much, how far off it may be. */
import { useEffect } from "preact/hooks";
import { Cup } from "../../../parts/Cup.tsx";
import { goTo } from "../../../state/route.ts";
import { cooperative, materials, nameOf } from "../../../state/stock.ts";
import { amountWords } from "../../../text/numbers.ts";
import { SUB_RECIPE } from "../../../text/recipe_lines.ts";
import { LINE, RECIPE } from "../../../text/set_up_recipe.ts";
import { choicesOf } from "../../common/choices.ts";
import { readDensities } from "../../common/density.ts";
import { textField } from "../../common/lots.ts";
import { Picker } from "../../common/Picker.tsx";
import { NumberOf, WordsOf } from "../FormFields.tsx";
import { NotHere } from "../NotHere.tsx";
import { publishedUnit } from "./amounts.ts";
import { Becomes } from "./Becomes.tsx";
import { ItemFrame } from "./ItemFrame.tsx";
import type { LineTyped } from "./items.ts";
import { lineUnits } from "./line_units.ts";
import { OwnYields } from "./OwnYields.tsx";
import { amountsNow, lineMissing } from "./publishing.ts";
import { isShare } from "./shares.ts";
import { Tolerance } from "./Tolerance.tsx";
import { movedUp } from "./typed.ts";
import { lineMaterial, type RecipeAtWork, recipesOf, useBound, useRecipe } from "./use_recipe.ts";
import { WrittenAs } from "./WrittenAs.tsx";
import { YieldOf } from "./YieldOf.tsx";
import "../../common/rows.css";
import "../set_up.css";

const NOTE_CHARS_MAX = 600;

/** `#/set-up/recipes/:recipe/line/:line`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const recipe = useRecipe(params.recipe ?? "new");
  if (recipe === null) return null;
  const line = recipe.typed.lines.find((each) => each.line === params.line);
  if (line === undefined) return <NotHere area="recipes" />;
  return <LineForm recipe={recipe} line={line} />;
}

function habit(): string {
  return textField(cooperative.value, "unit_habit") ?? "metric";
}

function LineForm({ recipe, line }: { recipe: RecipeAtWork; line: LineTyped }) {
  const { typed, param } = recipe;
  const material = lineMaterial(line.material);
  const unit = isShare(line) ? "g" : publishedUnit(line, material);
  const back = `/set-up/recipes/${param}`;
  const put = (part: object) =>
    recipe.type({
      lines: typed.lines.map((each) =>
        each.line === line.line ? Object.assign({}, each, signed(part)) : each,
      ),
    });
  const form = useBound(line, put, {
    amount: {
      units: () => lineUnits(material?.measured_by ?? "mass", habit()),
      unitField: "amount_unit",
    },
    below: {},
    above: {},
    percent: {},
    yield_percent: {},
    soluble_percent: {},
  });
  useEffect(() => void readDensities(), []);
  const found = amountsNow(typed).get(line.line);
  const missing = line.material === "" ? LINE.choose : lineMissing(line, found);
  const ready = found?.is === "ready" ? found : null;
  return (
    <ItemFrame
      form={form}
      where={LINE.where(typed.name)}
      title={line.material === "" ? LINE.new_title : nameOf("material", line.material)}
      isRecorded={line.material !== ""}
      benchName={LINE.new_title}
      back={back}
      done={LINE.done(ready === null ? RECIPE.loading : amountWords(ready.amount, ready.unit))}
      lacks={missing === null ? null : { sentence: missing, field: fieldAsked(line) }}
    >
      <Picker
        field="material"
        label={LINE.material}
        items={choicesOf(materials.value)}
        chosen={line.material}
        onChoose={(id) => {
          const measure = lineMaterial(id ?? "")?.measured_by ?? "mass";
          put({ material: id ?? "", amount_unit: lineUnits(measure, habit())[0] ?? "g" });
          form.open.value = id === null ? null : "amount";
        }}
        none={LINE.material_none}
      />
      <MadeBy material={line.material} />
      <WrittenAs form={form} line={line} found={found ?? null} />
      {ready !== null && ready.by !== null && (
        <Becomes line={line} amount={ready.amount} by={ready.by} />
      )}
      <YieldOf form={form} line={line} amount={ready} />
      <OwnYields recipe={recipe} lines={[line]} canWrite={form.canWrite} />
      <Tolerance form={form} amount={ready?.amount ?? null} unit={unit} />
      <NumberOf
        form={form}
        name="soluble_percent"
        label={LINE.soluble}
        hint={LINE.soluble_hint}
        unit="%"
      />
      <WordsOf form={form} name="note" label={LINE.note} mostChars={NOTE_CHARS_MAX} lines={2} />
      <LineActs recipe={recipe} line={line} back={back} />
    </ItemFrame>
  );
}

/** The material first, then how much of it. */
function fieldAsked(line: LineTyped): string {
  if (line.material === "") return "material";
  return isShare(line) ? "percent" : "amount";
}

/** A yield that is typed is nobody else's any more. */
function signed(part: object): object {
  if (!("yield_percent" in part) || "yield_by" in part) return part;
  return { ...part, yield_by: "typed", yield_source: "" };
}

/** A line that another recipe makes, with the way to it. */
function MadeBy({ material }: { material: string }) {
  return (
    <>
      {recipesOf(material).map(({ id, name }) => (
        <p class="key-row" key={id}>
          <Cup href={`#/set-up/recipes/${id}`}>{SUB_RECIPE.made_by(name)}</Cup>
        </p>
      ))}
    </>
  );
}

function LineActs(props: { recipe: RecipeAtWork; line: LineTyped; back: string }) {
  const { recipe, line } = props;
  const { lines } = recipe.typed;
  const at = lines.indexOf(line);
  return (
    <p class="key-row">
      {at > 0 && <Cup onPress={() => recipe.type({ lines: movedUp(lines, at) })}>{LINE.up}</Cup>}
      <Cup
        onPress={() => {
          goTo(props.back);
          recipe.type({ lines: lines.filter((each) => each !== line) });
        }}
      >
        {LINE.remove}
      </Cup>
    </p>
  );
}

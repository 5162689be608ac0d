/** One line of a recipe: what goes in, how much, how far off it may be. */
import { useEffect } from "preact/hooks";
import { BackKey, Cup, MainKey } from "../../../parts/Cup.tsx";
import { Foot, Frame } from "../../../parts/Frame.tsx";
import { goTo } from "../../../state/route.ts";
import { cooperative, materials, nameOf } from "../../../state/stock.ts";
import { amountWords } from "../../../text/numbers.ts";
import { LINE, RECIPE } from "../../../text/set_up_recipe.ts";
import { choicesOf } from "../../common/choices.ts";
import { densityTable, readDensities } from "../../common/density.ts";
import { focusFirst } from "../../common/focus.ts";
import { HeadGauge } from "../../common/HeadGauge.tsx";
import { textField } from "../../common/lots.ts";
import { Picker } from "../../common/Picker.tsx";
import { NumberOf, WordsOf } from "../FormFields.tsx";
import { FormKeys } from "../FormKeys.tsx";
import { NotHere } from "../NotHere.tsx";
import { lineAmount, publishedUnit } from "./amounts.ts";
import { Becomes } from "./Becomes.tsx";
import { lineUnits } from "./line_units.ts";
import { lineMissing } from "./publishing.ts";
import { Tolerance } from "./Tolerance.tsx";
import { type LineTyped, movedUp } from "./typed.ts";
import { lineMaterial, type RecipeAtWork, useBound, useRecipe } from "./use_recipe.ts";
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
  const unit = publishedUnit(line, material);
  const back = `/set-up/recipes/${param}`;
  const put = (part: object) =>
    recipe.type({
      lines: typed.lines.map((each) =>
        each.line === line.line ? Object.assign({}, each, part) : each,
      ),
    });
  const form = useBound(line, put, {
    amount: {
      units: () => lineUnits(material?.measured_by ?? "mass", habit()),
      unitField: "amount_unit",
    },
    below: {},
    above: {},
    soluble_percent: {},
  });
  useEffect(() => void readDensities(), []);
  const missing = line.material === "" ? LINE.choose : lineMissing(line);
  const found = lineAmount(line, material, densityTable.value);
  return (
    <Frame
      where={LINE.where(typed.name)}
      title={line.material === "" ? LINE.new_title : nameOf("material", line.material)}
      isRecorded={line.material !== ""}
      gauge={<HeadGauge />}
      benchName={LINE.new_title}
      hasKeypad
      bench={
        <>
          <FormKeys form={form} />
          <Foot>
            <BackKey href={`#${back}`} />
            <MainKey
              words={LINE.done(
                found.is === "ready" ? amountWords(found.amount, found.unit) : RECIPE.loading,
              )}
              notReady={missing}
              onNotReady={() => {
                const isAmount = line.material !== "";
                if (isAmount) form.open.value = "amount";
                focusFirst(isAmount ? "amount" : "material");
              }}
              href={`#${back}`}
            />
          </Foot>
        </>
      }
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
      <NumberOf form={form} name="amount" label={LINE.amount} unit={line.amount_unit} />
      {found.is === "ready" && found.by !== null && (
        <Becomes line={line} amount={found.amount} by={found.by} />
      )}
      <Tolerance form={form} amount={found.is === "ready" ? found.amount : null} unit={unit} />
      <NumberOf
        form={form}
        name="soluble_percent"
        label={LINE.soluble}
        hint={LINE.soluble_hint}
        unit="%"
      />
      <WordsOf form={form} name="note" label={LINE.note} mostChars={NOTE_CHARS_MAX} lines={2} />
      <LineActs recipe={recipe} line={line} back={back} />
    </Frame>
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

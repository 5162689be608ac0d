/** One step of a recipe: what is done, what is checked, its limits and who set them, its caution. */

import { Caution } from "../../../parts/Caution.tsx";
import { Cup } from "../../../parts/Cup.tsx";
import { TextField } from "../../../parts/Fields.tsx";
import { goTo } from "../../../state/route.ts";
import { cooperative, nameOf } from "../../../state/stock.ts";
import { cautionsOfStep } from "../../../text/cautions.ts";
import { figure, unitWord } from "../../../text/numbers.ts";
import { ACIDS, CHECKS, DIFFERS, RECIPE_MISSING, STEP } from "../../../text/set_up_recipe.ts";
import { textField } from "../../common/lots.ts";
import { ChoiceOf, NumberOf, WordsOf } from "../FormFields.tsx";
import type { Bound } from "../form.ts";
import { NotHere } from "../NotHere.tsx";
import { CountsOf } from "./CountsOf.tsx";
import { ACID_NAMES, CHECK_NAMES, checkUnits } from "./check_units.ts";
import { ItemFrame } from "./ItemFrame.tsx";
import type { StepTyped } from "./items.ts";
import { LimitsOf } from "./LimitsOf.tsx";
import { movedUp } from "./typed.ts";
import { type RecipeAtWork, useBound, useRecipe } from "./use_recipe.ts";
import "../../common/rows.css";
import "../set_up.css";

const SENTENCE_CHARS_MAX = 600;
const NAME_CHARS_MAX = 120;

/** `#/set-up/recipes/:recipe/step/:step`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const recipe = useRecipe(params.recipe ?? "new");
  if (recipe === null) return null;
  const step = recipe.typed.steps.find((each) => each.step === params.step);
  if (step === undefined) return <NotHere area="recipes" />;
  return <StepForm recipe={recipe} step={step} />;
}

function StepForm({ recipe, step }: { recipe: RecipeAtWork; step: StepTyped }) {
  const { typed, param } = recipe;
  const { steps } = typed;
  const at = steps.indexOf(step);
  const back = `/set-up/recipes/${param}`;
  const put = (part: object) =>
    recipe.type({
      steps: steps.map((each) => (each.step === step.step ? Object.assign({}, each, part) : each)),
    });
  const isSigned = step.measures === "temperature";
  const form = useBound(step, put, { minutes: {}, low: { isSigned }, high: { isSigned } });
  return (
    <ItemFrame
      form={form}
      where={STEP.where(typed.name)}
      title={DIFFERS.step(figure(String(at + 1)))}
      benchName={STEP.new_title}
      back={back}
      done={STEP.done}
      lacks={step.says.trim() === "" ? { sentence: RECIPE_MISSING.step, field: "says" } : null}
    >
      <WordsOf form={form} name="says" label={STEP.says} mostChars={SENTENCE_CHARS_MAX} lines={2} />
      <NumberOf form={form} name="minutes" label={STEP.minutes} unit="min" />
      <CheckOf recipe={recipe} step={step} form={form} />
      <CautionOf step={step} onCaution={(caution) => put({ caution })} />
      <p class="key-row">
        {at > 0 && <Cup onPress={() => recipe.type({ steps: movedUp(steps, at) })}>{STEP.up}</Cup>}
        <Cup
          onPress={() => {
            goTo(back);
            recipe.type({ steps: steps.filter((each) => each !== step) });
          }}
        >
          {STEP.remove}
        </Cup>
      </p>
    </ItemFrame>
  );
}

function CheckOf(props: { recipe: RecipeAtWork; step: StepTyped; form: Bound }) {
  const { recipe, step, form } = props;
  const habit = textField(cooperative.value, "unit_habit") ?? "metric";
  const units = checkUnits(step.measures, habit);
  return (
    <>
      <ChoiceOf
        form={form}
        name="measures"
        label={STEP.measures}
        none={STEP.nothing}
        choices={CHECK_NAMES}
        words={(check) => CHECKS[check] ?? check}
        onChosen={(measures) =>
          form.type({ measures, unit: checkUnits(measures, habit)[0] ?? "", line: "" })
        }
      />
      {step.measures === "prepared_mass" && <LineOf recipe={recipe} form={form} />}
      {step.measures === "acidity" && (
        <ChoiceOf
          form={form}
          name="acid"
          label={STEP.acid}
          choices={ACID_NAMES}
          words={(acid) => ACIDS[acid] ?? acid}
        />
      )}
      {isOfLines(step) && (
        <CountsOf
          step={step}
          lines={recipe.typed.lines}
          onCounted={(counted) => form.type({ counted })}
        />
      )}
      {step.measures !== "" && (
        <>
          {units.length > 1 && (
            <ChoiceOf form={form} name="unit" label={STEP.unit} choices={units} words={unitWord} />
          )}
          <div class="two-fields">
            <NumberOf form={form} name="low" label={STEP.low} unit={step.unit} />
            <NumberOf form={form} name="high" label={STEP.high} unit={step.unit} />
          </div>
          <WordsOf
            form={form}
            name="set_by"
            label={STEP.set_by}
            hint={STEP.set_by_hint}
            mostChars={NAME_CHARS_MAX}
          />
          <LimitsOf measures={step.measures} onPut={(put) => form.type({ ...put })} />
        </>
      )}
    </>
  );
}

function isOfLines({ measures }: StepTyped): boolean {
  return measures === "salt_weighed" || measures === "sugar_weighed";
}

function LineOf({ recipe, form }: { recipe: RecipeAtWork; form: Bound }) {
  const named = new Map(
    recipe.typed.lines.map((each) => [each.line, nameOf("material", each.material)]),
  );
  return (
    <ChoiceOf
      form={form}
      name="line"
      label={STEP.of_line}
      none={STEP.any_line}
      choices={[...named.keys()]}
      words={(line) => named.get(line) ?? line}
    />
  );
}

/** Written in full, because it is shown in full beside the reading. */
function CautionOf(props: { step: StepTyped; onCaution: (caution: string) => void }) {
  const { step, onCaution } = props;
  return (
    <>
      <TextField
        label={STEP.caution}
        value={step.caution}
        onValue={onCaution}
        mostChars={SENTENCE_CHARS_MAX}
        lines={4}
      />
      <Caution about={cautionsOfStep(step.measures)} own={step.caution} />
    </>
  );
}

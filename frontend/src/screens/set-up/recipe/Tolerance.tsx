/** How far off a line may be: by percent in one tap, or below and above on their own. */
import { CupChoice } from "../../../parts/Choices.tsx";
import { FieldGroup } from "../../../parts/Fields.tsx";
import { LINE } from "../../../text/set_up_recipe.ts";
import { NumberOf } from "../FormFields.tsx";
import { type Bound, textAt } from "../form.ts";
import { percentTolerance } from "./tolerances.ts";

const PERCENTS = ["1", "2", "5"] as const;
const NO_LIMIT = "none";

/** `amount` null: not typed yet, so no percent of it either. */
export function Tolerance(props: { form: Bound; amount: string | null; unit: string }) {
  const { form, amount, unit } = props;
  const below = textAt(form.typed, "below");
  const above = textAt(form.typed, "above");
  const chosen =
    below === "" && above === ""
      ? NO_LIMIT
      : amount !== null && below === above
        ? (PERCENTS.find((percent) => percentTolerance(amount, percent) === below) ?? null)
        : null;
  return (
    <>
      {amount !== null && (
        <FieldGroup label={LINE.tolerance}>
          <CupChoice
            name={LINE.tolerance}
            options={[
              ...PERCENTS.map((percent) => ({ value: percent, word: LINE.percent(percent) })),
              { value: NO_LIMIT, word: LINE.no_tolerance },
            ]}
            chosen={chosen}
            onChoose={(choice) => {
              const limit = choice === NO_LIMIT ? "" : percentTolerance(amount, choice);
              form.type({ below: limit, above: limit });
            }}
          />
        </FieldGroup>
      )}
      <div class="two-fields">
        <NumberOf form={form} name="below" label={LINE.below} unit={unit} />
        <NumberOf form={form} name="above" label={LINE.above} unit={unit} />
      </div>
    </>
  );
}

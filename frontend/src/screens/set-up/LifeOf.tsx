/** How long something keeps: the kind of date, a number, days or months. */
import { Caution } from "../../parts/Caution.tsx";
import { SET_UP, VALUES } from "../../text/set_up.ts";
import { ChoiceOf, NumberOf } from "./FormFields.tsx";
import { type Bound, textAt } from "./form.ts";

const SORTS = ["use_by", "best_before", "expires_on"] as const;
const UNITS = ["days", "months"] as const;

/** Without a kind of date nothing is asked. */
export function LifeOf({ form, hint }: { form: Bound; hint: string }) {
  const unit = textAt(form.typed, "life_unit");
  return (
    <>
      <ChoiceOf
        form={form}
        name="life_sort"
        about="life.sort"
        hint={hint}
        choices={SORTS}
        none={SET_UP.none}
      />
      {textAt(form.typed, "life_sort") !== "" && (
        <>
          <NumberOf form={form} name="life_length" about="life" unit={VALUES[unit] ?? unit} />
          {form.canWrite && (
            <ChoiceOf form={form} name="life_unit" about="life.unit" choices={UNITS} />
          )}
          <Caution about="shelf_life" />
        </>
      )}
    </>
  );
}

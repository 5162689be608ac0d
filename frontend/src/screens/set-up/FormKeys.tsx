/** The bench of a form: the keypad of the open number. */
import { Keypad } from "../../parts/Keypad.tsx";
import { NumberKeys } from "../common/NumberKeys.tsx";
import { type Bound, textAt } from "./form.ts";

/** Nothing while no number is open. */
export function FormKeys({ form }: { form: Bound }) {
  const name = form.open.value;
  const plan = name === null ? undefined : form.numbers[name];
  if (name === null || plan === undefined) return null;
  const typed = textAt(form.typed, name);
  const onTyped = (text: string) => form.type({ [name]: text });
  const { unitField, units } = plan;
  if (unitField !== undefined && units !== undefined) {
    return (
      <NumberKeys
        key={name}
        typed={typed}
        onTyped={onTyped}
        units={units(form.typed)}
        unit={textAt(form.typed, unitField)}
        onUnit={(unit) => form.type({ [unitField]: unit })}
      />
    );
  }
  return (
    <Keypad
      key={name}
      typed={typed}
      onTyped={onTyped}
      isWhole={plan.isWhole}
      isSigned={plan.isSigned}
    />
  );
}

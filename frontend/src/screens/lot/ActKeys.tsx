/** The bench of an act: the keypad of the open number. */
import type { Signal } from "@preact/signals";
import type { LotState } from "../../calc/stock.ts";
import type { Drafted } from "../common/drafted.ts";
import { materialOf } from "../common/lots.ts";
import { NumberKeys } from "../common/NumberKeys.tsx";
import { unitsFor } from "../common/units.ts";
import type { ActOpen } from "./ActFields.tsx";
import type { ActTyped } from "./acts.ts";

/** Nothing while no number is open. */
export function ActKeys(props: {
  form: Drafted<ActTyped>;
  open: Signal<ActOpen>;
  state: LotState;
}) {
  const { form, open, state } = props;
  const field = open.value;
  if (field === null) return null;
  return (
    <NumberKeys
      typed={form.typed.value[field]}
      onTyped={(value) => form.type({ [field]: value })}
      units={unitsFor(materialOf(state.material))}
      unit={form.typed.value.unit}
      onUnit={(unit) => form.type({ unit })}
    />
  );
}

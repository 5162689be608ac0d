/** The bench of receiving: the keypad of the open number. */
import type { Signal } from "@preact/signals";
import { Keypad } from "../../parts/Keypad.tsx";
import type { Drafted } from "../common/drafted.ts";
import { materialOf } from "../common/lots.ts";
import { NumberKeys } from "../common/NumberKeys.tsx";
import { unitsFor } from "../common/units.ts";
import type { NumberOpen } from "./ReceiveFields.tsx";
import type { ReceiveTyped } from "./typed.ts";

/** Nothing while no number is open. */
export function ReceiveKeys(props: { form: Drafted<ReceiveTyped>; open: Signal<NumberOpen> }) {
  const { form, open } = props;
  const typed = form.typed.value;
  if (open.value === null) return null;
  if (open.value === "price") {
    return <Keypad typed={typed.price} onTyped={(price) => form.type({ price })} />;
  }
  return (
    <NumberKeys
      typed={typed.amount}
      onTyped={(amount) => form.type({ amount })}
      units={unitsFor(materialOf(typed.material))}
      unit={typed.unit}
      onUnit={(unit) => form.type({ unit })}
    />
  );
}

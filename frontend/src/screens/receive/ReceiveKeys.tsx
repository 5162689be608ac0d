/** The bench of receiving: the keypad of the open number, or the units to choose from. */
import { type Signal, useSignal } from "@preact/signals";
import { CupChoice } from "../../parts/Choices.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { unitWord } from "../../text/numbers.ts";
import { RECEIVE } from "../../text/receive.ts";
import type { Drafted } from "../shared/drafted.ts";
import { materialOf } from "../shared/lots.ts";
import { unitsFor } from "../shared/units.ts";
import type { NumberOpen } from "./ReceiveFields.tsx";
import type { ReceiveTyped } from "./typed.ts";

/** Nothing while no number is open. */
export function ReceiveKeys(props: { form: Drafted<ReceiveTyped>; open: Signal<NumberOpen> }) {
  const { form, open } = props;
  const isChoosing = useSignal(false);
  const field = open.value;
  if (field === null) return null;
  const typed = form.typed.value;
  const units = unitsFor(materialOf(typed.material));
  if (field === "amount" && isChoosing.value) {
    return (
      <CupChoice
        name={RECEIVE.unit}
        options={units.map((unit) => ({ value: unit, word: unitWord(unit) || unit }))}
        chosen={typed.unit}
        onChoose={(unit) => {
          form.type({ unit });
          isChoosing.value = false;
        }}
      />
    );
  }
  return (
    <Keypad
      typed={typed[field]}
      onTyped={(value) => form.type({ [field]: value })}
      isWhole={field === "amount" && typed.unit === "pc"}
      column={
        field === "amount" && units.length > 1
          ? [
              {
                word: RECEIVE.unit,
                holds: unitWord(typed.unit),
                onPress: () => {
                  isChoosing.value = true;
                },
              },
            ]
          : []
      }
    />
  );
}

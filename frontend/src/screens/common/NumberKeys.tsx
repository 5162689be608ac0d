/** The keypad of an open number with its unit key; pressing that shows the units in its place. */
import { useSignal } from "@preact/signals";
import { CupChoice } from "../../parts/Choices.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { unitWord } from "../../text/numbers.ts";
import { ACTS } from "../../text/stock.ts";

/** `units` are the codes to choose from; with one there is no unit key. */
export interface NumberKeysProps {
  typed: string;
  onTyped: (typed: string) => void;
  units: readonly string[];
  unit: string;
  onUnit: (unit: string) => void;
}

/** Whole numbers only, where one counts pieces. */
export function NumberKeys({ typed, onTyped, units, unit, onUnit }: NumberKeysProps) {
  const isChoosing = useSignal(false);
  if (isChoosing.value) {
    return (
      <CupChoice
        name={ACTS.unit}
        options={units.map((code) => ({ value: code, word: unitWord(code) || code }))}
        chosen={unit}
        onChoose={(code) => {
          onUnit(code);
          isChoosing.value = false;
        }}
      />
    );
  }
  const unitKey = {
    word: ACTS.unit,
    holds: unitWord(unit),
    onPress: () => {
      isChoosing.value = true;
    },
  };
  return (
    <Keypad
      typed={typed}
      onTyped={onTyped}
      isWhole={unit === "pc"}
      column={units.length > 1 ? [unitKey] : []}
    />
  );
}

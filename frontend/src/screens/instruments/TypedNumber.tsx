/** The numbers a check asks for before anything is read, and their keypad. */
import { NumberField } from "../../parts/Fields.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import type { Checking } from "./use_check.ts";

type Props = { checking: Checking };

const NUMBER_NAMES = ["value", "tolerance", "celsius", "altitude"] as const;
type NumberName = (typeof NUMBER_NAMES)[number];

/** The keypad of the number that is open; none while none is. */
export function OpenKeys({ checking, onEnter }: Props & { onEnter?: () => void }) {
  const { typed, type } = checking;
  const name = NUMBER_NAMES.find((each) => each === typed.open);
  if (name === undefined) return null;
  return (
    <Keypad
      key={name}
      typed={typed[name]}
      onTyped={(text) => type({ [name]: text })}
      isSigned={name === "altitude"}
      onEnter={onEnter}
    />
  );
}

/** A number of the form; its keypad is the one of OpenKeys. */
export function TypedNumber(
  props: Props & {
    name: NumberName;
    label: string;
    unit: string;
    hint?: string | undefined;
    refusal?: string | null | undefined;
  },
) {
  const { typed, type } = props.checking;
  const isOpen = typed.open === props.name;
  return (
    <NumberField
      label={props.label}
      hint={props.hint}
      refusal={props.refusal}
      typed={typed[props.name]}
      unit={props.unit}
      isOpen={isOpen}
      onOpen={() => type({ open: isOpen ? "" : props.name })}
    />
  );
}

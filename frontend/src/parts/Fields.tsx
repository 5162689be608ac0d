/** Fields of a form: label, value, and one sentence of refusal beside it. What was typed stays. */
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { figure, unitWord } from "../text/numbers.ts";
import { Cup } from "./Cup.tsx";
import { Vessel } from "./Tube.tsx";

const MOST_CHARS = 600; // the longest sentence an entry takes

/** What every field has. `refusal` is the sentence for this field, or null. */
interface FieldProps {
  label: string;
  hint?: string | undefined;
  refusal?: string | null | undefined;
}

function Sentences({
  id,
  hint,
  refusal,
}: {
  id: string;
  hint?: string | undefined;
  refusal?: string | null | undefined;
}) {
  return (
    <>
      {hint && (
        <p class="second" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {refusal && (
        <p class="refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </p>
      )}
    </>
  );
}

function describedBy(id: string, { hint, refusal }: FieldProps): string | undefined {
  const ids = [hint ? `${id}-hint` : "", refusal ? `${id}-refusal` : ""].filter(Boolean);
  return ids.length > 0 ? ids.join(" ") : undefined;
}

/** Words of a person, in the serif. `lines` above 1 gives room for sentences. */
export interface TextFieldProps extends FieldProps {
  value: string;
  onValue: (value: string) => void;
  /** `password` is not shown while typed. */
  type?: "text" | "password" | "email" | "tel" | undefined;
  autocomplete?:
    | "off"
    | "name"
    | "username"
    | "current-password"
    | "new-password"
    | "one-time-code";
  lines?: number | undefined;
  mostChars?: number | undefined;
  /** Codes: capitals, no correction by the phone. */
  isCode?: boolean | undefined;
  /** Enter in a one-line field. */
  onEnter?: (() => void) | undefined;
}

/** One text field. */
export function TextField(props: TextFieldProps) {
  const id = useId();
  const shared = {
    id,
    value: props.value,
    maxLength: props.mostChars ?? MOST_CHARS,
    "aria-invalid": Boolean(props.refusal),
    "aria-describedby": describedBy(id, props),
    onInput: (event: { currentTarget: { value: string } }) =>
      props.onValue(event.currentTarget.value),
  };
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      {(props.lines ?? 1) > 1 ? (
        <textarea {...shared} rows={props.lines ?? 2} />
      ) : (
        <OneLine {...props} shared={shared} />
      )}
      <Sentences id={id} hint={props.hint} refusal={props.refusal} />
    </div>
  );
}

interface SharedFields {
  id: string;
  value: string;
  maxLength: number;
  "aria-invalid": boolean;
  "aria-describedby": string | undefined;
  onInput: (event: { currentTarget: { value: string } }) => void;
}

function OneLine(props: TextFieldProps & { shared: SharedFields }) {
  const line = {
    ...props.shared,
    class: props.isCode ? "code" : "",
    autocomplete: props.autocomplete ?? "off",
    spellcheck: !props.isCode,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === "Enter") props.onEnter?.();
    },
  };
  if (props.type === "password") return <input {...line} type="password" />;
  if (props.type === "email") return <input {...line} type="email" />;
  if (props.type === "tel") return <input {...line} type="tel" />;
  return <input {...line} type="text" autocapitalize={props.isCode ? "characters" : "sentences"} />;
}

/** A number typed on the keypad of the bench; the field shows it large and says which is open. */
export interface NumberFieldProps extends FieldProps {
  typed: string;
  unit?: string | null | undefined;
  /** The keypad types into this field now. */
  isOpen: boolean;
  onOpen: () => void;
}

/** A cup that opens the keypad for itself. */
export function NumberField(props: NumberFieldProps) {
  const id = useId();
  return (
    <div class="field">
      <Cup
        class={props.isOpen ? "number-field open" : "number-field"}
        isChosen={props.isOpen}
        onPress={props.onOpen}
      >
        <span class="field-label">{props.label}</span>
        <span class="number-typed">
          {props.typed === "" ? <span class="blank">{figure(null)}</span> : figure(props.typed)}
          {props.unit && <small class="unit">{unitWord(props.unit)}</small>}
        </span>
      </Cup>
      <Sentences id={id} hint={props.hint} refusal={props.refusal} />
    </div>
  );
}

/** A day with the phone's own calendar, or an hour with its own clock. */
export function DayField(
  props: FieldProps & { value: string; onValue: (day: string) => void; isClock?: boolean },
) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <input
        id={id}
        type={props.isClock ? "time" : "date"}
        value={props.value}
        aria-invalid={Boolean(props.refusal)}
        aria-describedby={describedBy(id, props)}
        onInput={(event) => props.onValue(event.currentTarget.value)}
      />
      <Sentences id={id} hint={props.hint} refusal={props.refusal} />
    </div>
  );
}

/** One of a list the phone shows itself; for long lists take Choices. */
export function SelectField(
  props: FieldProps & {
    value: string;
    onValue: (value: string) => void;
    options: readonly { value: string; word: string }[];
  },
) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <select
        id={id}
        value={props.value}
        aria-invalid={Boolean(props.refusal)}
        aria-describedby={describedBy(id, props)}
        onChange={(event) => props.onValue(event.currentTarget.value)}
      >
        {props.options.map(({ value, word }) => (
          <option key={value} value={value}>
            {word}
          </option>
        ))}
      </select>
      <Sentences id={id} hint={props.hint} refusal={props.refusal} />
    </div>
  );
}

/** Yes or no, as a vessel that is full or empty. */
export function TickField(
  props: FieldProps & { isTicked: boolean; onTicked: (isTicked: boolean) => void },
) {
  return (
    <div class="field">
      <Cup
        class="tick-field"
        isChosen={props.isTicked}
        onPress={() => props.onTicked(!props.isTicked)}
      >
        <Vessel isFull={props.isTicked} />
        <span>{props.label}</span>
      </Cup>
      <Sentences id={props.label} hint={props.hint} refusal={props.refusal} />
    </div>
  );
}

/** A labelled group of anything else (cups, choices), with the same refusal beside it. */
export function FieldGroup(props: FieldProps & { children: ComponentChildren }) {
  const id = useId();
  return (
    <fieldset class="field" aria-describedby={describedBy(id, props)}>
      <legend>{props.label}</legend>
      {props.children}
      <Sentences id={id} hint={props.hint} refusal={props.refusal} />
    </fieldset>
  );
}

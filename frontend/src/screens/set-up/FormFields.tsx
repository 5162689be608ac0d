/** Fields bound to a form by name. For one who may not write they are facts to read. */
import type { ComponentChildren } from "preact";
import { CupChoice } from "../../parts/Choices.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { FieldGroup, NumberField, TextField, TickField } from "../../parts/Fields.tsx";
import { Facts } from "../../parts/Plain.tsx";
import { amountWords } from "../../text/numbers.ts";
import { FIELDS, VALUES } from "../../text/set_up.ts";
import { beside } from "../common/sentences.ts";
import { type Bound, textAt } from "./form.ts";
import { valueWords } from "./values.ts";

/** What every bound field has; `about` is the field of the entry where it is called otherwise. */
interface BoundProps {
  form: Bound;
  name: string;
  label?: string;
  hint?: string;
  about?: string;
}

function labelOf({ name, label }: BoundProps): string {
  return label ?? FIELDS[name] ?? name;
}

function refusalOf({ form, name, about }: BoundProps): string | null {
  return beside(form.found, about ?? name);
}

function Place({ name, children }: { name: string; children: ComponentChildren }) {
  return <div id={`field-${name}`}>{children}</div>;
}

/** A value to read, a dash where there is none. */
function Fact({ label, value }: { label: string; value: string }) {
  return <Facts rows={[{ name: label, value: <span class="rec">{value}</span> }]} />;
}

/** Words of a person. */
export function WordsOf(
  props: BoundProps & { mostChars: number; lines?: number; isCode?: boolean },
) {
  const { form, name, hint } = props;
  const value = textAt(form.typed, name);
  if (!form.canWrite) return <Fact label={labelOf(props)} value={valueWords("name", value)} />;
  return (
    <Place name={name}>
      <TextField
        label={labelOf(props)}
        hint={hint}
        value={value}
        onValue={(typed) => form.type({ [name]: props.isCode ? typed.toUpperCase() : typed })}
        mostChars={props.mostChars}
        lines={props.lines}
        isCode={props.isCode}
        refusal={refusalOf(props)}
      />
    </Place>
  );
}

/** A number typed on the keypad of the bench. */
export function NumberOf(props: BoundProps & { unit?: string | null }) {
  const { form, name, hint, unit } = props;
  const typed = textAt(form.typed, name);
  if (!form.canWrite) {
    return <Fact label={labelOf(props)} value={amountWords(typed, typed === "" ? null : unit)} />;
  }
  return (
    <Place name={name}>
      <NumberField
        label={labelOf(props)}
        hint={hint}
        typed={typed}
        unit={unit}
        isOpen={form.open.value === name}
        onOpen={() => {
          form.open.value = form.open.value === name ? null : name;
        }}
        refusal={refusalOf(props)}
      />
    </Place>
  );
}

/** One of a few; `none` adds the choice of none of them. */
export function ChoiceOf(
  props: BoundProps & {
    choices: readonly string[];
    none?: string;
    words?: (value: string) => string;
    onChosen?: (value: string) => void;
  },
) {
  const { form, name, hint, words = (value: string) => VALUES[value] ?? value } = props;
  const chosen = textAt(form.typed, name);
  if (!form.canWrite) {
    return (
      <Fact label={labelOf(props)} value={chosen === "" ? (props.none ?? "") : words(chosen)} />
    );
  }
  const options = props.choices.map((value) => ({ value, word: words(value) }));
  return (
    <Place name={name}>
      <FieldGroup label={labelOf(props)} hint={hint} refusal={refusalOf(props)}>
        <CupChoice
          name={labelOf(props)}
          options={
            props.none === undefined ? options : [{ value: "", word: props.none }, ...options]
          }
          chosen={chosen}
          onChoose={(value) => {
            if (props.onChosen === undefined) form.type({ [name]: value });
            else props.onChosen(value);
          }}
        />
      </FieldGroup>
    </Place>
  );
}

/** Yes or no. */
export function TickOf(props: BoundProps) {
  const { form, name, hint } = props;
  const isTicked = form.typed[name] === true;
  if (!form.canWrite) return <Fact label={labelOf(props)} value={valueWords(name, isTicked)} />;
  return (
    <Place name={name}>
      <TickField
        label={labelOf(props)}
        hint={hint}
        isTicked={isTicked}
        onTicked={(now) => form.type({ [name]: now })}
      />
    </Place>
  );
}

/** Any number of a few, each a cup to tick; kept sorted, so that order is never a change. */
export function TicksOf(props: BoundProps & { choices: readonly string[] }) {
  const { form, name, hint } = props;
  const value = form.typed[name];
  const ticked = Array.isArray(value) ? value.filter((each) => typeof each === "string") : [];
  if (!form.canWrite) return <Fact label={labelOf(props)} value={valueWords(name, ticked)} />;
  return (
    <Place name={name}>
      <FieldGroup label={labelOf(props)} hint={hint} refusal={refusalOf(props)}>
        <Ticks
          choices={props.choices}
          ticked={ticked}
          onTicked={(now) => form.type({ [name]: now })}
        />
      </FieldGroup>
    </Place>
  );
}

/** Cups to tick, side by side. */
export function Ticks(props: {
  choices: readonly string[];
  ticked: readonly string[];
  onTicked: (ticked: string[]) => void;
}) {
  const { choices, ticked } = props;
  return (
    <p class="cup-choice">
      {choices.map((each) => (
        <Cup
          key={each}
          isChosen={ticked.includes(each)}
          onPress={() =>
            props.onTicked(
              ticked.includes(each)
                ? ticked.filter((one) => one !== each)
                : [...ticked, each].sort(),
            )
          }
        >
          {VALUES[each] ?? each}
        </Cup>
      ))}
    </p>
  );
}

/** One of many: the last ones first, then all with a search, and where it makes sense a new name. */
import { useSignal } from "@preact/signals";
import { type Choice, Choices, folded } from "../../parts/Choices.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { FieldGroup, TextField } from "../../parts/Fields.tsx";
import { PICKER } from "../../text/picker.ts";
import "./rows.css";

/** `newName` is a name written here that is not set up yet; `write` the words of the cup for it. */
export interface PickerProps {
  field: string;
  label: string;
  items: readonly Choice[];
  chosen: string | null;
  onChoose: (id: string | null) => void;
  recent?: readonly string[];
  none: string;
  refusal?: string | null;
  newName?: string;
  write?: string;
  onName?: (name: string) => void;
}

const SHORT_LIST = 4;
const NAME_CHARS_MAX = 120;

/** Shows what is chosen with a way to change it, else what there is to choose from. */
export function Picker(props: PickerProps) {
  const isAll = useSignal(false);
  const isWriting = useSignal(false);
  const { items, chosen, newName = "" } = props;
  const picked = items.find((item) => item.id === chosen);
  const isDone = picked !== undefined || newName !== "";

  function choose(id: string | null) {
    props.onName?.("");
    props.onChoose(id);
    isAll.value = false;
  }
  function name(written: string) {
    const known = items.find((item) => folded(item.name) === folded(written.trim()));
    isWriting.value = false;
    if (known !== undefined) return choose(known.id);
    props.onChoose(null);
    props.onName?.(written.trim());
  }
  return (
    <div id={`field-${props.field}`}>
      <FieldGroup label={props.label} refusal={props.refusal ?? null}>
        {isDone && <Chosen picked={picked} newName={newName} onChange={() => choose(null)} />}
        {!isDone && isWriting.value && (
          <WriteName onName={name} onCancel={() => (isWriting.value = false)} />
        )}
        {!isDone && !isWriting.value && (
          <List {...props} isAll={isAll.value} onAll={() => (isAll.value = true)} choose={choose} />
        )}
        {!isDone && !isWriting.value && props.write !== undefined && (
          <p class="key-row">
            <Cup onPress={() => (isWriting.value = true)}>{props.write}</Cup>
          </p>
        )}
      </FieldGroup>
    </div>
  );
}

function Chosen(props: { picked: Choice | undefined; newName: string; onChange: () => void }) {
  const { picked, newName } = props;
  return (
    <div class="choices">
      <Cup class="choice" isChosen onPress={props.onChange}>
        <span class="choice-name">
          <span class="rec">{picked?.name ?? newName}</span>
          {(picked?.sub ?? newName) !== "" && (
            <span class="second">{picked === undefined ? PICKER.new_name : picked.sub}</span>
          )}
        </span>
        <span class="second">{PICKER.change}</span>
      </Cup>
    </div>
  );
}

function List(
  props: PickerProps & {
    isAll: boolean;
    onAll: () => void;
    choose: (id: string) => void;
  },
) {
  const { items, recent = [] } = props;
  const isShort = props.isAll || items.length <= SHORT_LIST;
  const last = recent.flatMap((id) => items.filter((item) => item.id === id));
  const shown = isShort || last.length === 0 ? items : last;
  return (
    <>
      <Choices
        name={props.label}
        items={shown}
        chosen={null}
        onChoose={props.choose}
        searchFrom={SHORT_LIST + 1}
        none={props.none}
      />
      {shown.length < items.length && (
        <p class="key-row">
          <Cup onPress={props.onAll}>{PICKER.all(items.length)}</Cup>
        </p>
      )}
    </>
  );
}

function WriteName(props: { onName: (name: string) => void; onCancel: () => void }) {
  const written = useSignal("");
  const use = () => {
    if (written.value.trim() !== "") props.onName(written.value);
  };
  return (
    <>
      <TextField
        label={PICKER.name}
        value={written.value}
        onValue={(value) => {
          written.value = value;
        }}
        mostChars={NAME_CHARS_MAX}
        onEnter={use}
      />
      <p class="key-row">
        <Cup onPress={props.onCancel}>{PICKER.cancel}</Cup>
        <Cup onPress={use}>{PICKER.use}</Cup>
      </p>
    </>
  );
}

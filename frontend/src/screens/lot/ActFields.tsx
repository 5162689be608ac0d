/** The fields of an act on a lot: where, how much, where to or why. */

import type { Signal } from "@preact/signals";
import type { LotState } from "../../calc/stock.ts";
import { Caution } from "../../parts/Caution.tsx";
import { CupChoice } from "../../parts/Choices.tsx";
import { FieldGroup, NumberField, TextField } from "../../parts/Fields.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { lotsOf, nameOf, places } from "../../state/stock.ts";
import { ACTS, LOSS_REASONS } from "../../text/stock.ts";
import { choicesOf } from "../common/choices.ts";
import { DespiteField } from "../common/Despite.tsx";
import type { Drafted } from "../common/drafted.ts";
import { amountText, materialOf } from "../common/lots.ts";
import { Picker } from "../common/Picker.tsx";
import { beside, type Hindrance } from "../common/sentences.ts";
import { type Act, type ActTyped, lotsUsed } from "./acts.ts";

/** The number the keypad types into. */
export type ActOpen = "amount" | "other_amount" | null;

interface ActFieldsProps {
  act: Act;
  state: LotState;
  form: Drafted<ActTyped>;
  open: Signal<ActOpen>;
  found: Hindrance | null;
  /** The code of what is poured together. */
  newLot: string;
}

/** Counting is blind: what the record says stands nowhere until the count is kept. */
export function ActFields(props: ActFieldsProps) {
  const { act, form, found } = props;
  const typed = form.typed.value;
  return (
    <>
      {act === "count" && <p class="second">{ACTS.blind}</p>}
      <WhichPlace {...props} />
      {act === "top-up" && <OtherLot {...props} />}
      <Amount
        {...props}
        field="amount"
        label={act === "count" ? ACTS.amount_counted : label(props)}
      />
      {act === "top-up" && typed.other !== "" && (
        <Amount {...props} field="other_amount" label={ACTS.poured(typed.other)} />
      )}
      {act === "move" && (
        <Picker
          field="to_place"
          label={ACTS.to_place}
          items={choicesOf(places.value).filter((each) => each.id !== typed.place)}
          chosen={typed.to_place}
          onChoose={(id) => form.type({ to_place: id ?? "" })}
          none={ACTS.choose_place}
          refusal={beside(found, "to_place")}
        />
      )}
      <DespiteField
        lots={lotsUsed(act, typed, props.state.lot)}
        reason={typed.despite}
        onReason={(despite) => form.type({ despite })}
      />
      {act === "loss" && <WhyLost form={form} found={found} />}
      {act === "top-up" && (
        <>
          <p class="second">{ACTS.new_lot(props.newLot)}</p>
          <Caution about="shelf_life" />
        </>
      )}
    </>
  );
}

function label({ act, state }: ActFieldsProps): string {
  return act === "top-up" ? ACTS.poured(state.lot) : ACTS.amount;
}

/** Where the lot stands; for a count and for a lot that stands nowhere, every place. */
function WhichPlace({ act, state, form, found }: ActFieldsProps) {
  const typed = form.typed.value;
  const held = Object.keys(state.places);
  const material = materialOf(state.material);
  const isAnywhere = act === "count" || held.length === 0;
  const items = isAnywhere
    ? choicesOf(places.value)
    : held.map((place) => ({
        id: place,
        name: nameOf("place", place),
        sub: ACTS.here(amountText(state.places[place] ?? "0", state.unit ?? "pc", material)),
      }));
  return (
    <Picker
      field="place"
      label={act === "move" ? ACTS.from_place : ACTS.which_place}
      items={items}
      chosen={typed.place}
      recent={held}
      onChoose={(id) => form.type({ place: id ?? "" })}
      none={ACTS.choose_place}
      refusal={beside(found, act === "move" ? "from_place" : "place")}
    />
  );
}

function Amount(props: ActFieldsProps & { field: "amount" | "other_amount"; label: string }) {
  const { form, open, field, found } = props;
  const isOpen = open.value === field;
  return (
    <div id={`field-${field}`}>
      <NumberField
        label={props.label}
        typed={form.typed.value[field]}
        unit={form.typed.value.unit}
        isOpen={isOpen}
        onOpen={() => {
          open.value = isOpen ? null : field;
        }}
        refusal={field === "amount" ? (beside(found, "amount") ?? beside(found, "from")) : null}
      />
    </div>
  );
}

/** Another lot of the same material at the same place. */
function OtherLot({ state, form }: ActFieldsProps) {
  const typed = form.typed.value;
  const material = materialOf(state.material);
  const others = lotsOf(state.material ?? "", typed.place === "" ? undefined : typed.place).filter(
    (lot) => lot.lot !== state.lot,
  );
  if (others.length === 0) return <Notice>{ACTS.no_other}</Notice>;
  return (
    <Picker
      field="other"
      label={ACTS.with_lot}
      items={others.map((lot) => ({
        id: lot.lot,
        name: lot.lot,
        sub: amountText(lot.amount, lot.unit, material),
      }))}
      chosen={typed.other}
      onChoose={(id) => form.type({ other: id ?? "" })}
      none={ACTS.no_other}
    />
  );
}

const NOTE_CHARS_MAX = 600;

function WhyLost({ form, found }: { form: Drafted<ActTyped>; found: Hindrance | null }) {
  const typed = form.typed.value;
  return (
    <>
      <div id="field-reason">
        <FieldGroup label={ACTS.reason} refusal={beside(found, "reason")}>
          <CupChoice
            name={ACTS.reason}
            options={LOSS_REASONS}
            chosen={LOSS_REASONS.find((each) => each.value === typed.reason)?.value ?? null}
            onChoose={(reason) => form.type({ reason })}
          />
        </FieldGroup>
      </div>
      <TextField
        label={ACTS.note}
        value={typed.note}
        onValue={(note) => form.type({ note })}
        mostChars={NOTE_CHARS_MAX}
        refusal={beside(found, "note")}
      />
    </>
  );
}

/** The fields of a receipt, in the order in which a person at the door is asked. */
import type { Signal } from "@preact/signals";
import { objectIn, textIn } from "../../calc/bodies.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { DayField, FieldGroup, NumberField, TextField, TickField } from "../../parts/Fields.tsx";
import { kitchen, remembered } from "../../state/settings.ts";
import { cooperative, type Defined, materials, places, sources } from "../../state/stock.ts";
import { LIFE_SORTS } from "../../text/lots.ts";
import { RECEIVE } from "../../text/receive.ts";
import { choicesOf } from "../common/choices.ts";
import type { Drafted } from "../common/drafted.ts";
import { today } from "../common/edge.ts";
import { materialOf, textField } from "../common/lots.ts";
import { Picker } from "../common/Picker.tsx";
import { beside, type Hindrance } from "../common/sentences.ts";
import { unitsFor } from "../common/units.ts";
import { recentSources } from "./keep.ts";
import { StoreLevel } from "./StoreLevel.tsx";
import type { ReceiveTyped } from "./typed.ts";

/** The number the keypad types into. */
export type NumberOpen = "amount" | "price" | null;

interface FieldsProps {
  form: Drafted<ReceiveTyped>;
  open: Signal<NumberOpen>;
  found: Hindrance | null;
}

/** Who, what, how much, where, how it is, its date, what it cost. */
export function ReceiveFields(props: FieldsProps) {
  return (
    <>
      <WhoAndWhat {...props} />
      <HowMuch {...props} />
      <HowItIs {...props} />
      <PricePaid {...props} />
    </>
  );
}

/** What follows from the material: its usual unit and kind of date, the place where it went last. */
function withMaterial(id: string | null, place: string): Partial<ReceiveTyped> {
  const material = materialOf(id);
  const usualPlace = remembered("receive.place") ?? kitchen.value ?? "";
  const unit = remembered(`receive.unit.${id}`);
  const [first = "pc"] = unitsFor(material);
  return {
    material: id ?? "",
    unit: typeof unit === "string" ? unit : first,
    life_sort: usualSort(material),
    place: place !== "" || typeof usualPlace !== "string" ? place : usualPlace,
  };
}

function usualSort(material: Defined | null): string {
  return textIn(objectIn(material?.fields ?? {}, "life") ?? {}, "sort") ?? "best_before";
}

function WhoAndWhat({ form, found }: FieldsProps) {
  const typed = form.typed.value;
  return (
    <>
      <Picker
        field="source"
        label={RECEIVE.source}
        items={choicesOf(sources.value)}
        chosen={typed.source}
        onChoose={(id) => form.type({ source: id ?? "" })}
        recent={recentSources()}
        none={RECEIVE.source_none}
        write={RECEIVE.write_source}
        newName={typed.source_name}
        onName={(source_name) => form.type({ source_name })}
        refusal={beside(found, "source") ?? beside(found, "name")}
      />
      <Picker
        field="material"
        label={RECEIVE.material}
        items={choicesOf(materials.value)}
        chosen={typed.material}
        onChoose={(id) => form.type(withMaterial(id, typed.place))}
        none={RECEIVE.material_none}
        refusal={beside(found, "material")}
      />
    </>
  );
}

function HowMuch({ form, open, found }: FieldsProps) {
  const typed = form.typed.value;
  return (
    <>
      <div id="field-amount">
        <NumberField
          label={RECEIVE.amount}
          typed={typed.amount}
          unit={typed.unit}
          isOpen={open.value === "amount"}
          onOpen={() => {
            open.value = open.value === "amount" ? null : "amount";
          }}
          refusal={beside(found, "amount")}
        />
      </div>
      <StoreLevel typed={typed} />
      <Picker
        field="place"
        label={RECEIVE.place}
        items={choicesOf(places.value)}
        chosen={typed.place}
        onChoose={(id) => form.type({ place: id ?? "" })}
        none={RECEIVE.place_none}
        refusal={beside(found, "place")}
      />
    </>
  );
}

const CONDITIONS = [
  { value: "fit", word: RECEIVE.fit },
  { value: "refused", word: RECEIVE.refused },
] as const;
const WHY_CHARS_MAX = 600;

function HowItIs({ form, found }: FieldsProps) {
  const typed = form.typed.value;
  const isPast = typed.condition === "fit" && typed.life_on !== "" && typed.life_on < today();
  return (
    <>
      <FieldGroup label={RECEIVE.condition}>
        <CupChoice
          name={RECEIVE.condition}
          options={CONDITIONS}
          chosen={typed.condition === "refused" ? "refused" : "fit"}
          onChoose={(condition) => form.type({ condition })}
        />
      </FieldGroup>
      {typed.condition === "refused" && (
        <div id="field-refused_why">
          <TextField
            label={RECEIVE.refused_why}
            value={typed.refused_why}
            onValue={(refused_why) => form.type({ refused_why })}
            lines={2}
            mostChars={WHY_CHARS_MAX}
            refusal={beside(found, "refused_why")}
          />
        </div>
      )}
      <TheirMark form={form} refusal={beside(found, "their_lot")} />
      <FieldGroup label={RECEIVE.life_sort}>
        <CupChoice
          name={RECEIVE.life_sort}
          options={LIFE_SORTS}
          chosen={LIFE_SORTS.find((each) => each.value === typed.life_sort)?.value ?? null}
          onChoose={(life_sort) => form.type({ life_sort })}
        />
      </FieldGroup>
      <div id="field-life">
        <DayField
          label={RECEIVE.life_on}
          value={typed.life_on}
          onValue={(life_on) => form.type({ life_on })}
          refusal={beside(found, "life") ?? (isPast ? RECEIVE.is_past(typed.life_on) : null)}
        />
      </div>
    </>
  );
}

const MARK_CHARS_MAX = 120;

function TheirMark(props: { form: Drafted<ReceiveTyped>; refusal: string | null }) {
  const typed = props.form.typed.value;
  return (
    <div class="two-fields">
      {!typed.has_no_mark && (
        <TextField
          label={RECEIVE.their_lot}
          value={typed.their_lot}
          onValue={(their_lot) => props.form.type({ their_lot })}
          mostChars={MARK_CHARS_MAX}
          isCode
          refusal={props.refusal}
        />
      )}
      <TickField
        label={RECEIVE.none_on_it}
        isTicked={typed.has_no_mark}
        onTicked={(has_no_mark) => props.form.type({ has_no_mark })}
      />
    </div>
  );
}

/** Without a currency there is nothing to write a price in. */
function PricePaid({ form, open, found }: FieldsProps) {
  const currency = textField(cooperative.value, "currency");
  if (currency === null) return null;
  return (
    <div id="field-price">
      <NumberField
        label={RECEIVE.price}
        hint={RECEIVE.price_hint}
        typed={form.typed.value.price}
        unit={currency}
        isOpen={open.value === "price"}
        onOpen={() => {
          open.value = open.value === "price" ? null : "price";
        }}
        refusal={beside(found, "price")}
      />
    </div>
  );
}

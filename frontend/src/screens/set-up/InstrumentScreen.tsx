/** An instrument: what it shows, its smallest step, its bowl, and what it is good for. */
import { kitchen, remember, remembered } from "../../state/settings.ts";
import { cooperative, type Defined, instruments, places } from "../../state/stock.ts";
import { unitWord } from "../../text/numbers.ts";
import { FIELDS, HINTS, MISSING, SET_UP } from "../../text/set_up.ts";
import { textField } from "../shared/lots.ts";
import { inUse } from "./areas.ts";
import { ChoiceOf, NumberOf, WordsOf } from "./FormFields.tsx";
import { FormFrame } from "./FormFrame.tsx";
import { type FormAtWork, type FormPlan, textAt, useForm } from "./form.ts";
import { GoodForPart } from "./GoodForPart.tsx";
import { INSTRUMENT_SORTS, instrumentUnits, isBowlWeighed } from "./instrument_units.ts";
import { NotHere } from "./NotHere.tsx";
import { numberField, oneOf, textsOf, withoutName, wordsField } from "./typed.ts";
import "./set_up.css";

const NAME_CHARS_MAX = 120;
const NOTE_CHARS_MAX = 600;
const TEXTS = ["name", "sort", "unit", "place", "note"];
const NUMBERS = ["division", "capacity", "repeatability", "bowl_tare"];

function unitsOf(sort: string): readonly string[] {
  return instrumentUnits(sort, textField(cooperative.value, "unit_habit") ?? "metric");
}

const PLAN: FormPlan = {
  type: "instrument",
  back: "/set-up/instruments",
  blank() {
    const sort = oneOf(INSTRUMENT_SORTS, remembered("set-up.instrument.sort"));
    const place = kitchen.value ?? remembered("set-up.instrument.place");
    return {
      ...Object.fromEntries([...TEXTS, ...NUMBERS].map((name) => [name, ""])),
      sort,
      unit: unitsOf(sort)[0] ?? "",
      place: typeof place === "string" ? place : "",
    };
  },
  typedOf: (fields) => textsOf(fields, [...TEXTS, ...NUMBERS]),
  bodyOf: (typed) => ({
    name: textAt(typed, "name").trim(),
    sort: textAt(typed, "sort"),
    ...wordsField(typed, "place"),
    unit: textAt(typed, "unit"),
    ...numberField(typed, "division"),
    ...numberField(typed, "capacity"),
    ...numberField(typed, "repeatability"),
    ...(isBowlWeighed(textAt(typed, "sort")) ? numberField(typed, "bowl_tare") : {}),
    ...wordsField(typed, "note"),
  }),
  missing: (typed) =>
    withoutName(typed) ??
    (textAt(typed, "unit") === "" ? { field: "unit", sentence: MISSING.unit } : null),
  numbers: Object.fromEntries(NUMBERS.map((name) => [name, {}])),
  onKept(typed) {
    remember("set-up.instrument.sort", textAt(typed, "sort"));
    remember("set-up.instrument.place", textAt(typed, "place"));
  },
};

/** `#/set-up/instruments/:id`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const id = params.id ?? "new";
  const defined = instruments.value.find((each) => each.id === id) ?? null;
  if (id !== "new" && defined === null) return <NotHere area="instruments" />;
  return <InstrumentForm id={id} defined={defined} />;
}

function InstrumentForm({ id, defined }: { id: string; defined: Defined | null }) {
  const form = useForm(PLAN, { id, inForce: defined?.fields ?? null });
  const sort = textAt(form.typed, "sort");
  const unit = textAt(form.typed, "unit");
  return (
    <FormFrame
      form={form}
      area="instruments"
      inForce={defined?.fields ?? null}
      findings={defined?.findings ?? []}
      shown={[...TEXTS, ...NUMBERS]}
    >
      <WordsOf form={form} name="name" mostChars={NAME_CHARS_MAX} />
      <ChoiceOf
        form={form}
        name="sort"
        choices={INSTRUMENT_SORTS}
        onChosen={(chosen) => form.type({ sort: chosen, unit: unitsOf(chosen)[0] ?? "" })}
      />
      <ChoiceOf form={form} name="unit" choices={unitsOf(sort)} words={unitWord} />
      <NumberOf form={form} name="division" unit={unit} hint={HINTS.division} />
      <GoodForPart form={form} />
      <NumberOf form={form} name="capacity" unit={unit} />
      <NumberOf form={form} name="repeatability" unit={unit} hint={HINTS.repeatability} />
      {isBowlWeighed(sort) && (
        <NumberOf form={form} name="bowl_tare" unit={unit} hint={HINTS.bowl_tare} />
      )}
      <PlaceOf form={form} />
      <WordsOf form={form} name="note" mostChars={NOTE_CHARS_MAX} lines={2} />
    </FormFrame>
  );
}

function PlaceOf({ form }: { form: FormAtWork }) {
  const known = new Map(inUse(places.value).map((each) => [each.id, each.name]));
  return (
    <ChoiceOf
      form={form}
      name="place"
      label={FIELDS.place ?? ""}
      none={SET_UP.none}
      choices={[...known.keys()]}
      words={(place) => known.get(place) ?? place}
    />
  );
}

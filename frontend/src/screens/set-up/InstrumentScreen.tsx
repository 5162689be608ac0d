/** An instrument: what it shows, its smallest step, its bowl, and what it is good for. */
import { Cup } from "../../parts/Cup.tsx";
import { Part } from "../../parts/Plain.tsx";
import { kitchen, remember, remembered } from "../../state/settings.ts";
import { cooperative, type Defined, instruments, places } from "../../state/stock.ts";
import type { Body } from "../../state/types.ts";
import { unitWord } from "../../text/numbers.ts";
import { FIELDS, HINTS, MISSING, SET_UP } from "../../text/set_up.ts";
import type { Typed } from "../common/drafted.ts";
import { textField } from "../common/lots.ts";
import { inUse } from "./areas.ts";
import { ChoiceOf, NumberOf, WordsOf } from "./FormFields.tsx";
import { FormFrame } from "./FormFrame.tsx";
import { type FormAtWork, type FormPlan, textAt, useForm } from "./form.ts";
import { GoodForPart } from "./GoodForPart.tsx";
import { CLASSES, checkedAtFirst, isFilled, rulesOf } from "./instrument_checks.ts";
import { INSTRUMENT_SORTS, instrumentUnits, isBowlWeighed } from "./instrument_units.ts";
import { NotHere } from "./NotHere.tsx";
import {
  numberField,
  oneOf,
  quantityField,
  quantityTyped,
  textsOf,
  wholeField,
  wholesOf,
  withoutName,
  wordsField,
} from "./typed.ts";
import "./set_up.css";

const NAME_CHARS_MAX = 120;
const NOTE_CHARS_MAX = 600;
const TEXTS = ["name", "sort", "unit", "place", "accuracy_class", "judged_by", "good_for", "note"];
const NUMBERS = ["division", "capacity", "repeatability", "bowl_tare", "interval", "most_error"];
const WHOLES = ["check_days", "check_uses"];
const VOLUMES = ["mL", "L", "us_cup", "metric_cup", "imp_cup", "us_tbsp", "us_tsp", "us_floz"];

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
      ...checkedAtFirst(sort),
      holds: "",
      holds_unit: "mL",
      sort,
      unit: unitsOf(sort)[0] ?? "",
      place: typeof place === "string" ? place : "",
    };
  },
  typedOf: (fields) => ({
    ...textsOf(fields, [...TEXTS, ...NUMBERS]),
    ...wholesOf(fields, WHOLES),
    ...quantityTyped(fields, "holds", "mL"),
  }),
  bodyOf: (typed) => ({
    name: textAt(typed, "name").trim(),
    sort: textAt(typed, "sort"),
    ...wordsField(typed, "place"),
    unit: textAt(typed, "unit"),
    ...numberField(typed, "division"),
    ...numberField(typed, "capacity"),
    ...numberField(typed, "repeatability"),
    ...(isBowlWeighed(textAt(typed, "sort")) ? numberField(typed, "bowl_tare") : {}),
    ...checksOf(typed),
    ...wordsField(typed, "good_for"),
    ...wordsField(typed, "note"),
  }),
  missing: (typed) =>
    withoutName(typed) ??
    (textAt(typed, "unit") === "" ? { field: "unit", sentence: MISSING.unit } : null),
  numbers: {
    ...Object.fromEntries(NUMBERS.map((name) => [name, {}])),
    ...Object.fromEntries(WHOLES.map((name) => [name, { isWhole: true }])),
    holds: { units: () => VOLUMES, unitField: "holds_unit" },
  },
  onKept(typed) {
    remember("set-up.instrument.sort", textAt(typed, "sort"));
    remember("set-up.instrument.place", textAt(typed, "place"));
  },
};

/** Only what a sort can have: a thermometer has no class, a scale holds no volume. */
function checksOf(typed: Typed): Body {
  const sort = textAt(typed, "sort");
  return {
    ...(isBowlWeighed(sort) ? numberField(typed, "interval") : {}),
    ...(CLASSES[sort] === undefined ? {} : wordsField(typed, "accuracy_class")),
    ...wordsField(typed, "judged_by"),
    ...(textAt(typed, "judged_by") === "own" ? numberField(typed, "most_error") : {}),
    ...(isFilled(sort) ? quantityField(typed, "holds") : {}),
    ...wholeField(typed, "check_days"),
    ...wholeField(typed, "check_uses"),
  };
}

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
      shown={[...TEXTS, ...NUMBERS, ...WHOLES, "holds"]}
    >
      <WordsOf form={form} name="name" mostChars={NAME_CHARS_MAX} />
      <ChoiceOf
        form={form}
        name="sort"
        choices={INSTRUMENT_SORTS}
        onChosen={(chosen) =>
          form.type({
            sort: chosen,
            unit: unitsOf(chosen)[0] ?? "",
            ...(form.isNew ? checkedAtFirst(chosen) : {}),
          })
        }
      />
      <ChoiceOf form={form} name="unit" choices={unitsOf(sort)} words={unitWord} />
      <NumberOf form={form} name="division" unit={unit} hint={HINTS.division} />
      <GoodForPart form={form} />
      <NumberOf form={form} name="capacity" unit={unit} />
      <NumberOf form={form} name="repeatability" unit={unit} hint={HINTS.repeatability} />
      {isBowlWeighed(sort) && (
        <NumberOf form={form} name="bowl_tare" unit={unit} hint={HINTS.bowl_tare} />
      )}
      <ChecksOf form={form} sort={sort} unit={unit} />
      <PlaceOf form={form} />
      <WordsOf form={form} name="good_for" mostChars={NOTE_CHARS_MAX} hint={HINTS.good_for} />
      <WordsOf form={form} name="note" mostChars={NOTE_CHARS_MAX} lines={2} />
    </FormFrame>
  );
}

/** How it is checked: its class, whose limits, how often. */
function ChecksOf({ form, sort, unit }: { form: FormAtWork; sort: string; unit: string }) {
  const rules = rulesOf(sort);
  const classes = CLASSES[sort];
  return (
    <Part title={FIELDS.checks ?? ""}>
      {!form.isNew && (
        <p class="key-row">
          <Cup href={`#/instruments/${form.id}`}>{SET_UP.its_checks}</Cup>
        </p>
      )}
      {isFilled(sort) && (
        <NumberOf form={form} name="holds" unit={textAt(form.typed, "holds_unit")} />
      )}
      {isBowlWeighed(sort) && (
        <NumberOf form={form} name="interval" unit={unit} hint={HINTS.interval} />
      )}
      {classes && (
        <ChoiceOf form={form} name="accuracy_class" choices={classes} none={SET_UP.not_marked} />
      )}
      {rules.length > 1 && <ChoiceOf form={form} name="judged_by" choices={rules} />}
      {textAt(form.typed, "judged_by") === "own" && (
        <NumberOf form={form} name="most_error" unit={unit} hint={HINTS.most_error} />
      )}
      <NumberOf form={form} name="check_days" hint={HINTS.check_days} />
      <NumberOf form={form} name="check_uses" />
    </Part>
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

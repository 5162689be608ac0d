/** The cooperative: its name, day, money, units and label rules. */
import { SelectField } from "../../parts/Fields.tsx";
import { Facts } from "../../parts/Plain.tsx";
import { current } from "../../state/session.ts";
import { cooperative } from "../../state/stock.ts";
import { FIELDS, HINTS } from "../../text/set_up.ts";
import { beside } from "../common/sentences.ts";
import { ChoiceOf, TickOf, WordsOf } from "./FormFields.tsx";
import { FormFrame } from "./FormFrame.tsx";
import { type FormAtWork, type FormPlan, textAt, useForm } from "./form.ts";
import { textsOf, withoutCurrency, withoutName } from "./typed.ts";
import "./set_up.css";

const NAME_CHARS_MAX = 120;
const CURRENCY_CHARS_MAX = 3;
const LANGUAGE_CHARS_MAX = 12;
const TEXTS = ["name", "time_zone", "currency", "language", "unit_habit", "rules"];

const PLAN: FormPlan = {
  type: "cooperative",
  back: "/set-up",
  blank() {
    const known = current.value?.cooperative;
    const { time_zone, currency, language } = known?.starts_with ?? {};
    return {
      name: known?.name ?? "",
      time_zone: time_zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone,
      currency: currency ?? "",
      currency_places: "2",
      language: language ?? "en",
      unit_habit: "metric",
      rules: "own",
      prices_shown: false,
    };
  },
  typedOf: (fields) => ({
    ...textsOf(fields, TEXTS),
    currency_places: String(fields.currency_places ?? "2"),
    prices_shown: fields.prices_shown === true,
  }),
  bodyOf: (typed) => ({
    name: textAt(typed, "name").trim(),
    time_zone: textAt(typed, "time_zone"),
    currency: textAt(typed, "currency").trim(),
    currency_places: Number(textAt(typed, "currency_places")),
    language: textAt(typed, "language").trim(),
    unit_habit: textAt(typed, "unit_habit"),
    rules: textAt(typed, "rules"),
    prices_shown: typed.prices_shown === true,
  }),
  missing: (typed) => withoutName(typed) ?? withoutCurrency(typed),
  numbers: {},
};

/** `#/set-up/cooperative`. */
export function Screen() {
  const id = current.value?.cooperative.id;
  return id === undefined ? null : <CooperativeForm id={id} />;
}

function CooperativeForm({ id }: { id: string }) {
  const inForce = cooperative.value?.fields ?? null;
  const form = useForm(PLAN, { id, inForce });
  return (
    <FormFrame
      form={form}
      area="cooperative"
      inForce={inForce}
      findings={cooperative.value?.findings ?? []}
      shown={[...TEXTS, "currency_places", "prices_shown"]}
    >
      <WordsOf form={form} name="name" mostChars={NAME_CHARS_MAX} />
      <ZoneOf form={form} />
      <WordsOf
        form={form}
        name="currency"
        hint={HINTS.currency}
        mostChars={CURRENCY_CHARS_MAX}
        isCode
      />
      <ChoiceOf form={form} name="currency_places" choices={["0", "2", "3"]} />
      <ChoiceOf form={form} name="unit_habit" choices={["metric", "us", "imperial"]} />
      <ChoiceOf form={form} name="rules" choices={["eu", "us", "own"]} />
      <WordsOf form={form} name="language" hint={HINTS.language} mostChars={LANGUAGE_CHARS_MAX} />
      <TickOf form={form} name="prices_shown" />
    </FormFrame>
  );
}

/** The zones this phone knows, and the one in force even if it does not. */
function ZoneOf({ form }: { form: FormAtWork }) {
  const zone = textAt(form.typed, "time_zone");
  const label = FIELDS.time_zone ?? "";
  if (!form.canWrite) return <Facts rows={[{ name: label, value: zone }]} />;
  const known = Intl.supportedValuesOf("timeZone");
  const all = known.includes(zone) || zone === "" ? known : [zone, ...known];
  return (
    <div id="field-time_zone">
      <SelectField
        label={label}
        value={zone}
        onValue={(time_zone) => form.type({ time_zone })}
        options={all.map((value) => ({ value, word: value.replaceAll("_", " ") }))}
        refusal={beside(form.found, "time_zone")}
      />
    </div>
  );
}

/** A place: kitchen, store, stall or a seller's own box. */
import { remember, remembered } from "../../state/settings.ts";
import { type Defined, places } from "../../state/stock.ts";
import { HINTS } from "../../text/set_up.ts";
import { ChoiceOf, NumberOf, WordsOf } from "./FormFields.tsx";
import { FormFrame } from "./FormFrame.tsx";
import { type FormPlan, textAt, useForm } from "./form.ts";
import { NotHere } from "./NotHere.tsx";
import { numberField, oneOf, textsOf, withoutName, wordsField } from "./typed.ts";
import "./set_up.css";

const NAME_CHARS_MAX = 120;
const NOTE_CHARS_MAX = 600;
const SORTS = ["kitchen", "store", "stall", "box"] as const;

const PLAN: FormPlan = {
  type: "place",
  back: "/set-up/places",
  blank: () => ({
    name: "",
    sort: oneOf(SORTS, remembered("set-up.place.sort")),
    altitude_m: "",
    note: "",
  }),
  typedOf: (fields) => textsOf(fields, ["name", "sort", "altitude_m", "note"]),
  bodyOf: (typed) => ({
    name: textAt(typed, "name").trim(),
    sort: textAt(typed, "sort"),
    ...numberField(typed, "altitude_m"),
    ...wordsField(typed, "note"),
  }),
  missing: withoutName,
  numbers: { altitude_m: { isSigned: true } },
  onKept: (typed) => remember("set-up.place.sort", textAt(typed, "sort")),
};

/** `#/set-up/places/:id`, where `new` is one that is not set up yet. */
export function Screen({ params }: { params: Record<string, string> }) {
  const id = params.id ?? "new";
  const defined = places.value.find((each) => each.id === id) ?? null;
  if (id !== "new" && defined === null) return <NotHere area="places" />;
  return <PlaceForm id={id} defined={defined} />;
}

function PlaceForm({ id, defined }: { id: string; defined: Defined | null }) {
  const form = useForm(PLAN, { id, inForce: defined?.fields ?? null });
  return (
    <FormFrame
      form={form}
      area="places"
      inForce={defined?.fields ?? null}
      findings={defined?.findings ?? []}
      shown={["name", "sort", "altitude_m", "note"]}
    >
      <WordsOf form={form} name="name" hint={HINTS.name_place} mostChars={NAME_CHARS_MAX} />
      <ChoiceOf form={form} name="sort" choices={SORTS} />
      <NumberOf form={form} name="altitude_m" unit="m" hint={HINTS.altitude_m} />
      <WordsOf form={form} name="note" mostChars={NOTE_CHARS_MAX} lines={2} />
    </FormFrame>
  );
}

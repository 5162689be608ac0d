/** A material: ingredient, packaging or product; its letters, density, pack, life, allergens. */
import { Cup } from "../../parts/Cup.tsx";
import { type Defined, materials } from "../../state/stock.ts";
import { HINTS, SET_UP } from "../../text/set_up.ts";
import { DensityChoice } from "./DensityChoice.tsx";
import { ChoiceOf, TickOf, TicksOf, WordsOf } from "./FormFields.tsx";
import { FormFrame } from "./FormFrame.tsx";
import { type FormAtWork, textAt, useForm } from "./form.ts";
import { LifeOf } from "./LifeOf.tsx";
import { ALLERGENS, letteredName, MATERIAL_PLAN, MEASURES, SHOWN, SORTS } from "./material.ts";
import { NotHere } from "./NotHere.tsx";
import { PackOf } from "./PackOf.tsx";
import "./set_up.css";

const NAME_CHARS_MAX = 120;
const NOTE_CHARS_MAX = 600;
const LETTERS_MAX = 3;

/** `#/set-up/materials/:id`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const id = params.id ?? "new";
  const defined = materials.value.find((each) => each.id === id) ?? null;
  if (id !== "new" && defined === null) return <NotHere area="materials" />;
  return <MaterialForm id={id} defined={defined} />;
}

function MaterialForm({ id, defined }: { id: string; defined: Defined | null }) {
  const form = useForm(MATERIAL_PLAN, { id, inForce: defined?.fields ?? null });
  const sort = textAt(form.typed, "sort");
  return (
    <FormFrame
      form={form}
      area="materials"
      inForce={defined?.fields ?? null}
      findings={defined?.findings ?? []}
      shown={SHOWN}
    >
      <NameOf form={form} />
      <ChoiceOf form={form} name="sort" choices={SORTS} />
      <ChoiceOf form={form} name="measured_by" choices={MEASURES} />
      {sort === "product" && <PackOf form={form} />}
      {sort === "product" && defined !== null && (
        <p class="key-row">
          <Cup href={`#/asked/${id}`}>{SET_UP.prices}</Cup>
        </p>
      )}
      {sort === "product" && (
        <TickOf form={form} name="loses_moisture" hint={HINTS.loses_moisture} />
      )}
      {sort === "ingredient" && textAt(form.typed, "measured_by") !== "count" && (
        <DensityChoice form={form} />
      )}
      <LifeOf form={form} hint={HINTS.life} />
      {sort !== "packaging" && (
        <TicksOf form={form} name="allergens" hint={HINTS.allergens} choices={ALLERGENS} />
      )}
      <WordsOf form={form} name="note" mostChars={NOTE_CHARS_MAX} lines={2} />
    </FormFrame>
  );
}

/** The letters follow the name until somebody writes others. */
function NameOf({ form }: { form: FormAtWork }) {
  const follows = {
    ...form,
    type: (part: typeof form.typed) => form.type(letteredName(form, part)),
  };
  return (
    <>
      <WordsOf form={follows} name="name" mostChars={NAME_CHARS_MAX} />
      <WordsOf form={form} name="letters" hint={HINTS.letters} mostChars={LETTERS_MAX} isCode />
    </>
  );
}

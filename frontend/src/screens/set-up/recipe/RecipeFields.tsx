/** What a recipe says of itself: name, product, what it makes; further down solids, life, note. */
import { materials } from "../../../state/stock.ts";
import { HINTS } from "../../../text/set_up.ts";
import { RECIPE } from "../../../text/set_up_recipe.ts";
import { choicesOf } from "../../common/choices.ts";
import { textField } from "../../common/lots.ts";
import { Picker } from "../../common/Picker.tsx";
import { beside } from "../../common/sentences.ts";
import { NumberOf, WordsOf } from "../FormFields.tsx";
import { type Bound, textAt } from "../form.ts";
import { LifeOf } from "../LifeOf.tsx";
import { ReadFact } from "../ReadFact.tsx";

const NAME_CHARS_MAX = 120;
const NOTE_CHARS_MAX = 4000;

/** The head stands before the lines, the rest after the steps. */
export function RecipeFields({ form, part }: { form: Bound; part: "head" | "more" }) {
  if (part === "more") {
    return (
      <>
        <NumberOf
          form={form}
          name="target_solids_percent"
          label={RECIPE.solids}
          hint={RECIPE.solids_hint}
          unit="%"
        />
        <NumberOf
          form={form}
          name="loss_percent"
          label={RECIPE.loss}
          hint={RECIPE.loss_hint}
          unit="%"
        />
        <LifeOf form={form} hint={HINTS.life} />
        <WordsOf
          form={form}
          name="does_not_scale"
          label={RECIPE.own_does_not_scale}
          hint={RECIPE.own_does_not_scale_hint}
          mostChars={NOTE_CHARS_MAX}
          lines={3}
        />
        <WordsOf form={form} name="note" label={RECIPE.note} mostChars={NOTE_CHARS_MAX} lines={3} />
      </>
    );
  }
  return (
    <>
      <WordsOf form={form} name="name" mostChars={NAME_CHARS_MAX} />
      <ProductOf form={form} />
      <NumberOf
        form={form}
        name="makes"
        label={RECIPE.makes}
        unit={textAt(form.typed, "makes_unit")}
      />
      <NumberOf form={form} name="packs" label={RECIPE.packs} hint={RECIPE.packs_hint} />
    </>
  );
}

function ProductOf({ form }: { form: Bound }) {
  const chosen = textAt(form.typed, "product");
  const products = materials.value.filter((each) => textField(each, "sort") !== "packaging");
  if (!form.canWrite) {
    return <ReadFact label={RECIPE.product} field="product" value={chosen} />;
  }
  return (
    <Picker
      field="product"
      label={RECIPE.product}
      items={choicesOf(products)}
      chosen={chosen}
      onChoose={(id) => form.type({ product: id ?? "" })}
      recent={products.filter((each) => textField(each, "sort") === "product").map(({ id }) => id)}
      none={RECIPE.product_none}
      refusal={beside(form.found, "product")}
    />
  );
}

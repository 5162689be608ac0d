/** One size of pack a recipe may be filled into: what is in it, its name, its packaging. */
import { Cup } from "../../../parts/Cup.tsx";
import { goTo } from "../../../state/route.ts";
import { materials } from "../../../state/stock.ts";
import { amountWords } from "../../../text/numbers.ts";
import { PACK } from "../../../text/recipe_lines.ts";
import { RECIPE_MISSING } from "../../../text/set_up_recipe.ts";
import { choicesOf } from "../../common/choices.ts";
import { textField } from "../../common/lots.ts";
import { Picker } from "../../common/Picker.tsx";
import { NumberOf, WordsOf } from "../FormFields.tsx";
import { NotHere } from "../NotHere.tsx";
import { ItemFrame } from "./ItemFrame.tsx";
import type { PackTyped } from "./items.ts";
import { isSome } from "./typed.ts";
import { type RecipeAtWork, useBound, useRecipe } from "./use_recipe.ts";
import "../../common/rows.css";
import "../set_up.css";

const WORD_CHARS_MAX = 20;
const UNITS = ["g", "kg", "oz", "lb", "mL", "L", "us_floz"];

/** `#/set-up/recipes/:recipe/pack/:size`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const recipe = useRecipe(params.recipe ?? "new");
  if (recipe === null) return null;
  const pack = recipe.typed.pack_sizes.find((each) => each.size === params.size);
  if (pack === undefined) return <NotHere area="recipes" />;
  return <PackForm recipe={recipe} pack={pack} />;
}

function PackForm({ recipe, pack }: { recipe: RecipeAtWork; pack: PackTyped }) {
  const { typed, param } = recipe;
  const back = `/set-up/recipes/${param}`;
  const put = (part: object) =>
    recipe.type({
      pack_sizes: typed.pack_sizes.map((each) =>
        each.size === pack.size ? Object.assign({}, each, part) : each,
      ),
    });
  const form = useBound(pack, put, { net: { units: () => UNITS, unitField: "net_unit" } });
  return (
    <ItemFrame
      form={form}
      where={PACK.where(typed.name)}
      title={isSome(pack.net) ? packWords(pack) : PACK.new_title}
      benchName={PACK.new_title}
      back={back}
      done={PACK.done}
      lacks={isSome(pack.net) ? null : { sentence: RECIPE_MISSING.pack, field: "net" }}
    >
      <NumberOf form={form} name="net" label={PACK.net} unit={pack.net_unit} />
      <WordsOf
        form={form}
        name="word"
        label={PACK.word}
        hint={PACK.word_hint}
        mostChars={WORD_CHARS_MAX}
      />
      <p class="second">{PACK.packaging_hint}</p>
      <Picker
        field="packaging"
        label={PACK.packaging}
        items={choicesOf(materials.value.filter((each) => textField(each, "sort") === "packaging"))}
        chosen={pack.packaging}
        onChoose={(id) => put({ packaging: id ?? "" })}
        none={PACK.packaging_none}
      />
      <p class="key-row">
        <Cup
          onPress={() => {
            goTo(back);
            recipe.type({ pack_sizes: typed.pack_sizes.filter((each) => each !== pack) });
          }}
        >
          {PACK.remove}
        </Cup>
      </p>
    </ItemFrame>
  );
}

/** `jar of 250 g`. */
export function packWords(pack: PackTyped): string {
  return PACK.named(amountWords(pack.net, pack.net_unit), pack.word);
}

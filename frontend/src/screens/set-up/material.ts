/** The form of a material: its fields, defaults, and what goes with which sort. */
import { lettersOf } from "../../calc/codes.ts";
import { KINDS } from "../../entries/kinds.ts";
import { remember, remembered } from "../../state/settings.ts";
import type { Body } from "../../state/types.ts";
import { MISSING } from "../../text/set_up.ts";
import type { Typed } from "../common/drafted.ts";
import type { Hindrance } from "../common/sentences.ts";
import { type FormAtWork, type FormPlan, textAt } from "./form.ts";
import {
  lifeField,
  lifeMissing,
  lifeTyped,
  numberField,
  oneOf,
  quantityField,
  quantityTyped,
  textsOf,
  withoutName,
  wordsField,
} from "./typed.ts";

export const SORTS = ["ingredient", "packaging", "product"] as const;
export const MEASURES = ["mass", "volume", "count"] as const;
/** The allergens of the table of kinds. */
export const ALLERGENS: readonly string[] =
  KINDS.material_defined.fields.find((field) => field.name === "allergens")?.choices ?? [];
/** Units of one pack. */
const PACK_UNITS = ["g", "kg", "oz", "lb", "mL", "L", "us_floz"];

const TEXTS = [
  "name",
  "sort",
  "measured_by",
  "letters",
  "density_of",
  "pack_word",
  "price",
  "note",
];
/** Fields that show their own refusals. */
export const SHOWN = [...TEXTS, "pack_net", "loses_moisture", "life", "allergens"];

function allergensOf(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((each) => typeof each === "string").sort() : [];
}

/** Not ticked at all is not the same as "none of them", but neither is it written. */
function allergensField(typed: Typed): Body {
  const ticked = allergensOf(typed.allergens);
  return ticked.length === 0 || textAt(typed, "sort") === "packaging" ? {} : { allergens: ticked };
}

function packFields(typed: Typed): Body {
  if (textAt(typed, "sort") !== "product") return {};
  return {
    ...quantityField(typed, "pack_net"),
    ...wordsField(typed, "pack_word"),
    ...numberField(typed, "price"),
    // Taken back is not the same as never said, but neither is written.
    ...(typed.loses_moisture === true ? { loses_moisture: true } : {}),
  };
}

function densityField(typed: Typed): Body {
  const isUsed = textAt(typed, "sort") === "ingredient" && textAt(typed, "measured_by") !== "count";
  return isUsed ? wordsField(typed, "density_of") : {};
}

function lettersMissing(typed: Typed): Hindrance | null {
  return textAt(typed, "letters") === "" ? { field: "letters", sentence: MISSING.letters } : null;
}

/** What `useForm` needs of a material. */
export const MATERIAL_PLAN: FormPlan = {
  type: "material",
  back: "/set-up/materials",
  blank: () => ({
    ...Object.fromEntries(TEXTS.map((name) => [name, ""])),
    sort: oneOf(SORTS, remembered("set-up.material.sort")),
    measured_by: oneOf(MEASURES, remembered("set-up.material.measured_by")),
    pack_net: "",
    pack_net_unit: "g",
    loses_moisture: false,
    ...lifeTyped({}),
    allergens: [],
  }),
  typedOf: (fields) => ({
    ...textsOf(fields, TEXTS),
    ...quantityTyped(fields, "pack_net", "g"),
    loses_moisture: fields.loses_moisture === true,
    ...lifeTyped(fields),
    allergens: allergensOf(fields.allergens),
  }),
  bodyOf: (typed) => ({
    name: textAt(typed, "name").trim(),
    sort: textAt(typed, "sort"),
    measured_by: textAt(typed, "measured_by"),
    letters: textAt(typed, "letters"),
    ...densityField(typed),
    ...packFields(typed),
    ...lifeField(typed),
    ...allergensField(typed),
    ...wordsField(typed, "note"),
  }),
  missing: (typed) => withoutName(typed) ?? lettersMissing(typed) ?? lifeMissing(typed),
  numbers: {
    pack_net: { units: () => PACK_UNITS, unitField: "pack_net_unit" },
    price: {},
    life_length: { isWhole: true },
  },
  onKept(typed) {
    remember("set-up.material.sort", textAt(typed, "sort"));
    remember("set-up.material.measured_by", textAt(typed, "measured_by"));
  },
};

/** A new name with the letters it proposes, unless other letters were written. */
export function letteredName(form: FormAtWork, part: Typed): Typed {
  const { typed, isNew } = form;
  const before = textAt(typed, "letters");
  const proposedBefore = lettersOf(textAt(typed, "name"));
  const follows = isNew && (before === "" || before === proposedBefore);
  const name = textAt(part, "name");
  if (!follows) return part;
  return { ...part, letters: name.trim() === "" ? "" : lettersOf(name) };
}

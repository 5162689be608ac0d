/** Parse or refuse single values: each check says why a value does not fit its field. */

import { type Decimal, parseDecimal } from "../calc/numbers.ts";
import { UNITS } from "../calc/units.ts";
import * as forms from "./forms.ts";
import { type Field, type Measure, SUBJECT_TYPES } from "./kinds.ts";
import { charCount } from "./readable.ts";
import { type Refusal, refusal } from "./refusals.ts";

export type Check = (field: Field, value: unknown, at: string) => Refusal | null;

/** Why this is not one to `most` characters (code points) of storable text. */
function textRefusal(value: unknown, most: number, at: string): Refusal | null {
  if (typeof value !== "string") return refusal("text.wrong", at);
  if (!forms.isStorable(value)) return refusal("text.unstorable", at);
  if (forms.isBlank(value)) return refusal("text.blank", at);
  if (charCount(value) > most) return refusal("text.too_long", at, { most: String(most) });
  return null;
}

/** A check that a text has a form, refused under `key`. */
function formed(isRight: (text: string) => boolean, key: Refusal["key"]): Check {
  return (_field, value, at) =>
    typeof value === "string" && isRight(value) ? null : refusal(key, at);
}

function letters(field: Field, value: unknown, at: string): Refusal | null {
  const most = field.most_chars ?? 0;
  const isRight = typeof value === "string" && value.length <= most && forms.CAPITALS.test(value);
  return isRight ? null : refusal("letters.wrong", at, { most: String(most) });
}

function isZone(text: string): boolean {
  if (!forms.ZONE.test(text)) return false;
  try {
    new Intl.DateTimeFormat("en", { timeZone: text });
  } catch {
    return false; // the only way the language says that it does not know a zone
  }
  return true;
}

function decimal(field: Field, value: unknown, at: string): Refusal | null {
  if (typeof value !== "string" || !forms.DECIMAL.test(value)) return refusal("decimal.wrong", at);
  const [whole = "", fraction = ""] = value.replace("-", "").split(".");
  if (field.digits !== undefined && whole.length + fraction.length > field.digits) {
    return refusal("decimal.too_many_digits", at, { most: String(field.digits) });
  }
  if (field.places !== undefined && fraction.length > field.places) {
    return refusal("decimal.too_many_places", at, { most: String(field.places) });
  }
  return boundsRefusal(field, value, at);
}

function whole(field: Field, value: unknown, at: string): Refusal | null {
  if (typeof value !== "number" || !Number.isSafeInteger(value)) return refusal("whole.wrong", at);
  return boundsRefusal(field, String(value), at);
}

function boundsRefusal(field: Field, value: string, at: string): Refusal | null {
  const { least, most } = field;
  const bounds = boundsOf(field);
  const number = parseDecimal(value);
  if (least !== undefined && bounds.least !== null && number.compare(bounds.least) < 0) {
    return refusal("number.too_small", at, { least });
  }
  if (most !== undefined && bounds.most !== null && number.compare(bounds.most) > 0) {
    return refusal("number.too_large", at, { most });
  }
  return null;
}

interface Bounds {
  readonly least: Decimal | null;
  readonly most: Decimal | null;
}

const knownBounds = new WeakMap<Field, Bounds>();

/** Read once a field: a list of it may hold ten thousand numbers. */
function boundsOf(field: Field): Bounds {
  const known = knownBounds.get(field);
  if (known !== undefined) return known;
  const { least, most } = field;
  const read = {
    least: least === undefined ? null : parseDecimal(least),
    most: most === undefined ? null : parseDecimal(most),
  };
  knownBounds.set(field, read);
  return read;
}

function unit(field: Field, value: unknown, at: string): Refusal | null {
  const known = typeof value === "string" ? UNITS.get(value) : undefined;
  if (known === undefined) return refusal("unit.unknown", at);
  const measures: readonly Measure[] = field.measures ?? [];
  if (measures.some((measure) => measure === known.dimension)) return null;
  return refusal("unit.wrong_measure", at, { measures: measures.join(" or ") });
}

function day(_field: Field, value: unknown, at: string): Refusal | null {
  if (typeof value !== "string" || !forms.isDay(value)) return refusal("day.wrong", at);
  return forms.isDayInRange(value) ? null : refusal("day.out_of_range", at);
}

function moment(_field: Field, value: unknown, at: string): Refusal | null {
  if (typeof value !== "string" || !forms.isMoment(value)) return refusal("moment.wrong", at);
  return forms.isDayInRange(value) ? null : refusal("day.out_of_range", at);
}

function choice(field: Field, value: unknown, at: string): Refusal | null {
  const choices = field.choices ?? [];
  if (typeof value === "string" && choices.includes(value)) return null;
  return refusal("choice.unknown", at, { choices: choices.join(", ") });
}

export const VALUE_CHECKS: ReadonlyMap<string, Check> = new Map<string, Check>([
  ["text", (field, value, at) => textRefusal(value, field.most_chars ?? 0, at)],
  ["letters", letters],
  ["code", formed((text) => forms.LOT_CODE.test(text), "code.wrong")],
  ["id", formed((text) => forms.ID.test(text), "id.wrong")],
  ["entry", formed((text) => forms.UUID.test(text), "uuid.wrong")],
  ["subject", formed((text) => forms.isSubject(text, SUBJECT_TYPES), "subject.wrong")],
  ["zone", formed(isZone, "zone.unknown")],
  ["decimal", decimal],
  ["whole", whole],
  ["unit", unit],
  ["day", day],
  ["moment", moment],
  ["choice", choice],
  ["flag", (_f, value, at) => (typeof value === "boolean" ? null : refusal("flag.wrong", at))],
]);

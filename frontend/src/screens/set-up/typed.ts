/** Between the fields of a definition and the texts of a form. */
import { typedNumber } from "../../parts/typing.ts";
import type { Body, Json } from "../../state/types.ts";
import { MISSING } from "../../text/set_up.ts";
import type { Typed } from "../common/drafted.ts";
import type { Hindrance } from "../common/sentences.ts";
import type { Fields } from "./changes.ts";
import { textAt } from "./form.ts";

/** Text fields as they stand; "" where there is none. */
export function textsOf(fields: Fields, names: readonly string[]): Typed {
  return Object.fromEntries(
    names.map((name) => {
      const value = fields[name];
      return [name, typeof value === "string" ? value : ""];
    }),
  );
}

/** Words for a body; left out while empty. */
export function wordsField(typed: Typed, name: string): Body {
  const words = textAt(typed, name).trim();
  return words === "" ? {} : { [name]: words };
}

/** A number for a body, with the digits that were typed; left out while there is none. */
export function numberField(typed: Typed, name: string): Body {
  const number = typedNumber(textAt(typed, name));
  return number === null ? {} : { [name]: number };
}

/** A whole number for a body; left out while there is none. */
export function wholeField(typed: Typed, name: string): Body {
  const whole = Number(textAt(typed, name));
  return whole > 0 && Number.isSafeInteger(whole) ? { [name]: whole } : {};
}

/** Whole fields as texts; "" where there is none. */
export function wholesOf(fields: Fields, names: readonly string[]): Typed {
  return Object.fromEntries(
    names.map((name) => [name, typeof fields[name] === "number" ? String(fields[name]) : ""]),
  );
}

/** An amount with its unit for a body. */
export function quantityField(typed: Typed, name: string): Body {
  const amount = typedNumber(textAt(typed, name));
  return amount === null ? {} : { [name]: { amount, unit: textAt(typed, `${name}_unit`) } };
}

/** The texts of an amount with its unit; `unit` where there is none yet. */
export function quantityTyped(fields: Fields, name: string, unit: string): Typed {
  const held = fields[name];
  const isHeld = typeof held === "object" && held !== null;
  const { amount = "", unit: heldUnit = unit } = isHeld ? textsIn(held) : {};
  return { [name]: amount, [`${name}_unit`]: heldUnit };
}

function textsIn(group: object): { [name: string]: string } {
  return Object.fromEntries(Object.entries(group).map(([name, value]) => [name, String(value)]));
}

/** How long it keeps, for a body; without a kind of date there is no rule. */
export function lifeField(typed: Typed): Body {
  const length = Number(textAt(typed, "life_length"));
  const sort = textAt(typed, "life_sort");
  if (sort === "" || !Number.isSafeInteger(length)) return {};
  return { life: { sort, length, unit: textAt(typed, "life_unit") } };
}

/** The texts of how long it keeps. */
export function lifeTyped(fields: Fields): Typed {
  const life = fields.life;
  const isRule = typeof life === "object" && life !== null;
  const { sort = "", length = "", unit = "months" } = isRule ? textsIn(life) : {};
  return { life_sort: sort, life_length: length, life_unit: unit };
}

/** A kind of date needs a length in whole days or months: half of one would be left out. */
export function lifeMissing(typed: Typed): Hindrance | null {
  const length = Number(textAt(typed, "life_length"));
  const isOpen = textAt(typed, "life_sort") !== "" && !(Number.isSafeInteger(length) && length > 0);
  return isOpen ? { field: "life_length", sentence: MISSING.life_length } : null;
}

/** What every form needs first. */
export function withoutName(typed: Typed): Hindrance | null {
  return textAt(typed, "name").trim() === "" ? { field: "name", sentence: MISSING.name } : null;
}

/** A currency is three letters, of which a form with fewer would print prices nobody knows. */
export function withoutCurrency(typed: Typed): Hindrance | null {
  const isWhole = /^[A-Z]{3}$/.test(textAt(typed, "currency").trim());
  return isWhole ? null : { field: "currency", sentence: MISSING.currency };
}

/** The remembered choice if it still is one, else the first. */
export function oneOf(choices: readonly string[], chosen: Json): string {
  return choices.find((each) => each === chosen) ?? choices[0] ?? "";
}

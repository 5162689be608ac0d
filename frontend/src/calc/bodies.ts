/**
 * Reading a body without trusting it: what is missing or unreadable is null, nothing throws.
 * Bodies were parsed before they were kept, but a fold may meet those of a version it does not know.
 */

import { type Decimal, parseDecimal, total } from "./numbers.ts";
import { baseUnitOf, dimensionOf, inBase, isUnit } from "./units.ts";

export const NUMBER_DIGITS_MAX = 14; // as many as a body may hold; the same as the Python twin

/** Parsed JSON of any kind: its fields are told apart here. */
export type Body = Readonly<Record<string, unknown>>;

/** An amount as it was recorded, with the digits and the unit of the person. */
export interface Quantity {
  readonly amount: string;
  readonly unit: string;
}

/** An amount in a base unit: g, mL or pc. */
export interface Amount {
  readonly value: Decimal;
  readonly unit: string;
}

/** The text of a field. */
export function textIn(body: Body, name: string): string | null {
  const value = body[name];
  return typeof value === "string" ? value : null;
}

/** The object of a field. */
export function objectIn(body: Body, name: string): Body | null {
  const value = body[name];
  return isObject(value) ? value : null;
}

/** The objects of a list; none where there is no list. */
export function itemsIn(body: Body, name: string): Body[] {
  return listIn(body, name).filter(isObject);
}

/** The texts of a list; none where there is no list. */
export function textsIn(body: Body, name: string): string[] {
  return listIn(body, name).filter((each) => typeof each === "string");
}

/** The number of a field, with the digits that were read. */
export function decimalIn(body: Body, name: string): Decimal | null {
  const text = textIn(body, name) ?? "";
  if (text.replace(/[^0-9]/g, "").length > NUMBER_DIGITS_MAX) return null;
  try {
    return parseDecimal(text);
  } catch {
    return null;
  }
}

/** An amount with its unit, as recorded. */
export function quantityIn(body: Body, name: string): Quantity | null {
  const found = objectIn(body, name) ?? {};
  const amount = textIn(found, "amount");
  const unit = textIn(found, "unit");
  if (amount === null || unit === null || decimalIn(found, "amount") === null) return null;
  return { amount, unit };
}

/** An amount in its base unit; null also for a unit that measures no amount. */
export function amountIn(body: Body, name: string): Amount | null {
  const found = objectIn(body, name) ?? {};
  return inBaseUnit(decimalIn(found, "amount"), textIn(found, "unit"));
}

/** A number and its unit as an amount; null where either is missing or measures no amount. */
export function inBaseUnit(value: Decimal | null, unit: string | null): Amount | null {
  if (value === null || unit === null || !isUnit(unit)) return null;
  if (dimensionOf(unit) === "temperature") return null;
  return { value: inBase(value, unit), unit: baseUnitOf(unit) };
}

/** The exact sum; null for none, for a missing one among them, and for unlike units. */
export function sumOf(amounts: Iterable<Amount | null>): Amount | null {
  const known = [...amounts];
  const units = new Set(known.map((each) => each?.unit ?? null));
  const [unit] = units;
  if (units.size !== 1 || unit === undefined || unit === null) return null;
  return { value: total(known.flatMap((each) => (each === null ? [] : [each.value]))), unit };
}

function listIn(body: Body, name: string): unknown[] {
  const value = body[name];
  return Array.isArray(value) ? value : [];
}

function isObject(value: unknown): value is Body {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** A value of a definition in words, whatever its type: for reading, conflicts and differences. */
import { objectIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { nameOf } from "../../state/stock.ts";
import { amountWords, NOT_RECORDED } from "../../text/numbers.ts";
import { SET_UP, VALUES } from "../../text/set_up.ts";

const NAMED: Record<string, string> = { place: "place", product: "material", material: "material" };

/** `field` says how an id is to be read; a missing value is a dash. */
export function valueWords(field: string, value: unknown): string {
  if (value === null || value === undefined || value === "") return NOT_RECORDED;
  if (typeof value === "boolean") return value ? SET_UP.yes : SET_UP.no;
  if (typeof value === "string") return textWords(field, value);
  if (Array.isArray(value)) {
    return value.length === 0 ? SET_UP.none : value.map((each) => valueWords("", each)).join(", ");
  }
  return typeof value === "object" ? groupWords(field, value) : String(value);
}

function textWords(field: string, value: string): string {
  const type = NAMED[field];
  if (type !== undefined) return nameOf(type, value);
  return field === "name" || field === "note" ? value : (VALUES[value] ?? value);
}

function groupWords(field: string, value: object): string {
  const held = { [field]: value };
  const quantity = quantityIn(held, field);
  if (quantity !== null) return amountWords(quantity.amount, quantity.unit);
  const life = objectIn(held, field) ?? {};
  const length = typeof life.length === "number" ? String(life.length) : "";
  const [sort, unit] = [textIn(life, "sort") ?? "", textIn(life, "unit") ?? ""];
  return `${length} ${VALUES[unit] ?? unit}, ${VALUES[sort] ?? sort}`;
}

/** What an edit changed: the difference between the fields one saw and the fields one wants. */
import type { Json } from "../../state/types.ts";

/** The fields of a definition; one that is not there, undefined or null is missing. */
export type Fields = Readonly<Record<string, unknown>>;

/** One changed field; null where it is missing. */
export interface Changed {
  from: Json;
  to: Json;
}

/**
 * `{field: {from, to}}` for each of `names` that differs (R49). Lists are compared in their order,
 * groups field by field, texts digit by digit: 12.50 is not 12.5.
 */
export function changesBetween(
  seen: Fields,
  wanted: Fields,
  names: readonly string[],
): Record<string, Changed> {
  const changes: Record<string, Changed> = {};
  for (const name of names) {
    const from = jsonOf(seen[name]);
    const to = jsonOf(wanted[name]);
    if (!isSame(from, to)) changes[name] = { from, to };
  }
  return changes;
}

/** Whether two JSON values say the same; the order of fields in a group says nothing. */
export function isSame(one: unknown, other: unknown): boolean {
  return ordered(one) === ordered(other);
}

/** A value of a sheet or a form as JSON. */
export function jsonOf(value: unknown): Json {
  return value === undefined ? null : JSON.parse(JSON.stringify(value));
}

function ordered(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(ordered).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value ?? null);
  const fields = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([name, each]) => `${JSON.stringify(name)}:${ordered(each)}`).join(",")}}`;
}

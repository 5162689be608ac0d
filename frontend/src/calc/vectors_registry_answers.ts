/** Short forms of vectors: decimals from their texts, limits and what they cite as JSON. */

import type * as limits from "./limits.ts";
import { type Decimal, parseDecimal, plain, written } from "./numbers.ts";
import type { Given } from "./vectors_registry.ts";

export const dec = (text: string): Decimal => parseDecimal(text);
export const d = (text: string | null | undefined): Decimal | null =>
  text == null ? null : dec(text);
export const ds = (texts: readonly string[]): Decimal[] => texts.map(dec);
export const w = (x: Decimal | null): string | null => (x === null ? null : written(x));
export const p = (x: Decimal | null): string | null => (x === null ? null : plain(x));

export function citedJson(cited: readonly limits.Cited[]) {
  const bases = cited.map((each) => `${each.what}: ${each.basis}`);
  return { bases, source: cited[0]?.source ?? null };
}

export function limitJson(limit: limits.Limit | null) {
  return limit && { amount: plain(limit.amount), ...citedJson(limit.cited) };
}

export function shown(result: object, g: Given): object {
  if (!("show" in g)) return result;
  const fields: Readonly<Record<string, unknown>> = { ...result };
  return Object.fromEntries(g.show.map((name: string) => [name, fields[name]]));
}

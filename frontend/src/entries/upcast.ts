/** Versions of bodies: what is newer than this table, how an older one is lifted when read. */

import { EARLIER_KINDS, KINDS, type Kind } from "./kinds.ts";
import { type Refusal, refusal } from "./refusals.ts";

/** A body whose kind is not known to the compiler. */
export type AnyBody = Readonly<Record<string, unknown>>;
export type Lift = (body: AnyBody) => AnyBody;

/** Not wrong, only unknown yet: above this table's version. */
export interface Newer {
  readonly newer: true;
  readonly kind: string;
  readonly version: number;
}

/** The kinds of today, those of before, and the step from each version (`kind 1`) to the next. */
export interface Table {
  readonly kinds: ReadonlyMap<string, Kind>;
  readonly earlier: readonly Kind[];
  readonly lifts: ReadonlyMap<string, Lift>;
}

export const TABLE: Table = {
  kinds: new Map(Object.entries(KINDS)),
  earlier: EARLIER_KINDS,
  lifts: new Map(),
};

export function isNewer(value: unknown): value is Newer {
  return typeof value === "object" && value !== null && "newer" in value && value.newer === true;
}

/** How the table declares this version of a kind. */
export function declaration(kind: string, version: number, table: Table): Kind | Newer | Refusal {
  const newest = table.kinds.get(kind);
  if (newest === undefined) return refusal("kind.unknown", "kind");
  if (version === newest.version) return newest;
  if (version > newest.version) return { newer: true, kind, version };
  const earlier = table.earlier.find((old) => old.name === kind && old.version === version);
  return earlier ?? refusal("version.wrong", "version");
}

/** A parsed body in the form its kind has today; what is stored and sent stays as made. */
export function lifted(
  kind: string,
  version: number,
  made: AnyBody,
  table: Table = TABLE,
): AnyBody {
  let body = made;
  for (let step = version; step < versionOf(kind, table); step += 1) {
    const lift = table.lifts.get(`${kind} ${step}`);
    if (lift === undefined) throw new Error(`no lift for ${kind} ${step}`);
    body = lift(body);
  }
  const { body: inner, of_kind, of_version = 1 } = body;
  if (!isBody(inner) || typeof of_kind !== "string" || typeof of_version !== "number") return body;
  const newest = versionOf(of_kind, table);
  if (of_version === newest) return body;
  return { ...body, body: lifted(of_kind, of_version, inner, table), of_version: newest };
}

/** An object with fields, not a list. */
export function isBody(value: unknown): value is AnyBody {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function versionOf(kind: string, table: Table): number {
  return table.kinds.get(kind)?.version ?? 0;
}

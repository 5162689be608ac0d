/** Parse or refuse a body: the table of kinds applied to what came from outside. */

import * as forms from "./forms.ts";
import type { Bodies, Field, Kind, KindName } from "./kinds.ts";
import { unreadable } from "./readable.ts";
import { type Refusal, refusal } from "./refusals.ts";
import {
  type AnyBody,
  declaration,
  isBody,
  lifted,
  type Newer,
  TABLE,
  type Table,
} from "./upcast.ts";
import { VALUE_CHECKS } from "./values.ts";

const BODY_DEPTH = 2; // the entry itself is the first level

type Trouble = Refusal | Newer | null;

/**
 * The body in today's form, or why not. Digits stay as they were typed; a field that holds
 * undefined is no field.
 */
export function parseBody<K extends KindName>(
  kind: K,
  version: number,
  body: unknown,
): Bodies[K] | Refusal | Newer {
  return parseBodyBy(TABLE, kind, version, body) as Bodies[K] | Refusal | Newer; // as: one table
}

/** The same by another table, for a kind the compiler does not know. */
export function parseBodyBy(
  table: Table,
  kind: string,
  version: number,
  body: unknown,
): AnyBody | Refusal | Newer {
  const trouble = unreadable(body, "body", BODY_DEPTH);
  if (trouble !== null) return trouble;
  const declared = declaration(kind, version, table);
  if (!("fields" in declared)) return declared;
  if (!isBody(body)) return refusal("group.wrong", "body");
  const made = withoutUndefined(body);
  return kindTrouble(declared, made, "", table) ?? lifted(kind, version, made, table);
}

/** Where a value stands: its path, the fields beside it, the table in use. */
interface Spot {
  readonly at: string;
  readonly beside: AnyBody;
  readonly table: Table;
}

function withoutUndefined(value: AnyBody): AnyBody {
  return JSON.parse(JSON.stringify(value)); // a body is JSON, and JSON has no undefined
}

function kindTrouble(kind: Kind, body: AnyBody, at: string, table: Table): Trouble {
  return fieldsTrouble(kind.fields, body, at, table) ?? rulesTrouble(kind, body, at);
}

/** What several fields owe each other. */
function rulesTrouble(kind: Kind, body: AnyBody, at: string): Refusal | null {
  const oneOf = kind.one_of ?? [];
  if (oneOf.length > 0 && oneOf.filter((name) => name in body).length !== 1) {
    return refusal("field.one_of", `${at}${oneOf[0]}`, { fields: oneOf.join(" or ") });
  }
  for (const [name, partner] of kind.together ?? []) {
    if (name in body && !(partner in body)) {
      return refusal("field.together", at + partner, { partner: name });
    }
  }
  return null;
}

/** The first thing wrong with an object: unknown fields, then the declared ones in order. */
function fieldsTrouble(
  fields: readonly Field[],
  value: AnyBody,
  at: string,
  table: Table,
): Trouble {
  const known = new Set(fields.map((field) => field.name));
  const stranger = Object.keys(value)
    .sort()
    .find((name) => !known.has(name));
  if (stranger !== undefined) {
    // A stranger's field name is repeated only where that is harmless.
    return refusal("field.unknown", at + (forms.FIELD_NAME.test(stranger) ? stranger : "?"));
  }
  for (const field of fields) {
    const trouble = fieldTrouble(field, value, at + field.name, table);
    if (trouble !== null) return trouble;
  }
  return null;
}

function fieldTrouble(field: Field, value: AnyBody, at: string, table: Table): Trouble {
  if (Object.hasOwn(value, field.name)) {
    return valueTrouble(field, value[field.name], { at, beside: value, table });
  }
  return field.is_required === false ? null : refusal("field.missing", at);
}

/** By the field's type: a single value, or something that holds values. */
function valueTrouble(field: Field, value: unknown, spot: Spot): Trouble {
  const check = VALUE_CHECKS.get(field.type);
  if (check !== undefined) return check(field, value, spot.at);
  return HOLDING_CHECKS[field.type]?.(field, value, spot) ?? null;
}

function group(field: Field, value: unknown, spot: Spot): Trouble {
  if (!isBody(value)) return refusal("group.wrong", spot.at);
  return fieldsTrouble(field.fields ?? [], value, `${spot.at}.`, spot.table);
}

function quantity(field: Field, value: unknown, spot: Spot): Trouble {
  const amount: Field = { ...needed(field), name: "amount", type: "decimal" };
  const unit: Field = { ...needed(field), name: "unit", type: "unit" };
  return group({ ...field, fields: [amount, unit] }, value, spot);
}

function needed(field: Field): Field {
  const { is_required: _, ...rest } = field;
  return rest;
}

function choices(field: Field, value: unknown, spot: Spot): Trouble {
  const trouble = itemsTrouble({ ...field, type: "choice" }, value, spot);
  if (trouble === null && Array.isArray(value) && new Set(value).size < value.length) {
    return refusal("choice.twice", spot.at);
  }
  return trouble;
}

/** A list within its length, each item by `field`. */
function itemsTrouble(field: Field, value: unknown, spot: Spot): Trouble {
  if (!Array.isArray(value)) return refusal("list.wrong", spot.at);
  const { least_items: least = 0, most_items: most = value.length } = field;
  if (value.length < least) return refusal("list.too_short", spot.at, { least: String(least) });
  if (value.length > most) return refusal("list.too_long", spot.at, { most: String(most) });
  for (const [number, item] of value.entries()) {
    // Of ten thousand numbers only that of a wrong one is told where it stands.
    if (valueTrouble(field, item, spot) === null) continue;
    return valueTrouble(field, item, { ...spot, at: `${spot.at}[${number}]` });
  }
  return null;
}

/** Fields of a definition, each from what to what; its id is not a field one can change. */
function changes(field: Field, value: unknown, spot: Spot): Trouble {
  const ofKind = field.of_kind ?? "";
  const ownId = ofKind.replace(/_defined$/, "");
  const changeable = (spot.table.kinds.get(ofKind)?.fields ?? [])
    .filter((inner) => inner.name !== ownId)
    .map(
      (inner): Field => ({
        name: inner.name,
        type: "change",
        fields: [inner],
        is_required: false,
      }),
    );
  if (isBody(value) && Object.keys(value).length === 0) return refusal("changes.none", spot.at);
  return group({ ...field, fields: changeable }, value, spot);
}

/** Both sides must stand there; null says that a field which may be missing is missing. */
function change(field: Field, value: unknown, spot: Spot): Trouble {
  const changed = field.fields?.[0];
  if (!isBody(value) || changed === undefined) return refusal("group.wrong", spot.at);
  const isNull = (side: string) => changed.is_required === false && value[side] === null;
  const sides = ["from", "to"]
    .filter((side) => !isNull(side))
    .map((side): Field => ({ ...needed(changed), name: side }));
  const given = Object.fromEntries(
    Object.entries(value).filter(([side]) => !isSide(side) || !isNull(side)),
  );
  return fieldsTrouble(sides, given, `${spot.at}.`, spot.table);
}

function isSide(name: string): boolean {
  return name === "from" || name === "to";
}

function kindName(_field: Field, value: unknown, spot: Spot): Trouble {
  const kind = typeof value === "string" ? spot.table.kinds.get(value) : undefined;
  if (kind === undefined) return refusal("kind.unknown", spot.at);
  const isAboutEntry = kind.fields.some((inner) => inner.type === "kind");
  return isAboutEntry ? refusal("kind.about_entries", spot.at) : null;
}

/** The whole body of the kind named beside it, in the version named beside it. */
function innerBody(_field: Field, value: unknown, spot: Spot): Trouble {
  const { of_kind: kind, of_version: version = 1 } = spot.beside;
  if (typeof kind !== "string" || !Number.isSafeInteger(version)) return null; // said elsewhere
  const declared = declaration(kind, Number(version), spot.table);
  if ("newer" in declared) return declared;
  if ("refused" in declared) return { ...declared, field: "of_version" };
  if (!isBody(value)) return refusal("group.wrong", spot.at);
  return kindTrouble(declared, value, `${spot.at}.`, spot.table);
}

const HOLDING_CHECKS: Readonly<
  Record<string, (field: Field, value: unknown, spot: Spot) => Trouble>
> = {
  group,
  quantity,
  list: (field, value, spot) => itemsTrouble({ ...field, type: "group" }, value, spot),
  decimals: (field, value, spot) => itemsTrouble({ ...field, type: "decimal" }, value, spot),
  wholes: (field, value, spot) => itemsTrouble({ ...field, type: "whole" }, value, spot),
  choices,
  changes,
  change,
  kind: kindName,
  body: innerBody,
};

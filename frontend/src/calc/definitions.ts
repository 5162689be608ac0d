/** Sheets of what people set up: definitions edited by field, recipes in fixed versions. */

import { type Body, objectIn, textIn, textsIn } from "./bodies.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  finding,
  inLogOrder,
  type Note,
  notesAbout,
  type Standing,
  settled,
  TEXT_ORDER,
} from "./record.ts";
import { idIn, typeIn } from "./subjects.ts";

export const DEFINITION_FOLD = 1;
export const RECIPE_FOLD = 1;
/** 1 was the bare definition; 2 had no single repeats, nor the scale that weighed the water. */
export const INSTRUMENT_FOLD = 3; // stands here because one nobody checked is folded without checks

export const DEFINITION_TYPES: readonly string[] = [
  "cooperative",
  "place",
  "material",
  "source",
  "recipient",
];

/** Where two people disagree, food carries what either of them named. */
const UNITED = "allergens";

/** The fields in force of one definition. */
export interface DefinitionState {
  readonly type: string;
  readonly id: string;
  readonly fields: Body;
  readonly defined_by: string | null;
  readonly changed_at: string | null;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/** One published version; it never changes. */
export interface Version {
  readonly entry: string;
  readonly number: number;
  readonly author: string;
  readonly published_on: string;
  readonly body: Body;
}

/** All versions of one recipe by number, then in the order of the log. */
export interface RecipeState {
  readonly recipe: string;
  readonly name: string | null;
  readonly versions: readonly Version[];
  readonly latest: string | null;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/**
 * Fold one definition by `seq`, own unsent entries last (R49).
 * A change whose `from` is in force is set, whose `to` is in force does nothing; any other is a
 * conflict: the value stays (allergens: the union of both), and a finding shows both until
 * somebody settles it. A second definition of the same id is a finding and changes nothing.
 */
export function definitionState(subject: string, facts: Iterable<Fact>): DefinitionState {
  const ownType = typeIn(subject);
  const named = idIn(subject);
  const record = asItStands(facts);
  const about = inLogOrder(record.standing).filter((each) => textIn(each.body, ownType) === named);
  const defined = about.filter((each) => each.kind === `${ownType}_defined`);
  const changed = about.filter((each) => each.kind === `${ownType}_changed`);
  const [first, second] = defined;
  const fields = first === undefined ? new Map<string, unknown>() : fieldsIn(first.body, ownType);
  const findings = [...record.findings, ...conflicts(fields, changed, first !== undefined)];
  const [change] = changed;
  if (second !== undefined) {
    findings.push(finding("defined_twice", "defined_twice", { entry: second.id }));
  }
  if (change !== undefined && first === undefined) {
    findings.push(finding("not_defined", "not_defined", { entry: change.id }));
  }
  return {
    type: ownType,
    id: named,
    fields: Object.fromEntries([...fields].sort(([a], [b]) => TEXT_ORDER(a, b))),
    defined_by: first?.id ?? null,
    changed_at: changed.at(-1)?.happened_at ?? null,
    findings: settled(findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

/**
 * Fold one recipe. A published version never changes (R50): a void withdraws it, a correction of
 * it is a finding only.
 */
export function recipeState(subject: string, facts: Iterable<Fact>): RecipeState {
  const recipe = idIn(subject);
  const every = [...facts];
  const record = asItStands(every);
  const ownBodies = new Map(
    every.filter((fact) => fact.kind === "recipe_published").map((fact) => [fact.id, fact.body]),
  );
  const published = inLogOrder(record.standing).filter(
    (each) => each.kind === "recipe_published" && textIn(each.body, "recipe") === recipe,
  );
  const versions = published
    .map((each) => versionOf(each, ownBodies.get(each.id) ?? each.body))
    .sort((a, b) => a.number - b.number);
  const latest = versions.at(-1);
  const findings = [...record.findings, ...versionFindings(published, versions)];
  return {
    recipe,
    name: textIn(latest?.body ?? {}, "name"),
    versions,
    latest: latest?.entry ?? null,
    findings: settled(findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

function fieldsIn(body: Body, ownType: string): Map<string, unknown> {
  const fields = Object.entries(body).filter(([name, value]) => name !== ownType && value !== null);
  return new Map(fields);
}

/** Apply each change to the fields; what could not be applied is a finding. */
function conflicts(
  fields: Map<string, unknown>,
  changed: readonly Standing[],
  isDefined: boolean,
): Finding[] {
  const findings: Finding[] = [];
  for (const entry of changed) {
    const changes = objectIn(entry.body, "changes") ?? {};
    for (const name of Object.keys(changes).sort(TEXT_ORDER)) {
      const change = objectIn(changes, name) ?? {};
      // Without its definition nobody knows what was in force: the first change says it.
      const isUnknown = !isDefined && !fields.has(name);
      if (isUnknown) setField(fields, name, change.to);
      else findings.push(...changeField(fields, entry, name, change));
    }
  }
  return findings;
}

function changeField(
  fields: Map<string, unknown>,
  entry: Standing,
  name: string,
  change: Body,
): Finding[] {
  const inForce = fields.get(name) ?? null;
  if (isSame(change.from, inForce)) {
    setField(fields, name, change.to);
    return [];
  }
  if (isSame(change.to, inForce)) return [];
  if (name === UNITED) setField(fields, name, union(inForce, change));
  return [conflict(entry, name, { in_force: inForce, wanted: change.to })];
}

function setField(fields: Map<string, unknown>, name: string, value: unknown): void {
  if (value === null || value === undefined) fields.delete(name);
  else fields.set(name, value);
}

function union(inForce: unknown, change: Body): string[] {
  const both = [...textsIn({ inForce }, "inForce"), ...textsIn(change, "to")];
  return [...new Set(both)].sort(TEXT_ORDER);
}

/** Its key names the entry too: settling one conflict must not settle the next. */
function conflict(
  entry: Standing,
  name: string,
  values: { readonly in_force: unknown; readonly wanted: unknown },
): Finding {
  return finding(`conflict:${name}:${entry.id}`, "conflict", {
    entry: entry.id,
    field: name,
    detail: { in_force: shown(values.in_force), wanted: shown(values.wanted) },
  });
}

function isSame(one: unknown, other: unknown): boolean {
  return shown(one) === shown(other);
}

/** A JSON value as text that is alike in both languages; text itself as it is. */
function shown(value: unknown): string {
  if (typeof value === "string") return value;
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return `[${value.map(shown).join(", ")}]`;
  if (typeof value === "object") {
    const inner = Object.entries(value).sort(([a], [b]) => TEXT_ORDER(a, b));
    return `{${inner.map(([name, each]) => `${name}: ${shown(each)}`).join(", ")}}`;
  }
  return String(value);
}

function versionOf(entry: Standing, ownBody: Body): Version {
  const number = ownBody.number;
  return {
    entry: entry.id,
    number: typeof number === "number" ? number : 0,
    author: entry.author,
    published_on: entry.local_date,
    body: ownBody,
  };
}

function versionFindings(published: readonly Standing[], versions: readonly Version[]): Finding[] {
  const corrected = published.filter((each) => each.was.length > 0);
  const findings = corrected.map((each) =>
    finding(`corrected_version:${each.id}`, "corrected_version", { entry: each.id }),
  );
  for (const { entry, number } of versions) {
    if (versions.filter((version) => version.number === number).length < 2) continue;
    const detail = { number: String(number) };
    findings.push(finding(`same_number:${number}`, "same_number", { entry, detail }));
  }
  return findings;
}

/** What an entry is about, and what a correction or void stands for. */

import { KINDS, type KindName } from "./kinds.ts";
import { type AnyBody, isBody } from "./upcast.ts";

/**
 * The subjects whose sheets this entry changes, sorted; `body` is parsed, in today's form.
 * A correction is about what its new body is about; a void names nothing by itself. What the
 * corrected entry was about is added by `makeEntry` when it is written.
 */
export function subjectsOf(kind: KindName, body: object): string[] {
  const [innerKind, inner] = unwrapped(kind, body);
  return filled(KINDS[innerKind].subjects, inner);
}

/** Those of its mentions whose sheets a fold of this entry is given too, sorted. */
export function leansOn(kind: KindName, body: object): string[] {
  const [innerKind, inner] = unwrapped(kind, body);
  return filled(KINDS[innerKind].leans_on ?? [], inner);
}

/** The kind of what stands corrected or voided; of any other entry its own kind. */
export function effectiveKind(kind: KindName, body: object): KindName {
  return "of_kind" in body && isKindName(body.of_kind) ? body.of_kind : kind;
}

/** Corrections and voids wrap another kind. */
export function isAboutEntry(kind: KindName): boolean {
  return KINDS[kind].fields.some((field) => field.type === "kind");
}

/** Whether the table knows this kind. */
export function isKindName(kind: unknown): kind is KindName {
  return typeof kind === "string" && Object.hasOwn(KINDS, kind);
}

/** A correction's new body with its kind; of any other entry its own. */
function unwrapped(kind: KindName, body: object): [KindName, AnyBody] {
  const made: AnyBody = { ...body };
  return kind === "correction" && isBody(made.body)
    ? [effectiveKind(kind, made), made.body]
    : [kind, made];
}

function filled(templates: readonly string[], body: AnyBody): string[] {
  return [...new Set(templates.flatMap((template) => subjectsIn(template, body)))].sort();
}

/** `lot:{from[].lot}` with every value the body has there; none where one is missing. */
function subjectsIn(template: string, body: AnyBody): string[] {
  let texts = [template];
  for (const [hole, path = ""] of template.matchAll(/\{([a-z_.[\]]+)\}/g)) {
    const values = valuesAt(path, body);
    texts = texts.flatMap((text) => values.map((value) => text.replace(hole, () => value)));
  }
  return texts;
}

function valuesAt(path: string, body: AnyBody): string[] {
  let reached: unknown[] = [body];
  for (const step of path.split(".")) {
    const name = step.replace("[]", "");
    const inner = reached.flatMap((part) => (isBody(part) ? [part[name]] : []));
    reached = step.endsWith("[]")
      ? inner.flatMap((part) => (Array.isArray(part) ? part : []))
      : inner;
  }
  return reached.filter((value): value is string => typeof value === "string");
}

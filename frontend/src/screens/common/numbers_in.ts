/** The numbers of an entry's body by their place in it, and the body with other ones there. */
import type { Body } from "../../calc/bodies.ts";
import { typedNumber } from "../../parts/typing.ts";

/** A number at a path such as `steps.2.readings.0`. One of a list may be rubbed out. */
export interface NumberIn {
  path: string;
  name: string;
  unit: string | null;
  value: string;
  isOptional: boolean;
  /** Other places where the same number stands: a mass that was put on in several steps. */
  also?: readonly string[];
}

/** The texts of a list at a path, each a number of its own that may be rubbed out. */
export function listIn(
  texts: readonly string[],
  about: { path: string; unit: string | null; name: (number: number) => string },
): NumberIn[] {
  return texts.map((value, at) => ({
    path: `${about.path}.${at}`,
    name: about.name(at + 1),
    unit: about.unit,
    value,
    isOptional: texts.length > 1,
  }));
}

/** The first number that lacks its digits; null where each has them or may be without. */
export function lackingIn(
  numbers: readonly NumberIn[],
  typed: Readonly<Record<string, string>>,
): NumberIn | null {
  const isLacking = ({ path, value, isOptional }: NumberIn) => {
    const text = typed[path] ?? value;
    return typedNumber(text) === null && !(isOptional && text === "");
  };
  return numbers.find(isLacking) ?? null;
}

/** Whether any number is another than it was. */
export function isChangedIn(
  numbers: readonly NumberIn[],
  typed: Readonly<Record<string, string>>,
): boolean {
  return numbers.some(({ path, value }) => (typed[path] ?? value) !== value);
}

/** The whole new body: the typed numbers in their places, those rubbed out gone from their lists. */
export function withNumbers(
  body: Body,
  typed: Readonly<Record<string, string>>,
  numbers: readonly NumberIn[] = [],
): Body {
  const into: unknown = structuredClone(body);
  for (const [path, text] of Object.entries(typed)) {
    const also = numbers.find((each) => each.path === path)?.also ?? [];
    for (const place of [path, ...also]) put(into, place.split("."), text);
  }
  const whole = withoutBlanks(into);
  return isGroup(whole) ? whole : body;
}

/** The body with another note; an empty one is none. */
export function withNote(body: Body, note: string): Body {
  const { note: _, ...others } = body;
  const words = note.trim();
  return words === "" ? others : { ...others, note: words };
}

function put(into: unknown, path: readonly string[], text: string): void {
  const [name = "", ...rest] = path;
  if (!isGroup(into)) return;
  if (rest.length > 0) {
    put(into[name], rest, text);
    return;
  }
  const number = typedNumber(text) ?? "";
  // A count is a whole number on the wire, every other number a text of digits.
  into[name] = typeof into[name] === "number" ? Number(number) : number;
}

function withoutBlanks(value: unknown): unknown {
  if (Array.isArray(value)) return value.filter((each) => each !== "").map(withoutBlanks);
  if (!isGroup(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, withoutBlanks(each)]),
  );
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null;
}

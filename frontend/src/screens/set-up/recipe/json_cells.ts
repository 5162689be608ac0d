/** The objects of a JSON list as they were written: digits as typed, names that stand there twice. */

/** One object of the list, by its names; null for anything else in the list. */
export interface JsonObject {
  cells: [string, unknown][] | null;
  /** Names that stand there more than once; only the last value of each is among the cells. */
  twice: string[];
}

const TOKEN = /"(?:[^"\\]|\\.)*"|[[\]{}:,]/g;
const DEEPER: Readonly<Record<string, number>> = { "[": 1, "{": 1, "]": -1, "}": -1 };
const OF_LIST = 1;
const OF_OBJECT = 2;

/** The objects of a list; null where the text is no JSON, or no list. */
export function jsonObjects(text: string): JsonObject[] | null {
  const read = parsed(text);
  if (!Array.isArray(read)) return null;
  const twice = namesTwice(text);
  return read.map((each: unknown, at) => ({
    cells:
      typeof each === "object" && each !== null && !Array.isArray(each)
        ? Object.entries(each)
        : null,
    twice: [...(twice.get(at) ?? [])],
  }));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text, asTyped);
  } catch {
    return null;
  }
}

/** A number keeps its digits, 2.50 and those a double cannot hold, where the browser tells them. */
function asTyped(_: string, value: unknown, context?: { source?: string }): unknown {
  return typeof value === "number" ? (context?.source ?? value) : value;
}

/** By the place of an object in the list; the text is known to be JSON. */
function namesTwice(text: string): Map<number, Set<string>> {
  const seen = new Set<string>();
  const twice = new Map<number, Set<string>>();
  for (const [place, name] of namesIn(text)) {
    const key = `${place} ${name}`;
    if (seen.has(key)) twice.set(place, (twice.get(place) ?? new Set()).add(name));
    seen.add(key);
  }
  return twice;
}

/** The names in each object of the list, with the place of the object. */
function* namesIn(text: string): Generator<[number, string]> {
  let [depth, place, last] = [0, 0, ""];
  for (const [token] of text.matchAll(TOKEN)) {
    depth += DEEPER[token] ?? 0;
    if (token === "," && depth === OF_LIST) place += 1;
    if (token === ":" && depth === OF_OBJECT) yield [place, String(JSON.parse(last))];
    if (token.startsWith('"')) last = token;
  }
}

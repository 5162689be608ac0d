import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { KINDS } from "./kinds.ts";
import { parseBodyBy } from "./parse.ts";
import { isRefusal, sentence } from "./refusals.ts";
import { type AnyBody, TABLE } from "./upcast.ts";

interface GoodRow {
  why: string;
  kind: string;
  body: AnyBody;
}

interface BadRow {
  why: string;
  kind: string;
  set?: AnyBody;
  drop?: string[];
  then: { key: string; field: string };
}

const TABLE_OF_VERDICTS: { good: GoodRow[]; bad: BadRow[] } = JSON.parse(
  readFileSync(new URL("../../../tests/vectors/entries/bodies.json", import.meta.url), "utf8"),
);

describe("a good body", () => {
  it.each(TABLE_OF_VERDICTS.good)("$kind: $why, is parsed as it is", ({ kind, body }) => {
    const built = spelledOut(body);

    expect(parseBodyBy(TABLE, kind, 1, built)).toEqual(built);
  });

  it("stands in the table for every kind", () => {
    const kinds = TABLE_OF_VERDICTS.good.map((row) => row.kind);

    expect([...new Set(kinds)].sort()).toEqual(Object.keys(KINDS).sort());
  });

  it("may hold undefined where a field is missing", () => {
    const body = { batch: "b1", step: "wash", reading: undefined, action: undefined };

    expect(parseBodyBy(TABLE, "step_done", 1, body)).toStrictEqual({ batch: "b1", step: "wash" });
  });
});

describe("a bad body", () => {
  it.each(TABLE_OF_VERDICTS.bad)("$kind: $why, is refused at its field", (row) => {
    const refused = parseBodyBy(TABLE, row.kind, 1, spoiled(row));

    expect(refused).toMatchObject(row.then);
    if (!isRefusal(refused)) throw new Error("parsed");
    expect(sentence(refused)).not.toContain("{");
  });

  it("is refused in a sentence with the name a person knows", () => {
    const refused = parseBodyBy(TABLE, "count", 1, { lot: "A", place: "st" });

    if (!isRefusal(refused)) throw new Error("parsed");
    expect(sentence(refused, "The amount")).toBe("The amount is missing; fill it in.");
  });
});

function spoiled(row: BadRow): unknown {
  const first = TABLE_OF_VERDICTS.good.find((good) => good.kind === row.kind);
  const body: unknown = structuredClone(spelledOut(first?.body));
  for (const [path, value] of Object.entries(row.set ?? {})) {
    if (path === "$whole") return value;
    const [holder, last] = holderOf(body, path);
    holder[last] = spelledOut(value);
  }
  for (const path of row.drop ?? []) {
    const [holder, last] = holderOf(body, path);
    delete holder[last];
  }
  return body;
}

function holderOf(body: unknown, path: string): [Record<string, unknown>, string] {
  const steps = path.split(".");
  const last = steps.pop() ?? "";
  let holder = body as Record<string, unknown>; // as: a path leads through objects and lists alike
  for (const step of steps) holder = holder[step] as Record<string, unknown>; // as: see above
  return [holder, last];
}

/** Spells out {"$repeat": [text or list, times]} and {"$nest": levels}, wherever they stand. */
function spelledOut(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(spelledOut);
  if (typeof value !== "object" || value === null) return value;
  if ("$repeat" in value) return repeated(value.$repeat as [string | unknown[], number]); // as: the table's form
  if ("$nest" in value) {
    let nested: unknown[] = [];
    for (let level = 1; level < Number(value.$nest); level += 1) nested = [nested];
    return nested;
  }
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [name, spelledOut(inner)]),
  );
}

function repeated([part, times]: [string | unknown[], number]): unknown {
  return typeof part === "string" ? part.repeat(times) : Array(times).fill(part).flat();
}

/** Any order of arrival gives the same sheet, and any part of the facts gives some sheet. */

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { foldSubject } from "./folds.ts";
import type { Fact } from "./record.ts";
import { factOf } from "./vectors_registry_folds.ts";

const VECTORS = new URL("../../../tests/vectors/", import.meta.url);
const WITH_FACTS = [
  "stock/lot_state",
  "lot_prices/price_state",
  "batches/batch_state",
  "market/day_state",
  "definitions/definition_state",
  "definitions/recipe_state",
];

interface Case {
  readonly name: string;
  readonly subject: string;
  readonly facts: readonly Fact[];
}

/** The facts of the vectors, each entry once, as a log holds them. */
function casesIn(path: string): Case[] {
  const file = JSON.parse(readFileSync(new URL(`${path}.json`, VECTORS), "utf8"));
  return file.vectors.map(({ why, given }: { why: string; given: Given }) => {
    const byId = new Map(given.facts.map((fact) => [fact.id, factOf(fact)]));
    return { name: `${path}: ${why}`, subject: given.subject, facts: [...byId.values()] };
  });
}

interface Given {
  readonly subject: string;
  readonly facts: readonly { readonly id: string }[];
}

const CASES = WITH_FACTS.flatMap(casesIn);

describe.each(CASES)("$name", ({ subject, facts }) => {
  test("any order of arrival gives the same sheet", () => {
    const inOrder = foldSubject(subject, facts);
    const everyOrder = fc.shuffledSubarray([...facts], { minLength: facts.length });

    fc.assert(
      fc.property(everyOrder, (arrived) => {
        expect(foldSubject(subject, arrived)).toEqual(inOrder);
      }),
      { numRuns: 25 },
    );
  });

  test("any part of the facts gives a sheet alike in every order", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...facts]), (part) => {
        const sheet = foldSubject(subject, part);

        expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet);
        expect(foldSubject(subject, [...part].reverse())).toEqual(sheet);
      }),
      { numRuns: 25 },
    );
  });
});

/** The road adds up alike with its own folds and with all, and knows what it cannot add up. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { FOLDS } from "../calc/folds.ts";
import { NOTHING_BESIDE } from "../calc/trusted.ts";
import { factOf } from "../calc/vectors_registry_folds.ts";
import { foldOf, takeInFolds } from "./folding.ts";
import { mustBeJudged, ROAD_FOLDS } from "./road_folds.ts";

const VECTORS = new URL("../../../tests/vectors/", import.meta.url);
const WITH_FACTS = [
  "stock/lot_state",
  "lot_prices/price_state",
  "batches/batch_state",
  "market/day_state",
  "definitions/definition_state",
  "definitions/recipe_state",
  "instruments/instrument_state",
  "skills/skill_state",
  "money/cost_state",
];
const CASES = WITH_FACTS.flatMap((path) => {
  const { vectors } = JSON.parse(readFileSync(new URL(`${path}.json`, VECTORS), "utf8"));
  return vectors.map(({ why, given }: { why: string; given: Given }) => ({
    name: `${path}: ${why}`,
    subject: given.subject,
    facts: given.facts.map(factOf),
  }));
});
const [JUDGED, PLAIN] = [true, false].map((isJudged) =>
  CASES.filter(({ subject, facts }) => mustBeJudged(subject, facts) === isJudged),
);

interface Given {
  readonly subject: string;
  readonly facts: readonly object[];
}

test("vectors hold both sorts of batches, lots and instruments", () => {
  const typesOf = (cases: typeof CASES = []) =>
    new Set(cases.map(({ subject }) => subject.split(":")[0]));

  expect([...typesOf(JUDGED)].sort()).toEqual(["batch", "cost", "instrument", "lot", "skill"]);
  expect([...typesOf(PLAIN)]).toEqual(expect.arrayContaining(["batch", "instrument", "lot"]));
});

describe("what need not be judged", () => {
  test.each(PLAIN ?? [])("$name", ({ subject, facts }) => {
    const [type = ""] = subject.split(":");
    const [road, number] = ROAD_FOLDS.get(type) ?? [];
    const [all, sameNumber] = FOLDS.get(type) ?? [];

    expect(road?.(subject, facts, NOTHING_BESIDE)).toEqual(all?.(subject, facts, NOTHING_BESIDE));
    expect(number).toBe(sameNumber);
  });
});

test("a correction of a log of temperature asks for all folds where the log is not here", () => {
  const correction = { kind: "correction", body: { of_kind: "heat_log" } };

  expect(mustBeJudged("batch:b", [correction])).toBe(true);
  expect(mustBeJudged("batch:b", [{ kind: "weigh_in", body: {} }])).toBe(false);
});

test("nothing is added up without a fold that it needs", () => {
  const log = factOf({ id: "e1", kind: "heat_log", body: { batch: "b" } });

  expect(() => foldOf("batch:b", [log])).toThrow("was not fetched");
  takeInFolds(FOLDS);
  expect(foldOf("batch:b", [log])).not.toBeNull();
});

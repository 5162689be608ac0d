import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type BatchState, batchState } from "../../calc/batches.ts";
import { parseDecimal, plain, total } from "../../calc/numbers.ts";
import type { Fact } from "../../calc/record.ts";
import type { BalanceStream } from "../../parts/BalancePicture.tsx";
import { streamsIn, streamsOut } from "./balance_streams.ts";

interface VectorFile {
  vectors: { why: string; given: { subject: string; facts: Fact[] } }[];
}

const VECTORS = new URL("../../../../tests/vectors/batches/batch_state.json", import.meta.url);

/** The mango jam of the production pack, as its entries. */
function mangoJam(): { subject: string; facts: Fact[] } {
  const file: VectorFile = JSON.parse(readFileSync(VECTORS, "utf8"));
  const found = file.vectors.find((each) => each.why.startsWith("[B01]"));
  if (found === undefined) throw new Error("B01 is not among the vectors");
  return found.given;
}

function stateOf(change: (fact: Fact) => Fact = (fact) => fact): BatchState {
  const { subject, facts } = mangoJam();
  return batchState(subject, facts.map(change));
}

function sum(streams: readonly BalanceStream[]): string {
  return plain(total(streams.map(({ amount }) => parseDecimal(amount ?? "0"))));
}

function amounts(streams: readonly BalanceStream[]) {
  return Object.fromEntries(streams.map(({ id, amount }) => [id, amount]));
}

test("what went in is what came out, evaporated, was lost, and is unaccounted for", () => {
  const batch = stateOf();

  expect(sum(streamsIn(batch))).toBe("25.115");
  expect(sum(streamsOut(batch))).toBe("25.115");
});

test("every end of the mango jam has its stream", () => {
  expect(amounts(streamsOut(stateOf()))).toEqual({
    "prepared-spoiled": "0.6",
    "prepared-trim": "4.25",
    preparation: "0.15",
    steam: "3.415",
    good: "16",
    rejected: "0.5",
    residue: "0.12",
    samples: "0.05",
    unaccounted: "0.03",
  });
});

test("more out than in stays below zero, and the sums still meet", () => {
  const batch = stateOf((fact) =>
    fact.kind === "output"
      ? { ...fact, body: { ...fact.body, amount: { amount: "65", unit: "pc" } } }
      : fact,
  );
  const outs = streamsOut(batch);

  expect(amounts(outs).unaccounted).toBe("-0.22");
  expect(sum(outs)).toBe(sum(streamsIn(batch)));
});

test("what was not recorded is a stream without an amount, never nought", () => {
  const batch = stateOf((fact) =>
    fact.kind === "output" ? { ...fact, body: { ...fact.body, pack_net: undefined } } : fact,
  );

  expect(amounts(streamsOut(batch))).toMatchObject({ good: null, unaccounted: null });
});

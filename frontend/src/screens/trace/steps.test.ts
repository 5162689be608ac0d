import { expect, test } from "vitest";
import type { Trace } from "../../calc/trace.ts";
import {
  type BothWays,
  isNobodyToCall,
  soldPrivately,
  stepsFrom,
  stepsTo,
  sumOf,
  toCall,
} from "./steps.ts";

const NOTHING: Trace = {
  lot: "MJ-1",
  direction: "back",
  nodes: [],
  edges: [],
  is_complete: true,
  missing: [],
};

const BACK: Trace = {
  ...NOTHING,
  nodes: [
    { id: "lot:PE-1", label: "Pectin" },
    { id: "lot:SU-1", label: "Sugar" },
  ],
  edges: [
    { from: "batch:b1", to: "lot:MJ-1", amount: "64", unit: "pc" },
    { from: "lot:PE-1", to: "batch:b1", amount: "60.2", unit: "g" },
    { from: "lot:SU-1", to: "batch:b1", amount: "7400", unit: "g" },
  ],
  missing: ["lot:PE-1"],
};

const FORWARD: Trace = {
  ...NOTHING,
  direction: "forward",
  nodes: [
    { id: "recipient:r1", label: "School kitchen" },
    { id: "recipient:r2", label: "Blue Door shop" },
  ],
  edges: [
    { from: "lot:MJ-1", to: "recipient:r1", amount: "24", unit: "pc" },
    { from: "lot:MJ-1", to: "recipient:r2", amount: "12", unit: "pc" },
    { from: "lot:MJ-2", to: "recipient:r1", amount: "3", unit: "pc" },
    { from: "lot:MJ-1", to: "day:m1:2026-11-14", amount: "15", unit: "pc" },
  ],
};

const WAYS: BothWays = { back: BACK, forward: FORWARD };

test("a batch is looked through to what went into it", () => {
  const steps = stepsFrom("MJ-1", WAYS);

  expect(steps.map((step) => [step.id, step.name, step.amount])).toEqual([
    ["lot:PE-1", "Pectin", "60.2\u00a0g"],
    ["lot:SU-1", "Sugar", "7.4\u00a0kg"],
  ]);
});

test("a lot whose sheet is not held is drawn as not known", () => {
  expect(stepsFrom("MJ-1", WAYS).map((step) => step.isUnknown)).toEqual([true, false]);
});

test("only the lot's own ways stand below it", () => {
  expect(stepsTo("MJ-1", WAYS).map((step) => step.amount)).toEqual(["24", "12", "15"]);
});

test("each business is called once, with every lot it got", () => {
  expect(toCall(WAYS)).toEqual([
    { recipient: "r2", name: "Blue Door shop", got: [{ lot: "MJ-1", amount: "12" }] },
    {
      recipient: "r1",
      name: "School kitchen",
      got: [
        { lot: "MJ-1", amount: "24" },
        { lot: "MJ-2", amount: "3" },
      ],
    },
  ]);
});

test("private buyers stand as stall days, not as names", () => {
  expect(soldPrivately(WAYS)).toHaveLength(1);
});

test("amounts of unlike units have no sum", () => {
  expect(sumOf(BACK.edges.slice(1))).toBe("7.4602\u00a0kg");
  expect(sumOf(BACK.edges)).toBeNull();
});

test("nobody is to call only where every link forward is known", () => {
  const forward = { ...FORWARD, nodes: [], edges: [] };

  expect(isNobodyToCall({ back: BACK, forward })).toBe(true);
  expect(isNobodyToCall({ back: BACK, forward: { ...forward, is_complete: false } })).toBe(false);
  expect(isNobodyToCall(WAYS)).toBe(false);
});

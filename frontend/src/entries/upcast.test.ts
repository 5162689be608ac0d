/** Versions: a table of our own in which `count` has come to its third version. */

import { describe, expect, it } from "vitest";
import { EARLIER_KINDS, KINDS, type Kind } from "./kinds.ts";
import { parseBodyBy } from "./parse.ts";
import { type AnyBody, type Lift, TABLE, type Table } from "./upcast.ts";

const FIRST = KINDS.count;
const [LOT, AMOUNT, PLACE] = FIRST.fields;
if (LOT === undefined || AMOUNT === undefined || PLACE === undefined) throw new Error("no fields");
const SECOND: Kind = { ...FIRST, version: 2, fields: [LOT, { ...AMOUNT, name: "seen" }, PLACE] };
const THIRD: Kind = {
  ...SECOND,
  version: 3,
  fields: [...SECOND.fields, { name: "by", type: "choice", choices: ["eye", "weight"] }],
};

const LATER: Table = {
  kinds: new Map([...TABLE.kinds, ["count", THIRD]]),
  earlier: [FIRST, SECOND],
  lifts: new Map<string, Lift>([
    ["count 1", ({ amount, ...kept }: AnyBody) => ({ ...kept, seen: amount })],
    ["count 2", (body: AnyBody) => ({ ...body, by: "eye" })],
  ]),
};

const TWELVE = { amount: "12.0", unit: "pc" };
const AS_FIRST = { lot: "A", amount: TWELVE, place: "s2" };
const AS_SECOND = { lot: "A", seen: TWELVE, place: "s2" };
const AS_THIRD = { ...AS_SECOND, by: "eye" };
const CORRECTION = {
  corrects: "0192f0c4-0a11-7a3b-8c5d-1234567890ab",
  of_kind: "count",
  reason: "twice as many",
};

describe("a body of an earlier version", () => {
  it.each([
    [1, AS_FIRST],
    [2, AS_SECOND],
    [3, AS_THIRD],
  ])("%i is read in the newest form", (version, made) => {
    expect(parseBodyBy(LATER, "count", version, made)).toEqual(AS_THIRD);
  });

  it("is judged by the version it was made in", () => {
    expect(parseBodyBy(LATER, "count", 1, AS_SECOND)).toMatchObject({ key: "field.unknown" });
    expect(parseBodyBy(LATER, "count", 3, AS_SECOND)).toMatchObject({ key: "field.missing" });
  });

  it("inside a correction is lifted too", () => {
    const second = { ...CORRECTION, body: AS_SECOND, of_version: 2 };
    const first = { ...CORRECTION, body: AS_FIRST };
    const newest = { ...CORRECTION, body: AS_THIRD, of_version: 3 };

    expect(parseBodyBy(LATER, "correction", 1, second)).toEqual(newest);
    expect(parseBodyBy(LATER, "correction", 1, first)).toEqual(newest);
  });

  it("that never was is refused", () => {
    expect(parseBodyBy(LATER, "count", 0, AS_FIRST)).toMatchObject({ key: "version.wrong" });
  });

  it("is declared and has its lift for every kind", () => {
    const steps = Object.values(KINDS).flatMap((kind) =>
      Array.from({ length: kind.version - 1 }, (_, before) => `${kind.name} ${before + 1}`),
    );

    expect(EARLIER_KINDS.map((kind) => `${kind.name} ${kind.version}`)).toEqual(steps);
    expect([...TABLE.lifts.keys()]).toEqual(steps);
  });
});

describe("a body of a newer version", () => {
  it("is not wrong but has to wait", () => {
    const newer = { newer: true, kind: "count", version: 4 };
    const correction = { ...CORRECTION, body: {}, of_version: 4 };

    expect(parseBodyBy(LATER, "count", 4, {})).toEqual(newer);
    expect(parseBodyBy(LATER, "correction", 1, correction)).toEqual(newer);
  });
});

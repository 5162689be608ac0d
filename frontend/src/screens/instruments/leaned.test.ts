import { describe, expect, test } from "vitest";
import {
  type Impact,
  type ImpactReading,
  parsedImpact,
  parsedReading,
} from "../../state/impact.ts";
import { leanedFrom } from "./leaned.ts";

const READING: ImpactReading = {
  entry: "e1",
  kind: "weigh_in",
  subject: "batch:b1",
  place: "sugar",
  material: "Sugar",
  says: null,
  happened_at: "2026-11-05T09:00:00.000Z",
  author: "ana",
  read: "502",
  corrected: null,
  u: null,
  unit: "g",
  moves: "-8",
};

const IMPACT: Impact = {
  after: "2026-11-03T09:00:00.000Z",
  until: null,
  readings: 3,
  touched: [
    { subject: "batch:b1", code: "B-1", material: "Jam", readings: 2, would_change: [] },
    {
      subject: "batch:b2",
      code: "B-2",
      material: "Jam",
      readings: 1,
      would_change: ["sugar:within:outside"],
    },
    {
      subject: "lot:J-1",
      code: "J-1",
      material: "Jam",
      readings: 1,
      would_change: ["e9:pass:fail"],
    },
  ],
  elsewhere: [{ ...READING, entry: "d1", kind: "drill_done", subject: "skill:ana" }],
  lots: ["J-1", "J-2"],
  reached: [
    { id: "recipient:s", label: "Shop", unit: "pc", lots: [{ lot: "J-1", amount: "3" }] },
    { id: "recipient:i", label: "Inn", unit: "pc", lots: [{ lot: "J-2", amount: "4" }] },
    { id: "recipient:s", label: "Shop", unit: "g", lots: [{ lot: "J-2", amount: "250" }] },
    { id: "day:stall:2026-11-06", label: null, unit: "pc", lots: [{ lot: "J-1", amount: "2" }] },
  ],
  is_complete: true,
  is_adding_up: false,
};

describe("the server's list of what leaned on an instrument", () => {
  test("has what would change first, and counts readings that have not come yet", () => {
    const { sheets } = leanedFrom(IMPACT, [READING]);

    expect(sheets.map((each) => each.subject)).toEqual(["batch:b2", "lot:J-1", "batch:b1"]);
    expect(sheets.map((each) => [each.count, each.readings.length])).toEqual([
      [1, 0],
      [1, 0],
      [2, 1],
    ]);
  });

  test("names the verdict of a line and of a fill check that would become another", () => {
    const { sheets } = leanedFrom(IMPACT, [{ ...READING, subject: "batch:b2" }]);

    expect(sheets[0]?.changes).toEqual([{ name: "Sugar", was: "within", now: "outside" }]);
    expect(sheets[1]?.changes).toEqual([{ name: "packs weighed", was: "pass", now: "fail" }]);
  });

  test("says of a reading what it stands for and how far it would move", () => {
    const { sheets } = leanedFrom(IMPACT, [{ ...READING, corrected: "499.83412", u: "0.5" }]);

    expect(sheets[2]?.readings).toEqual([
      {
        entry: "e1",
        kind: "weigh_in",
        happened_at: READING.happened_at,
        name: "Sugar",
        read: "499.83",
        moves: "-8",
        unit: "g",
      },
    ]);
  });

  test("lists a business once, with all of its lots, and keeps private buyers apart", () => {
    const { businesses, stalls } = leanedFrom(IMPACT, []);

    expect(businesses.map((each) => [each.name, each.got.map(({ lot }) => lot)])).toEqual([
      ["Inn", ["J-2"]],
      ["Shop", ["J-1", "J-2"]],
    ]);
    expect(stalls).toHaveLength(1);
  });
});

describe("an answer", () => {
  test("is taken as it came", () => {
    expect(parsedImpact({ protocol: 1, ...IMPACT })).toEqual(IMPACT);
  });

  test("with a part that is no part of it is none", () => {
    expect(parsedImpact({ ...IMPACT, lots: [7] })).toBeNull();
    expect(parsedImpact({ ...IMPACT, touched: [{ subject: "batch:b1" }] })).toBeNull();
    expect(parsedImpact({ ...IMPACT, reached: undefined })).toBeNull();
    expect(parsedReading({ ...READING, happened_at: null })).toBeNull();
  });
});

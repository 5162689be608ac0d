import { describe, expect, it } from "vitest";
import { BLANK_FINISH, lifeFrom, wantedEntries } from "./typed.ts";

const ABOUT = {
  batch: "b",
  lot: "MJ-261110-K7-1",
  material: "jam",
  place: "upper",
  unit: "pc",
  lossUnit: "g",
  packNet: { amount: "250", unit: "g" },
};

describe("what came out, as entries", () => {
  it("is one output with the rejects and one loss a reason", () => {
    const typed = {
      ...BLANK_FINISH,
      good: "64",
      rejected: "2",
      rejected_why: "cracked",
      residue: "120",
      sample: "50",
    };

    const entries = wantedEntries(typed, ABOUT);

    expect(entries.map(({ kind, key }) => [kind, key])).toEqual([
      ["output", "output"],
      ["loss", "residue"],
      ["loss", "sample"],
    ]);
    expect(entries[0]?.body).toEqual({
      batch: "b",
      lot: "MJ-261110-K7-1",
      material: "jam",
      place: "upper",
      amount: { amount: "64", unit: "pc" },
      pack_net: { amount: "250", unit: "g" },
      rejected: { amount: "2", unit: "pc" },
      rejected_why: "cracked",
    });
  });

  it("leaves out what was left blank: blank is not nought", () => {
    const entries = wantedEntries({ ...BLANK_FINISH, good: "64" }, ABOUT);

    expect(entries).toHaveLength(1);
    expect(entries[0]?.body).not.toHaveProperty("rejected");
  });

  it("saves nothing twice when saving stopped half way", () => {
    const typed = { ...BLANK_FINISH, good: "64", residue: "120", saved: ["output"] };

    expect(wantedEntries(typed, ABOUT).map(({ key }) => key)).toEqual(["residue"]);
  });

  it("dates a life from the day of making", () => {
    const rule = { sort: "best_before", length: 12, unit: "months" };

    expect(lifeFrom(rule, "2026-11-10")).toEqual({ sort: "best_before", on: "2027-11-10" });
    expect(lifeFrom(null, "2026-11-10")).toBeNull();
  });
});

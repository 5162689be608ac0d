import { describe, expect, it } from "vitest";
import type { RecipeVersion } from "../../state/stock.ts";
import { factorFor, scaledVersion } from "./scaling.ts";

const VERSION: RecipeVersion = {
  entry: "e",
  number: 3,
  author: "m",
  published_on: "2026-10-15",
  body: {
    makes: { amount: "16.5", unit: "kg" },
    packs: 66,
    lines: [
      { line: "1", material: "mango", amount: { amount: "10", unit: "kg" }, below: "0.05" },
      { line: "2", material: "jars", amount: { amount: "66", unit: "pc" } },
    ],
  },
};

function scaledTo(by: "as_written" | "mass" | "packs", typed: string | null, unit = "kg") {
  const factor = factorFor(VERSION, { by, typed, unit, packNet: null });
  return factor === null ? null : scaledVersion(VERSION, factor, by);
}

describe("a recipe made as large as wanted", () => {
  it("is as written at factor one", () => {
    expect(scaledTo("as_written", null)).toMatchObject({
      factor: "1",
      makes: { amount: "16.5", unit: "kg" },
      packs: "66",
    });
  });

  it("scales amounts and limits to a mass in another unit", () => {
    const scaled = scaledTo("mass", "8250", "g");

    expect(scaled).toMatchObject({ factor: "0.5", makes: { amount: "8.25" }, packs: "33" });
    expect(scaled?.lines[0]?.body).toMatchObject({
      amount: { amount: "5", unit: "kg" },
      below: "0.025",
    });
  });

  it("makes pieces whole, upwards", () => {
    expect(scaledTo("mass", "5")?.lines[1]).toMatchObject({ amount: "20", unit: "pc" });
  });

  it("scales to packs", () => {
    expect(scaledTo("packs", "44", "pc")).toMatchObject({ makes: { amount: "11" }, packs: "44" });
  });

  it("keeps the digits of a tiny amount of a large unit", () => {
    const scaled = scaledTo("mass", "0.0004");

    expect(scaled).toMatchObject({ factor: "0.000024", makes: { amount: "0.0004", unit: "kg" } });
    expect(scaled?.lines[0]?.body).toMatchObject({ amount: { amount: "0.000242", unit: "kg" } });
  });

  it("makes nothing of less than an entry can hold", () => {
    expect(scaledTo("mass", "0.0000004")).toBeNull();
  });

  it("has no factor while nothing is typed, or nought is", () => {
    expect(scaledTo("mass", null)).toBeNull();
    expect(scaledTo("mass", "0")).toBeNull();
  });
});

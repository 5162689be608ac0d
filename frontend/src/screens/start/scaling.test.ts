import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ONE, parseDecimal } from "../../calc/numbers.ts";
import type { RecipeVersion } from "../../state/stock.ts";
import { leftToFill, packSizes } from "./packs.ts";
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

const CHUTNEY: RecipeVersion = {
  entry: "c",
  number: 1,
  author: "m",
  published_on: "2026-11-01",
  body: {
    makes: { amount: "8", unit: "kg" },
    loss_percent: "4",
    pack_sizes: [
      { size: "1", net: { amount: "250", unit: "g" }, packaging: "jar" },
      { size: "2", net: { amount: "1", unit: "kg" }, packaging: "tub" },
    ],
    lines: [
      {
        line: "1",
        material: "apple",
        amount: { amount: "6", unit: "kg" },
        is_base: true,
        state: "as_bought",
        yields: { percent: "77", by: "table" },
      },
      {
        line: "2",
        material: "onion",
        // Rounded as it was published: 20 % of 4.62 kg are 924 g, and this says 920.
        amount: { amount: "0.92", unit: "kg" },
        percent: "20",
        percent_of: "base",
        state: "prepared",
        yields: { percent: "88", by: "typed" },
      },
      { line: "3", material: "jar", amount: { amount: "31", unit: "pc" } },
      { line: "4", material: "tub", amount: { amount: "8", unit: "pc" } },
    ],
  },
};

function chutney(by: "as_written" | "mass" | "packs", typed: string | null, size: "1" | "2") {
  const pack = packSizes(CHUTNEY.body).find((each) => each.size === size) ?? null;
  const unit = by === "packs" ? "pc" : "kg";
  const factor = factorFor(CHUTNEY, { by, typed, unit, packNet: null, pack });
  return factor === null ? null : scaledVersion(CHUTNEY, factor, by, pack);
}

describe("a recipe of shares, as bought and prepared", () => {
  it("scales a share as it was written, not as it was rounded", () => {
    const scaled = chutney("mass", "76.8", "1");

    expect(scaled).toMatchObject({ factor: "10", makes: { amount: "80", unit: "kg" } });
    expect(scaled?.lines[1]?.body).toMatchObject({ amount: { amount: "9.24", unit: "kg" } });
  });

  it("tells what is left of what was bought, and what to lay out for what is prepared", () => {
    const lines = chutney("as_written", null, "1")?.lines ?? [];

    expect(lines[0]?.other).toEqual({ is: "left", amount: "4.62" });
    expect(lines[1]?.other).toEqual({ is: "to_lay_out", amount: "1.05" });
  });

  it("makes more where some is expected to be lost, so that what was asked for is left", () => {
    expect(chutney("mass", "7.68", "1")).toMatchObject({ factor: "1", makes: { amount: "8" } });
  });

  it("counts the packs of the chosen size after the loss, and takes only its packaging", () => {
    const small = chutney("as_written", null, "1");
    const large = chutney("as_written", null, "2");

    expect([small?.packs, large?.packs]).toEqual(["30", "7"]);
    expect(small?.lines.map(({ material }) => material)).toEqual(["apple", "onion", "jar"]);
    expect(large?.lines.map(({ material }) => material)).toEqual(["apple", "onion", "tub"]);
  });

  it("makes as much as the wanted packs take", () => {
    expect(chutney("packs", "96", "1")).toMatchObject({ makes: { amount: "25" }, packs: "96" });
  });

  it("comes back to what was written when the scaled batch is scaled back", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (times) => {
        const pack = packSizes(CHUTNEY.body)[0] ?? null;
        const wanted = parseDecimal(String(times));
        const there = scaledVersion(CHUTNEY, { wanted, base: ONE }, "mass", pack);
        const lines = there.lines.map((line) => line.body);
        const larger = { ...CHUTNEY, body: { ...CHUTNEY.body, makes: there.makes, lines } };

        const back = scaledVersion(larger, { wanted: ONE, base: wanted }, "mass", pack);

        expect(back.makes).toEqual(CHUTNEY.body.makes);
        expect(back.lines.map((line) => line.amount)).toEqual(["6", "0.924", "31"]);
      }),
    );
  });
});

describe("what is left after the expected loss", () => {
  it("is a mass to the gram, and of pieces the whole ones", () => {
    // 5 % of 16.5 kg is 0.825 kg; of 66 jars 3.3, so that 62 are left whole.
    const loss = parseDecimal("5");

    expect(leftToFill({ amount: "16.5", unit: "kg" }, loss)).toEqual({
      amount: "15.675",
      unit: "kg",
    });
    expect(leftToFill({ amount: "66", unit: "pc" }, loss)).toEqual({ amount: "62", unit: "pc" });
  });
});

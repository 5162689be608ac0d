/** What is charted: yields in the order of finishing, packs and checks under one label. */
import { describe, expect, test } from "vitest";
import { batchState } from "../../calc/batches.ts";
import { fillOf } from "../../calc/fills.ts";
import { foldSubject } from "../../calc/folds.ts";
import { written } from "../../calc/numbers.ts";
import type { Fact } from "../../calc/record.ts";
import type { LotState } from "../../calc/stock.ts";
import { placesWords, ruleShort, ruleWords } from "../../text/charts.ts";
import {
  fillSeries,
  finishedOf,
  isDrawn,
  packSeries,
  type Series,
  workedPlaces,
  yieldSeries,
} from "./series.ts";

let count = 0;

function fact(kind: string, day: string, body: Fact["body"]): Fact {
  count += 1;
  return {
    id: `e${count}`,
    kind,
    author: "ana",
    device: "phone",
    device_seq: count,
    happened_at: `${day}T08:00:00.000Z`,
    local_date: day,
    seq: count,
    body,
  };
}

/** Fruit of 1000 g in, so many packs of 100 g out. */
function batch(name: string, day: string, packs: string, isFinished = true) {
  const line = { line: "fruit", material: "m", amount: { amount: "1000", unit: "g" } };
  const facts = [
    fact("batch_started", "2026-06-01", {
      batch: name,
      code: name.toUpperCase(),
      recipe: "jam",
      product: "p",
      lines: [line],
      steps: [],
    }),
    fact("weigh_in", "2026-06-01", {
      batch: name,
      line: "fruit",
      material: "m",
      lot: "F-1",
      place: "k",
      reading: { unit: "g", shown: "1000", division: "1" },
    }),
    fact("output", day, {
      batch: name,
      lot: `L-${name.toUpperCase()}`,
      material: "p",
      place: "k",
      amount: { amount: packs, unit: "pc" },
      pack_net: { amount: "100", unit: "g" },
    }),
    ...(isFinished ? [fact("batch_finished", day, { batch: name })] : []),
  ];
  return batchState(`batch:${name}`, facts);
}

function lot(code: string, checks: readonly (readonly [string, string, readonly string[]])[]) {
  return foldSubject(`lot:${code}`, [
    fact("receipt", "2026-06-01", {
      lot: code,
      material: "p",
      source: "s",
      amount: { amount: "100", unit: "pc" },
      place: "k",
      condition: "fit",
    }),
    ...checks.map(([day, label, gross]) =>
      fact("fill_checked", day, {
        lot: code,
        on: day,
        label: [{ amount: { amount: label, unit: "g" } }],
        rules: "eu",
        unit: "g",
        tares: ["50", "50"],
        gross,
      }),
    ),
  ]) as LotState; // a lot's fold
}

function figures(series: Series | undefined): string[][] {
  return (series?.points ?? []).map(({ values }) => values.map(written));
}

describe("yields", () => {
  test("stand in the order of finishing, as the batch sheet gives them", () => {
    const late = batch("b", "2026-06-09", "8");
    const early = batch("a", "2026-06-03", "9");

    const [recovery] = yieldSeries(finishedOf("jam", [late, early]));

    expect(recovery?.id).toBe("recovery_percent");
    expect(recovery?.points.map(({ href }) => href)).toEqual(["#/batch/a", "#/batch/b"]);
    expect(figures(recovery)).toEqual([["90.0000"], ["80.0000"]]);
  });

  test("a batch under way and one of another recipe are left out", () => {
    const open = batch("c", "2026-06-03", "9", false);

    expect(finishedOf("jam", [open])).toEqual([]);
    expect(finishedOf("pickle", [batch("d", "2026-06-03", "9")])).toEqual([]);
  });

  test("a batch of which something was not weighed is told, not charted as nought", () => {
    const whole = batch("e", "2026-06-03", "9");
    const bare = batchState("batch:f", [
      fact("batch_started", "2026-06-01", { batch: "f", recipe: "jam", lines: [], steps: [] }),
      fact("batch_finished", "2026-06-05", { batch: "f" }),
    ]);

    const [recovery] = yieldSeries(finishedOf("jam", [whole, bare]));

    expect(recovery?.points).toHaveLength(1);
    expect(recovery?.why).toContain("1 finished batch without this figure");
  });
});

describe("fills", () => {
  test("are the packs of the last check, and all checks of the product under the same label", () => {
    const one = lot("P-1", [["2026-06-04", "100", ["151", "150.5"]]]);
    const other = lot("P-2", [
      ["2026-06-02", "100", ["149", "152"]],
      ["2026-06-03", "200", ["251", "252"]],
    ]);

    const [packs, checks] = fillSeries(one, [one, other]);

    expect(figures(packs)).toEqual([["101"], ["100.5"]]);
    expect(figures(checks)).toEqual([
      ["99", "102"],
      ["101", "100.5"],
    ]);
  });

  test("under way are charted pack by pack, once the label is known", () => {
    const body = {
      label: [{ amount: { amount: "100", unit: "g" } }],
      rules: "eu",
      unit: "g",
      tares: ["50", "50"],
      gross: ["151", "150.5"],
    };

    expect(figures(packSeries(fillOf(body)) ?? undefined)).toEqual([["101"], ["100.5"]]);
    expect(packSeries(fillOf({ ...body, label: [] }))).toBeNull();
  });

  test("have the decimals of what was weighed, and no more than the scale shows", () => {
    const body = {
      label: [{ amount: { amount: "100", unit: "mL" } }],
      rules: "eu",
      unit: "g",
      tares: ["50", "50"],
      gross: ["151.2", "150.5"],
      density: "1.0320",
    };

    expect(packSeries(fillOf({ ...body, division: "0.1" }))?.places).toBe(1);
    expect(packSeries(fillOf({ ...body, division: "1" }))?.places).toBe(0);
  });

  test("a lot whose packs nobody weighed has none", () => {
    expect(fillSeries(lot("P-3", []), [])).toEqual([]);
  });
});

describe("digits and keys", () => {
  test("what is worked out has two digits of the spread, and one more than was read at most", () => {
    expect(workedPlaces(1, 0.651)).toBe(2);
    expect(workedPlaces(0, 0.651)).toBe(1);
    expect(workedPlaces(1, 3.18)).toBe(1);
    expect(workedPlaces(1, 31.8)).toBe(0);
    expect(workedPlaces(1, 0)).toBe(1);
  });

  test("nothing is drawn of fewer than eight points", () => {
    const packs = (count: number) =>
      fillSeries(
        lot("P-4", [["2026-06-04", "100", Array.from({ length: count }, (_, at) => `15${at}`)]]),
        [],
      );

    expect(isDrawn(packs(7))).toBe(false);
    expect(isDrawn(packs(8))).toBe(true);
    expect(isDrawn([])).toBe(false);
  });
});

describe("a rule that fired", () => {
  test("names points as a person counts them, and the side", () => {
    expect(placesWords(6, 6)).toBe("7");
    expect(placesWords(2, 9)).toBe("3 to 10");
    expect(ruleWords("beyond_limit", -1)).toBe("below the lower limit");
    expect(ruleShort("six_in_a_row", 1)).toBe("6 rising");
  });
});

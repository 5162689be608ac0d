import { describe, expect, test } from "vitest";
import { dried } from "../../calc/drying.ts";
import { parseDecimal } from "../../calc/numbers.ts";
import { guardBand } from "../../calc/readings.ts";
import { measuredIn, type ScaleUsed, withDoubts } from "./doubts.ts";
import type { Found, Row, SumAbout, Typed } from "./plan.ts";
import { ALL_SUMS } from "./sums.ts";

const NOTHING: SumAbout = { lines: [], target_percent: null, altitude_m: null };
/** A batch that weighed 10 kg of fruit and of sugar, each known to u = 2 g. */
const JAM: SumAbout = {
  ...NOTHING,
  target_percent: "68",
  lines: [
    { name: "Fruit", amount: "10", solids_percent: "10", u: 0.002 },
    { name: "Sugar", amount: "10", solids_percent: "100", u: 0.002 },
  ],
};
const BENCH_SCALE: ScaleUsed = { unit: "g", division: "1", repeatability: null };

function doubted(
  sum: string,
  typed: Typed,
  { about = NOTHING, scale = null }: { about?: SumAbout; scale?: ScaleUsed | null } = {},
): Found {
  const plan = ALL_SUMS[sum];
  if (plan === undefined) throw new Error(`no sum called ${sum}`);
  const answer = withDoubts(plan, { ...plan.begin(about), ...typed }, about, scale);
  if (answer.is !== "found") throw new Error(JSON.stringify(answer));
  return answer;
}

function rowNamed({ rows }: Found, name: string): Row | undefined {
  return rows.find((row) => row.name === name);
}

describe("the doubts of a sum", () => {
  test("are those of the weighings of its batch, and of what somebody typed", () => {
    // 1.645 sqrt((0.1 x 0.002 / 0.68)^2 + (0.002 / 0.68)^2 + (10 x 1 / sqrt(3) / 100 / 0.68)^2):
    // a percent of the fruit weighs thirty times what both weighings do.
    const limits = { "off solids0": "1", "off solids1": "0", "off tare": "0.01" };
    const answer = doubted("kettle", { tare: "4.20", ...limits }, { about: JAM });

    expect(answer.main).toMatchObject({ amount: "20.38", uncertainty: "0.14\u00a0kg" });
    expect(answer.main?.coverage).toBe("1.645, one-sided, 95 %");
    expect(answer.main?.doubts).toContainEqual({
      name: "From Fruit: soluble solids of it, u",
      value: "0.085\u00a0kg",
    });
    expect(answer.main?.doubts).toContainEqual({
      name: "From Empty kettle, u",
      value: "0.0058\u00a0kg",
    });
  });

  test("are at least so much where not every number has one", () => {
    const answer = doubted("kettle", { tare: "4.20", "off tare": "0.01" }, { about: JAM });

    // 1.645 sqrt(0.0029557^2 + 0.0057735^2)
    expect(answer.main?.uncertainty).toBe("at least 0.011\u00a0kg: not every number has its doubt");
  });

  test("are not known while nobody said any, and never nought", () => {
    const answer = doubted("drying", { mass: "10", before: "80", after: "20" });

    expect(answer.main?.uncertainty).toBe("not known: nobody said how far the numbers may be off");
    expect(answer.main?.coverage).toBeUndefined();
  });

  test("agree with the formula of drying, where calc has one", () => {
    const typed = { mass: "10", before: "80", after: "20", "off mass": "0.02", "off before": "1" };
    const root = Math.sqrt(3);
    const moisture = {
      before: { percent: parseDecimal("80"), basis: "wet", u: 1 / root },
      after: { percent: parseDecimal("20"), basis: "wet", u: 0 },
    } as const;
    const by_formula = dried(parseDecimal("10"), moisture, 0.02 / root);
    const band = guardBand({ u: by_formula.makes_u, degrees: null });

    expect(doubted("drying", typed).main?.uncertainty).toBe(`${band.toPrecision(2)}\u00a0kg`);
  });

  test("of a mass follow from the scale: one reading with its pot, two of what was poured", () => {
    // 1.645 x 1 g / sqrt(6), the strengths being exact.
    const typed = { strong: "12", weak: "0", target: "3", amount: "500", wanted: "strong" };
    const limits = { "off strong": "0", "off weak": "0" };
    const answer = doubted("mixing", { ...typed, ...limits }, { scale: BENCH_SCALE });

    expect(rowNamed(answer, "Makes")?.uncertainty).toBe("2.7\u00a0g"); // four times 0.67 g
    expect(rowNamed(answer, "Share of the strong one")?.uncertainty).toBe("0\u00a0%");
  });

  test("stop at an edge, where a number cannot be smaller", () => {
    // Weak is water: a doubt of it goes one way only.
    const typed = { strong: "10", weak: "0", target: "4", amount: "1000", "off weak": "0.5" };
    const answer = doubted("mixing", { ...typed, "off strong": "0" });

    // Of 1000 g: 400 g of the strong, and with u = 0.2887 % in the water 382.2 g.
    expect(answer.main).toMatchObject({ amount: "400", uncertainty: "29\u00a0g" });
  });

  test("are none of what is wanted", () => {
    const plan = ALL_SUMS.mixing;
    const typed = { strong: "12", weak: "0", target: "3", amount: "500", wanted: "makes" };
    const asked = plan?.asked(typed, NOTHING) ?? [];

    expect(measuredIn(asked, typed).map(({ label }) => label)).toEqual([
      "The strong one",
      "The weak one",
    ]);
  });
});

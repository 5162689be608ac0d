/** Checks become series by what was read: repeats as subgroups, single loads one by one. */
import { describe, expect, test } from "vitest";
import { chartSorts } from "../../calc/charts_of.ts";
import { type Check, instrumentState } from "../../calc/instruments.ts";
import { written } from "../../calc/numbers.ts";
import { checkSeries } from "./check_series.ts";

function checks(count: number, unit = "g"): readonly Check[] {
  const facts = Array.from({ length: count }, (_, at) => ({
    id: `c${at}`,
    kind: "instrument_checked",
    author: "ana",
    device: "phone",
    device_seq: at,
    happened_at: `2026-06-${String(at + 1).padStart(2, "0")}T08:00:00.000Z`,
    local_date: `2026-06-${String(at + 1).padStart(2, "0")}`,
    seq: at,
    body: {
      instrument: "i",
      unit,
      steps: [
        { sort: "rising", reference: "500", readings: ["501"] },
        { sort: "off_centre", reference: "500", readings: ["502"] },
        { sort: "repeats", reference: "200", readings: ["200.1", "199.9"] },
      ],
    },
  }));
  const defined = {
    id: "d",
    kind: "instrument_defined",
    author: "ana",
    device: "phone",
    device_seq: 99,
    happened_at: "2026-05-01T08:00:00.000Z",
    local_date: "2026-05-01",
    seq: 0,
    body: { instrument: "i", name: "Scale", sort: "scale", unit: "g" },
  };
  return instrumentState("instrument:i", [defined, ...facts]).checks;
}

describe("the checks of an instrument", () => {
  test("repeats come first as subgroups, off centre is no series", () => {
    const series = checkSeries(checks(8));

    expect(series.map(({ name }) => name)).toEqual([
      "200\u00a0g, again and again",
      "At 500\u00a0g",
    ]);
    expect(series[0]?.points[0]?.values.map(written)).toEqual(["0.1", "-0.1"]);
    expect(series.map(({ points }) => chartSorts(points.map(({ values }) => values))[0])).toEqual([
      "xbar_range",
      "individuals",
    ]);
  });

  test("are charted in the unit of the last one alone", () => {
    const mixed = [...checks(3, "kg"), ...checks(2)];

    expect(checkSeries(mixed).map(({ points }) => points.length)).toEqual([2, 2]);
  });

  test("none, no series", () => {
    expect(checkSeries([])).toEqual([]);
  });
});

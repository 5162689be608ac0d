/** From the checks of an instrument to the series a control chart is drawn from. */
import type { CheckedPoint } from "../../calc/instrument_checks.ts";
import type { Check } from "../../calc/instruments.ts";
import { parseDecimal } from "../../calc/numbers.ts";
import { CHECK_CHARTS } from "../../text/charts.ts";
import { placeWords } from "../../text/instruments.ts";
import { dayWords } from "../../text/numbers.ts";
import { decimalsIn, type Series, type SeriesPoint } from "../charts/series.ts";

/** Nothing is on it, or the same load is read a second time in another way. */
const NOT_CHARTED: readonly string[] = ["tare", "return_to_zero", "falling", "off_centre"];

/** One series for each load or value that was read in the same way, repeats before the rest. */
export function checkSeries(checks: readonly Check[]): Series[] {
  const unit = checks.at(-1)?.unit ?? null;
  const found = new Map<string, { at: CheckedPoint; points: SeriesPoint[] }>();
  for (const check of checks) {
    if (check.unit !== unit) continue;
    const once = new Set<string>();
    for (const point of check.points) {
      const key = `${point.sort} ${point.reference}`;
      if (NOT_CHARTED.includes(point.sort) || once.has(key)) continue;
      once.add(key);
      const series = found.get(key) ?? { at: point, points: [] };
      series.points.push(pointOf(check, point));
      found.set(key, series);
    }
  }
  return [...found]
    .sort(([, a], [, b]) => rank(a.at) - rank(b.at))
    .map(([id, { at, points }]) => ({
      id,
      name: placeWords(at.sort, at.reference, unit),
      unit,
      places: decimalsIn(points),
      points,
      one: CHECK_CHARTS.one,
      many: CHECK_CHARTS.many,
      why: CHECK_CHARTS.why,
    }));
}

function pointOf(check: Check, { error, repeats }: CheckedPoint): SeriesPoint {
  // A sheet that an older server added up has no single repeats yet.
  const texts = (repeats ?? []).length > 0 ? repeats : [error];
  const adjusted = check.is_adjusted ? `, ${CHECK_CHARTS.adjusted}` : "";
  return {
    id: check.entry,
    name: `${dayWords(check.on)}${adjusted}`,
    values: texts.map(parseDecimal),
  };
}

function rank({ sort, reference }: CheckedPoint): number {
  return sort === "repeats" ? -1 : Number(reference);
}

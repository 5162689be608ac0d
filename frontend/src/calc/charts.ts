/**
 * Control charts: is what varies still only what always varied?
 *
 * X-bar and range, individuals and moving range: Montgomery, Introduction to Statistical Quality
 * Control (read-secondary). EWMA: NIST/SEMATECH e-Handbook 6.3.2.4 (read). Constants:
 * tables/charts.ts. Points are counted from 0.
 */

import { added } from "./elementary.ts";
import { asDouble, type Decimal, difference } from "./numbers.ts";
import { CHART_ROWS, type ChartRow } from "./tables/charts.ts";

export type Rule = "beyond_limit" | "eight_on_one_side" | "six_in_a_row" | "two_of_three_far";

/** Who published a rule, and how that was learned. */
export interface RuleSource {
  readonly source: string;
  readonly basis: string;
}

export const RULES: Readonly<Record<Rule, RuleSource>> = {
  beyond_limit: {
    source: "Shewhart 1931; Western Electric Handbook 1956, test 1",
    basis: "memory",
  },
  eight_on_one_side: {
    source: "Western Electric Handbook 1956, test 4 (Nelson 1984 asks for nine)",
    basis: "memory",
  },
  six_in_a_row: {
    source: "Nelson, Journal of Quality Technology 16 (1984), test 3",
    basis: "memory",
  },
  two_of_three_far: { source: "Western Electric Handbook 1956, test 2", basis: "memory" },
};
export const SIDE_RUN = 8;
export const TREND_RUN = 6;
export const FAR_SIGMAS = 2;
export const FAR_WINDOW = 3;
export const FAR_COUNT = 2;

const ROWS: ReadonlyMap<number, ChartRow> = new Map(CHART_ROWS.map((row) => [row.n, row]));

/** The control limits of one point, in the unit of the series. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

/** A rule that fired and all points that made it fire. */
export interface Fired {
  readonly rule: Rule;
  readonly points: readonly number[];
}

/**
 * Points with one centre and a pair of limits for each; `sigma` is the standard deviation of a
 * plotted point, null for ranges, whose two sides are unlike.
 */
export interface Chart {
  readonly points: readonly number[];
  readonly centre: number;
  readonly sigma: number | null;
  readonly limits: readonly Limits[];
  readonly fired: readonly Fired[];
}

/** Where things stand, how much they vary, and the sigma of single readings. */
export interface ChartPair {
  readonly places: Chart;
  readonly ranges: Chart;
  readonly sigma: number;
}

/**
 * Means and ranges of subgroups of one size from 2 to 10: limits mean +- A2 R for means, D3 R to
 * D4 R for ranges, sigma R / d2.
 *
 * Throws for none, for unequal sizes, and for sizes without constants.
 */
export function xbarRange(subgroups: readonly (readonly Decimal[])[]): ChartPair {
  const row = ROWS.get(subgroups[0]?.length ?? 0);
  if (row === undefined || subgroups.some((subgroup) => subgroup.length !== row.n)) {
    throw new RangeError("subgroups of one size from 2 to 10 are needed");
  }
  const means = subgroups.map(meanOf);
  const ranges = subgroups.map((each) => asDouble(difference(largest(each), largest(each, -1))));
  const meanRange = added(ranges) / ranges.length;
  const sigma = meanRange / row.d2;
  return {
    places: placeChart(means, { halfWidth: row.a2 * meanRange, sigma: sigma / Math.sqrt(row.n) }),
    ranges: rangeChart(ranges, meanRange, row),
    sigma,
  };
}

/**
 * Single values and the moving ranges of neighbours: limits mean +- E2 MR, sigma MR / d2.
 *
 * The standard deviation of all values is not used: a drift would widen its own limits. The first
 * value has no moving range, so point i of the ranges belongs to value i + 1. Throws for fewer
 * than two values.
 */
export function individuals(values: readonly Decimal[]): ChartPair {
  const row = ROWS.get(2);
  if (values.length < 2 || row === undefined) throw new RangeError("two values are needed");
  const points = values.map(asDouble);
  const ranges = neighbours(values).map(([earlier, later]) =>
    Math.abs(asDouble(difference(later, earlier))),
  );
  const meanRange = added(ranges) / ranges.length;
  const sigma = meanRange / row.d2;
  return {
    places: placeChart(points, { halfWidth: row.e2 * meanRange, sigma }),
    ranges: rangeChart(ranges, meanRange, row),
    sigma,
  };
}

/**
 * Exponentially weighted moving averages from `start`, a target or an earlier mean, never the
 * first value. `sd` is that of single values, `weight` lambda, `width` k of the limits.
 *
 * Limits are the exact ones: start +- k sd sqrt(lambda / (2 - lambda) (1 - (1 - lambda)^2t)),
 * narrow at first. `sigma` is that of a late point; only the limits are watched, for neighbours
 * are alike by their making. Throws unless 0 < weight <= 1, sd >= 0 and width > 0.
 */
export function ewma(
  values: readonly Decimal[],
  {
    start,
    sd,
    weight,
    width,
  }: {
    readonly start: number;
    readonly sd: number;
    readonly weight: number;
    readonly width: number;
  },
): Chart {
  if (!(weight > 0 && weight <= 1 && sd >= 0 && width > 0)) throw new RangeError("no such chart");
  const lateSigma = sd * Math.sqrt(weight / (2 - weight));
  const points: number[] = [];
  const limits: Limits[] = [];
  let [average, forgotten] = [start, 1];
  for (const value of values) {
    average = weight * asDouble(value) + (1 - weight) * average;
    forgotten = forgotten * ((1 - weight) * (1 - weight));
    const half = width * lateSigma * Math.sqrt(1 - forgotten);
    points.push(average);
    limits.push({ low: start - half, high: start + half });
  }
  const fired = asFired({ beyond_limit: pointsOutside(points, limits) });
  return { points, centre: start, sigma: lateSigma, limits, fired };
}

/** Points beyond their limit; one on the limit is inside. */
export function pointsOutside(points: readonly number[], limits: readonly Limits[]): number[] {
  const places = points.map((_, place) => place);
  return places.filter((place) => {
    const [point, limit] = [points[place], limits[place]];
    if (point === undefined || limit === undefined) throw new Error("a point without limits");
    return point < limit.low || point > limit.high;
  });
}

/** Points in runs of eight or more above, or below, the centre; one on it ends a run. */
export function pointsOnOneSide(points: readonly number[], centre: number): number[] {
  const sides = points.map((point) => signOf(point - centre));
  return inLongRuns(sides, SIDE_RUN);
}

/** Points in runs of six or more that only rise, or only fall; a tie ends a run. */
export function pointsInARow(points: readonly number[]): number[] {
  const steps = neighbours(points).map(([a, b]) => signOf(b - a));
  const ends = inLongRuns(steps, TREND_RUN - 1); // six points have five steps
  return inOrder(ends.flatMap((step) => [step, step + 1]));
}

/** Points more than two sigma to one side, where two of three neighbours are. */
export function pointsFar(
  points: readonly number[],
  { centre, sigma }: { readonly centre: number; readonly sigma: number },
): number[] {
  const far = points.map((point) =>
    Math.abs(point - centre) > FAR_SIGMAS * sigma ? signOf(point - centre) : 0,
  );
  const found: number[] = [];
  for (let first = 0; first + FAR_WINDOW <= points.length; first++) {
    const window = Array.from({ length: FAR_WINDOW }, (_, step) => first + step);
    for (const side of [-1, 1]) {
      const there = window.filter((place) => far[place] === side);
      if (there.length >= FAR_COUNT) found.push(...there);
    }
  }
  return inOrder(found);
}

/** Every rule is watched where the two sides are alike. */
function placeChart(
  points: readonly number[],
  { halfWidth, sigma }: { readonly halfWidth: number; readonly sigma: number },
): Chart {
  const centre = added(points) / points.length;
  const limits = points.map(() => ({ low: centre - halfWidth, high: centre + halfWidth }));
  const fired = asFired({
    beyond_limit: pointsOutside(points, limits),
    eight_on_one_side: pointsOnOneSide(points, centre),
    six_in_a_row: pointsInARow(points),
    two_of_three_far: pointsFar(points, { centre, sigma }),
  });
  return { points, centre, sigma, limits, fired };
}

/** Ranges lean to one side and moving ranges hang together: only the limits are watched. */
function rangeChart(ranges: readonly number[], meanRange: number, row: ChartRow): Chart {
  const limits = ranges.map(() => ({
    low: row.d3_low * meanRange,
    high: row.d4_high * meanRange,
  }));
  const fired = asFired({ beyond_limit: pointsOutside(ranges, limits) });
  return { points: ranges, centre: meanRange, sigma: null, limits, fired };
}

function asFired(found: Partial<Record<Rule, readonly number[]>>): Fired[] {
  const rules: readonly Rule[] = [
    "beyond_limit",
    "eight_on_one_side",
    "six_in_a_row",
    "two_of_three_far",
  ];
  return rules.flatMap((rule) => {
    const points = found[rule] ?? [];
    return points.length > 0 ? [{ rule, points }] : [];
  });
}

/** Places in runs of the same sign, not 0, that are at least this long. */
function inLongRuns(signs: readonly number[], least: number): number[] {
  const found: number[] = [];
  let run: number[] = [];
  signs.forEach((sign, place) => {
    const isSame = place > 0 && sign === signs[place - 1];
    run = isSame ? [...run, place] : [place];
    if (sign !== 0 && run.length >= least) found.push(...(run.length === least ? run : [place]));
  });
  return found;
}

/** The mean from the first value on, so that nothing is lost far from zero. */
function meanOf(values: readonly Decimal[]): number {
  const first = values[0];
  if (first === undefined) throw new RangeError("a subgroup without values");
  const distances = values.map((value) => asDouble(difference(value, first)));
  return asDouble(first) + added(distances) / distances.length;
}

/** The largest value, or with side -1 the smallest. */
function largest(values: readonly Decimal[], side: 1 | -1 = 1): Decimal {
  return values.reduce((most, value) => (value.compare(most) === side ? value : most));
}

function neighbours<Item>(items: readonly Item[]): (readonly [Item, Item])[] {
  return items.flatMap((later, place) => {
    const earlier = items[place - 1];
    return earlier === undefined ? [] : [[earlier, later] as const];
  });
}

function inOrder(places: readonly number[]): number[] {
  return [...new Set(places)].sort((a, b) => a - b);
}

function signOf(x: number): number {
  return x > 0 ? 1 : x < 0 ? -1 : 0;
}

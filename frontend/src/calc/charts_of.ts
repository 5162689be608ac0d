/**
 * Which control charts a series allows, the chart that is asked for, and where its rules fired.
 *
 * A series is subgroups in their order, each of one value or more: the repeats of a check, the packs
 * of a lot, the yield of a batch. Charts and rules themselves: charts.ts.
 */

import {
  type Chart,
  ewma,
  FAR_WINDOW,
  type Fired,
  individuals,
  type Rule,
  SIDE_RUN,
  xbarRange,
} from "./charts.ts";
import type { Decimal } from "./numbers.ts";
import { mean } from "./readings.ts";

export type ChartSort = "xbar_range" | "individuals" | "ewma";
export type Series = readonly (readonly Decimal[])[];

// Own practice: with fewer, limits mean little and the longest rule cannot fire at all.
export const POINTS_LEAST = SIDE_RUN;
export const SUBGROUP_LEAST = 2;
export const SUBGROUP_MOST = 10; // what the table of constants holds
// NIST/SEMATECH e-Handbook 6.3.2.4, the worked example, read; it advises 0.2 to 0.3.
export const EWMA_WEIGHT = 0.3;
export const EWMA_WIDTH = 3;
export const MEAN_PLACES = 6; // a mean of repeats is rounded to them, as in a check

/** A chart of places, with that of ranges where there is one; `sigma` is that of one value. */
export interface Charted {
  readonly places: Chart;
  readonly ranges: Chart | null;
  readonly sigma: number;
}

/**
 * A rule that fired on the points from `first` to `last`, all to one side: 1 is above the centre,
 * or rising, -1 below it, or falling.
 */
export interface Firing {
  readonly rule: Rule;
  readonly first: number;
  readonly last: number;
  readonly side: number;
}

/** How many points a series of so many still needs before it is charted. */
export function missingPoints(count: number): number {
  return Math.max(POINTS_LEAST - count, 0);
}

/**
 * Of each subgroup as many of its first values as the smallest has, at most ten; none where the
 * smallest is a single value.
 */
export function evenSubgroups(series: Series): Decimal[][] {
  const size = series.length === 0 ? 0 : Math.min(...series.map((each) => each.length));
  if (size < SUBGROUP_LEAST) return [];
  return series.map((each) => each.slice(0, Math.min(size, SUBGROUP_MOST)));
}

/**
 * The charts a series allows, the one to begin with first; none before there are enough points.
 * With repeats what varies within is told from what varies between.
 */
export function chartSorts(series: Series): ChartSort[] {
  if (missingPoints(series.length) > 0 || series.some((each) => each.length === 0)) return [];
  const ofRepeats: ChartSort[] = evenSubgroups(series).length > 0 ? ["xbar_range"] : [];
  return [...ofRepeats, "individuals", "ewma"];
}

/**
 * The chart; without repeats that count, each point is the mean of its subgroup.
 *
 * An EWMA runs around the mean of the series with the sigma of its moving ranges. Throws for fewer
 * than two points, an empty subgroup, or no even subgroups.
 */
export function charted(sort: ChartSort, series: Series): Charted {
  if (sort === "xbar_range") return xbarRange(evenSubgroups(series));
  const values = series.map(pointOf);
  const pair = individuals(values);
  if (sort === "individuals") return pair;
  const places = ewma(values, {
    start: pair.places.centre,
    sd: pair.sigma,
    weight: EWMA_WEIGHT,
    width: EWMA_WIDTH,
  });
  return { places, ranges: null, sigma: pair.sigma };
}

function pointOf(subgroup: readonly Decimal[]): Decimal {
  const [only, second] = subgroup;
  return only !== undefined && second === undefined ? only : mean(subgroup, MEAN_PLACES);
}

/** Each run of points that made a rule fire, by its last point: there one sees it. */
export function firings(chart: Chart): Firing[] {
  return chart.fired
    .flatMap((fired) => runsOf(chart, fired))
    .sort((a, b) => a.last - b.last || a.first - b.first);
}

function runsOf(chart: Chart, { rule, points }: Fired): Firing[] {
  const runs: Firing[] = [];
  for (const place of points) {
    const before = runs.at(-1);
    if (before !== undefined && goesOn(chart, before, place)) {
      runs[runs.length - 1] = { ...before, last: place };
    } else {
      runs.push(begun(chart, { rule, place, before }));
    }
  }
  return runs;
}

function begun(
  chart: Chart,
  { rule, place, before }: { rule: Rule; place: number; before: Firing | undefined },
): Firing {
  if (rule !== "six_in_a_row") {
    return { rule, first: place, last: place, side: sideOf(chart, place) };
  }
  // Where a rise turns into a fall, the turning point belongs to both.
  const first = before !== undefined && before.last === place - 1 ? place - 1 : place;
  const side = Math.sign(pointAt(chart, first + 1) - pointAt(chart, first));
  return { rule, first, last: place, side };
}

function goesOn(chart: Chart, run: Firing, place: number): boolean {
  if (run.rule === "beyond_limit") return false;
  if (run.rule === "six_in_a_row") {
    const step = Math.sign(pointAt(chart, place) - pointAt(chart, run.last));
    return place === run.last + 1 && step === run.side;
  }
  const reach = run.rule === "two_of_three_far" ? FAR_WINDOW : 2;
  return place - run.last < reach && sideOf(chart, place) === run.side;
}

function sideOf(chart: Chart, place: number): number {
  return Math.sign(pointAt(chart, place) - chart.centre);
}

function pointAt({ points }: Chart, place: number): number {
  const point = points[place];
  if (point === undefined) throw new Error("a rule fired on no point");
  return point;
}

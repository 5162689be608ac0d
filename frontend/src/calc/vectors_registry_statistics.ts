/**
 * How the statistics of measurement are called with what a vector gives; see vectors_registry.ts.
 * The twin of tests/calc/registry_statistics.py, where the forms of a vector are told.
 */

import * as calibration from "./calibration.ts";
import * as charts from "./charts.ts";
import * as chartsOf from "./charts_of.ts";
import * as elementary from "./elementary.ts";
import * as groups from "./groups.ts";
import * as lines from "./lines.ts";
import { Decimal, parseDecimal, significant, written } from "./numbers.ts";
import * as people from "./people.ts";
import * as quantiles from "./quantiles.ts";
import * as repeats from "./repeats.ts";
import type { Adapter, Adapters, Given } from "./vectors_registry.ts";

/** Fields that are whole numbers in Python too; every other number of an answer is a double. */
const WHOLE = new Set([
  "count",
  "degrees",
  "degrees_between",
  "degrees_within",
  "distinct_categories",
  "first",
  "group_count",
  "items",
  "last",
  "people",
  "side",
  "terms",
  "trials",
]);
/** Functions that answer with the places of points, or their number. */
const PLACES = new Set([
  "points_outside",
  "points_on_one_side",
  "points_in_a_row",
  "points_far",
  "missing_points",
]);

/** An answer as JSON: doubles and decimals as text, whole numbers and words as they are. */
function shown(answer: unknown, digits: number): unknown {
  if (typeof answer === "number") return significant(answer, digits);
  if (answer instanceof Decimal) return written(answer);
  if (Array.isArray(answer)) return answer.map((each) => shown(each, digits));
  if (typeof answer !== "object" || answer === null) return answer;
  const isFired = "rule" in answer;
  const fields = Object.entries(answer).map(([name, value]) => {
    const isWhole = WHOLE.has(name) || (isFired && name === "points");
    return [name, isWhole ? value : shown(value, digits)];
  });
  return Object.fromEntries(fields);
}

function showing(name: string, adapter: Adapter): Adapter {
  return (g) => {
    const answer = adapter(g);
    if (PLACES.has(name)) return answer;
    const whole = shown(answer, g.digits ?? 17);
    if (!g.show || typeof whole !== "object" || whole === null) return whole;
    const asked = new Set<string>(g.show);
    return Object.fromEntries(Object.entries(whole).filter(([field]) => asked.has(field)));
  };
}

const ds = (texts: readonly string[]): Decimal[] => texts.map(parseDecimal);
const doubles = (texts: readonly string[]): number[] => texts.map(Number);

function pointsOf(pairs: readonly (readonly [string, string])[]): lines.Point[] {
  return pairs.map(([x, y]) => ({ x: parseDecimal(x), y: parseDecimal(y) }));
}

/** A least-squares line through the vector's points; two points, or one, leave no spread. */
function lineOf(g: Given): lines.Line {
  const points = pointsOf(g.points);
  if (points.length >= lines.FIT_POINTS_MIN && !g.is_level) return lines.leastSquares(points);
  const isLevel = g.is_level || points.length < 2;
  return isLevel ? lines.levelThroughMean(points) : lines.throughMean(points);
}

function checksOf(g: Given): calibration.CheckPoint[] {
  return g.checks.map(([reading, reference]: [string, string]) => ({
    reading: parseDecimal(reading),
    reference: parseDecimal(reference),
  }));
}

function correctionOf(g: Given): calibration.Correction {
  const known = g.known_sd == null ? null : Number(g.known_sd);
  return calibration.correctionOf(checksOf(g), g.sort, known);
}

function calibrated(g: Given): lines.Estimate {
  const given = g.coefficients;
  const line = {
    intercept: Number(given.intercept),
    slope: Number(given.slope),
    intercept_sd: Number(given.intercept_sd),
    slope_sd: Number(given.slope_sd),
    covariance: Number(given.covariance),
    correlation: null,
  };
  return lines.calibrated(Number(g.y), line, Number(g.y_sd));
}

/** From single readings, or from the count, mean and sum of squares of each group. */
function analysisOf(g: Given): groups.Analysis {
  if (g.readings) return groups.analysisOf(g.readings.map(ds));
  const given = g.groups.map(([count, mean, squares]: [number, string, string]) => ({
    count,
    mean: Number(mean),
    squares: Number(squares),
  }));
  return groups.analysisOfGroups(given, parseDecimal(g.origin));
}

function studyOf(g: Given): people.Study {
  return g.study.map((person: Given) => person.map(ds));
}

function biasOf(g: Given): people.Bias {
  const known = g.readings.map(([reading, answer]: [string, string]) => ({
    reading: parseDecimal(reading),
    answer: parseDecimal(answer),
  }));
  return people.biasOf(known, Number(g.level));
}

function ewma(g: Given): charts.Chart {
  return charts.ewma(ds(g.values), {
    start: Number(g.start),
    sd: Number(g.sd),
    weight: Number(g.weight),
    width: Number(g.width),
  });
}

function outside(g: Given): number[] {
  const limits = g.limits.map(([low, high]: [string, string]) => ({
    low: Number(low),
    high: Number(high),
  }));
  return charts.pointsOutside(doubles(g.points), limits);
}

const ELEMENTARY: Record<string, Adapter> = {
  added: (g) => elementary.added(doubles(g.values)),
  exponential: (g) => elementary.exponential(Number(g.x)),
  logarithm: (g) => elementary.logarithm(Number(g.x)),
  log_one_plus: (g) => elementary.logOnePlus(Number(g.x)),
};

const QUANTILES: Record<string, Adapter> = {
  normal_cumulative: (g) => quantiles.normalCumulative(Number(g.x)),
  normal_quantile: (g) => quantiles.normalQuantile(Number(g.level), g.sides),
  t_cumulative: (g) => quantiles.tCumulative(Number(g.t), g.degrees),
  t_beyond: (g) => quantiles.tBeyond(Number(g.t), g.degrees),
  t_quantile: (g) => quantiles.tQuantile(Number(g.level), g),
  f_cumulative: (g) => quantiles.fCumulative(Number(g.f), g),
  f_beyond: (g) => quantiles.fBeyond(Number(g.f), g),
  f_shares: (g) => quantiles.fShares(Number(g.f), g),
};

const REPEATS: Record<string, Adapter> = {
  repeats_of: (g) => repeats.repeatsOf(ds(g.values)),
  mean_interval: (g) => repeats.meanInterval(repeats.repeatsOf(ds(g.values)), Number(g.level)),
  pooled_sd: (g) =>
    repeats.pooledSd(
      g.spreads.map(([squares, degrees]: [string, number]) => ({
        sum_of_squares: Number(squares),
        degrees,
      })),
    ),
  repeatability_limit: (g) => repeats.repeatabilityLimit(Number(g.sd)),
};

const LINES: Record<string, Adapter> = {
  least_squares: (g) => lines.leastSquares(pointsOf(g.points)),
  through_mean: (g) => lines.throughMean(pointsOf(g.points)),
  level_through_mean: (g) => lines.levelThroughMean(pointsOf(g.points)),
  coefficients: (g) => lines.coefficients(lineOf(g), Number(g.at)),
  fit_of: (g) => lines.fitOf(lineOf(g)),
  predicted: (g) => lines.predicted(lineOf(g), Number(g.x)),
  backwards: (g) =>
    lines.backwards(lineOf(g), Number(g.y), { readings: g.readings, level: Number(g.level) }),
  calibrated,
  is_extrapolated: (g) => lines.isExtrapolated(lineOf(g), Number(g.x)),
};

const CALIBRATION: Record<string, Adapter> = {
  correction_points: (g) => calibration.correctionPoints(checksOf(g)),
  correction_of: correctionOf,
  significance: (g) => calibration.significance(correctionOf(g), Number(g.level)),
  significance_at: (g) =>
    calibration.significanceAt(correctionOf(g), {
      reading: Number(g.reading),
      level: Number(g.level),
    }),
  corrected: (g) =>
    calibration.corrected(correctionOf(g), parseDecimal(g.reading), Number(g.level)),
};

const GROUPS: Record<string, Adapter> = {
  group_of: (g) => groups.groupOf(ds(g.values), parseDecimal(g.origin)),
  analysis_of: analysisOf,
  analysis_of_groups: analysisOf,
  components_of: (g) => groups.componentsOf(analysisOf(g)),
  mean_u_with_groups: (g) => groups.meanUWithGroups(analysisOf(g)),
  mean_u_without_groups: (g) => groups.meanUWithoutGroups(analysisOf(g)),
};

const PEOPLE: Record<string, Adapter> = {
  bias_of: biasOf,
  gauge_by_ranges: (g) => people.gaugeByRanges(studyOf(g)),
  two_way: (g) => people.twoWay(studyOf(g)),
  is_pooled: (g) => people.isPooled(people.twoWay(studyOf(g))),
  gauge_by_variance: (g) => people.gaugeByVariance(people.twoWay(studyOf(g))),
};

const CHARTS: Record<string, Adapter> = {
  xbar_range: (g) => charts.xbarRange(g.subgroups.map(ds)),
  individuals: (g) => charts.individuals(ds(g.values)),
  ewma,
  points_outside: outside,
  points_on_one_side: (g) => charts.pointsOnOneSide(doubles(g.points), Number(g.centre)),
  points_in_a_row: (g) => charts.pointsInARow(doubles(g.points)),
  points_far: (g) =>
    charts.pointsFar(doubles(g.points), { centre: Number(g.centre), sigma: Number(g.sigma) }),
};

function seriesOf(g: Given): Decimal[][] {
  return g.series.map(ds);
}

const CHARTS_OF: Record<string, Adapter> = {
  missing_points: (g) => chartsOf.missingPoints(g.count),
  even_subgroups: (g) => chartsOf.evenSubgroups(seriesOf(g)),
  chart_sorts: (g) => chartsOf.chartSorts(seriesOf(g)),
  charted: (g) => chartsOf.charted(g.sort, seriesOf(g)),
  firings: (g) => chartsOf.firings(chartsOf.charted(g.sort, seriesOf(g)).places),
};

function allShowing(adapters: Record<string, Adapter>): Record<string, Adapter> {
  const entries = Object.entries(adapters);
  return Object.fromEntries(entries.map(([name, adapter]) => [name, showing(name, adapter)]));
}

export const STATISTICS: Adapters = {
  elementary: allShowing(ELEMENTARY),
  quantiles: allShowing(QUANTILES),
  repeats: allShowing(REPEATS),
  lines: allShowing(LINES),
  calibration: allShowing(CALIBRATION),
  groups: allShowing(GROUPS),
  people: allShowing(PEOPLE),
  charts: allShowing(CHARTS),
  charts_of: allShowing(CHARTS_OF),
};

/**
 * A straight line through points: its doubt, what it predicts, and what it says backwards.
 *
 * A line is kept around the mean of its points, where height and slope are independent; far from
 * zero nothing is lost. Sources: JCGM 100:2008 H.3 (fit, covariance, prediction), NIST StRD Norris
 * (certified fit), NIST/SEMATECH e-Handbook 2.3.6.7.3 (calibrated values); all read. The interval
 * backwards is the usual one of Draper and Smith, Applied Regression Analysis, memory.
 */

import { added } from "./elementary.ts";
import { asDouble, type Decimal, difference } from "./numbers.ts";
import { fBeyond, tQuantile } from "./quantiles.ts";

export const FIT_POINTS_MIN = 3; // two points give a line but leave nothing to judge it by

/** One pair, each in the unit of its axis; exact, as it was read. */
export interface Point {
  readonly x: Decimal;
  readonly y: Decimal;
}

/**
 * y = height + slope (x - centre).
 *
 * `sum_xx` is the sum of squared distances from the centre, 0 where no slope was fitted. `sd` is
 * the standard deviation of one point about the line, null when nothing tells it; `degrees` is
 * null when it does not rest on scatter. `low` and `high` are the ends of the points.
 */
export interface Line {
  readonly count: number;
  readonly centre: number;
  readonly height: number;
  readonly slope: number;
  readonly sum_xx: number;
  readonly sd: number | null;
  readonly degrees: number | null;
  readonly low: number;
  readonly high: number;
}

/** y = intercept + slope (x - at), with standard deviations and covariance of the two. */
export interface Coefficients {
  readonly intercept: number;
  readonly slope: number;
  readonly intercept_sd: number;
  readonly slope_sd: number;
  readonly covariance: number;
  readonly correlation: number | null;
}

/** How much of the spread in y the line explains; F and its p are null for a perfect fit. */
export interface Fit {
  readonly r_squared: number | null;
  readonly f: number | null;
  readonly p: number | null;
}

/** A value and its standard uncertainty, null where the line has no known spread. */
export interface Estimate {
  readonly value: number;
  readonly u: number | null;
}

/** The x that belongs to a y, its standard uncertainty and its interval. */
export interface Backwards {
  readonly x: number;
  readonly u: number;
  readonly low: number;
  readonly high: number;
}

/** Points as distances from their mean, and the mean. */
interface Cloud {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly centre: number;
  readonly height: number;
}

/**
 * The line with the least sum of squared distances in y.
 * Throws for fewer than three points, or when all have the same x.
 */
export function leastSquares(points: readonly Point[]): Line {
  if (points.length < FIT_POINTS_MIN) throw new RangeError("a fit needs three points");
  const [line, cloud] = [throughMean(points), cloudOf(points)];
  const residuals = pairs(cloud).map(([x, y]) => y - line.slope * x);
  const degrees = points.length - 2;
  const sd = Math.sqrt(added(residuals.map((r) => r * r)) / degrees);
  return { ...line, sd, degrees };
}

/**
 * The same line for two or more points, without a judgement of its spread (`sd` null).
 * Throws for fewer than two points, or when all have the same x.
 */
export function throughMean(points: readonly Point[]): Line {
  if (points.length < 2) throw new RangeError("a line needs two points");
  const cloud = cloudOf(points);
  const sum_xx = added(cloud.xs.map((x) => x * x));
  if (sum_xx === 0) throw new RangeError("all points have the same x");
  const sumXy = added(pairs(cloud).map(([x, y]) => x * y));
  return { ...levelAt(points, cloud), slope: sumXy / sum_xx, sum_xx };
}

/**
 * The mean of y as a level line, its spread that of the ys (n - 1); one point has none.
 * Throws for no points.
 */
export function levelThroughMean(points: readonly Point[]): Line {
  const cloud = cloudOf(points);
  const [line, degrees] = [levelAt(points, cloud), points.length - 1];
  if (degrees === 0) return line;
  return { ...line, sd: Math.sqrt(added(cloud.ys.map((y) => y * y)) / degrees), degrees };
}

/**
 * The line as intercept at x = `at` and slope (JCGM 100 H.3.2 takes 20 C). Null where the line
 * has no slope of its own or no known spread; correlation is null for spread 0.
 */
export function coefficients(line: Line, at: number): Coefficients | null {
  if (line.sd === null || line.sum_xx === 0) return null;
  const away = at - line.centre;
  const variance = line.sd * line.sd;
  const intercept_sd = line.sd * Math.sqrt(1 / line.count + (away * away) / line.sum_xx);
  const slope_sd = line.sd / Math.sqrt(line.sum_xx);
  const covariance = (variance * away) / line.sum_xx;
  const scale = intercept_sd * slope_sd;
  return {
    intercept: line.height + line.slope * away,
    slope: line.slope,
    intercept_sd,
    slope_sd,
    covariance,
    correlation: scale === 0 ? null : covariance / scale,
  };
}

/**
 * R squared, and F for a slope of zero, of a least-squares line. Nothing is said (null) for a
 * line without scatter of its own, or where y never changes.
 */
export function fitOf(line: Line): Fit {
  if (line.sd === null || line.degrees === null) return { r_squared: null, f: null, p: null };
  const explained = line.slope * line.slope * line.sum_xx;
  const unexplained = line.sd * line.sd * line.degrees;
  const whole = explained + unexplained;
  const r_squared = whole === 0 ? null : explained / whole;
  if (line.sd === 0) return { r_squared, f: null, p: null };
  const f = explained / (line.sd * line.sd);
  return { r_squared, f, p: fBeyond(f, { over: 1, under: line.degrees }) };
}

/**
 * The line's y at x with the standard uncertainty of the line itself (not of one more reading),
 * covariance included (JCGM 100 H.3.3).
 */
export function predicted(line: Line, x: number): Estimate {
  const away = x - line.centre;
  const value = line.height + line.slope * away;
  if (line.sd === null) return { value, u: null };
  const lever = line.sum_xx > 0 ? (away * away) / line.sum_xx : 0;
  return { value, u: line.sd * Math.sqrt(1 / line.count + lever) };
}

/**
 * The x whose mean of so many readings is y, with u = (s / b) sqrt(1/m + 1/n +
 * (y - mean)^2 / (b^2 Sxx)) and its two-sided interval by Student's t.
 *
 * Null for a line that is level, or without scatter. Throws for no readings or a level that is
 * none.
 */
export function backwards(
  line: Line,
  y: number,
  { readings, level }: { readonly readings: number; readonly level: number },
): Backwards | null {
  if (readings < 1) throw new RangeError("no readings");
  if (line.sd === null || line.degrees === null || line.slope === 0) return null;
  const away = (y - line.height) / line.slope;
  const root = Math.sqrt(1 / readings + 1 / line.count + (away * away) / line.sum_xx);
  const u = (line.sd / Math.abs(line.slope)) * root;
  const half = tQuantile(level, { degrees: line.degrees, sides: 2 }) * u;
  const x = line.centre + away;
  return { x, u, low: x - half, high: x + half };
}

/**
 * The true value X = (y - intercept) / slope behind a reading y, with the law of propagation:
 * u^2 = (s_y^2 + var a + X^2 var b + 2 X cov) / b^2 (e-Handbook 2.3.6.7.3).
 *
 * `y_sd` is the spread of such readings from a check standard. Throws for a slope of zero.
 */
export function calibrated(y: number, line: Coefficients, y_sd: number): Estimate {
  if (line.slope === 0) throw new RangeError("a level line cannot be read backwards");
  const x = (y - line.intercept) / line.slope;
  const variance =
    y_sd * y_sd +
    line.intercept_sd * line.intercept_sd +
    x * x * (line.slope_sd * line.slope_sd) +
    2 * x * line.covariance;
  // A covariance that does not fit its variances may leave a rounding below zero.
  return { value: x, u: Math.sqrt(Math.max(variance, 0)) / Math.abs(line.slope) };
}

/** Whether x lies outside the points that the line rests on. */
export function isExtrapolated(line: Line, x: number): boolean {
  return x < line.low || x > line.high;
}

/** Distances from the first point are exact decimals; only they become doubles. */
function cloudOf(points: readonly Point[]): Cloud {
  const first = points[0];
  if (first === undefined) throw new RangeError("a mean needs a point");
  const xs = points.map((point) => asDouble(difference(point.x, first.x)));
  const ys = points.map((point) => asDouble(difference(point.y, first.y)));
  const [meanX, meanY] = [added(xs) / xs.length, added(ys) / ys.length];
  return {
    xs: xs.map((x) => x - meanX),
    ys: ys.map((y) => y - meanY),
    centre: asDouble(first.x) + meanX,
    height: asDouble(first.y) + meanY,
  };
}

/** A level line at the mean, nothing known of its spread. */
function levelAt(points: readonly Point[], cloud: Cloud): Line {
  const xs = points.map((point) => asDouble(point.x));
  return {
    count: points.length,
    centre: cloud.centre,
    height: cloud.height,
    slope: 0,
    sum_xx: 0,
    sd: null,
    degrees: null,
    low: Math.min(...xs),
    high: Math.max(...xs),
  };
}

function pairs({ xs, ys }: Cloud): (readonly [number, number])[] {
  return xs.map((x, index) => [x, ys[index] ?? 0] as const);
}

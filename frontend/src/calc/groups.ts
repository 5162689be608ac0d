/**
 * Readings in groups, such as people or days: is there more between the groups than within?
 *
 * One-way analysis of variance. Sources: JCGM 100:2008 H.5 and the certified results of NIST StRD
 * SiRstv, both read. The spread between the workers of one kitchen is intermediate precision (JCGM
 * 200:2012 2.22, read), not reproducibility, which needs other places.
 */

import { added } from "./elementary.ts";
import { asDouble, type Decimal, difference } from "./numbers.ts";
import { fBeyond } from "./quantiles.ts";
import type { Doubt } from "./readings.ts";

/**
 * One group: the mean as a distance from an origin that all groups share, and the sum of squared
 * deviations from it.
 */
export interface Group {
  readonly count: number;
  readonly mean: number;
  readonly squares: number;
}

/**
 * A one-way analysis of variance.
 *
 * `f` and `p` are null when nothing varies within the groups. `effective_count` is the size of a
 * group where all are alike, and the usual average of sizes where they are not.
 */
export interface Analysis {
  readonly mean: number;
  readonly mean_of_means: number;
  readonly means_sd: number;
  readonly group_count: number;
  readonly count: number;
  readonly squares_between: number;
  readonly squares_within: number;
  readonly degrees_between: number;
  readonly degrees_within: number;
  readonly f: number | null;
  readonly p: number | null;
  readonly r_squared: number | null;
  readonly effective_count: number;
}

/**
 * Standard deviations within and between groups, and of both together. `is_set_to_zero` says that
 * the estimate between groups came out negative and stands at zero.
 */
export interface Components {
  readonly within_sd: number;
  readonly between_sd: number;
  readonly intermediate_sd: number;
  readonly is_set_to_zero: boolean;
}

/**
 * Count, mean and sum of squares of readings, the mean as a distance from `origin`, so that
 * readings far from zero lose nothing. Throws for none.
 */
export function groupOf(values: readonly Decimal[], origin: Decimal): Group {
  if (values.length === 0) throw new RangeError("a group without readings");
  const distances = values.map((value) => asDouble(difference(value, origin)));
  const mean = added(distances) / distances.length;
  const squares = added(distances.map((x) => (x - mean) * (x - mean)));
  return { count: distances.length, mean, squares };
}

/**
 * The analysis of readings, one list a group; sizes may differ.
 * Throws for fewer than two groups, an empty one, or no repeats at all.
 */
export function analysisOf(groups: readonly (readonly Decimal[])[]): Analysis {
  const origin = groups[0]?.[0];
  if (origin === undefined) throw new RangeError("no readings");
  return analysisOfGroups(
    groups.map((group) => groupOf(group, origin)),
    origin,
  );
}

/**
 * The same from counts, means and sums of squares (sd^2 x (count - 1)), for published tables
 * without single readings. Means are distances from `origin`; 0 for plain means.
 */
export function analysisOfGroups(groups: readonly Group[], origin: Decimal): Analysis {
  const group_count = groups.length;
  const count = added(groups.map((group) => group.count));
  const degrees_within = count - group_count;
  if (group_count < 2 || degrees_within < 1) {
    throw new RangeError("two groups and a repeat are needed");
  }
  const mean = added(groups.map((group) => group.count * group.mean)) / count;
  const between = added(
    groups.map((group) => group.count * ((group.mean - mean) * (group.mean - mean))),
  );
  const within = added(groups.map((group) => group.squares));
  const meanOfMeans = added(groups.map((group) => group.mean)) / group_count;
  const meansSquares = added(
    groups.map((group) => (group.mean - meanOfMeans) * (group.mean - meanOfMeans)),
  );
  const degrees_between = group_count - 1;
  const f = within > 0 ? between / degrees_between / (within / degrees_within) : null;
  const whole = between + within;
  const sizes = added(groups.map((group) => group.count * group.count));
  return {
    mean: asDouble(origin) + mean,
    mean_of_means: asDouble(origin) + meanOfMeans,
    means_sd: Math.sqrt(meansSquares / degrees_between),
    group_count,
    count,
    squares_between: between,
    squares_within: within,
    degrees_between,
    degrees_within,
    f,
    p: f === null ? null : fBeyond(f, { over: degrees_between, under: degrees_within }),
    r_squared: whole > 0 ? between / whole : null,
    effective_count: (count - sizes / count) / degrees_between,
  };
}

/**
 * Spread within and between groups (JCGM 100 H.5.2.5). A negative component is set to zero and
 * said so, never rooted; then both together are what is within.
 */
export function componentsOf(analysis: Analysis): Components {
  const within = analysis.squares_within / analysis.degrees_within;
  const betweenMean = analysis.squares_between / analysis.degrees_between;
  const between = (betweenMean - within) / analysis.effective_count;
  const kept = Math.max(between, 0);
  return {
    within_sd: Math.sqrt(within),
    between_sd: Math.sqrt(kept),
    intermediate_sd: Math.sqrt(within + kept),
    is_set_to_zero: between < 0,
  };
}

/**
 * Doubt of the mean of the group means when groups do differ: each counts as one observation
 * (JCGM 100 H.5.2.4).
 */
export function meanUWithGroups(analysis: Analysis): Doubt {
  const u = analysis.means_sd / Math.sqrt(analysis.group_count);
  return { u, degrees: analysis.degrees_between };
}

/**
 * Doubt of the mean when groups do not differ and all readings are one sample (JCGM 100
 * H.5.2.4). Too small where they do: use it only after the F test.
 */
export function meanUWithoutGroups(analysis: Analysis): Doubt {
  const degrees = analysis.count - 1;
  const variance = (analysis.squares_between + analysis.squares_within) / degrees;
  return { u: Math.sqrt(variance / analysis.count), degrees };
}

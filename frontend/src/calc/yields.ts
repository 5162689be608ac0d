/**
 * Yields: what is left of what was bought, published, measured here, and stage by stage.
 *
 * A yield belongs to a state in, a state out and a source: figures for one item differ by far more
 * than a scale's error. Published rows are passed in, for a phone loads them only when needed.
 */

import { groupPercent, PERCENT_PLACES, percentOf } from "./balance.ts";
import type { Cited } from "./limits.ts";
import {
  type Decimal,
  divided,
  HUNDRED,
  ONE,
  parseDecimal,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import type { YieldRow } from "./tables/yields.ts";

export const OWN_PREPARATIONS_MIN = 5; // from so many on the own yield is proposed; own proposal

/** A printed yield in percent of the mass as bought; above 100 for what swells. */
export interface PublishedYield {
  readonly percent: Decimal;
  readonly state_in: string;
  readonly state_out: string;
  readonly cited: readonly Cited[];
}

/**
 * What this kitchen got: sum of edible over sum of bought, and the single preparations furthest
 * apart. Null while nothing can be counted.
 */
export interface OwnYield {
  readonly percent: Decimal | null;
  readonly lowest: Decimal | null;
  readonly highest: Decimal | null;
  readonly counted: number;
  readonly left_out: number;
  readonly is_enough: boolean;
}

/** One stage of work: what was added before it and what came out of it, in one unit. */
export interface Stage {
  readonly added: Decimal;
  readonly out: Decimal | null;
}

/**
 * Three figures that are all called yield: name the whole. `multiplied` is the product of the
 * stages and a yield of nothing where something was added on the way.
 */
export interface StageYields {
  readonly stages: readonly (Decimal | null)[];
  readonly per_raw: Decimal | null;
  readonly per_all_inputs: Decimal | null;
  readonly multiplied: Decimal | null;
  readonly has_additions: boolean;
}

interface Ratio {
  readonly over: Decimal;
  readonly under: Decimal;
}

/** The rows whose item has all these words, in the order of the table; of no word none. */
export function yieldsNamed(rows: readonly YieldRow[], words: string): YieldRow[] {
  const wanted = words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  if (wanted.length === 0) return [];
  return rows.filter((row) => wanted.every((word) => row.item.toLowerCase().includes(word)));
}

/** A row of the table in percent, with its states, source and basis. */
export function publishedYield(row: YieldRow): PublishedYield {
  const { source, basis, note } = row;
  return {
    percent: product(parseDecimal(row.yield_fraction), HUNDRED),
    state_in: row.state_in,
    state_out: row.state_out,
    cited: [{ what: "yield", source, basis, note }],
  };
}

/**
 * The kitchen's own yield from (edible, bought) pairs of one state in and out.
 * A pair with a missing figure is left out and counted as such; never the mean of percents.
 */
export function ownYield(
  preparations: readonly (readonly [Decimal | null, Decimal | null])[],
): OwnYield {
  const group = groupPercent(preparations, PERCENT_PLACES);
  const singles = preparations
    .map(([edible, bought]) => percentOf(edible, bought))
    .filter((percent) => percent !== null)
    .sort((a, b) => a.compare(b));
  return {
    percent: group.percent,
    lowest: singles[0] ?? null,
    highest: singles[singles.length - 1] ?? null,
    counted: group.counted,
    left_out: group.left_out,
    is_enough: group.counted >= OWN_PREPARATIONS_MIN,
  };
}

/**
 * The own yield to offer in place of the one in use; null before five preparations and where both
 * agree. Somebody accepts it: nothing changes by itself.
 */
export function proposedYield(inUse: Decimal | null, own: OwnYield): Decimal | null {
  if (!own.is_enough || own.percent === null) return null;
  return inUse !== null && own.percent.compare(inUse) === 0 ? null : own.percent;
}

/**
 * What to buy, rounded up to whole steps of how it is sold: 2 lb at 61 % in half pounds is 3.5 lb.
 * Throws unless yield and step are above 0 and edible is not below it.
 */
export function toBuy(
  edible: Decimal,
  by: { readonly yield_percent: Decimal; readonly step: Decimal },
): Decimal {
  const { yield_percent, step } = by;
  if (yield_percent.compare(ZERO) <= 0 || step.compare(ZERO) <= 0 || edible.isNegative()) {
    throw new RangeError("a yield and a step are more than nothing");
  }
  const over = product(edible, HUNDRED);
  const under = product(yield_percent, step);
  const nearest = divided(over, under, 0);
  const isShort = product(nearest, under).compare(over) < 0;
  return product(isShort ? nearest.plus(ONE) : nearest, step);
}

/**
 * The yield of each stage with all that went into it, and the whole road's in three ways.
 * Each stage takes what the one before gave. After an outcome that was not weighed the rest is
 * null, not 0.
 */
export function stageYields(raw: Decimal, stages: readonly Stage[]): StageYields {
  let before: Decimal | null = raw;
  let ratio: Ratio | null = { over: ONE, under: ONE };
  const each: (Decimal | null)[] = [];
  for (const { added, out } of stages) {
    const putIn: Decimal | null = before === null ? null : total([before, added]);
    each.push(percentOf(out, putIn));
    ratio = times(ratio, out, putIn);
    before = putIn === null ? null : out;
  }
  const added = total(stages.map((stage) => stage.added));
  return {
    stages: each,
    per_raw: percentOf(before, raw),
    per_all_inputs: percentOf(before, total([raw, added])),
    multiplied: ratio === null ? null : percentOf(ratio.over, ratio.under),
    has_additions: stages.some((stage) => !stage.added.isZero()),
  };
}

function times(ratio: Ratio | null, out: Decimal | null, putIn: Decimal | null): Ratio | null {
  if (ratio === null || out === null || putIn === null || putIn.isZero()) return null;
  return { over: product(ratio.over, out), under: product(ratio.under, putIn) };
}

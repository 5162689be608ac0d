/** How little an instrument can weigh well, and which of several to take for a line. */

import type { Cited } from "./limits.ts";
import { type Decimal, divided, HUNDRED, parseDecimal, product, total, ZERO } from "./numbers.ts";
import { doubtOf, guardBand, isFineEnough } from "./readings.ts";

export type Answer = "can_weigh" | "too_coarse" | "too_small" | "unknown";

export const WEIGHT_PLACES = 6;
// USP <41> (2019): the least spread a display of this division can have, and 2 standard
// deviations over the smallest net weight.
const FLOOR_DIVISIONS = parseDecimal("0.41");
const SPREADS = parseDecimal("2");
export const USUAL_PERCENT = parseDecimal("0.10"); // the only accuracy the standard itself names
const CITED: Cited = {
  what: "minimum_weight",
  source: "USP <41> (2019) text as posted; instrument-maker summary",
  basis: "read-secondary",
  note: "",
};
const OUR_PERCENT: Cited = {
  what: "accuracy",
  source: "own use of the same rule for another accuracy than 0.10 %",
  basis: "common-practice",
  note: "",
};
// Work goes on with an instrument that failed or is due, but another is proposed first.
const STATES: readonly string[] = ["fit", "due", "not_checked", "failed"];

/** The smallest net weight for a wanted relative accuracy, in the division's unit. */
export interface MinimumWeight {
  readonly amount: Decimal;
  readonly cited: readonly Cited[];
}

/**
 * An instrument that may weigh a line; amounts in the unit of the line.
 * `state` is fit, due, not_checked or failed.
 */
export interface Weigher {
  readonly instrument: string;
  readonly division: Decimal | null;
  readonly capacity: Decimal | null;
  readonly repeatability: Decimal | null;
  readonly state: string;
}

/**
 * A target, how much it may be below and above, what stands under it on the scale, and the
 * relative accuracy that is wanted where a line has no limits of its own.
 */
export interface LineToWeigh {
  readonly target: Decimal;
  readonly below: Decimal | null;
  readonly above: Decimal | null;
  readonly tare: Decimal | null;
  readonly accuracy_percent: Decimal | null;
}

/** What one instrument can do for a line. */
export interface Weighs {
  readonly instrument: string;
  readonly answer: Answer;
  readonly guard_band: number | null;
  readonly minimum_weight: Decimal | null;
}

/**
 * The smallest net weight: 2 s / accuracy, with s at least 0.41 d (USP <41>, 2019).
 *
 * Without a repeatability the floor stands for it. Throws RangeError for an accuracy not above
 * zero.
 */
export function minimumWeight(
  scale: { readonly division: Decimal; readonly repeatability: Decimal | null },
  accuracyPercent: Decimal,
): MinimumWeight {
  if (accuracyPercent.compare(ZERO) <= 0) throw new RangeError("an accuracy is more than 0 %");
  const floor = product(FLOOR_DIVISIONS, scale.division);
  const known = scale.repeatability ?? floor;
  const spread = known.compare(floor) > 0 ? known : floor;
  const over = product(product(SPREADS, spread), HUNDRED);
  const isUsual = accuracyPercent.compare(USUAL_PERCENT) === 0;
  return {
    amount: divided(over, accuracyPercent, WEIGHT_PLACES),
    cited: isUsual ? [CITED] : [CITED, OUR_PERCENT],
  };
}

/**
 * Whether an instrument can weigh a line, or why not; `unknown` without a division.
 * Throws RangeError for a wanted accuracy not above zero.
 */
export function weighs(line: LineToWeigh, weigher: Weigher): Weighs {
  const { instrument, division, repeatability } = weigher;
  if (division === null) {
    return { instrument, answer: "unknown", guard_band: null, minimum_weight: null };
  }
  const readings = line.tare === null ? 1 : 2;
  const doubt = doubtOf({ division, readings, repeatability });
  const least =
    line.accuracy_percent === null
      ? null
      : minimumWeight({ division, repeatability }, line.accuracy_percent).amount;
  const isFine =
    (least === null || line.target.compare(least) >= 0) &&
    isFineEnough(division, line, { readings, repeatability });
  return {
    instrument,
    answer: answerOf(isFine, isOver(line, weigher.capacity)),
    guard_band: guardBand(doubt),
    minimum_weight: least,
  };
}

/**
 * The instrument to take: one that can weigh the line; a fit one before a due, unchecked or failed
 * one, then the smallest guard band. Null where none can. Throws as weighs does.
 */
export function proposed(line: LineToWeigh, weighers: readonly Weigher[]): string | null {
  let best: Rank | null = null;
  for (const weigher of weighers) {
    const said = weighs(line, weigher);
    if (said.answer !== "can_weigh" || said.guard_band === null) continue;
    const rank: Rank = [stateRank(weigher.state), said.guard_band, weigher.instrument];
    if (best === null || comesBefore(rank, best)) best = rank;
  }
  return best === null ? null : best[2];
}

type Rank = readonly [number, number, string];

function comesBefore(a: Rank, b: Rank): boolean {
  if (a[0] !== b[0]) return a[0] < b[0];
  if (a[1] !== b[1]) return a[1] < b[1];
  return a[2] < b[2];
}

function isOver(line: LineToWeigh, capacity: Decimal | null): boolean {
  return capacity !== null && total([line.target, line.tare ?? ZERO]).compare(capacity) > 0;
}

function answerOf(isFine: boolean, isOverCapacity: boolean): Answer {
  if (isOverCapacity) return "too_small";
  return isFine ? "can_weigh" : "too_coarse";
}

function stateRank(state: string): number {
  const rank = STATES.indexOf(state);
  return rank < 0 ? STATES.length : rank;
}

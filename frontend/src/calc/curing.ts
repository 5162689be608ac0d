/**
 * Curing: parts per million of nitrite or nitrate that go in, and how much cure gives them.
 *
 * Dry and comminuted: substance x 1e6 / green weight. Pumped: substance x pump fraction x 1e6 /
 * whole pickle, never its water alone. Immersed: substance x 1e6 / (meat + pickle). Source: FSIS
 * Processing Inspectors' Calculations Handbook (1995) as quoted, read-secondary. Every answer
 * carries its basis, its limits and the caution; over a limit no amount is worked out. Masses are
 * in one unit, whichever.
 */

import {
  type CureCase,
  type CureLimit,
  type CureUse,
  type CureVerdict,
  cureLimits,
  worstVerdict,
} from "./cure_limits.ts";
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
import type { Factor } from "./recipes.ts";

export type IngoingBasis = "green_weight" | "whole_pickle" | "meat_and_pickle";

export const PPM_PLACES = 4;
export const CURE_PLACES = 6;
/** Ingoing nitrite above this is a percent typed where a fraction belongs, or a wrong unit. */
export const NITRITE_PPM_MAX = parseDecimal("1000"); // own bound: the highest limit is 625
/** Of anything else a percent; where no limit is known nothing else would stop such a slip. */
export const OTHER_PPM_MAX = parseDecimal("10000"); // own bound: the highest limit is 2187.5
const MILLION = parseDecimal("1000000");
const MILLIONTHS_OF_PERCENT = parseDecimal("10000"); // ppm in one percent
const HUNDREDTH = parseDecimal("0.01");
const FORMULA: Cited = {
  what: "cure_formula",
  source:
    "FSIS Processing Inspectors' Calculations Handbook (Directive 7620.3, rev. 1995), as quoted",
  basis: "read-secondary",
  note: "",
};
const BASES: ReadonlyMap<CureUse, IngoingBasis> = new Map([
  ["pumped", "whole_pickle"],
  ["bacon_pumped", "whole_pickle"],
  ["bacon_pumped_alternative", "whole_pickle"],
  ["immersed", "meat_and_pickle"],
  ["bacon_immersed", "meat_and_pickle"],
]);

/**
 * A cure that was weighed: its mass, percent of the substance in it, and what it goes on.
 *
 * `others` is all else in the pickle (water, salt, sugar); `green` the meat as weighed in;
 * `pump_percent` what is pumped in, of the green weight.
 */
export interface CureMade {
  readonly cure: Decimal;
  readonly substance_percent: Decimal;
  readonly green: Decimal | null;
  readonly others: readonly Decimal[];
  readonly pump_percent: Decimal | null;
}

/**
 * Parts per million that are wanted, the cure they come from, and what it goes on; `pickle` is the
 * whole of it, the cure included.
 */
export interface CureWanted {
  readonly ppm: Decimal;
  readonly substance_percent: Decimal;
  readonly green: Decimal | null;
  readonly pickle: Decimal | null;
  readonly pump_percent: Decimal | null;
}

/** What goes in, on which basis, and what each limit says of it; shown with its caution. */
export interface Ingoing {
  readonly ppm: Decimal;
  readonly basis: IngoingBasis;
  readonly verdict: CureVerdict;
  readonly limits: readonly CureLimit[];
  readonly cited: readonly Cited[];
  readonly caution: "curing";
}

/**
 * Masses of cure and of the substance in it; null where the wanted amount is over a limit or not
 * permitted.
 */
export interface CureNeeded {
  readonly cure: Decimal | null;
  readonly substance: Decimal | null;
  readonly basis: IngoingBasis;
  readonly verdict: CureVerdict;
  readonly limits: readonly CureLimit[];
  readonly cited: readonly Cited[];
  readonly caution: "curing";
}

interface Spread {
  readonly green: Decimal | null;
  readonly pickle: Decimal | null;
  readonly pump_percent: Decimal | null;
}

/**
 * Parts per million that a weighed cure puts in.
 *
 * Throws for masses or percents not above 0, a percent above 100, a missing green weight, pickle
 * or pump, and for nitrite beyond 1000 ppm or anything else beyond 10 000, which is a slip of
 * typing.
 */
export function ingoing(cured: CureCase, made: CureMade): Ingoing {
  const { cure, substance_percent, others, green, pump_percent } = made;
  refuseUnlessAboveZero(cure, substance_percent);
  const pickle = total([cure, ...others]);
  const basis = basisOf(cured);
  const { share, whole } = spreadOver(basis, { green, pickle, pump_percent });
  const arrived = product(product(cure, substance_percent), share);
  const ppm = { wanted: product(arrived, MILLIONTHS_OF_PERCENT), base: whole };
  refuseSlip(cured, ppm);
  const limits = cureLimits(cured, ppm);
  return {
    ppm: divided(ppm.wanted, ppm.base, PPM_PLACES),
    basis,
    verdict: worstVerdict(limits),
    limits,
    cited: citedBy(limits),
    caution: "curing",
  };
}

/**
 * How much of a cure gives the wanted parts per million; nothing over a limit.
 * Throws as ingoing does.
 */
export function cureNeeded(cured: CureCase, wanted: CureWanted): CureNeeded {
  refuseUnlessAboveZero(wanted.ppm, wanted.substance_percent);
  const basis = basisOf(cured);
  const { share, whole } = spreadOver(basis, wanted);
  const ppm = { wanted: wanted.ppm, base: ONE };
  refuseSlip(cured, ppm);
  const limits = cureLimits(cured, ppm);
  const verdict = worstVerdict(limits);
  const isRefused = verdict === "over" || verdict === "not_permitted";
  const over = product(wanted.ppm, whole);
  const inPercent = product(product(share, wanted.substance_percent), MILLIONTHS_OF_PERCENT);
  return {
    cure: isRefused ? null : divided(over, inPercent, CURE_PLACES),
    substance: isRefused ? null : divided(over, product(share, MILLION), CURE_PLACES),
    basis,
    verdict,
    limits,
    cited: citedBy(limits),
    caution: "curing",
  };
}

function basisOf(cured: CureCase): IngoingBasis {
  return BASES.get(cured.use) ?? "green_weight";
}

/** The share of the substance that reaches the mass it is counted on, and that mass. */
function spreadOver(basis: IngoingBasis, over: Spread): { share: Decimal; whole: Decimal } {
  if (basis === "green_weight") return { share: ONE, whole: needed(over.green) };
  if (basis === "meat_and_pickle") {
    return { share: ONE, whole: total([needed(over.green), needed(over.pickle)]) };
  }
  const pump = needed(over.pump_percent);
  if (pump.compare(HUNDRED) > 0) {
    throw new RangeError("a pump is at most 100 % of the green weight");
  }
  return { share: product(pump, HUNDREDTH), whole: needed(over.pickle) };
}

function needed(amount: Decimal | null): Decimal {
  if (amount === null || amount.compare(ZERO) <= 0) {
    throw new RangeError("green weight, pickle or pump is missing");
  }
  return amount;
}

function refuseUnlessAboveZero(amount: Decimal, percent: Decimal): void {
  const isPercent = percent.compare(ZERO) > 0 && percent.compare(HUNDRED) <= 0;
  if (amount.compare(ZERO) <= 0 || !isPercent) {
    throw new RangeError("a cure is more than nothing and has up to 100 % of a substance");
  }
}

function refuseSlip(cured: CureCase, ppm: Factor): void {
  const mostPpm = cured.substance === "sodium_nitrite" ? NITRITE_PPM_MAX : OTHER_PPM_MAX;
  if (ppm.wanted.compare(product(mostPpm, ppm.base)) > 0) {
    throw new RangeError("more than any method puts in: is a percent or a unit wrong?");
  }
}

function citedBy(limits: readonly CureLimit[]): Cited[] {
  const once = new Map(
    limits.map(({ cited }) => [`${cited.source}\n${cited.basis}\n${cited.note}`, cited]),
  );
  return [FORMULA, ...once.values()];
}

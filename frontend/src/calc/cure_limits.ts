/**
 * Limits of curing agents, each with the basis it counts on, and what an amount is beside them.
 *
 * A limit on the finished product cannot be judged from what went in: it is told, not compared.
 * Amounts are compared as exact fractions: exactly at a limit passes.
 */

import type { Cited } from "./limits.ts";
import { type Decimal, divided, ONE, parseDecimal, product, ZERO } from "./numbers.ts";
import type { Factor } from "./recipes.ts";
import { CURE_ROWS, type CureRow } from "./tables/bench.ts";

export type CureUse =
  | "comminuted"
  | "pumped"
  | "immersed"
  | "dry_cured"
  | "bacon_pumped"
  | "bacon_pumped_alternative"
  | "bacon_immersed"
  | "bacon_dry_cured";
export type Substance = "sodium_nitrite" | "sodium_nitrate" | "sodium_ascorbate" | "ascorbic_acid";
export type CureRules = "us" | "canada";
export type CureVerdict =
  | "not_permitted"
  | "over"
  | "below"
  | "within"
  | "other_basis"
  | "no_limit_known";

/** What counts when limits differ: the worst of what they say. */
const WORST_FIRST: readonly CureVerdict[] = ["not_permitted", "over", "below", "within"];

/** What is cured, with what, and whose rules are asked. */
export interface CureCase {
  readonly use: CureUse;
  readonly substance: Substance;
  readonly rules: CureRules;
}

/**
 * One published limit and what an amount is beside it; `basis_weight` is the mass it counts on.
 * `limit_ppm` is null where nothing is permitted.
 */
export interface CureLimit {
  readonly kind: string;
  readonly limit_ppm: Decimal | null;
  readonly basis_weight: string;
  readonly verdict: CureVerdict;
  readonly cited: Cited;
}

/** What each limit for a case says of an amount in parts per million, an exact fraction. */
export function cureLimits(cured: CureCase, ppm: Factor): CureLimit[] {
  return CURE_ROWS.filter(
    (row) =>
      row.rules === cured.rules &&
      row.substance === cured.substance &&
      row.holds_for.split(";").includes(cured.use),
  ).map((row) => limitOf(row, ppm));
}

/** The worst that any limit says; without one that can be compared `no_limit_known`. */
export function worstVerdict(limits: readonly CureLimit[]): CureVerdict {
  const said = new Set(limits.map((limit) => limit.verdict));
  return WORST_FIRST.find((each) => said.has(each)) ?? "no_limit_known";
}

function limitOf(row: CureRow, ppm: Factor): CureLimit {
  const { kind, limit_ppm, basis_weight, source, basis, note } = row;
  return {
    kind,
    limit_ppm: limit_ppm === "" ? null : parseDecimal(limit_ppm),
    basis_weight,
    verdict: verdictOf(row, ppm),
    cited: { what: "cure_limit", source, basis, note },
  };
}

function verdictOf({ kind, limit_ppm }: CureRow, ppm: Factor): CureVerdict {
  if (kind === "not_permitted") {
    return ppm.wanted.compare(ZERO) > 0 ? "not_permitted" : "within";
  }
  if (kind === "most_in_product") return "other_basis";
  // What is required is a whole number of ppm: an amount that rounds to it has it.
  const isRequired = kind === "required_ingoing";
  const amount = isRequired ? { wanted: divided(ppm.wanted, ppm.base, 0), base: ONE } : ppm;
  const way = amount.wanted.compare(product(parseDecimal(limit_ppm), amount.base));
  if (way > 0 && kind !== "least_ingoing") return "over";
  return way < 0 && kind !== "most_ingoing" ? "below" : "within";
}

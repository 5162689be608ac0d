/**
 * Packs under NIST HB 133 (2026) chapter 2, category A: mean and each shortage.
 * Its tables are in net_limits.ts; many of their rows are from memory, and a result says so.
 */

import { type Cited, isDisputed, type Limit } from "./limits.ts";
import { type NetVerdict, netVerdict, nominalGross, PLACES, packageErrors } from "./net_content.ts";
import {
  type MavColumn,
  maximumAllowableVariation,
  type PackPlan,
  packDivision,
  packPlan,
} from "./net_limits.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  HUNDRED,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import { mean, repeatSd } from "./readings.ts";

export type Allowance = "off_nominal" | "added_after";

/**
 * Moisture allowance: flour and pasta 3 % (HB 133 (2026) 2.3.8, read), `places` as the unit of
 * measure has; taken off the nominal gross weight or added afterwards to SEL and MAV, never both.
 */
export interface Moisture {
  readonly percent: Decimal;
  readonly places: number;
  readonly taken: Allowance;
}

/**
 * Packs weighed under HB 133, all in g: `label` the declaration that is verified, `division` of
 * the scale where it is known.
 */
export interface WeighedLot {
  readonly label: Decimal;
  readonly column: MavColumn;
  readonly tares: readonly Decimal[];
  readonly gross: readonly Decimal[];
  readonly lot_size: number;
  readonly division: Decimal | null;
  readonly moisture: Moisture | null;
}

/**
 * HB 133 category A. `sel` is the sample error limit (null for a single pack), `beyond_mav` the
 * positions of packs beyond the MAV; `reasons` are keys of sentences.
 */
export interface PackResult {
  readonly verdict: NetVerdict;
  readonly reasons: readonly string[];
  readonly nominal_gross: Decimal;
  readonly errors: readonly Decimal[];
  readonly total_error: Decimal;
  readonly mean_error: Decimal;
  readonly sd: number;
  readonly sel: number | null;
  readonly mav: Decimal;
  readonly beyond_mav: readonly number[];
  readonly plan: PackPlan;
  readonly cited: readonly Cited[];
}

/** What the label may have dried out, in its unit, rounded to the unit of measure. */
export function moistureAllowance(label: Decimal, moisture: Moisture): Decimal {
  return divided(product(label, moisture.percent), HUNDRED, moisture.places);
}

/** SEL = s x sample correction factor, in the unit of s (HB 133, category A). */
export function sampleErrorLimit(sd: number, factor: Decimal): number {
  return sd * asDouble(factor);
}

/**
 * Whether a lot passes HB 133 category A: mean and each shortage.
 *
 * A mean error of 0 or more passes, a negative one while its size is not above the SEL; no more
 * packs than allowed may be short by more than the MAV, which always comes from the label. Not
 * decided where the MAV row is disputed, the scale is too coarse, or the sample is not the planned
 * one. Throws RangeError without a pack, a tare or a label.
 */
export function categoryA(lot: WeighedLot): PackResult {
  if (lot.gross.length === 0) throw new RangeError("no pack was weighed");
  const plan = packPlan(lot.lot_size);
  const limit = maximumAllowableVariation(lot.label, lot.column);
  const { off, after } = allowances(lot);
  const nominal = difference(nominalGross(lot.label, lot.tares), off);
  const errors = packageErrors(lot.gross, nominal);
  const sd = repeatSd(errors);
  const mav = total([limit.amount, after]);
  const sel = plan.factor === null ? null : sampleErrorLimit(sd, plan.factor) + asDouble(after);
  const beyond = errors.flatMap((error, n) => (error.compare(mav.negated()) < 0 ? [n] : []));
  const reasons = [
    ...openReasons(lot, plan, limit),
    ...(beyond.length > plan.allowed_over_mav ? ["over_mav"] : []),
    ...(sel !== null && meanOf(errors) < -sel ? ["mean_short"] : []),
  ];
  return {
    verdict: netVerdict(reasons),
    reasons,
    nominal_gross: nominal,
    errors,
    total_error: total(errors),
    mean_error: mean(errors, PLACES),
    sd,
    sel,
    mav,
    beyond_mav: beyond,
    plan,
    cited: [...plan.cited, ...limit.cited],
  };
}

/** What is taken off the nominal gross weight, and what is added to SEL and MAV. */
function allowances(lot: WeighedLot): { readonly off: Decimal; readonly after: Decimal } {
  if (lot.moisture === null) return { off: ZERO, after: ZERO };
  const allowance = moistureAllowance(lot.label, lot.moisture);
  const isOff = lot.moisture.taken === "off_nominal";
  return isOff ? { off: allowance, after: ZERO } : { off: ZERO, after: allowance };
}

/** Why a lot may not be decided. */
function openReasons(lot: WeighedLot, plan: PackPlan, mav: Limit): string[] {
  const weighed = lot.gross.length;
  const { division } = lot;
  const isCoarse =
    division !== null && division.compare(packDivision(lot.label, lot.column).amount) > 0;
  return [
    ...(isDisputed(mav.cited) ? ["mav_disputed"] : []),
    ...(isCoarse ? ["scale_too_coarse"] : []),
    ...(lot.tares.length < (plan.tare_count ?? 0) ? ["too_few_tares"] : []),
    ...(weighed > plan.sample_size ? ["sample_too_large"] : []),
    ...(weighed < plan.sample_size ? ["sample_unfinished"] : []),
  ];
}

/** Mean to compare with a limit that is a double: the sum is exact, nothing is rounded. */
function meanOf(errors: readonly Decimal[]): number {
  return asDouble(total(errors)) / errors.length;
}

/**
 * Batches of packs under 76/211/EEC Annex I with OIML R 87: the mean, and packs below T1, T2.
 *
 * Its tables are in net_limits.ts, with the basis of each row; a result says where it leans on
 * memory.
 */

import type { Cited } from "./limits.ts";
import { type NetVerdict, netVerdict, PLACES, packageErrors } from "./net_content.ts";
import {
  type BatchPlan,
  type BatchRules,
  batchPlan,
  packDivisionEu,
  tolerableShortage,
} from "./net_limits.ts";
import { asDouble, type Decimal, difference, total } from "./numbers.ts";
import { mean, repeatSd } from "./readings.ts";

/** Net contents of packs in the order they were taken, g or mL; `nominal` is Qn. */
export interface FilledBatch {
  readonly nominal: Decimal;
  readonly contents: readonly Decimal[];
  readonly batch_size: number;
  readonly rules: BatchRules;
  readonly is_destructive: boolean;
  readonly division: Decimal | null;
}

/** 76/211/EEC. T1 = Qn - T, T2 = Qn - 2T; `mean_limit` is Qn - k s. */
export interface BatchResult {
  readonly verdict: NetVerdict;
  readonly reasons: readonly string[];
  readonly t: Decimal;
  readonly t1: Decimal;
  readonly t2: Decimal;
  readonly below_t1: readonly number[];
  readonly below_t2: readonly number[];
  readonly mean: Decimal | null;
  readonly sd: number;
  readonly mean_limit: number;
  readonly plan: BatchPlan;
  readonly cited: readonly Cited[];
}

/**
 * Whether a batch passes 76/211/EEC: the mean, the packs below T1, none below T2.
 *
 * The first packs taken are the first sample; between accept and reject the second sample decides.
 * Not decided before enough packs are measured and with too coarse a scale. Throws RangeError
 * where T or the plan is not known.
 */
export function batchCheck(batch: FilledBatch): BatchResult {
  const plan = batchPlan(batch.batch_size, batch.rules, batch.is_destructive);
  const shortage = tolerableShortage(batch.nominal);
  const t1 = difference(batch.nominal, shortage.amount);
  const t2 = difference(t1, shortage.amount);
  const belowT1 = positionsBelow(batch.contents, t1);
  const belowT2 = positionsBelow(batch.contents, t2);
  const forMean = batch.contents.slice(0, plan.mean_sample_size);
  const sd = repeatSd(forMean);
  const slack = sd * asDouble(plan.mean_factor);
  const reasons = [
    ...(isCoarse(batch.division, batch.nominal) ? ["scale_too_coarse"] : []),
    ...(belowT2.length > 0 ? ["below_t2"] : []),
    ...countReasons(plan, batch.contents.length, belowT1),
    ...meanReasons(plan, batch, slack),
  ];
  return {
    verdict: netVerdict(reasons),
    reasons,
    t: shortage.amount,
    t1,
    t2,
    below_t1: belowT1,
    below_t2: belowT2,
    mean: forMean.length > 0 ? mean(forMean, PLACES) : null,
    sd,
    mean_limit: asDouble(batch.nominal) - slack,
    plan,
    cited: [...plan.cited, ...shortage.cited],
  };
}

function positionsBelow(contents: readonly Decimal[], limit: Decimal): number[] {
  return contents.flatMap((each, n) => (each.compare(limit) < 0 ? [n] : []));
}

/** Mean to compare with a limit that is a double: the sum is exact, nothing is rounded. */
function meanOf(errors: readonly Decimal[]): number {
  return asDouble(total(errors)) / errors.length;
}

function isCoarse(division: Decimal | null, nominal: Decimal): boolean {
  return division !== null && division.compare(packDivisionEu(nominal).amount) > 0;
}

/** What the number of packs below T1 says; positions tell which sample they came from. */
function countReasons(plan: BatchPlan, count: number, belowT1: readonly number[]): string[] {
  const { accept_at_most: accept, reject_at_least: reject } = plan;
  if (accept === null || reject === null) return [];
  const inFirst = belowT1.filter((n) => n < plan.sample_size).length;
  if (inFirst >= reject) return ["too_many_below_t1"];
  if (count < plan.sample_size) return ["sample_unfinished"];
  return inFirst <= accept ? [] : secondReasons(plan, count, belowT1);
}

function secondReasons(plan: BatchPlan, count: number, belowT1: readonly number[]): string[] {
  const { second_cumulative_size: size, second_reject_at_least: reject } = plan;
  if (size === null || reject === null) return [];
  if (belowT1.filter((n) => n < size).length >= reject) return ["too_many_below_t1"];
  return count < size ? ["second_sample_needed"] : [];
}

function meanReasons(plan: BatchPlan, batch: FilledBatch, slack: number): string[] {
  if (batch.contents.length < plan.mean_sample_size) return ["mean_not_known"];
  const measured = batch.contents.slice(0, plan.mean_sample_size);
  return meanOf(packageErrors(measured, batch.nominal)) < -slack ? ["mean_short"] : [];
}

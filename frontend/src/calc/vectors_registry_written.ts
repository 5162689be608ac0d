/** Results as JSON, whole: how vectors write what a check says; the twin of tests/calc/written.py. */
import { type CheckResult, citedIn, type Point } from "./checks.ts";
import { leansOnMemory } from "./limits.ts";
import type { BatchResult } from "./net_batches.ts";
import type { PackResult } from "./net_packs.ts";
import { plain, significant } from "./numbers.ts";

/** The result as JSON: amounts as plain text, doubles to so many digits. */
export function writtenPackResult(result: PackResult, digits: number) {
  return {
    verdict: result.verdict,
    reasons: result.reasons,
    nominal_gross: plain(result.nominal_gross),
    errors: result.errors.map(plain),
    total_error: plain(result.total_error),
    mean_error: plain(result.mean_error),
    sd: significant(result.sd, digits),
    sel: result.sel === null ? null : significant(result.sel, digits),
    mav: plain(result.mav),
    beyond_mav: result.beyond_mav,
    sample_size: result.plan.sample_size,
    cited: result.cited,
    leans_on_memory: leansOnMemory(result.cited),
  };
}

/** The result as JSON: amounts as plain text, doubles to so many digits. */
export function writtenBatchResult(result: BatchResult, digits: number) {
  return {
    verdict: result.verdict,
    reasons: result.reasons,
    t: plain(result.t),
    t1: plain(result.t1),
    t2: plain(result.t2),
    below_t1: result.below_t1,
    below_t2: result.below_t2,
    mean: result.mean === null ? null : plain(result.mean),
    sd: significant(result.sd, digits),
    mean_limit: significant(result.mean_limit, digits),
    sample_size: result.plan.sample_size,
    cited: result.cited,
    leans_on_memory: leansOnMemory(result.cited),
  };
}

/** The result as JSON: amounts as plain text, doubts to so many digits. */
export function writtenCheck(result: CheckResult, digits: number) {
  const cited = citedIn(result);
  const { bias, repeatability, hysteresis } = result;
  return {
    verdict: result.verdict,
    says: result.says,
    values: result.values,
    worst: result.worst,
    bias: bias === null ? null : plain(bias),
    repeatability: repeatability === null ? null : significant(repeatability, digits),
    hysteresis: hysteresis === null ? null : plain(hysteresis),
    points: result.points.map((each) => writtenPoint(each, digits)),
    cited,
    leans_on_memory: leansOnMemory(cited),
  };
}

function writtenPoint(point: Point, digits: number) {
  const { doubt, limit } = point;
  return {
    step: point.step,
    sort: point.sort,
    reference: plain(point.reference),
    error: plain(point.error),
    u: doubt === null ? null : significant(doubt.u, digits),
    degrees: doubt === null ? null : doubt.degrees,
    limit: limit === null ? null : plain(limit.amount),
    verdict: point.verdict,
  };
}

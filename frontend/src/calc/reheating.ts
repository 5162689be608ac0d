/**
 * Whether food that was cooling is shown to have been reheated, so that its clock begins anew.
 *
 * Reheated is 74 degC for 15 s, reached within 2 h: Food Code 3-403.11 as in
 * tables/cooling_rule.csv. One reading shows no 15 s.
 */

import type { HeatLog } from "./heat_logs.ts";

export const REHEATED_S = 15;

/**
 * `hot` in thousandths, to be reached `within_s` of the coldest reading and `whole_s` of the clock's
 * start; readings further apart than `near_s` are not one stretch.
 */
export interface ReheatRule {
  readonly hot: number;
  readonly within_s: number;
  readonly whole_s: number;
  readonly near_s: number;
}

/**
 * Seen reading by reading while the clock of a cooling runs.
 *
 * `count` says how often it was shown; `isInVain`: it was as hot since the clock runs, but that was
 * not shown.
 */
export class Reheat {
  count = 0;
  isInVain = false;
  private readonly log: HeatLog;
  private readonly rule: ReheatRule;
  private coldest: { readonly high: number; readonly at: number } | null = null;
  private hotSince: number | null = null;
  private isInTime = false;

  constructor(log: HeatLog, rule: ReheatRule) {
    this.log = log;
    this.rule = rule;
  }

  /**
   * Whether this reading shows it; `startedS` is when the clock started at the earliest, null where
   * nobody saw that.
   */
  step(row: number, startedS: number | null): boolean {
    const [at, low, high] = [
      this.log.at_s[row] ?? 0,
      this.log.low[row] ?? 0,
      this.log.high[row] ?? 0,
    ];
    if (this.coldest === null || high <= this.coldest.high) this.coldest = { high, at };
    if (low < this.rule.hot) {
      this.hotSince = null;
      return false;
    }
    const before = this.log.at_s[row - 1] ?? at;
    if (this.hotSince === null || at - before > this.rule.near_s) {
      this.hotSince = at;
      const isQuick = at - this.coldest.at <= this.rule.within_s;
      this.isInTime = isQuick && startedS !== null && at - startedS <= this.rule.whole_s;
    }
    if (!this.isInTime || at - this.hotSince < REHEATED_S) {
      this.isInVain = true;
      return false;
    }
    this.coldest = null;
    this.hotSince = null;
    this.isInVain = false;
    this.count += 1;
    return true;
  }
}

/**
 * Which logs of time and temperature keep a batch back: those that failed, and those that prove
 * nothing.
 *
 * A log that is not at its end keeps nothing back: its time is not over, and corrected to the whole
 * log it may well pass. What once was a cause would stay one.
 */

import { textIn } from "./bodies.ts";
import { type HeatResult, heatResults, type JudgedLog, judgedLogs } from "./heat_results.ts";
import type { Cause } from "./holds.ts";
import type { Fact, Finding, Standing } from "./record.ts";
import type { Sheets } from "./trusted.ts";

const FAILED: readonly unknown[] = ["fail", "not_proven"]; // the graver first

/** What the logs of a batch come to: results, what to look at, what keeps the batch back. */
export interface BatchHeat {
  readonly results: readonly HeatResult[];
  readonly findings: readonly Finding[];
  readonly causes: readonly Cause[];
}

/**
 * All about the logs among the facts of a batch. `entries` are those that stand, in business order;
 * `instruments` are the sheets of thermometers, by subject.
 */
export function batchHeat(
  facts: Iterable<Fact>,
  entries: readonly Standing[],
  batch: string,
  instruments: Sheets,
): BatchHeat {
  const logs = judgedLogs(facts, entries, batch, instruments);
  const [results, findings] = heatResults(entries, logs);
  return { results, findings, causes: failedLogs(logs) };
}

/**
 * One cause for each log that failed or proved nothing, as it was kept or as it was corrected to;
 * where it did both the graver counts.
 */
export function failedLogs(logs: readonly JudgedLog[]): Cause[] {
  const failed = new Map<string, JudgedLog>();
  for (const log of logs) {
    const known = failed.get(log.written.root);
    if (isFailed(log) && (known === undefined || gravity(log) < gravity(known))) {
      failed.set(log.written.root, log);
    }
  }
  const kept = logs.filter(({ entry }) => entry !== null);
  const inForce = new Map(kept.map((log) => [log.written.root, log]));
  return [...failed].map(([root, log]) => causeOf(log, inForce.get(root)));
}

function isFailed({ comesTo }: JudgedLog): boolean {
  return FAILED.includes(comesTo.verdict);
}

/** 0 is the graver. */
function gravity({ comesTo }: JudgedLog): number {
  return FAILED.indexOf(comesTo.verdict);
}

function causeOf({ written, comesTo }: JudgedLog, now: JudgedLog | undefined): Cause {
  return {
    entry: written.root,
    what: comesTo.verdict ?? "",
    because: "check",
    step: textIn(written.body, "step"),
    judged_by: comesTo.by,
    reason: now === undefined ? null : textIn(now.written.body, "action"),
    at: written.fact.happened_at,
    author: written.fact.author,
    stands: now !== undefined && isFailed(now),
    decided: null,
    decided_by: null,
  };
}

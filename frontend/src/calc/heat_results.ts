/** The time-temperature logs on a batch sheet: results only, the rows stay in the entries. */

import { objectIn, textIn } from "./bodies.ts";
import { type TrustedHeat, trustedLog } from "./heat_trust.ts";
import { everWritten, type Written } from "./holds.ts";
import { type Fact, type Finding, finding, type Standing } from "./record.ts";
import type { Sheets } from "./trusted.ts";

/** The result of one log on a batch sheet, with where it came from. */
export interface HeatResult extends TrustedHeat {
  readonly entry: string;
  readonly step: string | null;
  readonly instrument: string | null;
  readonly came_by: string | null;
  readonly unit: string | null;
  readonly began_at: string | null;
  readonly set_by: string | null;
  readonly action: string | null;
  readonly happened_at: string;
  readonly author: string;
}

/**
 * A body a log has or once had, and what it comes to; `entry` is the log as it stands where this
 * body is the one in force.
 */
export interface JudgedLog {
  readonly written: Written;
  readonly comesTo: TrustedHeat;
  readonly entry: Standing | null;
}

/**
 * Every body the logs of a batch have or once had, each judged once, for its rows may be ten
 * thousand. `entries` are those that stand; `instruments` are the sheets of thermometers, by
 * subject.
 */
export function judgedLogs(
  facts: Iterable<Fact>,
  entries: readonly Standing[],
  batch: string,
  instruments: Sheets,
): JudgedLog[] {
  const logs = entries.filter((each) => each.kind === "heat_log");
  const inForce = new Map(logs.map((each) => [writerOf(each), each]));
  return everWritten(facts, "heat_log")
    .filter(({ body }) => textIn(body, "batch") === batch)
    .map((written) => {
      const made = { happened_at: written.fact.happened_at, instruments };
      const comesTo = trustedLog(written.body, made);
      return { written, comesTo, entry: inForce.get(written.by) ?? null };
    });
}

/**
 * The logs of a batch as they stand, in the order of `entries`, and a finding for each that is no
 * pass.
 */
export function heatResults(
  entries: readonly Standing[],
  logs: readonly JudgedLog[],
): [HeatResult[], Finding[]] {
  const judged = new Map(logs.map((log) => [log.entry?.id, log.comesTo]));
  const results = entries.flatMap((each) => {
    const comesTo = judged.get(each.id);
    return comesTo === undefined ? [] : [resultOf(each, comesTo)];
  });
  return [results, results.flatMap(findingsOf)];
}

/** What wrote the body in force: the last correction applied, else the entry itself. */
function writerOf({ id, was }: Standing): string {
  return was.at(-1)?.entry ?? id;
}

function resultOf({ id, body, happened_at, author }: Standing, comesTo: TrustedHeat): HeatResult {
  return {
    ...comesTo,
    entry: id,
    step: textIn(body, "step"),
    instrument: textIn(body, "instrument"),
    came_by: textIn(body, "came_by"),
    unit: textIn(body, "unit"),
    began_at: textIn(body, "began_at"),
    set_by: textIn(objectIn(body, "judged") ?? {}, "set_by"),
    action: textIn(body, "action"),
    happened_at,
    author,
  };
}

function findingsOf({ entry, step, by, rows, verdict }: HeatResult): Finding[] {
  let what = "heat_unreadable";
  if (rows !== null) {
    if (verdict === null || verdict === "pass") return [];
    what = verdict === "fail" ? "heat_failed" : "heat_not_proven";
  }
  const detail = { by: by ?? "", ...(step === null ? {} : { step }) };
  return [finding(`${what}:${entry}`, what, { entry, detail })];
}

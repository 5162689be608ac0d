/** The time-temperature logs on a batch sheet: results only, the rows stay in the entries. */

import { objectIn, textIn } from "./bodies.ts";
import { type TrustedHeat, trustedLog } from "./heat_trust.ts";
import { type Finding, finding, type Standing } from "./record.ts";
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
 * The logs of a batch in business order, and a finding for each that is no pass. `instruments` are
 * the sheets of their thermometers, by subject.
 */
export function heatResults(
  entries: readonly Standing[],
  instruments: Sheets,
): [HeatResult[], Finding[]] {
  const logs = entries.filter((each) => each.kind === "heat_log");
  const results = logs.map((each) => resultOf(each, instruments));
  return [results, results.flatMap(findingsOf)];
}

function resultOf({ id, body, happened_at, author }: Standing, instruments: Sheets): HeatResult {
  return {
    ...trustedLog(body, { happened_at, instruments }),
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

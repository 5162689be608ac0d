/**
 * How the functions about what is held back, and what a step's check is worked out from, are
 * called; the twin of tests/calc/registry_holds.py.
 */

import { reasonsAgainst } from "./against.ts";
import { failedChecks } from "./batch_holds.ts";
import { linePutIn } from "./batch_lines.ts";
import { gatheredSteps, stepVerdict } from "./batch_steps.ts";
import { stepStrength } from "./batch_strength.ts";
import type { Strength } from "./brine.ts";
import { batchHeat, failedLogs } from "./heat_holds.ts";
import * as holds from "./holds.ts";
import { parseDecimal, significant, written } from "./numbers.ts";
import { asItStands, finding } from "./record.ts";
import { type StepValue, stepValue, valueVerdict } from "./step_values.ts";
import { trustedReading } from "./trusted.ts";
import type { Adapters, Given } from "./vectors_registry.ts";
import {
  doubtJson,
  entriesOf,
  factsOf,
  firstOf,
  linesOf,
  logsOf,
  picked,
  statesOf,
  stepsOf,
  weighingJson,
} from "./vectors_registry_folds.ts";

const U_DIGITS = 4;
const READ = { happened_at: "2026-06-01T08:00:00.000Z", instruments: new Map() };

function holdState(g: Given): object {
  const facts = factsOf(g);
  const made = holds.holdState(g.subject, facts, asItStands(facts).standing);
  return g.show ? picked({ ...made }, g.show) : made;
}

const holdOf = (g: Given) => holds.holdOf(g.causes, g.decisions);

/** The keys of those that are settled; a key ends with a step, of a log with its entry. */
function decidedFindings(g: Given): string[] {
  const findings = g.keys.map((key: string) => {
    const [what = "", about = ""] = key.split(":");
    return finding(key, what, { entry: about, detail: { step: about } });
  });
  return holds
    .decidedFindings(findings, holdOf(g))
    .filter((each) => each.is_settled)
    .map((each) => `${each.key} ${each.settled_by}`);
}

function strengthFrom(given: Given): Strength | null {
  if (!given) return null;
  return { percent: parseDecimal(given.percent), u: Number(given.u) };
}

const stepValueOf = (g: Given): StepValue | null =>
  stepValue(g.plan, g.body, trustedReading(g.body, READ), { strength: strengthFrom(g.strength) });

function stepValueJson(g: Given): object | null {
  const made = stepValueOf(g);
  return (
    made && {
      how: made.how,
      raw: weighingJson(made.raw),
      value: weighingJson(made.value),
      table: made.table,
      bases: made.cited.map((each) => each.basis),
    }
  );
}

function strengthJson(g: Given): object | null {
  const made = stepStrength(firstOf(stepsOf(g)), linesOf(g));
  return made && { percent: written(made.percent), u: significant(made.u, U_DIGITS) };
}

function putInJson(g: Given): object {
  const { amount, doubt } = linePutIn(firstOf(linesOf(g)), g.is_moved ?? false);
  return {
    amount: amount === null ? null : [written(amount.value), amount.unit],
    doubt: doubtJson(doubt),
  };
}

function failedJson(g: Given): object[] {
  const facts = factsOf(g);
  const steps = gatheredSteps(g.steps, asItStands(facts).standing, new Map());
  return failedChecks(steps, facts, g.batch, new Map()).map((each) =>
    picked({ ...each }, ["entry", "what", "step", "reason", "stands"]),
  );
}

function causesJson(causes: readonly holds.Cause[]): object[] {
  const shown = ["entry", "what", "step", "judged_by", "reason", "stands"];
  return causes.map((each) => picked({ ...each }, shown));
}

function batchHeatJson(g: Given): object {
  const made = batchHeat(factsOf(g), entriesOf(g), "b1", statesOf(g.instruments));
  return {
    verdicts: made.results.map(({ entry, verdict }) => [entry, verdict]),
    finding_keys: made.findings.map(({ key }) => key),
    causes: causesJson(made.causes),
  };
}

export const HOLDS: Adapters = {
  holds: {
    hold_state: holdState,
    hold_of: holdOf,
    held_findings: (g) => holds.heldFindings(holdOf(g)),
    decided_findings: decidedFindings,
    ever_written: (g) =>
      holds.everWritten(factsOf(g), g.kind).map(({ root, fact, body }) => [root, fact.id, body]),
  },
  batch_holds: { failed_checks: failedJson },
  heat_holds: {
    batch_heat: batchHeatJson,
    failed_logs: (g) => causesJson(failedLogs(logsOf(g))),
  },
  batch_strength: { step_strength: strengthJson },
  against: { reasons_against: (g) => reasonsAgainst(g.lot, g.batch, g.on) },
  step_values: {
    step_value: stepValueJson,
    value_verdict: (g) => valueVerdict(g.plan, stepValueOf(g)),
  },
};

/** What stands in files whose other functions are called by vectors_registry_folds.ts. */
export const MORE: Adapters = {
  batch_lines: { line_put_in: putInJson },
  batch_steps: { step_verdict: (g) => stepVerdict(firstOf(stepsOf(g)), g.body, READ) },
};

/** An instrument's sheet: its definition, its checks, and how its readings are to be taken. */

import { textIn } from "./bodies.ts";
import type { Correction } from "./calibration.ts";
import { type CheckResult, citedIn } from "./checks.ts";
import { type DefinitionState, definitionState } from "./definitions.ts";
import {
  type CheckedPoint,
  type CorrectionLine,
  checkedUnit,
  checkResult,
  correctionFound,
  errorFound,
  U_DIGITS,
  writtenCorrection,
  writtenPoints,
} from "./instrument_checks.ts";
import { plain, significant } from "./numbers.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  finding,
  type Standing,
  settled,
  type Was,
} from "./record.ts";
import { idIn } from "./subjects.ts";

/** A published figure a limit leans on; its basis is shown wherever the limit is. */
export interface CitedFigure {
  readonly what: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

/** One check as it stands; `says` and `values` make its sentence. */
export interface Check {
  readonly entry: string;
  readonly happened_at: string;
  readonly on: string;
  readonly author: string;
  readonly unit: string | null;
  readonly verdict: string;
  readonly says: string;
  readonly values: Readonly<Record<string, string>>;
  readonly worst: number | null;
  readonly points: readonly CheckedPoint[];
  readonly bias: string | null;
  readonly repeatability: string | null;
  readonly hysteresis: string | null;
  readonly cited: readonly CitedFigure[];
  readonly is_adjusted: boolean;
  /** The scale the water in a vessel was weighed on. */
  readonly check_scale: string | null;
  readonly was: readonly Was[];
}

/**
 * From `since` until the next row: the line (found by the check `found_by`), and the spread of a
 * single reading that a check found, in `unit`.
 */
export interface InForce {
  readonly since: string;
  readonly check: string;
  readonly unit: string | null;
  readonly line: CorrectionLine | null;
  readonly found_by: string | null;
  readonly repeatability: string | null;
}

/**
 * Readings after `after` and up to `until` are in doubt because of a failed check; `after` is null
 * where it never passed, `until` where nothing has put it right yet. `line` says how far it was
 * off.
 */
export interface InDoubt {
  readonly check: string;
  readonly failed_at: string;
  readonly after: string | null;
  readonly until: string | null;
  readonly line: CorrectionLine | null;
}

/**
 * All entries about one instrument, added up. Uses are no entries about it: they are counted where
 * they stand.
 */
export interface InstrumentState extends DefinitionState {
  readonly checks: readonly Check[];
  readonly corrections: readonly InForce[];
  readonly doubts: readonly InDoubt[];
}

/** One check while they are gathered. */
interface Made {
  readonly entry: Standing;
  readonly result: CheckResult;
  readonly unit: string | null;
  readonly line: Correction | null;
}

/**
 * Fold all entries about `instrument:<id>`: the definition by the order of the log, the checks by
 * when they happened, so that one that arrives late counts from its own time.
 */
export function instrumentState(subject: string, facts: Iterable<Fact>): InstrumentState {
  const every = [...facts];
  const definition = definitionState(subject, every);
  const record = asItStands(every);
  const checks = record.standing
    .filter((each) => each.kind === "instrument_checked")
    .filter((each) => textIn(each.body, "instrument") === idIn(subject))
    .map((each) => madeOf(each, definition));
  const doubts = doubtsOf(checks);
  const findings = [...definition.findings, ...failed(checks, doubts)];
  return {
    ...definition,
    findings: settled(findings, record.standing, subject),
    checks: checks.map(writtenCheck),
    corrections: correctionsOf(checks),
    doubts,
  };
}

function madeOf(entry: Standing, { fields }: DefinitionState): Made {
  const sort = textIn(fields, "sort");
  const result = checkResult(sort, entry.body, fields);
  const unit = checkedUnit(sort, entry.body);
  return { entry, result, unit, line: correctionFound(entry.body, result) };
}

/** One row for each check that says something about the line or the spread. */
function correctionsOf(checks: readonly Made[]): InForce[] {
  const rows: InForce[] = [];
  let line: CorrectionLine | null = null;
  let found_by: string | null = null;
  let repeatability: string | null = null;
  let unit: string | null = null;
  for (const made of checks) {
    const { entry, result } = made;
    const isNone = textIn(entry.body, "line") === "none";
    const decides = made.line !== null || isNone || isAdjusted(entry);
    if (!decides && result.repeatability === null) continue;
    if (decides) {
      line = written(made.line, made.unit);
      found_by = line === null ? null : entry.id;
    }
    if (result.repeatability !== null) {
      repeatability = significant(result.repeatability, U_DIGITS);
      unit = made.unit;
    }
    rows.push({ since: entry.happened_at, check: entry.id, unit, line, found_by, repeatability });
  }
  return rows;
}

function written(line: Correction | null, unit: string | null): CorrectionLine | null {
  return line === null ? null : writtenCorrection(line, unit);
}

/** One row for each failed check: from the last pass before it to what put it right. */
function doubtsOf(checks: readonly Made[]): InDoubt[] {
  const rows: InDoubt[] = [];
  let passedAt: string | null = null;
  for (const [number, made] of checks.entries()) {
    const { entry, result } = made;
    if (result.verdict === "failed") {
      rows.push({
        check: entry.id,
        failed_at: entry.happened_at,
        after: passedAt,
        until: putRight(checks.slice(number)),
        line: written(errorFound(entry.body, result), made.unit),
      });
    }
    if (result.verdict === "fit" || putsRight(made)) passedAt = entry.happened_at;
  }
  return rows;
}

/**
 * When readings can be taken for what they are again: with the failed check itself where it was
 * adjusted or a correction was found, else with the next check that is passed.
 */
function putRight(checks: readonly Made[]): string | null {
  const passed = checks.find((made) => made.result.verdict === "fit" || putsRight(made));
  return passed?.entry.happened_at ?? null;
}

function putsRight({ entry, line, unit }: Made): boolean {
  return isAdjusted(entry) || written(line, unit)?.is_significant === true;
}

function isAdjusted(entry: Standing): boolean {
  return entry.body.is_adjusted === true;
}

function failed(checks: readonly Made[], doubts: readonly InDoubt[]): Finding[] {
  const made = new Map(checks.map((each) => [each.entry.id, each]));
  return doubts.map(({ check, after }) =>
    finding(`failed:${check}`, "check_failed", {
      entry: check,
      detail: { ...made.get(check)?.result.values, after: after ?? "" },
    }),
  );
}

function writtenCheck({ entry, result, unit }: Made): Check {
  const { bias, repeatability, hysteresis } = result;
  return {
    entry: entry.id,
    happened_at: entry.happened_at,
    on: entry.local_date,
    author: entry.author,
    unit,
    verdict: result.verdict,
    says: result.says,
    values: result.values,
    worst: result.worst,
    points: writtenPoints(result, entry.body),
    bias: bias === null ? null : plain(bias),
    repeatability: repeatability === null ? null : significant(repeatability, U_DIGITS),
    hysteresis: hysteresis === null ? null : plain(hysteresis),
    cited: citedIn(result).map(({ what, source, basis, note }) => ({ what, source, basis, note })),
    is_adjusted: isAdjusted(entry),
    check_scale: textIn(entry.body, "check_scale"),
    was: entry.was,
  };
}

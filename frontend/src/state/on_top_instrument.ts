/** An instrument of which the server knows more checks than this phone: own ones among them. */
import type { Check, InDoubt, InForce, InstrumentState } from "../calc/instruments.ts";
import { TEXT_ORDER } from "../calc/record.ts";
import { idIn } from "../calc/subjects.ts";
import { type Beyond, fact, foldedAs } from "./on_top_parts.ts";

/** What the checks of an instrument say together. */
export interface ChecksSaid {
  readonly checks: readonly Check[];
  readonly corrections: readonly InForce[];
  readonly doubts: readonly InDoubt[];
}

/**
 * Own checks take their place in time between those of the sheet, and the lines and doubts follow.
 * A check of the sheet that an own entry corrects is judged anew here.
 */
export function checksOnTop(subject: string, state: InstrumentState, beyond: Beyond): ChecksSaid {
  const own = [...beyond.covered, ...beyond.extra];
  const changed = new Set(own.map((each) => each.id));
  const made = foldedAs<InstrumentState>(subject, [definitionOf(subject, state), ...own]);
  const isKept = ({ entry }: { readonly entry: string }) => !changed.has(entry);
  const checks = [...state.checks.filter(isKept), ...made.checks].sort((a, b) =>
    TEXT_ORDER(a.happened_at, b.happened_at),
  );
  const rows = [
    ...state.corrections.filter((row) => isKept({ entry: row.check })),
    ...made.corrections,
  ].sort((a, b) => TEXT_ORDER(a.since, b.since));
  const doubts = [
    ...state.doubts.filter((row) => isKept({ entry: row.check })),
    ...made.doubts,
  ].sort((a, b) => TEXT_ORDER(a.failed_at, b.failed_at));
  const passes = passesAmong(checks, rows);
  return {
    checks,
    corrections: carriedOn(rows, checks),
    doubts: doubts.map((row) => stretchOf(row, passes)),
  };
}

/** The definition in force, so that own checks are judged by it. */
function definitionOf(subject: string, state: InstrumentState) {
  const body = { ...state.fields, instrument: idIn(subject) };
  return fact("sheet:definition", "instrument_defined", body, 0);
}

/** When readings could be taken for what they were: passed, adjusted, or corrected at once. */
function passesAmong(checks: readonly Check[], rows: readonly InForce[]): string[] {
  const corrected = new Set(
    rows.filter((row) => decides(row) && row.line?.is_significant === true).map((row) => row.check),
  );
  return checks
    .filter((check) => check.verdict === "fit" || check.is_adjusted || corrected.has(check.entry))
    .map((check) => check.happened_at);
}

function stretchOf(row: InDoubt, passes: readonly string[]): InDoubt {
  return {
    ...row,
    after: passes.filter((at) => at < row.failed_at).at(-1) ?? null,
    until: passes.find((at) => at >= row.failed_at) ?? null,
  };
}

/** A check that found no line, or no spread, leaves what was in force before it. */
function carriedOn(rows: readonly InForce[], checks: readonly Check[]): InForce[] {
  const adjusted = new Set(checks.filter((each) => each.is_adjusted).map((each) => each.entry));
  const carried: InForce[] = [];
  for (const row of rows) {
    const before = carried.at(-1);
    const check = checks.find((each) => each.entry === row.check);
    const found = check?.repeatability ?? null;
    const keepsLine = !decides(row) && !adjusted.has(row.check) && found !== null;
    const line = keepsLine ? (before?.line ?? null) : row.line;
    carried.push({
      ...row,
      line,
      found_by: keepsLine ? (before?.found_by ?? null) : row.found_by,
      repeatability: found ?? before?.repeatability ?? null,
      unit: found === null ? (before?.unit ?? null) : (check?.unit ?? null),
    });
  }
  return carried;
}

/** Whether the check of a row found the line itself. */
function decides(row: InForce): boolean {
  return row.line !== null && row.found_by === row.check;
}

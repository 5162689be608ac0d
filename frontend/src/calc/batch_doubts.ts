/** What a failed check of an instrument means for a batch: one finding for each such check. */

import { type LineWork, lineIfMoved, writtenLine } from "./batch_lines.ts";
import { type StepWork, stepIfMoved, writtenStep } from "./batch_steps.ts";
import type { HeatResult } from "./heat_results.ts";
import { type Finding, finding, TEXT_ORDER } from "./record.ts";
import type { TrustedReading } from "./trusted.ts";

/**
 * Readings of one line or step, or a log, that a failed check puts in question. `change` says which
 * verdict would become which if the error counted: `pectin:within:outside`.
 */
interface Doubted {
  readonly check: string;
  readonly readings: number;
  readonly place: string;
  readonly change: string | null;
}

/**
 * By check: how many readings it puts in question, on which lines and steps and in which logs, and
 * which verdicts would change. A log counts once.
 */
export function failedInstruments(
  lines: readonly LineWork[],
  steps: readonly StepWork[],
  heat: readonly HeatResult[],
): Finding[] {
  const doubted = [...lines.flatMap(inLine), ...steps.flatMap(inStep), ...heat.flatMap(inLog)];
  const checks = [...new Set(doubted.map((each) => each.check))].sort(TEXT_ORDER);
  return checks.map((check) =>
    failedFinding(
      check,
      doubted.filter((each) => each.check === check),
    ),
  );
}

function inLine(work: LineWork): Doubted[] {
  const checks = work.readings.map(failedBy).filter((check) => check !== null);
  if (checks.length === 0) return [];
  const change = changeAt(work.line, writtenLine(work)[0].verdict, lineIfMoved(work));
  return [...new Set(checks)].sort(TEXT_ORDER).map((check) => ({
    check,
    readings: checks.filter((each) => each === check).length,
    place: work.line,
    change,
  }));
}

function inStep(work: StepWork): Doubted[] {
  const { done } = writtenStep(work)[0];
  return work.readings.flatMap((reading, number) => {
    const check = failedBy(reading);
    if (check === null) return [];
    const was = done[number]?.verdict ?? null;
    const change = changeAt(work.step, was, stepIfMoved(work, number));
    return [{ check, readings: 1, place: work.step, change }];
  });
}

function inLog({ entry, verdict, trust }: HeatResult): Doubted[] {
  if (trust === null || trust.failed_by === null) return [];
  const change = changeAt(entry, verdict, trust.would_be);
  return [{ check: trust.failed_by, readings: 1, place: entry, change }];
}

function failedBy(reading: TrustedReading | null): string | null {
  return reading?.failed_by ?? null;
}

function changeAt(place: string, was: string | null, wouldBe: string | null): string | null {
  if (was === null || wouldBe === null || was === wouldBe) return null;
  return `${place}:${was}:${wouldBe}`;
}

function failedFinding(check: string, doubted: readonly Doubted[]): Finding {
  const detail = {
    readings: String(doubted.reduce((soFar, each) => soFar + each.readings, 0)),
    where: [...new Set(doubted.map((each) => each.place))].join(" "),
    would_change: doubted
      .map((each) => each.change)
      .filter((change) => change !== null)
      .join(" "),
  };
  return finding(`instrument_failed:${check}`, "instrument_failed", { entry: check, detail });
}

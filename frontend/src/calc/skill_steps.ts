/**
 * What became better from one drill to the next: only steps larger than their own doubt.
 *
 * Standard uncertainty of a mean: s / sqrt(n) (JCGM 100:2008 4.2.3). Of a standard deviation s of
 * n readings: s / sqrt(2 (n - 1)) (E.4.3). Of a share p of n: sqrt(p (1 - p) / n), binomial.
 * A step counts when it exceeds the root of both squared; that is one standard uncertainty, not
 * proof: few readings make any step small.
 */

import { asDouble, parseDecimal } from "./numbers.ts";
import { combinedU } from "./readings.ts";
import type { Drill, Figures, Weighed } from "./skills.ts";

/** One thing that became better: `what` is a text key, figures are those of the drills. */
export interface Improved {
  readonly what: "bias" | "spread" | "within_half_percent" | "repeatability" | "technique";
  readonly sort?: string;
  readonly technique?: string;
  readonly before?: string;
  readonly now?: string;
}

type DrillParts = Pick<Drill, "sorts" | "weighing" | "techniques">;

/** What of the later drill is better than the earlier one, in the order of the sheet. */
export function improvedBetween(before: DrillParts, now: DrillParts): Improved[] {
  const readings = Object.entries(now.sorts).flatMap(([sort, figures]) => {
    const earlier = before.sorts[sort];
    return earlier === undefined ? [] : betterReading(sort, earlier, figures);
  });
  const techniques = now.techniques
    .filter((each) => !before.techniques.includes(each))
    .map((technique): Improved => ({ what: "technique", technique }));
  return [...readings, ...betterWeighing(before.weighing, now.weighing), ...techniques];
}

function betterReading(sort: string, before: Figures, now: Figures): Improved[] {
  if (before.count < 2 || now.count < 2) return [];
  return STEPS.filter(([, isStep]) => isStep(before, now)).map(([what]) => ({
    what,
    sort,
    ...figuresOf(before[what], now[what]),
  }));
}

type Step = (before: Figures, now: Figures) => boolean;

const STEPS: readonly (readonly ["bias" | "spread" | "within_half_percent", Step])[] = [
  ["bias", isBiasStep],
  ["spread", isSpreadStep],
  ["within_half_percent", isShareStep],
];

function figuresOf(before: string | null, now: string | null): Pick<Improved, "before" | "now"> {
  return before === null || now === null ? {} : { before, now };
}

function isBiasStep(before: Figures, now: Figures): boolean {
  const doubts = [before, now].map((each) => numberOf(each.spread) / Math.sqrt(each.count));
  return exceeds(Math.abs(numberOf(before.bias)) - Math.abs(numberOf(now.bias)), doubts);
}

function isSpreadStep(before: Figures, now: Figures): boolean {
  const doubts = [before, now].map((each) => doubtOfSpread(numberOf(each.spread), each.count));
  return exceeds(numberOf(before.spread) - numberOf(now.spread), doubts);
}

function isShareStep(before: Figures, now: Figures): boolean {
  const was = numberOf(before.within_half_percent) / 100;
  const is = numberOf(now.within_half_percent) / 100;
  return exceeds(is - was, [doubtOfShare(was, before.count), doubtOfShare(is, now.count)]);
}

/** Only on one instrument: another one repeats otherwise by itself. */
function betterWeighing(before: Weighed | null, now: Weighed | null): Improved[] {
  if (before === null || now === null || before.s === null || now.s === null) return [];
  const isSame =
    before.instrument === now.instrument &&
    before.unit === now.unit &&
    before.division === now.division;
  const [was, is] = [numberOf(before.s), numberOf(now.s)];
  const doubts = [doubtOfSpread(was, before.count), doubtOfSpread(is, now.count)];
  if (!isSame || !exceeds(was - is, doubts)) return [];
  return [{ what: "repeatability", before: before.s, now: now.s }];
}

function doubtOfSpread(spread: number, count: number): number {
  return spread / Math.sqrt(2 * (count - 1));
}

function doubtOfShare(share: number, count: number): number {
  return Math.sqrt((share * (1 - share)) / count);
}

function exceeds(step: number, doubts: readonly number[]): boolean {
  return step > combinedU(doubts);
}

function numberOf(text: string | null): number {
  return asDouble(parseDecimal(text ?? "0"));
}

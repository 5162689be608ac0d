/** From the figures of a reader to two sentences: what is so, and what to do. */
import { asDouble, parseDecimal, rounded, significant } from "../../calc/numbers.ts";
import type { ClassSkill } from "../../calc/skill_class.ts";
import type { Drill, Figures } from "../../calc/skills.ts";
import { figure } from "../../text/numbers.ts";
import { CLASS, SKILLS } from "../../text/skills.ts";

const TWICE = 2; // expanded with k = 2: about 95 % of a mean that is true lies within
const CLOSE_DIVISIONS = 0.5; // what a scale is read to
const DOUBT_DIGITS = 2; // a doubt has two digits at most, a value goes as far: JCGM 100:2008 7.2.6

/** A mean further from the truth than twice its standard uncertainty, s / sqrt(n). */
function isBiased({ bias, spread, count }: Figures): boolean {
  const reach = (TWICE * numberOf(spread)) / Math.sqrt(Math.max(count, 1));
  return Math.abs(numberOf(bias)) > reach;
}

function isClose({ spread }: Figures): boolean {
  return numberOf(spread) <= CLOSE_DIVISIONS;
}

/** "True on average, but scattered."; null where nothing was scored. */
export function whatIsSo(figures: Figures): string | null {
  const { bias, spread } = figures;
  if (bias === null) return null;
  const lies = isBiased(figures) ? highOrLow(bias, spread) : SKILLS.true_average;
  if (spread === null) return `${lies}.`;
  if (isBiased(figures))
    return SKILLS.and(lies, isClose(figures) ? SKILLS.close : SKILLS.scattered);
  return isClose(figures) ? SKILLS.and(lies, SKILLS.close) : SKILLS.but(lies, SKILLS.scattered);
}

function highOrLow(bias: string, doubt: string | null): string {
  const size = figure(meanShown(bias.replace("-", ""), doubt));
  return bias.startsWith("-") ? SKILLS.low(size) : SKILLS.high(size);
}

/** Where the class stands on average, and whether its people differ. */
export function classSays(skill: ClassSkill): string {
  const { bias, bias_u, differ, is_set_to_zero } = skill;
  const reach = bias_u === null ? null : TWICE * numberOf(bias_u);
  const isOff = bias !== null && reach !== null && Math.abs(numberOf(bias)) > reach;
  const lies = isOff ? highOrLow(bias, bias_u) : SKILLS.true_average;
  if (differ === null) return SKILLS.but(reach === null ? CLASS.no_doubt : lies, CLASS.not_told);
  if (differ) return SKILLS.but(lies, CLASS.differ);
  return SKILLS.and(lies, is_set_to_zero ? CLASS.set_to_zero : CLASS.alike);
}

/** What would help most: about the sort of reading that lies furthest off. */
export function whatToDo(drill: Drill): string {
  if (!isBiased(drill.whole) && isClose(drill.whole)) return SKILLS.keep_on;
  const sorts = Object.entries(drill.sorts).sort(([, a], [, b]) => farOff(b) - farOff(a));
  return SKILLS.advice(sorts[0]?.[0] ?? "");
}

/** Root mean square of the errors but for its constant factor: bias and spread together. */
function farOff({ bias, spread }: Figures): number {
  return numberOf(bias) ** 2 + numberOf(spread) ** 2;
}

/** A spread or a doubt to two digits. */
export function spreadShown(spread: string | null): string | null {
  return spread === null ? null : significant(parseDecimal(spread), DOUBT_DIGITS);
}

/** A mean no further than two digits of its spread or doubt go: 0.43 give or take 1.64 is 0.4. */
export function meanShown(mean: string | null, doubt: string | null): string | null {
  if (mean === null || doubt === null) return mean;
  const exact = parseDecimal(mean);
  const carried = spreadShown(doubt)?.split(".")[1]?.length ?? 0;
  return numberOf(doubt) === 0 || carried >= exact.scale
    ? mean
    : rounded(exact, carried).toString();
}

/** A text figure as a double: only to compare and to draw. */
export function numberOf(text: string | null): number {
  return text === null ? 0 : asDouble(parseDecimal(text));
}

/** A bias with its sign: `+0.25`, `−0.10`. */
export function signedFigure(bias: string | null): string {
  const text = figure(bias);
  return bias === null || bias.startsWith("-") || /^0(\.0+)?$/.test(bias) ? text : `+${text}`;
}

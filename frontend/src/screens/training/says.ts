/** From the figures of a reader to two sentences: what is so, and what to do. */
import { asDouble, parseDecimal } from "../../calc/numbers.ts";
import type { ClassSkill } from "../../calc/skill_class.ts";
import type { Drill, Figures } from "../../calc/skills.ts";
import { figure } from "../../text/numbers.ts";
import { CLASS, SKILLS } from "../../text/skills.ts";

const TWICE = 2; // expanded with k = 2: about 95 % of a mean that is true lies within
const CLOSE_DIVISIONS = 0.5; // what a scale is read to

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
  const lies = isBiased(figures) ? highOrLow(bias) : SKILLS.true_average;
  if (spread === null) return `${lies}.`;
  if (isBiased(figures))
    return SKILLS.and(lies, isClose(figures) ? SKILLS.close : SKILLS.scattered);
  return isClose(figures) ? SKILLS.and(lies, SKILLS.close) : SKILLS.but(lies, SKILLS.scattered);
}

function highOrLow(bias: string): string {
  const size = figure(bias.replace("-", ""));
  return bias.startsWith("-") ? SKILLS.low(size) : SKILLS.high(size);
}

/** Where the class stands on average, and whether its people differ. */
export function classSays(skill: ClassSkill): string {
  const { bias, bias_u, differ, is_set_to_zero } = skill;
  const reach = bias_u === null ? null : TWICE * numberOf(bias_u);
  const isOff = bias !== null && reach !== null && Math.abs(numberOf(bias)) > reach;
  const lies = isOff ? highOrLow(bias) : SKILLS.true_average;
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

/** A text figure as a double: only to compare and to draw. */
export function numberOf(text: string | null): number {
  return text === null ? 0 : asDouble(parseDecimal(text));
}

/** A bias with its sign: `+0.25`, `−0.10`. */
export function signedFigure(bias: string | null): string {
  const text = figure(bias);
  return bias === null || bias.startsWith("-") || /^0(\.0+)?$/.test(bias) ? text : `+${text}`;
}

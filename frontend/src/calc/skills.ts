/**
 * A member's skill sheet: how far readings lie from what was drawn, and how they repeat.
 *
 * Sources: bias as in VIM 2.18, spread of single readings as in JCGM 100:2008 4.2.2 (n - 1). The
 * unit of reading is one division of the scale that was read, so that dials, surfaces and spoons
 * compare. What several members say together is in skill_class.ts.
 */

import { type Body, decimalIn, itemsIn, objectIn, textIn, textsIn } from "./bodies.ts";
import {
  Decimal,
  difference,
  divided,
  HUNDRED,
  parseDecimal,
  product,
  significant,
  written,
} from "./numbers.ts";
import { mean, repeatSd } from "./readings.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  type Note,
  notesAbout,
  type Standing,
  settled,
  type Was,
} from "./record.ts";
import { type Improved, improvedBetween } from "./skill_steps.ts";
import { idIn } from "./subjects.ts";

export const SKILL_FOLD = 1;

export const SORTS: readonly string[] = ["dial", "surface", "spoon"];
export const ERROR_PLACES = 4; // of a division: a hundred times finer than anybody reads
export const SHOWN_PLACES = 2;
export const SPREAD_DIGITS = 3;
export const HALF_DIVISION = new Decimal(5n, 1); // a scale is read to half a division
export const MOST_OFF = new Decimal(1_000_000n, 0); // so far off nothing was read

/**
 * How far one reading lies from the truth: in divisions (null: no division) and in percent of the
 * truth (null: the truth is 0); null also for what is far beyond any scale.
 */
export interface Score {
  readonly sort: string;
  readonly error: string | null;
  readonly percent: string | null;
}

/** What some readings add up to; `bias` and `spread` in divisions, null where too few. */
export interface Figures {
  readonly count: number;
  readonly bias: string | null;
  readonly bias_percent: string | null;
  readonly spread: string | null;
  readonly within_half_percent: string | null;
}

/** One thing weighed several times: `s` is the repeatability, null for a single reading. */
export interface Weighed {
  readonly instrument: string | null;
  readonly unit: string;
  readonly division: string | null;
  readonly count: number;
  readonly mean: string;
  readonly s: string | null;
}

/** One drill as a point in time. */
export interface Drill {
  readonly entry: string;
  readonly on: string;
  readonly happened_at: string;
  readonly author: string;
  readonly scores: readonly Score[];
  readonly whole: Figures;
  readonly sorts: Readonly<Record<string, Figures>>;
  readonly weighing: Weighed | null;
  readonly techniques: readonly string[];
  readonly note: string | null;
  readonly was: readonly Was[];
}

/** What the drills of one member say together. */
export interface Skill {
  readonly whole: Figures;
  readonly sorts: Readonly<Record<string, Figures>>;
  readonly weighing: Weighed | null;
  readonly techniques: readonly string[];
  readonly improved: readonly Improved[];
}

/** All drills of one member. */
export interface SkillState extends Skill {
  readonly member: string;
  readonly drills: readonly Drill[];
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/** Fold all entries about `skill:<member>`; only drills of that member count. */
export function skillState(subject: string, facts: Iterable<Fact>): SkillState {
  const member = idIn(subject);
  const record = asItStands(facts);
  const drills = record.standing
    .filter((each) => each.kind === "drill_done" && textIn(each.body, "member") === member)
    .map(drillOf);
  return {
    member,
    drills,
    ...summedDrills(drills),
    findings: settled(record.findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

/**
 * What drills in order of time say together: figures over all their readings, the last weighing
 * and the techniques ticked last, what became better from the last but one to the last.
 */
export function summedDrills(drills: readonly Drill[]): Skill {
  const scores = drills.flatMap((drill) => drill.scores);
  const [before, last] = [drills.at(-2), drills.at(-1)];
  return {
    whole: readerFigures(scores),
    sorts: bySort(scores),
    weighing: lastWeighing(drills),
    techniques: last?.techniques ?? [],
    improved: before === undefined || last === undefined ? [] : improvedBetween(before, last),
  };
}

/**
 * The error of one reading. In divisions it is exact to ERROR_PLACES, in percent of the truth
 * rounded to SHOWN_PLACES.
 */
export function scoreOf(question: Body): Score {
  const truth = decimalIn(question, "truth");
  const read = decimalIn(question, "read");
  const division = decimalIn(question, "division");
  const off = truth === null || read === null ? null : difference(read, truth);
  return {
    sort: textIn(question, "sort") ?? "",
    error: off === null ? null : ratio(off, division, ERROR_PLACES),
    percent: off === null ? null : ratio(product(off, HUNDRED), truth, SHOWN_PLACES),
  };
}

/** Bias, spread and the share of readings within half a division, limits included. */
export function readerFigures(scores: Iterable<Score>): Figures {
  const known = [...scores];
  const errors = decimalsOf(known.map((each) => each.error));
  const percents = decimalsOf(known.map((each) => each.percent));
  const near = errors.filter((error) => error.abs().compare(HALF_DIVISION) <= 0);
  return {
    count: errors.length,
    bias: meanOf(errors, SHOWN_PLACES),
    bias_percent: meanOf(percents, SHOWN_PLACES),
    spread: spreadOf(errors),
    within_half_percent: ratio(product(whole(near.length), HUNDRED), whole(errors.length), 1),
  };
}

function lastWeighing(drills: readonly Drill[]): Weighed | null {
  return (
    drills
      .map((drill) => drill.weighing)
      .filter((each) => each !== null)
      .at(-1) ?? null
  );
}

function drillOf(entry: Standing): Drill {
  const scores = itemsIn(entry.body, "questions").map(scoreOf);
  return {
    entry: entry.id,
    on: entry.local_date,
    happened_at: entry.happened_at,
    author: entry.author,
    scores,
    whole: readerFigures(scores),
    sorts: bySort(scores),
    weighing: weighedIn(objectIn(entry.body, "weighing") ?? {}),
    techniques: textsIn(entry.body, "techniques"),
    note: textIn(entry.body, "note"),
    was: entry.was,
  };
}

function bySort(scores: readonly Score[]): Record<string, Figures> {
  const groups = SORTS.map((sort) => [sort, scores.filter((each) => each.sort === sort)] as const);
  return Object.fromEntries(
    groups
      .filter(([, group]) => group.length > 0)
      .map(([sort, group]) => [sort, readerFigures(group)]),
  );
}

/** The mean has one place more than the finest reading. */
function weighedIn(body: Body): Weighed | null {
  const shown = textsIn(body, "shown")
    .map((x) => decimalIn({ x }, "x"))
    .filter((each) => each !== null);
  if (shown.length === 0) return null;
  const places = Math.max(...shown.map((each) => each.scale));
  return {
    instrument: textIn(body, "instrument"),
    unit: textIn(body, "unit") ?? "",
    division: textIn(body, "division"),
    count: shown.length,
    mean: written(mean(shown, places + 1)),
    s: spreadOf(shown),
  };
}

function decimalsOf(texts: readonly (string | null)[]): Decimal[] {
  return texts.filter((each) => each !== null).map(parseDecimal);
}

function meanOf(values: readonly Decimal[], places: number): string | null {
  return values.length === 0 ? null : written(mean(values, places));
}

function spreadOf(values: readonly Decimal[]): string | null {
  return values.length < 2 ? null : significant(repeatSd(values), SPREAD_DIGITS);
}

function ratio(part: Decimal, of: Decimal | null, places: number): string | null {
  if (of === null || of.isZero()) return null;
  const made = divided(part, of, places);
  return made.abs().compare(MOST_OFF) < 0 ? written(made) : null;
}

function whole(count: number): Decimal {
  return new Decimal(BigInt(count), 0);
}

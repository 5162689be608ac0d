/**
 * A class of readers: bias, repeatability and the spread from person to person, skill by skill.
 *
 * One-way analysis of variance with people as the groups: JCGM 100:2008 H.5, whose H.5.3.1 puts
 * operators in the place of days (read). Pooled repeatability: e-Handbook of Statistical Methods
 * 2.4.4.4 (read). The last drill of each member counts. Errors are in divisions of what was read.
 */

import { analysisOf, componentsOf, meanUWithGroups, meanUWithoutGroups } from "./groups.ts";
import {
  asDouble,
  Decimal,
  divided,
  parseDecimal,
  product,
  significant,
  total,
  written,
} from "./numbers.ts";
import { mean, repeatSd } from "./readings.ts";
import { TEXT_ORDER } from "./record.ts";
import { pooledSd } from "./repeats.ts";
import {
  type Drill,
  SHOWN_PLACES,
  type SkillState,
  SORTS,
  SPREAD_DIGITS,
  type Weighed,
} from "./skills.ts";

export const DIFFER_BELOW = 0.05; // JCGM 100 H.5.2.3 puts F to its 5 % point: with less, people differ
export const P_DIGITS = 2;
// Errors are counted in the last place they are kept to: then all that are alike sum exactly.
const FINEST = new Decimal(10_000n, 0);

/** One member's last drill, as the trainer sees it. */
export interface InClass {
  readonly member: string;
  readonly on: string;
  readonly drills_count: number;
  readonly bias: string | null;
  readonly spread: string | null;
  readonly within_half_percent: string | null;
  readonly weighing: Weighed | null;
}

/** One member in one skill: mean error and its spread, null for a single reading. */
export interface OneReader {
  readonly member: string;
  readonly count: number;
  readonly bias: string | null;
  readonly spread: string | null;
}

/**
 * What several people's readings add up to, in divisions; null where too few tell.
 *
 * `bias_u` is the standard uncertainty of the bias, `repeatability` the spread of one person
 * reading again, `person_to_person` what is added by another person reading (zero where it came
 * out negative: `is_set_to_zero`), `intermediate` both together: intermediate precision, VIM 2.23.
 * `p` is that of the F test, `differ` whether people differ by it.
 */
interface Told {
  readonly bias: string | null;
  readonly bias_u: string | null;
  readonly repeatability: string | null;
  readonly person_to_person: string | null;
  readonly is_set_to_zero: boolean | null;
  readonly intermediate: string | null;
  readonly p: string | null;
  readonly differ: boolean | null;
}

/** What a class says of one skill: all readings, each member, and both together. */
export interface ClassSkill extends Told {
  readonly sort: string;
  readonly count: number;
  readonly readers: readonly OneReader[];
}

/**
 * Repeatability of a class on one instrument. What each weighed nobody knows, so neither bias nor
 * person to person can be told.
 */
export interface ClassWeighing {
  readonly instrument: string | null;
  readonly unit: string;
  readonly division: string | null;
  readonly people: number;
  readonly count: number;
  readonly repeatability: string;
}

/** Members in order, skills in the order of SORTS, weighings by instrument. */
export interface Class {
  readonly members: readonly InClass[];
  readonly skills: readonly ClassSkill[];
  readonly weighings: readonly ClassWeighing[];
}

const NOTHING_TOLD: Told = {
  bias: null,
  bias_u: null,
  repeatability: null,
  person_to_person: null,
  is_set_to_zero: null,
  intermediate: null,
  p: null,
  differ: null,
};

/** A member with all drills, of which the last one counts. */
interface Last {
  readonly member: string;
  readonly drills: readonly Drill[];
  readonly drill: Drill;
}

/** The last drill of each member who did one, and what they say together, skill by skill. */
export function classFigures(states: Iterable<Pick<SkillState, "member" | "drills">>): Class {
  const sorted = [...states].sort((a, b) => TEXT_ORDER(a.member, b.member));
  const known = sorted.flatMap(({ member, drills }): Last[] => {
    const drill = drills.at(-1);
    return drill === undefined ? [] : [{ member, drills, drill }];
  });
  return {
    members: known.map(inClass),
    skills: SORTS.map((sort) => skillOf(sort, known)).filter((each) => each !== null),
    weighings: weighingsOf(known),
  };
}

function inClass({ member, drills, drill }: Last): InClass {
  return {
    member,
    on: drill.on,
    drills_count: drills.length,
    bias: drill.whole.bias,
    spread: drill.whole.spread,
    within_half_percent: drill.whole.within_half_percent,
    weighing: weighingOf(drills),
  };
}

function weighingOf(drills: readonly Drill[]): Weighed | null {
  const known = drills.map((drill) => drill.weighing).filter((each) => each !== null);
  return known.at(-1) ?? null;
}

function errorsOf({ drill }: Last, sort: string): Decimal[] {
  const texts = drill.scores.filter((each) => each.sort === sort).map((each) => each.error);
  return texts.filter((text) => text !== null).map(parseDecimal);
}

function skillOf(sort: string, people: readonly Last[]): ClassSkill | null {
  const known = people.filter((each) => errorsOf(each, sort).length > 0);
  if (known.length === 0) return null;
  const groups = known.map((each) => errorsOf(each, sort));
  const errors = groups.flat();
  const told = groups.length < 2 ? alone(errors) : together(groups, errors);
  return {
    sort,
    count: errors.length,
    readers: known.map((each) => readerIn(each, sort)),
    ...told,
  };
}

function readerIn({ member, drill }: Last, sort: string): OneReader {
  const figures = drill.sorts[sort];
  if (figures === undefined) throw new Error(`readings of ${sort} without figures`);
  return { member, count: figures.count, bias: figures.bias, spread: figures.spread };
}

/** One person has nobody to differ from. */
function alone(errors: readonly Decimal[]): Told {
  const spread = errors.length > 1 ? repeatSd(errors) : null;
  return {
    ...NOTHING_TOLD,
    bias: written(mean(errors, SHOWN_PLACES)),
    bias_u: spread === null ? null : shown(spread / Math.sqrt(errors.length)),
    repeatability: spread === null ? null : shown(spread),
  };
}

/**
 * Where people differ each counts as one observation, else all readings as one sample (H.5.2.4).
 * Where nothing varies within a person, any step between two is a difference.
 */
function together(groups: readonly (readonly Decimal[])[], errors: readonly Decimal[]): Told {
  if (errors.length === groups.length) {
    // Nobody read twice: people and repeats cannot be told apart.
    return { ...NOTHING_TOLD, bias: written(mean(errors, SHOWN_PLACES)) };
  }
  const analysis = analysisOf(groups.map((group) => group.map((error) => product(error, FINEST))));
  const found = componentsOf(analysis);
  const { p } = analysis;
  const differ = p === null ? analysis.squares_between > 0 : p < DIFFER_BELOW;
  const doubt = differ ? meanUWithGroups(analysis) : meanUWithoutGroups(analysis);
  return {
    bias: written(differ ? meanOfMeans(groups) : mean(errors, SHOWN_PLACES)),
    bias_u: divisions(doubt.u),
    repeatability: divisions(found.within_sd),
    person_to_person: divisions(found.between_sd),
    is_set_to_zero: found.is_set_to_zero,
    intermediate: divisions(found.intermediate_sd),
    p: p === null ? null : significant(p, P_DIGITS),
    differ,
  };
}

/** Each group counts once; over one denominator, so that nothing is rounded before. */
function meanOfMeans(groups: readonly (readonly Decimal[])[]): Decimal {
  const allCounts = groups.reduce((made, group) => made * BigInt(group.length), 1n);
  const sums = groups.map((group) =>
    product(total(group), new Decimal(allCounts / BigInt(group.length), 0)),
  );
  const under = new Decimal(allCounts * BigInt(groups.length), 0);
  return divided(total(sums), under, SHOWN_PLACES);
}

function divisions(finest: number): string {
  return shown(finest / asDouble(FINEST));
}

function shown(spread: number): string {
  return significant(spread, SPREAD_DIGITS);
}

function weighingsOf(people: readonly Last[]): ClassWeighing[] {
  const found = new Map<string, Weighed[]>();
  for (const { drills } of people) {
    const weighing = weighingOf(drills);
    if (weighing === null || weighing.s === null) continue;
    const { instrument, unit, division } = weighing;
    const key = JSON.stringify([instrument ?? "", unit, division ?? ""]);
    found.set(key, [...(found.get(key) ?? []), weighing]);
  }
  const keys = [...found.keys()].sort(TEXT_ORDER);
  return keys.flatMap((key) => pooled(found.get(key) ?? []));
}

/** The spreads of one instrument as one: its name is the same in all. */
function pooled(alike: readonly Weighed[]): ClassWeighing[] {
  const [first] = alike;
  if (first === undefined) return [];
  const spreads = alike.map(({ s, count }) => {
    const sd = asDouble(parseDecimal(s ?? "0"));
    return { sum_of_squares: (count - 1) * (sd * sd), degrees: count - 1 };
  });
  return [
    {
      instrument: first.instrument,
      unit: first.unit,
      division: first.division,
      people: alike.length,
      count: alike.reduce((sum, each) => sum + each.count, 0),
      repeatability: significant(pooledSd(spreads).sd, SPREAD_DIGITS),
    },
  ];
}

/**
 * How well people read: each against known answers, and several on the same things.
 *
 * A study is readings of every person on every item, several trials each. Method: AIAG
 * Measurement Systems Analysis, 4th edition, chapter III (read-secondary: as worked in open test
 * suites). What it calls reproducibility is between people of one kitchen here, which is
 * intermediate precision (JCGM 200:2012 2.22, read).
 */

import { added } from "./elementary.ts";
import { asDouble, type Decimal, difference } from "./numbers.ts";
import { fBeyond, tBeyond } from "./quantiles.ts";
import { type Interval, meanInterval, repeatsOf } from "./repeats.ts";
import { GAUGE_ROWS, type GaugeRow } from "./tables/gauge.ts";

/**
 * An interaction is pooled with the error when its p is above this: a looser level than for other
 * tests, because pooling a real interaction hides it (Bancroft 1964, memory).
 */
export const POOLING_P = 0.25;
/** AIAG MSA: distinct categories = 1.41 PV / GRR, cut; read-secondary. */
export const CATEGORIES_FACTOR = 1.41;

/** Person, item, trial. */
export type Study = readonly (readonly (readonly Decimal[])[])[];

const ROWS: ReadonlyMap<number, GaugeRow> = new Map(GAUGE_ROWS.map((row) => [row.n, row]));

/** One reading and the answer that was known to whoever made the drill. */
export interface Known {
  readonly reading: Decimal;
  readonly answer: Decimal;
}

/**
 * Mean of reading - answer with its t interval. `sd` is the reader's spread about it. All but
 * `bias` and `count` are null for a single reading; t and p also when nothing varies.
 */
export interface Bias {
  readonly count: number;
  readonly bias: number;
  readonly sd: number | null;
  readonly u: number | null;
  readonly interval: Interval | null;
  readonly t: number | null;
  readonly p: number | null;
  readonly is_significant: boolean | null;
}

/**
 * What a study finds, as standard deviations in the unit of the readings.
 *
 * `within_person_sd` is EV, `between_people_sd` AV, `measuring_sd` GRR, `items_sd` PV and
 * `total_sd` TV of AIAG. `percent_of_total_sd` is 100 GRR / TV, `percent_of_variance` its square
 * as percent: not the same figure. `set_to_zero` names what came out negative.
 */
export interface Gauge {
  readonly within_person_sd: number;
  readonly between_people_sd: number;
  readonly interaction_sd: number;
  readonly measuring_sd: number;
  readonly items_sd: number;
  readonly total_sd: number;
  readonly percent_of_total_sd: number | null;
  readonly percent_of_variance: number | null;
  readonly distinct_categories: number | null;
  readonly set_to_zero: readonly string[];
}

/**
 * Sums of squares and degrees of people x items x trials. F and p of the interaction are null
 * when nothing varies between trials.
 */
export interface TwoWay {
  readonly people: number;
  readonly items: number;
  readonly trials: number;
  readonly squares_people: number;
  readonly squares_items: number;
  readonly squares_interaction: number;
  readonly squares_error: number;
  readonly interaction_f: number | null;
  readonly interaction_p: number | null;
}

type Distances = readonly (readonly (readonly number[])[])[];

/**
 * A reader's bias against known answers, by Student's t at this level, two-sided.
 * Throws for none.
 */
export function biasOf(readings: readonly Known[], level: number): Bias {
  const repeats = repeatsOf(readings.map((each) => difference(each.reading, each.answer)));
  const u = repeats.standard_error;
  const found = {
    count: repeats.count,
    bias: repeats.mean,
    sd: repeats.sd,
    u,
    interval: meanInterval(repeats, level),
  };
  if (u === null) return { ...found, t: null, p: null, is_significant: null };
  if (u === 0) return { ...found, t: null, p: null, is_significant: repeats.mean !== 0 };
  const t = repeats.mean / u;
  const p = tBeyond(t, repeats.degrees);
  return { ...found, t, p, is_significant: p < 1 - level };
}

/**
 * Average and range: EV = mean range x K1; AV^2 = (range of people x K2)^2 - EV^2 / (items x
 * trials); PV = range of items x K3.
 *
 * Throws unless all people read all items equally often, two to ten of each.
 */
export function gaugeByRanges(study: Study): Gauge {
  const { people, items, trials } = sizesOf(study);
  const [forTrials, forPeople, forItems] = [ROWS.get(trials), ROWS.get(people), ROWS.get(items)];
  if (!forTrials || !forPeople || !forItems) {
    throw new RangeError("more than ten people, items or trials");
  }
  const centred = centredFrom(study);
  const within = (added(centred.flat().map(rangeOf)) / (people * items)) * forTrials.k1;
  const apart = rangeOf(centred.map((person) => meanOf(person.flat()))) * forPeople.k2;
  const itemsMeans = columnsOf(centred).map((column) => meanOf(column.flat()));
  const itemsSd = rangeOf(itemsMeans) * forItems.k3;
  return gaugeFrom({
    within: within * within,
    between_people: apart * apart - (within * within) / (items * trials),
    interaction: 0,
    items: itemsSd * itemsSd,
  });
}

/**
 * The analysis of variance of a study, people crossed with items.
 * Throws unless all people read all items equally often, two or more of each.
 */
export function twoWay(study: Study): TwoWay {
  const sizes = sizesOf(study);
  const { people, items, trials } = sizes;
  const centred = centredFrom(study);
  const cells = centred.map((person) => person.map(meanOf));
  const peopleMeans = cells.map(meanOf);
  const itemsMeans = columnsOf(cells).map(meanOf);
  const grand = meanOf(peopleMeans);
  const squaresFrom = (centre: number) => (mean: number) => squared(mean - centre);
  const interaction =
    trials *
    added(
      cells.flatMap((person, i) =>
        person.map((cell, j) => squared(cell - at(peopleMeans, i) - at(itemsMeans, j) + grand)),
      ),
    );
  const error = added(centred.flat().flatMap((cell) => cell.map(squaresFrom(meanOf(cell)))));
  const ratio = { over: (people - 1) * (items - 1), under: people * items * (trials - 1) };
  const f = error > 0 ? interaction / ratio.over / (error / ratio.under) : null;
  return {
    ...sizes,
    squares_people: items * trials * added(peopleMeans.map(squaresFrom(grand))),
    squares_items: people * trials * added(itemsMeans.map(squaresFrom(grand))),
    squares_interaction: interaction,
    squares_error: error,
    interaction_f: f,
    interaction_p: f === null ? null : fBeyond(f, ratio),
  };
}

/**
 * Whether the interaction counts as error: its p is above 0.25. With no error at all there is
 * nothing to pool it with.
 */
export function isPooled(found: TwoWay): boolean {
  return found.interaction_p !== null && found.interaction_p > POOLING_P;
}

/**
 * Components from the analysis of variance, the interaction pooled by the rule of `isPooled`.
 * Negative components are set to zero and named.
 */
export function gaugeByVariance(found: TwoWay): Gauge {
  const degrees = (found.people - 1) * (found.items - 1);
  const errorDegrees = found.people * found.items * (found.trials - 1);
  let error = found.squares_error / errorDegrees;
  let interaction = found.squares_interaction / degrees;
  if (isPooled(found)) {
    error = (found.squares_error + found.squares_interaction) / (errorDegrees + degrees);
    interaction = error;
  }
  const people = found.squares_people / (found.people - 1);
  const items = found.squares_items / (found.items - 1);
  return gaugeFrom({
    within: error,
    between_people: (people - interaction) / (found.items * found.trials),
    interaction: (interaction - error) / found.trials,
    items: (items - interaction) / (found.people * found.trials),
  });
}

/** All of a study's figures from its four variances. */
function gaugeFrom(variances: {
  readonly within: number;
  readonly between_people: number;
  readonly interaction: number;
  readonly items: number;
}): Gauge {
  const { within, ...parts } = variances;
  const between = Math.max(parts.between_people, 0);
  const [interaction, items] = [Math.max(parts.interaction, 0), Math.max(parts.items, 0)];
  const measuring = within + between + interaction;
  const whole = measuring + items;
  const [measuringSd, itemsSd] = [Math.sqrt(measuring), Math.sqrt(items)];
  return {
    within_person_sd: Math.sqrt(within),
    between_people_sd: Math.sqrt(between),
    interaction_sd: Math.sqrt(interaction),
    measuring_sd: measuringSd,
    items_sd: itemsSd,
    total_sd: Math.sqrt(whole),
    percent_of_total_sd: whole > 0 ? (100 * measuringSd) / Math.sqrt(whole) : null,
    percent_of_variance: whole > 0 ? (100 * measuring) / whole : null,
    distinct_categories:
      measuring > 0 ? Math.floor((CATEGORIES_FACTOR * itemsSd) / measuringSd) : null,
    set_to_zero: Object.entries(parts)
      .filter(([, variance]) => variance < 0)
      .map(([name]) => name),
  };
}

function sizesOf(study: Study): { people: number; items: number; trials: number } {
  const [people, items] = [study.length, study[0]?.length ?? 0];
  const trials = study[0]?.[0]?.length ?? 0;
  const isEven = study.every(
    (person) => person.length === items && person.every((cell) => cell.length === trials),
  );
  if (!isEven || Math.min(people, items, trials) < 2) {
    throw new RangeError("everybody reads every item equally often, at least twice");
  }
  return { people, items, trials };
}

/** Distances from the first reading, exact before they become doubles. */
function centredFrom(study: Study): Distances {
  const origin = study[0]?.[0]?.[0];
  if (origin === undefined) throw new RangeError("a study without readings");
  return study.map((person) =>
    person.map((cell) => cell.map((x) => asDouble(difference(x, origin)))),
  );
}

/** The same table read by item instead of by person. */
function columnsOf<Cell>(table: readonly (readonly Cell[])[]): Cell[][] {
  const width = table[0]?.length ?? 0;
  return Array.from({ length: width }, (_, column) => table.map((row) => at(row, column)));
}

function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new Error("a table with a hole");
  return item;
}

function meanOf(values: readonly number[]): number {
  return added(values) / values.length;
}

function rangeOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function squared(x: number): number {
  return x * x;
}

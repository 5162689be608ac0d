/**
 * The questions of a drill: what is drawn for a member to read, with answers known exactly.
 *
 * Chance: xorshift32 with the shifts 13, 17, 5 (G. Marsaglia, Xorshift RNGs, Journal of
 * Statistical Software 8 (14), 2003, section 3; the constants from memory), whole numbers only, so
 * that both languages draw the same. It goes through every state but 0: another seed, another drill.
 */

import { Decimal, difference, divided, parseDecimal, plain, product, total } from "./numbers.ts";

export const DRAWN_BY = 1; // goes up when the same seed gives other questions
export const SEED_MOST = 2 ** 31 - 1;
export const QUESTIONS_EACH = 4;
export const TENTHS = 10; // what is drawn lies on a tenth of a division, never on a mark

/**
 * The fraction of the golden ratio in 32 bits. Its highest bit is set and no seed's is, so the state
 * is never 0, from which the generator would not come away.
 */
const START = 0x9e3779b9;
const FIRST_DROPPED = 16; // seeds that lie near each other begin with draws that do

/** What can be drawn. */
export type Shape = "dial" | "cylinder" | "spoon" | "cup";

/**
 * One thing to read. `low` to `high` is what the scale shows, numerals stand every `numbered`;
 * `holds` says what a spoon or cup holds when it is level, in mL.
 */
export interface Question {
  readonly sort: "dial" | "surface" | "spoon";
  readonly shape: Shape;
  readonly low: string;
  readonly high: string;
  readonly division: string;
  readonly numbered: string;
  readonly unit: string;
  readonly holds: string | null;
  readonly truth: string;
}

type Scale = Pick<Question, "low" | "high" | "division" | "numbered" | "unit">;

function scale(...[low, high, division, numbered, unit]: [string, string, string, string, string]) {
  return { low, high, division, numbered, unit };
}

// Own choice of everyday kitchen instruments; none is a copy of one that is sold.
const DIALS: readonly Scale[] = [
  scale("0", "500", "5", "50", "g"),
  scale("0", "1000", "10", "100", "g"),
  scale("0", "2", "0.02", "0.2", "kg"),
  scale("0", "5", "0.05", "0.5", "kg"),
  scale("0", "120", "2", "20", "degC"),
  scale("-30", "30", "1", "10", "degC"),
];
const CYLINDERS: readonly Scale[] = [
  scale("0", "10", "0.2", "1", "mL"),
  scale("0", "25", "0.5", "5", "mL"),
  scale("0", "50", "1", "10", "mL"),
  scale("0", "100", "1", "10", "mL"),
  scale("0", "250", "2", "20", "mL"),
  scale("0", "500", "5", "50", "mL"),
];
const MEASURES: readonly { readonly shape: Shape; readonly holds: string }[] = [
  { shape: "spoon", holds: "5" },
  { shape: "cup", holds: "250" },
  { shape: "spoon", holds: "15" },
  { shape: "cup", holds: "125" },
];
const FULLNESS = scale("0", "130", "5", "20", "%");
const LEVEL = 100;
const HEAPED = { least: 105, count: 24 }; // to 128 percent: what a mound of the drawn slope can hold
const SHORT = { least: 60, count: 36 }; // to 95 percent

/**
 * Four dials, four curved surfaces, four spoons and cups, the same for the same seed.
 *
 * `seed` is a whole number from 0 to SEED_MOST, `drawnBy` the number of the maker of questions that
 * the seed was made for. Throws for others.
 */
export function drillQuestions(seed: number, drawnBy: number): Question[] {
  if (drawnBy !== DRAWN_BY || !Number.isInteger(seed) || seed < 0 || seed > SEED_MOST) {
    throw new RangeError(`no questions for seed ${seed} drawn by ${drawnBy}`);
  }
  const below = chanceFrom(seed);
  const dials = turnedFrom(DIALS, below(DIALS.length));
  const cylinders = turnedFrom(CYLINDERS, below(CYLINDERS.length));
  const measures = turnedFrom(MEASURES, below(MEASURES.length));
  return [
    ...dials.map((each) => betweenMarks({ sort: "dial", shape: "dial" }, each, below)),
    ...cylinders.map((each) => betweenMarks({ sort: "surface", shape: "cylinder" }, each, below)),
    ...measures.map((each) => measure(each, below)),
  ];
}

type Below = (most: number) => number;

/** xorshift32: answers whole numbers from 0 to most - 1, small ones favoured by under most / 2^32. */
function chanceFrom(seed: number): Below {
  let state = (seed ^ START) >>> 0;
  const next = () => {
    state = (state ^ (state << 13)) >>> 0;
    state = (state ^ (state >>> 17)) >>> 0;
    state = (state ^ (state << 5)) >>> 0;
    return state;
  };
  for (let dropped = 0; dropped < FIRST_DROPPED; dropped += 1) next();
  return (most) => next() % most;
}

function turnedFrom<Each>(table: readonly Each[], first: number): Each[] {
  return [...table.slice(first), ...table.slice(0, first)].slice(0, QUESTIONS_EACH);
}

/** A place between two marks, not within a division of either end. */
function betweenMarks(what: Pick<Question, "sort" | "shape">, on: Scale, below: Below): Question {
  const [low, division] = [parseDecimal(on.low), parseDecimal(on.division)];
  const divisions = Number(divided(difference(parseDecimal(on.high), low), division, 0).units);
  const mark = 1 + below(divisions - 2);
  const tenths = mark * TENTHS + 1 + below(TENTHS - 1);
  const off = product(division, new Decimal(BigInt(tenths), 1));
  return { ...what, ...on, holds: null, truth: plain(total([low, off])) };
}

/** A spoon or cup: level once in four, heaped once, short twice, as chance has it. */
function measure(of: { shape: Shape; holds: string }, below: Below): Question {
  const way = below(4);
  const { least, count } = way === 1 ? HEAPED : SHORT;
  const part = least + below(count);
  return { sort: "spoon", ...of, ...FULLNESS, truth: String(way === 0 ? LEVEL : part) };
}

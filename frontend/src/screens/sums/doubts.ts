/** How far a sum may be off: the doubt of each number it rests on, carried through the sum. */
import { asDouble, parseDecimal, plain, significant } from "../../calc/numbers.ts";
import { combinedU, coverageFactor, doubtOf, guardBand } from "../../calc/readings.ts";
import { converted, dimensionOf, isUnit } from "../../calc/units.ts";
import { amountWords } from "../../text/numbers.ts";
import { DOUBT } from "../../text/sums.ts";
import { numberIn } from "./figures.ts";
import {
  type Answer,
  type Asked,
  type NumberAsked,
  type Row,
  type SumAbout,
  type SumPlan,
  type Typed,
  unitOf,
} from "./plan.ts";

/** What the masses were read on; all in the unit of the scale. */
export interface ScaleUsed {
  readonly unit: string;
  readonly division: string;
  readonly repeatability: string | null;
}

/** A number that was measured, with what it is called on the screen. */
export interface Measured {
  readonly asked: NumberAsked;
  readonly label: string;
}

/** A number and its standard uncertainty, in its own unit; null where nobody said anything. */
interface InDoubt extends Measured {
  readonly u: number | null;
}

const STEP_PLACES = 12; // of a number moved by its doubt: far below what a scale shows
const U_DIGITS = 2;

/** Where the limits of a number are typed. */
export function doubtKey(key: string): string {
  return `off ${key}`;
}

/** The measured numbers that are typed; what somebody wants is not in doubt. */
export function measuredIn(asked: readonly Asked[], typed: Typed): Measured[] {
  const all = asked.flatMap((each) =>
    each.is === "group"
      ? each.asked.map((one) => ({ one, label: (of: string) => DOUBT.of(each.label, of) }))
      : [{ one: each, label: (of: string) => of }],
  );
  return all.flatMap(({ one, label }) =>
    one.is === "number" && one.is_wanted !== true && numberIn(typed, one.key) !== null
      ? [{ asked: one, label: label(one.label) }]
      : [],
  );
}

/** The answer with how far each worked-out number may be off; as it is where nobody said a doubt. */
export function withDoubts(
  plan: SumPlan,
  typed: Typed,
  about: SumAbout,
  scale: ScaleUsed | null,
): Answer {
  const answer = plan.answer(typed, about);
  if (answer.is !== "found") return answer;
  const weighed = plan.weighed?.(about) ?? [];
  const numbers = measuredIn(plan.asked(typed, about), typed).map((each): InDoubt => {
    const known = weighed.find(
      ({ key, amount }) => key === each.asked.key && typed[key] === amount,
    );
    return {
      ...each,
      u: typedU(typed, each.asked) ?? known?.u ?? scaleU(typed, each.asked, scale),
    };
  });
  const moved = numbers.flatMap(({ asked, label, u }) =>
    u === null ? [] : [{ label, u, ...bothWays(plan, typed, about, { key: asked.key, u }) }],
  );
  const isWhole = numbers.every(({ u }) => u !== null);
  const told = (row: Row) => (row.exact === undefined ? row : rowInDoubt(row, moved, isWhole));
  return {
    ...answer,
    main: answer.main === null ? null : told(answer.main),
    rows: answer.rows.map(told),
  };
}

/** Limits either way, anything between as likely: a / sqrt(3) (JCGM 100 4.3.7). */
function typedU(typed: Typed, { key }: NumberAsked): number | null {
  const limits = numberIn(typed, doubtKey(key));
  return limits === null ? null : asDouble(limits) / Math.sqrt(3);
}

/** Of a mass what the scale tells: one reading with all it stands in, else a net one of two. */
function scaleU(typed: Typed, asked: NumberAsked, scale: ScaleUsed | null): number | null {
  const unit = unitOf(typed, asked);
  if (scale === null || !isUnit(unit) || dimensionOf(unit) !== "mass") return null;
  const inUnit = (text: string) => converted(parseDecimal(text), scale.unit, unit, STEP_PLACES);
  const { u } = doubtOf({
    division: inUnit(scale.division),
    readings: asked.is_gross === true ? 1 : 2,
    repeatability: scale.repeatability === null ? null : inUnit(scale.repeatability),
  });
  return u;
}

interface Moved {
  readonly label: string;
  readonly above: Answer | null;
  readonly below: Answer | null;
}

/** The sum with one number a standard uncertainty larger and smaller (JCGM 100 5.1.3, note 2). */
function bothWays(plan: SumPlan, typed: Typed, about: SumAbout, by: { key: string; u: number }) {
  const at = (u: number) => {
    const value = numberIn(typed, by.key) ?? parseDecimal("0");
    const moved = value.plus(parseDecimal(u.toFixed(STEP_PLACES)));
    // No number of a sum lies below nought: there its doubt goes one way only.
    return moved.isNegative() ? null : plan.answer({ ...typed, [by.key]: plain(moved) }, about);
  };
  return { above: at(by.u), below: at(-by.u) };
}

function rowInDoubt(row: Row, moved: readonly Moved[], isWhole: boolean): Row {
  const parts = moved.map((each) => ({ label: each.label, u: shift(row, each) }));
  if (parts.length === 0) return { ...row, uncertainty: DOUBT.not_known };
  if (parts.some(({ u }) => u === null)) return { ...row, uncertainty: DOUBT.cannot_tell };
  const counted = parts.flatMap(({ label, u }) => (u === null || u === 0 ? [] : [{ label, u }]));
  const doubt = { u: combinedU(counted.map(({ u }) => u)), degrees: null };
  const words = (u: number) => amountWords(significant(u, U_DIGITS), row.unit);
  const band = words(guardBand(doubt));
  return {
    ...row,
    uncertainty: isWhole ? band : DOUBT.at_least(band),
    coverage: DOUBT.coverage(String(coverageFactor(null))),
    doubts: counted.map(({ label, u }) => ({ name: DOUBT.from(label), value: words(u) })),
  };
}

/** Half of what lies between the two; from the number itself where one way cannot be done. */
function shift(row: Row, { above, below }: Moved): number | null {
  const here = row.exact ?? 0;
  const [up, down] = [exactIn(above, row.name), exactIn(below, row.name)];
  if (up !== null && down !== null) return Math.abs(up - down) / 2;
  if (up === null && down === null) return null;
  return Math.abs((up ?? down ?? here) - here);
}

function exactIn(answer: Answer | null, name: string): number | null {
  if (answer?.is !== "found") return null;
  const all = answer.main === null ? answer.rows : [answer.main, ...answer.rows];
  return all.find((row) => row.name === name)?.exact ?? null;
}

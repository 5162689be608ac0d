/** The questions of a drill as the screen asks them, and the entry they become. */
import { DRAWN_BY, drillQuestions, type Question, SEED_MOST } from "../../calc/drills.ts";
import { divided, HUNDRED, parseDecimal, plain, written } from "../../calc/numbers.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Json } from "../../state/types.ts";
import { amountWords } from "../../text/numbers.ts";
import { DRAWN, DRILL } from "../../text/skills.ts";
import type { InstrumentShown } from "../common/batches.ts";
import type { Typed } from "../common/drafted.ts";

export const QUESTIONS_COUNT = 12;
export const WEIGHINGS_COUNT = 5;
/** Steps of a drill: questions, weighings, the checklist. */
export const STEPS_COUNT = QUESTIONS_COUNT + WEIGHINGS_COUNT + 1;
export const LEFT_OUT = "none";

/** A drill half done. `reads` holds what was typed at each step, questions first. */
export interface DrillTyped extends Typed {
  seed: number | null;
  at: number;
  reads: string[];
  instrument: string;
  techniques: string[];
  is_in_words: boolean;
  used_words: boolean;
}

export const BLANK_DRILL: DrillTyped = {
  seed: null,
  at: 0,
  reads: [],
  instrument: "",
  techniques: [],
  is_in_words: false,
  used_words: false,
};

/** A seed from four bytes of chance. */
export function seedOf(bytes: Uint8Array): number {
  return new DataView(bytes.buffer).getUint32(0) % (SEED_MOST + 1);
}

/** What a drill with this seed asks. */
export function questionsOf(seed: number): Question[] {
  return drillQuestions(seed, DRAWN_BY);
}

/** Which of the five weighings a step is, from 1 on; 0 for other steps. */
export function weighingTurn(at: number): number {
  const turn = at - QUESTIONS_COUNT + 1;
  return turn >= 1 && turn <= WEIGHINGS_COUNT ? turn : 0;
}

/** The reads with one more, at its step. */
export function withRead(reads: readonly string[], at: number, read: string): string[] {
  const made = Array.from({ length: Math.max(reads.length, at + 1) }, (_, n) => reads[n] ?? "");
  made[at] = read;
  return made;
}

/** A scale taken up: readings of another one are no repeats of its own, so it is weighed anew. */
export function takenUp({ reads }: DrillTyped, scale: string, before: Json): Partial<DrillTyped> {
  if (scale === before) return { instrument: scale };
  return { instrument: scale, at: QUESTIONS_COUNT, reads: reads.slice(0, QUESTIONS_COUNT) };
}

/** A slip of a digit would spoil a person's figures: nobody reads beyond what there is to read. */
export function offTheScale(
  question: Pick<Question, "low" | "high" | "unit"> | null,
  scale: Pick<InstrumentShown, "capacity" | "unit"> | null,
  number: string,
): string | null {
  const weighed = scale?.capacity ? { low: "0", high: scale.capacity, unit: scale.unit } : null;
  const range = question ?? weighed;
  if (range === null) return null;
  const { low, high, unit } = range;
  const isOn = Number(number) >= Number(low) && Number(number) <= Number(high);
  return isOn ? null : DRILL.ends_at(amountWords(low, unit), amountWords(high, unit));
}

/** What a drawing says to one who hears it: the scale and what is to be read. */
export function drawnWords(question: Question): string {
  const { low, high, division, numbered, unit, shape, holds } = question;
  const [from, to, mark, numeral] = [low, high, division, numbered].map((each) =>
    amountWords(each, unit),
  ) as [string, string, string, string]; // four in, four out
  if (shape === "dial") return DRAWN.dial(from, to, mark, numeral);
  if (shape === "cylinder") return DRAWN.cylinder(mark, numeral);
  return DRAWN.measure(shape, amountWords(holds, "mL"));
}

/** The same in words for one who cannot see it: marks to count, not the figure itself. */
export function placeInWords(question: Question): string {
  const truth = parseDecimal(question.truth);
  if (question.sort === "spoon") {
    const off = truth.minus(HUNDRED);
    if (off.isZero()) return DRAWN.at_rim;
    const parts = plain(off.abs());
    return off.isNegative() ? DRAWN.below_rim(parts) : DRAWN.above_rim(parts);
  }
  const [low, division, numbered] = [question.low, question.division, question.numbered].map(
    parseDecimal,
  ) as [typeof truth, typeof truth, typeof truth]; // three in, three out
  const tenths = Number(divided(truth.minus(low).times(parseDecimal("10")), division, 0).units);
  const each = Number(divided(numbered, division, 0).units) * 10;
  const past = Math.floor(tenths / each);
  const numeral = low.plus(numbered.times(parseDecimal(String(past))));
  const over = tenths - past * each;
  const words = amountWords(plain(numeral), question.unit);
  return DRAWN.marks_past(words, Math.floor(over / 10), over % 10);
}

/** The body of a `drill_done`; what was not typed is left out. */
export function drillBody(typed: DrillTyped, member: string, scale: InstrumentShown | null) {
  const seed = typed.seed ?? 0;
  const questions = questionsOf(seed).flatMap(({ sort, truth, division }, at) => {
    const read = typedNumber(typed.reads[at] ?? "");
    return read === null ? [] : [{ sort, truth, division, read }];
  });
  const shown = typed.reads
    .slice(QUESTIONS_COUNT)
    .map(typedNumber)
    .filter((each) => each !== null);
  const division = scale?.division ? { division: written(parseDecimal(scale.division)) } : {};
  return {
    member,
    seed,
    drawn_by: DRAWN_BY,
    questions,
    ...(scale !== null && shown.length > 0
      ? { weighing: { instrument: scale.id, unit: scale.unit, ...division, shown } }
      : {}),
    techniques: typed.techniques,
    ...(typed.used_words ? { note: DRILL.read_in_words } : {}),
  };
}

/** A correction in words and as a formula. */
import type { CorrectionLine } from "../../calc/instrument_checks.ts";
import { parseDecimal, plain, significant } from "../../calc/numbers.ts";
import { evenStep } from "../../parts/drawing.ts";
import { INSTRUMENTS } from "../../text/instruments.ts";
import { amountWords, figure, signedWords } from "../../text/numbers.ts";

const DIGITS = 3;
const DISPLAY_DIGITS = 9; // more than a kitchen's display has
const PARTS_OF_RANGE = 2; // the slope is told for about half of what was checked

/** "Take off 2.1 g at 502 g, and 0.4 g more for each 100 g more". */
export function lineWords(line: CorrectionLine): string {
  const { unit } = line;
  const isLess = Number(line.height) < 0;
  const by = amountWords(unsigned(short(line.height)), unit);
  if (line.terms === 1) return INSTRUMENTS.offset(by, isLess);
  const range = Number(line.high) - Number(line.low);
  const step = range > 0 ? evenStep(range, PARTS_OF_RANGE) : 1;
  const slope = short(String(Number(line.slope) * step));
  return INSTRUMENTS.line(
    { by, isLess, at: amountWords(short(line.centre), unit) },
    {
      slope: amountWords(unsigned(slope), unit),
      grows: isLess === Number(slope) < 0,
      step: amountWords(String(step), unit),
    },
  );
}

function unsigned(text: string): string {
  return text.replace(/^-/, "");
}

/** The same as one writes it down. */
export function formulaWords(line: CorrectionLine): string {
  return INSTRUMENTS.formula(
    figure(short(line.height)),
    signedWords(short(line.slope)).replace(/^(\d)/, "+$1").replace(/^(.)/, "$1 "),
    amountWords(short(line.centre), line.unit),
  );
}

/** What was checked, from the least to the most that was shown. */
export function rangeWords(line: CorrectionLine): string {
  return INSTRUMENTS.range(
    amountWords(asShown(line.low), line.unit),
    amountWords(asShown(line.high), line.unit),
  );
}

/** What repeats of one load told. */
export function spreadWords(repeatability: string, unit: string | null): string {
  return Number(repeatability) === 0
    ? INSTRUMENTS.no_spread
    : INSTRUMENTS.spread(amountWords(repeatability, unit));
}

/** Whether it is put to readings, and why not. */
export function appliedWords(line: CorrectionLine): string | null {
  if (line.is_significant === true) return null;
  return line.is_significant === null ? INSTRUMENTS.not_known : INSTRUMENTS.not_applied;
}

/** A reading: none of its digits is left out, or the range would reach where nothing was read. */
function asShown(double: string): string {
  return plain(parseDecimal(significant(Number(double), DISPLAY_DIGITS)));
}

function short(double: string): string {
  return significant(Number(double), DIGITS);
}

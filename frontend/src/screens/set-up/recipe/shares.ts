/** The amounts of all lines together: what is written as a share follows from the others. */
import {
  type FormulaLine,
  type FormulaTrouble,
  formulaAmounts,
  formulaTrouble,
} from "../../../calc/formulas.ts";
import { type Decimal, HUNDRED, ONE, parseDecimal, plain } from "../../../calc/numbers.ts";
import { dimensionOf, inBase, isUnit } from "../../../calc/units.ts";
import { typedNumber } from "../../../parts/typing.ts";
import type { DensityTable } from "../../common/density.ts";
import { type LineAmount, type LineMaterial, lineAmount } from "./amounts.ts";
import type { LineTyped } from "./items.ts";
import type { RecipeTyped } from "./typed.ts";

const PLACES = 3; // of g: finer than any kitchen scale

/** The amount of a line, also of one written as a share; or what is in the way. */
export type AmountOfLine = LineAmount | { is: "open"; what: "percent" | "others" | FormulaTrouble };

/** What a material says of itself, null for one this phone does not know. */
export type MaterialBy = (id: string) => LineMaterial | null;

type InFormula = { line: LineTyped; share: FormulaLine };

/** By line. `table` is null while the densities are not read. */
export function amountsOf(
  typed: Pick<RecipeTyped, "lines" | "makes" | "makes_unit">,
  materialBy: MaterialBy,
  table: DensityTable | null,
): ReadonlyMap<string, AmountOfLine> {
  const written = new Map(
    typed.lines.map((line): [string, AmountOfLine] => [
      line.line,
      writtenAmount(line, materialBy(line.material), table),
    ]),
  );
  const shares = typed.lines.filter(isShare);
  if (shares.length === 0) return written;
  const formula = inFormula(typed.lines, written);
  for (const [line, amount] of sharedAmounts(typed, formula, written)) written.set(line, amount);
  return written;
}

export function isShare(line: LineTyped): boolean {
  return line.percent_of !== "";
}

/** A share waits for the others; anything else is as written. */
function writtenAmount(
  line: LineTyped,
  material: LineMaterial | null,
  table: DensityTable | null,
): AmountOfLine {
  if (!isShare(line)) return lineAmount(line, material, table);
  if (material === null) return { is: "open", what: "material" };
  if (material.measured_by !== "mass") return { is: "open", what: "measure" };
  return { is: "open", what: typedNumber(line.percent) === null ? "percent" : "others" };
}

/** What is weighed, in g; what is counted or measured by volume is no part of the formula. */
function inFormula(
  lines: readonly LineTyped[],
  written: ReadonlyMap<string, AmountOfLine>,
): InFormula[] {
  return lines.flatMap((line): InFormula[] => {
    const rest = { is_base: line.is_base !== "", yield_percent: countedYield(line) };
    if (isShare(line)) {
      const percent = parseDecimal(typedNumber(line.percent) ?? "0");
      const percentOf = line.percent_of === "base" ? "base" : "whole";
      return [{ line, share: { percent, percent_of: percentOf, ...rest } }];
    }
    const found = written.get(line.line);
    if (found?.is !== "ready" || !isMass(found.unit)) return [];
    const amount = inBase(parseDecimal(found.amount), found.unit);
    return [{ line, share: { amount, ...rest } }];
  });
}

function sharedAmounts(
  typed: Pick<RecipeTyped, "makes" | "makes_unit">,
  formula: readonly InFormula[],
  written: ReadonlyMap<string, AmountOfLine>,
): [string, AmountOfLine][] {
  const waiting = formula.filter(({ line }) => isWaiting(written.get(line.line)));
  // One that is not complete yet would change all the others.
  const isOpen = [...written.values()].some((each) => each.is !== "ready" && !isWaiting(each));
  if (isOpen) return [];
  const shares = formula.map(({ share }) => share);
  const whole = wholeOf(typed);
  const trouble = formulaTrouble(shares, whole);
  if (trouble !== null) {
    return waiting.map(({ line }) => [line.line, { is: "open", what: trouble }]);
  }
  const factor = { wanted: ONE, base: ONE };
  const amounts = formulaAmounts(shares, { whole, factor, places: PLACES });
  return formula.flatMap(({ line }, at): [string, AmountOfLine][] => {
    const amount = amounts[at];
    if (!isShare(line) || amount === undefined) return [];
    return [[line.line, { is: "ready", amount: plain(amount), unit: "g", by: null }]];
  });
}

function isWaiting(found: AmountOfLine | undefined): boolean {
  return found?.is === "open" && found.what === "others";
}

/** What the sums count of a line: of one as bought what its yield leaves. */
function countedYield(line: LineTyped): Decimal {
  const percent = line.state === "as_bought" ? typedNumber(line.yield_percent) : null;
  const yields = percent === null ? HUNDRED : parseDecimal(percent);
  return yields.isZero() ? HUNDRED : yields;
}

/** All that is prepared, in g; asked only where nothing else says how large the formula is. */
function wholeOf(typed: Pick<RecipeTyped, "makes" | "makes_unit">): Decimal | null {
  const makes = typedNumber(typed.makes);
  if (makes === null || !isMass(typed.makes_unit)) return null;
  return inBase(parseDecimal(makes), typed.makes_unit);
}

function isMass(unit: string): boolean {
  return isUnit(unit) && dimensionOf(unit) === "mass";
}

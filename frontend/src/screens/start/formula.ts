/** The lines of a published version as a formula, so that shares scale as they were written. */
import { decimalIn, inBaseUnit, itemsIn, objectIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { type FormulaLine, formulaAmounts, formulaTrouble } from "../../calc/formulas.ts";
import { type Decimal, HUNDRED, parseDecimal, ZERO } from "../../calc/numbers.ts";
import type { Factor } from "../../calc/recipes.ts";
import { fromBase } from "../../calc/units.ts";
import type { Body } from "../../state/types.ts";

const MOST_PLACES = 9; // of g, before the line is rounded in its own unit

/**
 * The amounts of lines written as shares, each in the unit of its line; none where there is no
 * share, or where the shares no longer say how much: then the published amounts are scaled.
 */
export function sharedAmounts(body: Body, factor: Factor): ReadonlyMap<string, Decimal> {
  const lines = itemsIn(body, "lines").flatMap(inFormula);
  if (!lines.some(({ share }) => share.percent)) return new Map();
  const makes = quantityIn(body, "makes");
  const made = makes === null ? null : inBaseUnit(parseDecimal(makes.amount), makes.unit);
  const whole = made?.unit === "g" ? made.value : null;
  const shares = lines.map(({ share }) => share);
  if (formulaTrouble(shares, whole) !== null) return new Map();
  const amounts = formulaAmounts(shares, { whole, factor, places: MOST_PLACES });
  return new Map(
    lines.flatMap(({ line, unit, share }, at): [string, Decimal][] =>
      share.percent ? [[line, fromBase(amounts[at] ?? ZERO, unit, MOST_PLACES)]] : [],
    ),
  );
}

/** How much of a line is prepared, and how much that is as bought; null where no yield is known. */
export function bothSides(line: Body): { yield_percent: Decimal; is_bought: boolean } | null {
  const percent = decimalIn(objectIn(line, "yields") ?? {}, "percent");
  const state = textIn(line, "state");
  if (percent === null || percent.isZero() || state === null) return null;
  return { yield_percent: percent, is_bought: state === "as_bought" };
}

/** The factor by which what is at hand, as bought, counts for a line that is written prepared. */
export function usablePercent(line: Body): Decimal {
  const sides = bothSides(line);
  return sides === null || sides.is_bought ? HUNDRED : sides.yield_percent;
}

function inFormula(line: Body): { line: string; unit: string; share: FormulaLine }[] {
  const planned = quantityIn(line, "amount");
  const amount = planned === null ? null : inBaseUnit(parseDecimal(planned.amount), planned.unit);
  if (planned === null || amount?.unit !== "g") return [];
  const sides = bothSides(line);
  const percent = decimalIn(line, "percent");
  return [
    {
      line: textIn(line, "line") ?? "",
      unit: planned.unit,
      share: {
        ...(percent === null ? { amount: amount.value } : { percent }),
        percent_of: textIn(line, "percent_of") === "base" ? "base" : "whole",
        is_base: line.is_base === true,
        yield_percent: sides?.is_bought === true ? sides.yield_percent : HUNDRED,
      },
    },
  ];
}

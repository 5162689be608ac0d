/** What was planned for a line: its amount and limits, and what already lies in the bowl. */
import { type Decimal, difference, parseDecimal, total } from "../../calc/numbers.ts";
import { fromBase } from "../../calc/units.ts";
import { PLACES } from "../../calc/weighing.ts";
import type { BatchLine } from "../common/batches.ts";

/** The planned amount with its limits, in the unit of the line; decimals as text. */
export interface Plan {
  amount: Decimal;
  unit: string;
  low: Decimal | null;
  high: Decimal | null;
  already: Decimal | null;
}

/** A line's plan, or null for one that nobody planned. */
export function planOf(line: BatchLine): Plan | null {
  if (line.planned === null) return null;
  const { unit } = line.planned;
  const amount = parseDecimal(line.planned.amount);
  const inIt = line.corrected ?? line.in_base;
  const already = inIt === null ? null : parseDecimal(inIt);
  return {
    amount,
    unit,
    low: line.below === null ? null : difference(amount, parseDecimal(line.below)),
    high: line.above === null ? null : total([amount, parseDecimal(line.above)]),
    already: already === null ? null : fromBase(already, unit, PLACES),
  };
}

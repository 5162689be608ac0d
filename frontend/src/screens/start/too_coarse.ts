/** Whether a recipe scaled down asks for less than any scale at hand can tell well. */
import { type Decimal, parseDecimal, product } from "../../calc/numbers.ts";
import { dimensionOf, inBase, isUnit } from "../../calc/units.ts";

/** So many steps of a scale an amount should have at least: own proposal, a step is then 5 %. */
const STEPS_LEAST = parseDecimal("20");

/** A scale by its name and its step, in its own unit. */
export interface ScaleAtHand {
  readonly name: string;
  readonly division: string;
  readonly unit: string;
}

/** The finest scale at hand where it is still too coarse for this mass; null where it is not. */
export function tooCoarseFor(
  amount: { amount: string; unit: string },
  scales: readonly ScaleAtHand[],
): ScaleAtHand | null {
  if (!isUnit(amount.unit) || dimensionOf(amount.unit) !== "mass") return null;
  const [finest] = [...scales].sort((a, b) => stepOf(a).compare(stepOf(b)));
  const mass = inBase(parseDecimal(amount.amount), amount.unit);
  if (finest === undefined || mass.isZero()) return null;
  return mass.compare(product(stepOf(finest), STEPS_LEAST)) < 0 ? finest : null;
}

function stepOf({ division, unit }: ScaleAtHand): Decimal {
  return inBase(parseDecimal(division), unit);
}

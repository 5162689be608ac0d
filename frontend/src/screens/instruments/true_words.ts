/** How true a known mass, buffer or value is, in words. */
import { parseDecimal } from "../../calc/numbers.ts";
import { CHECK } from "../../text/checks.ts";
import { amountWords } from "../../text/numbers.ts";
import type { InstrumentShown } from "../common/batches.ts";
import { toleranceOf } from "./check_body.ts";
import type { Reference } from "./plan.ts";

const SHOWS_WATER: readonly string[] = ["refractometer", "salometer"];

/** The class and what it allows; water is no sugar and no salt by what the degrees are, not within 0 of it. */
export function trueWords(each: Reference, { sort, unit }: InstrumentShown): string {
  const tolerance = toleranceOf(each, unit);
  const words =
    tolerance === null
      ? CHECK.not_true
      : !isNone(tolerance)
        ? CHECK.true_to(amountWords(tolerance, unit))
        : SHOWS_WATER.includes(sort) && isNone(each.value)
          ? CHECK.pure_water
          : CHECK.exact;
  return [each.accuracy_class, words].filter(Boolean).join(", ");
}

function isNone(text: string): boolean {
  return parseDecimal(text).isZero();
}

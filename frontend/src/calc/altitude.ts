/**
 * What altitude changes at a canner: bands as printed, ends included; above an end the next.
 *
 * 2000 ft and 2001 ft differ by a pound: an altitude in metres is compared exactly and counts up,
 * never down. The time itself comes from the tested recipe.
 */

import type { Cited } from "./limits.ts";
import { type Decimal, ONE, parseDecimal, product } from "./numbers.ts";
import { CANNER_ROWS, type CannerRow } from "./tables/bench.ts";
import { METRES_IN_FOOT } from "./thermometer_checks.ts";

export type Canner = "dial_low_acid" | "dial_fruit" | "weighted" | "boiling_water";

/**
 * Gauge pressure or minutes to add for one band of altitude in feet; null is what the table does
 * not say. Shown with its caution.
 */
export interface CannerAdjustment {
  readonly canner: Canner;
  readonly from_ft: Decimal;
  readonly to_ft: Decimal;
  readonly gauge_lb_per_in2: Decimal | null;
  readonly added_min: Decimal | null;
  readonly cited: readonly Cited[];
  readonly caution: "altitude";
}

/** The band an altitude lies in. Throws below 0 and above the last band. */
export function cannerAdjustment(
  canner: Canner,
  altitude: Decimal,
  unit: "ft" | "m",
): CannerAdjustment {
  const inFoot = unit === "m" ? METRES_IN_FOOT : ONE;
  const row = CANNER_ROWS.find((each) => {
    const endsAt = product(parseDecimal(each.to_ft), inFoot);
    return each.canner === canner && altitude.compare(endsAt) <= 0;
  });
  if (row === undefined || altitude.isNegative()) {
    throw new RangeError("no adjustment is known for this altitude");
  }
  return adjustment(canner, row);
}

function adjustment(canner: Canner, row: CannerRow): CannerAdjustment {
  const { source, basis, note } = row;
  return {
    canner,
    from_ft: parseDecimal(row.from_ft),
    to_ft: parseDecimal(row.to_ft),
    gauge_lb_per_in2: numberIn(row.gauge_lb_per_in2),
    added_min: numberIn(row.added_min),
    cited: [{ what: canner, source, basis, note }],
    caution: "altitude",
  };
}

function numberIn(text: string): Decimal | null {
  return text === "" ? null : parseDecimal(text);
}

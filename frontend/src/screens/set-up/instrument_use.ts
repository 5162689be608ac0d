/** What an instrument is good for: how far one reading can be trusted, and which tolerance it can judge. */
import {
  asDouble,
  Decimal,
  parseDecimal,
  plain,
  product,
  significant,
} from "../../calc/numbers.ts";
import { doubtOf, guardBand, isFineEnough } from "../../calc/readings.ts";

/** Both in the unit of the instrument. */
export interface GoodFor {
  /** The guard band of a reading, as every whisker shows it; two significant digits. */
  reach: string;
  /** The smallest tolerance, up and down alike, at which it can still say "within". */
  tolerance: string | null;
}

const REACH_DIGITS = 2;
// 100 steps of the display: an instrument that spreads wider than that is broken, not coarse.
const STEPS_MAX = 100;

/**
 * Of a scale a weighing is two readings, bowl and load; of anything else one.
 * Tolerances are tried in whole steps of the display, as one would write them into a recipe.
 */
export function goodFor(given: {
  division: string;
  repeatability: string | null;
  readings: 1 | 2;
}): GoodFor | null {
  const division = parseDecimal(given.division);
  if (division.isZero() || division.isNegative()) return null;
  const repeatability = given.repeatability === null ? null : parseDecimal(given.repeatability);
  const { readings } = given;
  const band = guardBand(doubtOf({ division, readings, repeatability }));
  return {
    reach: significant(band, REACH_DIGITS),
    tolerance: leastTolerance(division, { readings, repeatability }),
  };
}

/** Three to five tolerances of a window of eight: for the drawing only, which says how they relate. */
export function toleranceDrawn(tolerance: string) {
  const times = (count: bigint) => product(parseDecimal(tolerance), new Decimal(count, 0));
  return {
    low: plain(times(3n)),
    level: plain(times(4n)),
    target: plain(times(4n)),
    high: plain(times(5n)),
    window: { from: 0, to: asDouble(times(8n)), isCut: false },
  };
}

function leastTolerance(
  division: Decimal,
  given: { readings: number; repeatability: Decimal | null },
): string | null {
  for (let steps = 1; steps <= STEPS_MAX; steps += 1) {
    const tolerance = product(division, new Decimal(BigInt(steps), 0));
    if (isFineEnough(division, { below: tolerance, above: tolerance }, given)) {
      return plain(tolerance);
    }
  }
  return null;
}

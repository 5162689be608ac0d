/** Household measures of what is weighed: a line in cups or spoons becomes the mass it means. */
import { decimalIn, itemsIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { massOfVolume } from "../../calc/density.ts";
import { type Decimal, parseDecimal, plain } from "../../calc/numbers.ts";
import { type Factor, scaled } from "../../calc/recipes.ts";
import { dimensionOf, isUnit } from "../../calc/units.ts";
import type { RecipeVersion } from "../../state/stock.ts";
import type { Body } from "../../state/types.ts";
import { amountWords } from "../../text/numbers.ts";
import { START } from "../../text/start.ts";
import { type DensityFound, type DensityTable, densityOf } from "../common/density.ts";

const PLACES = 1; // of g: a published portion is weighed to whole or half grams

/** What a measure means by weight; `low` and `high` are how far published figures lie apart. */
export interface Household {
  low: Decimal | null;
  high: Decimal | null;
}

/** The version with its household measures by weight, and what is known of each by line. */
export interface ByWeight {
  version: RecipeVersion;
  measures: ReadonlyMap<string, Household>;
  /** Lines that can only be measured by volume: nobody published how much they weigh. */
  by_volume: ReadonlySet<string>;
}

/** What a material says of itself; null where this phone does not know it. */
export type MaterialOf = (
  id: string | null,
) => { measured_by: string | null; density_of: string | null } | null;

/** Whether a line is written by volume though its material is weighed. */
export function isHousehold(line: Body, materialOf: MaterialOf): boolean {
  const unit = quantityIn(line, "amount")?.unit;
  if (unit === undefined || !isUnit(unit) || dimensionOf(unit) !== "volume") return false;
  return materialOf(textIn(line, "material"))?.measured_by === "mass";
}

/**
 * Every household measure by weight where its density is known; the rest as it is written.
 * `table` is null while it is not read.
 */
export function byWeight(
  version: RecipeVersion,
  table: DensityTable | null,
  materialOf: MaterialOf,
): ByWeight {
  const measures = new Map<string, Household>();
  const byVolume = new Set<string>();
  const lines = itemsIn(version.body, "lines").map((line) => {
    if (table === null || !isHousehold(line, materialOf)) return line;
    const name = textIn(line, "line") ?? "";
    const key = materialOf(textIn(line, "material"))?.density_of;
    const found = key ? densityOf(key, table) : null;
    if (found === null) {
      byVolume.add(name);
      return line;
    }
    const { body, measure } = weighedLine(line, found);
    measures.set(name, measure);
    return body;
  });
  const body = { ...version.body, lines };
  return { version: { ...version, body }, measures, by_volume: byVolume };
}

function weighedLine(line: Body, found: DensityFound): { body: Body; measure: Household } {
  const { amount, unit } = quantityIn(line, "amount") ?? { amount: "0", unit: "mL" };
  const mass = (volume: Decimal) => massOfVolume(volume, unit, found.row, found.spread, PLACES);
  const planned = mass(parseDecimal(amount));
  const limit = (name: string) => {
    const volume = decimalIn(line, name);
    return volume === null ? {} : { [name]: plain(mass(volume).amount) };
  };
  const note = START.written_as(amountWords(amount, unit), found.row.source);
  return {
    body: {
      ...line,
      amount: { amount: plain(planned.amount), unit: "g" },
      ...limit("below"),
      ...limit("above"),
      note: textIn(line, "note") ?? note,
    },
    measure: { low: planned.low, high: planned.high },
  };
}

/** The range of a measure at a factor, in g; null where only one figure is published. */
export function rangeAt(
  { low, high }: Household,
  factor: Factor,
): { low: string; high: string } | null {
  if (low === null || high === null) return null;
  return { low: plain(scaled(low, factor, PLACES)), high: plain(scaled(high, factor, PLACES)) };
}

/** A line's amount as it is published: household measures become mass by the material's density. */
import { type Converted, massOfVolume, volumeOfMass } from "../../../calc/density.ts";
import { parseDecimal, plain } from "../../../calc/numbers.ts";
import { dimensionOf, isUnit } from "../../../calc/units.ts";
import { typedNumber } from "../../../parts/typing.ts";
import { type DensityFound, type DensityTable, densityOf } from "../../common/density.ts";
import type { LineTyped } from "./items.ts";
import { isSome } from "./typed.ts";

const PLACES = 1; // of g or mL: a published portion is weighed to whole or half grams

/** What a line needs to know of its material. */
export interface LineMaterial {
  measured_by: string;
  density_of: string;
}

/** Ready; or what is in the way. */
export type LineAmount =
  | { is: "ready"; amount: string; unit: string; by: DensityUsed | null }
  | { is: "loading" }
  | { is: "open"; what: "material" | "amount" | "density" | "measure" };

/** The conversion and the row it rests on. */
export interface DensityUsed {
  found: DensityFound;
  converted: Converted;
}

/**
 * The amount in a unit of what the material is measured by. A volume of something weighed (or the
 * other way round) needs its density; pieces of something weighed cannot be published.
 * `table` is null while it is not read.
 */
export function lineAmount(
  line: LineTyped,
  material: LineMaterial | null,
  table: DensityTable | null,
): LineAmount {
  if (material === null) return { is: "open", what: "material" };
  const amount = typedNumber(line.amount);
  if (amount === null || !isSome(line.amount)) return { is: "open", what: "amount" };
  if (!isUnit(line.amount_unit)) return { is: "open", what: "measure" };
  const measure = dimensionOf(line.amount_unit);
  if (measure === material.measured_by) {
    return { is: "ready", amount, unit: line.amount_unit, by: null };
  }
  const isPieces = measure === "count" || material.measured_by === "count";
  if (isPieces || measure === "temperature") return { is: "open", what: "measure" };
  if (material.density_of === "") return { is: "open", what: "density" };
  if (table === null) return { is: "loading" };
  const found = densityOf(material.density_of, table);
  if (found === null) return { is: "open", what: "density" };
  return converted(amount, line.amount_unit, found);
}

function converted(amount: string, unit: string, found: DensityFound): LineAmount {
  const change = dimensionOf(unit) === "volume" ? massOfVolume : volumeOfMass;
  const answer = change(parseDecimal(amount), unit, found.row, found.spread, PLACES);
  return {
    is: "ready",
    amount: plain(answer.amount),
    unit: answer.unit,
    by: { found, converted: answer },
  };
}

/** The unit a line will be published in: that of its limits. */
export function publishedUnit(line: LineTyped, material: LineMaterial | null): string {
  if (material === null || !isUnit(line.amount_unit)) return line.amount_unit;
  if (dimensionOf(line.amount_unit) === material.measured_by) return line.amount_unit;
  return { mass: "g", volume: "mL" }[material.measured_by] ?? line.amount_unit;
}

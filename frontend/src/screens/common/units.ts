/** Which units are offered for what a material is measured by, the habit of the cooperative first. */
import { baseUnitOf } from "../../calc/units.ts";
import { cooperative, type Defined } from "../../state/stock.ts";
import { textField } from "./lots.ts";

type Measure = "mass" | "volume" | "count";

type Offer = Record<Measure, readonly string[]>;

const METRIC: Offer = { mass: ["kg", "g", "lb", "oz"], volume: ["L", "mL"], count: ["pc"] };
const OFFERED: Record<string, Offer> = {
  metric: METRIC,
  us: {
    mass: ["lb", "oz", "kg", "g"],
    volume: ["us_gal", "us_qt", "us_pt", "us_floz", "L", "mL"],
    count: ["pc"],
  },
  imperial: {
    mass: ["lb", "oz", "kg", "g"],
    volume: ["imp_gal", "imp_qt", "imp_pt", "imp_floz", "L", "mL"],
    count: ["pc"],
  },
};

/** Unit codes for a material, the first one as the proposal; pieces while it is not known. */
export function unitsFor(material: Defined | null): readonly string[] {
  const habit = textField(cooperative.value, "unit_habit") ?? "metric";
  const measured = textField(material, "measured_by");
  const measure: Measure = measured === "mass" || measured === "volume" ? measured : "count";
  return (OFFERED[habit] ?? METRIC)[measure];
}

/** The unit in which sheets keep a material: g, mL or pc. */
export function baseUnitFor(material: Defined | null): string {
  const [first = "pc"] = unitsFor(material);
  return baseUnitOf(first);
}

/** Which units are offered for what a material is measured by, the habit of the cooperative first. */
import { baseUnitOf } from "../../calc/units.ts";
import { cooperative, type Defined } from "../../state/stock.ts";

type Measure = "mass" | "volume" | "count";

const OFFERED: Record<string, Record<Measure, readonly string[]>> = {
  metric: { mass: ["kg", "g", "lb", "oz"], volume: ["L", "mL"], count: ["pc"] },
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
  const habit = cooperative.value?.fields.unit_habit;
  const offered = OFFERED[typeof habit === "string" ? habit : "metric"] ?? OFFERED.metric;
  const measured = material?.fields.measured_by;
  const measure = measured === "mass" || measured === "volume" ? measured : "count";
  return offered?.[measure] ?? ["pc"];
}

/** The unit in which sheets keep a material: g, mL or pc. */
export function baseUnitFor(material: Defined | null): string {
  const [first = "pc"] = unitsFor(material);
  return baseUnitOf(first);
}

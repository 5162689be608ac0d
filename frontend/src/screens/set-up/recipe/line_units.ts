/** Units a line may be written in: what the material is measured by first, then household measures. */

const MASS: Record<string, readonly string[]> = {
  metric: ["g", "kg", "lb", "oz"],
  us: ["lb", "oz", "g", "kg"],
  imperial: ["lb", "oz", "g", "kg"],
};
const VOLUME: Record<string, readonly string[]> = {
  metric: ["mL", "L", "metric_cup", "metric_tbsp", "metric_tsp", "us_cup", "us_tbsp", "us_tsp"],
  us: ["us_cup", "us_tbsp", "us_tsp", "us_floz", "us_pt", "us_qt", "us_gal", "mL", "L"],
  imperial: ["imp_cup", "imp_floz", "imp_pt", "imp_qt", "metric_tbsp", "metric_tsp", "mL", "L"],
};

/** The first one is the proposal. Something counted is only counted. */
export function lineUnits(measuredBy: string, habit: string): readonly string[] {
  if (measuredBy === "count") return ["pc"];
  const mass = MASS[habit] ?? MASS.metric ?? [];
  const volume = VOLUME[habit] ?? VOLUME.metric ?? [];
  return measuredBy === "volume" ? [...volume, ...mass] : [...mass, ...volume];
}

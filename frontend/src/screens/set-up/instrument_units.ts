/** Which units an instrument may show, the habit of the cooperative first. */

export const INSTRUMENT_SORTS = [
  "scale",
  "thermometer",
  "ph_meter",
  "refractometer",
  "salometer",
  "cylinder",
  "cup",
  "spoon",
  "timer",
] as const;

const UNITS: Record<string, readonly string[]> = {
  scale: ["g", "kg", "lb", "oz"],
  thermometer: ["degC", "degF"],
  ph_meter: ["pH"],
  refractometer: ["Brix"],
  salometer: ["salometer"],
  cylinder: ["mL", "L", "us_floz", "imp_floz"],
  cup: ["mL", "us_cup", "imp_cup", "metric_cup"],
  spoon: ["mL", "us_tbsp", "us_tsp", "metric_tbsp", "metric_tsp"],
  timer: ["min"],
};

const US_FIRST: Record<string, string> = {
  thermometer: "degF",
  cylinder: "us_floz",
  cup: "us_cup",
  spoon: "us_tbsp",
};

/** The first one is the proposal. */
export function instrumentUnits(sort: string, habit: string): readonly string[] {
  const units = UNITS[sort] ?? [];
  const first = habit === "us" ? US_FIRST[sort] : undefined;
  return first === undefined ? units : [first, ...units.filter((unit) => unit !== first)];
}

/** What is weighed in a bowl is read twice: the bowl, then bowl and load. */
export function isBowlWeighed(sort: string): boolean {
  return sort === "scale";
}

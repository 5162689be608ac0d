/** What a step can check and in which units; the first one is the proposal. */

export const CHECK_NAMES = [
  "temperature",
  "ph",
  "brix",
  "prepared_mass",
  "kettle_mass",
  "mass",
  "water_activity",
  "salt",
  "salometer",
  "salt_weighed",
  "sugar_weighed",
  "acidity",
  "minutes",
] as const;

/** Acids an acidity can be reckoned as. */
export const ACID_NAMES = ["citric", "tartaric", "lactic", "acetic", "malic"] as const;

const MASS = ["g", "kg", "lb", "oz"];
const UNITS: Record<string, readonly string[]> = {
  temperature: ["degC", "degF"],
  ph: ["pH"],
  brix: ["Brix"],
  prepared_mass: MASS,
  kettle_mass: MASS,
  mass: MASS,
  water_activity: ["aw"],
  salt: ["%"],
  salometer: ["%"],
  salt_weighed: ["%"],
  sugar_weighed: ["%"],
  acidity: ["%"],
  minutes: ["min"],
};

/** The words an instrument shows them in, so that a reading and its limit meet. */
export function checkUnits(check: string, habit: string): readonly string[] {
  const units = UNITS[check] ?? [];
  return check === "temperature" && habit === "us" ? [...units].reverse() : units;
}

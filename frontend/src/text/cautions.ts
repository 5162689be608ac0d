/**
 * Every caution, once, by what it is about. Shown in full beside the number it belongs to, and
 * printed where that number is printed. Each ends by deferring.
 */

/** How every caution ends. */
export const DEFERS =
  "Where this differs from your local code, the tested recipe or a licensed process authority, follow them.";

/** What is said of each, without the ending. */
const OWN = {
  ph: "Measure the pH of the food itself, mixed through and at rest, with a meter checked that day. One reading speaks for one sample. 4.6 is a legal edge, not a target.",
  acidified:
    "Wait until acid and food have come to one pH before measuring. 4.6 is the legal edge, not a target: have a process authority set a lower one. A sum of acid says nothing about pH.",
  heat: "The thermometer feels one point. Measure the slowest part of the food, and count the time only from when that part is hot enough.",
  lethality:
    "A sum from readings at one point. It shows what the probe felt and approves nothing. Only a process authority can set a process.",
  cooling:
    "Food that cools too slowly can make people ill although it looks and smells right. Where a reading is late or missing, hold the food and call your coordinator.",
  holding:
    "Food between cold and hot holding is on a clock that does not start again when it is cooled. When the time is over or not known, throw it away.",
  curing:
    "Nitrite is poisonous in excess. Weigh it on a scale fine enough for it, never by the spoon, and keep cures locked away and labelled. Do not invent a cure with this.",
  altitude:
    "Water boils cooler the higher you are, so the time for sea level is too short. Take the tested time and pressure for this product at your altitude, and round up.",
  water_activity:
    "Dry to the touch is not dry enough. Moisture worked out from weights is a mean of the whole tray; the wettest piece spoils first. Where keeping depends on it, measure the water activity.",
  brine:
    "Too little salt lets the wrong things grow; a strength worked out from weights holds only once salt has dissolved and gone through the food. Keep it under the brine, and measure the pH of what ferments.",
  sugar:
    "Sugar keeps a jam only together with its acid and its heat. Brix changes with the temperature of the sample: cool it before reading, and check the pH as the recipe asks.",
  net_content:
    "A packed weight on a label is a legal promise. Which packs are weighed and how short one may be is set by the authority where you sell: ask it for the tables in force.",
  shelf_life:
    "A date is right only for this recipe, this pack and this way of keeping. It says nothing about a pack that was opened, warmed or has swollen: throw that away.",
  label:
    "What stands here is what was recorded. Read the packs themselves for allergens; who sells the food answers for its label.",
  scaling:
    "Cooking time, heat and pan size do not scale with the amount. A larger batch heats and cools more slowly: decide by readings.",
  process_limit:
    "A limit and a reading at one point say nothing of the rest of the batch, and this record approves nothing.",
  hold: "Releasing says that somebody answers for it; it does not make anything fit to eat.",
  despite:
    "What is held, recalled or expired should stay where it is until somebody who may decide has decided.",
} as const;

/** What a caution is about. */
export type CautionAbout = keyof typeof OWN;

/** Everything a caution can be about. */
export const CAUTIONS_ABOUT = Object.keys(OWN) as CautionAbout[]; // its own keys, declared above

/** What a reading of a step touches; a mass touches nothing by itself. */
const MEASURED: Readonly<Record<string, CautionAbout>> = {
  ph: "ph",
  temperature: "heat",
  minutes: "heat",
  brix: "sugar",
  water_activity: "water_activity",
  salt: "brine",
  salometer: "brine",
  salt_weighed: "brine",
  sugar_weighed: "sugar",
  acidity: "acidified",
};

/** The caution beside a step that measures this; none where nothing is measured, or a mass. */
export function cautionsOfStep(measures: string | null): CautionAbout[] {
  const about = MEASURED[measures ?? ""];
  return about === undefined ? [] : [about];
}

/** The cautions of several steps, each once. */
export function cautionsOfSteps(
  steps: readonly { readonly measures: string | null }[],
): CautionAbout[] {
  return [...new Set(steps.flatMap((step) => cautionsOfStep(step.measures)))];
}

/** A caution in its two voices: what a recipe says itself, and what is always said of it. */
export function cautionParts(
  about: readonly CautionAbout[],
  own = "",
): { own: string; ours: string } {
  const recorded = own.replace(DEFERS, "").trim();
  const said = about.map((each) => OWN[each]);
  const isNothing = recorded === "" && said.length === 0;
  return { own: recorded, ours: isNothing ? "" : [...said, DEFERS].join(" ") };
}

/** The whole caution as one text; deferring stands once, at the end. Nothing to say is "". */
export function cautionWords(about: readonly CautionAbout[], own = ""): string {
  const { own: recorded, ours } = cautionParts(about, own);
  return `${recorded} ${ours}`.trim();
}

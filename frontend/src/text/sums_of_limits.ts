/** Words of the sums that stand beside published limits: curing, altitude, acidified food. */

const LIMIT_KINDS: Record<string, string> = {
  most_ingoing: "At most in",
  required_ingoing: "Asked for, no more and no less",
  least_ingoing: "At least in",
  most_in_product: "At most left",
  not_permitted: "Not permitted",
};

const CURE_VERDICTS: Record<string, string> = {
  within: "Within every limit that can be compared.",
  below: "Below what is asked for. See the limits.",
  no_limit_known: "No limit is known here for this. Ask your authority before you use it.",
};

const INGOING: Record<string, { name: string; by: string }> = {
  green_weight: {
    name: "Goes in, of the green weight",
    by: "cure \u00d7 share of the substance \u00d7 1 000 000 / meat",
  },
  whole_pickle: {
    name: "Goes in, by the whole pickle",
    by: "cure \u00d7 share of the substance \u00d7 share pumped \u00d7 1 000 000 / whole pickle",
  },
  meat_and_pickle: {
    name: "Goes in, of meat and pickle",
    by: "cure \u00d7 share of the substance \u00d7 1 000 000 / (meat + pickle)",
  },
};

export const CURING = {
  title: "Curing",
  what: "Nitrite and nitrate beside their limits",
  way: "What is asked?",
  how_much_cure: "how much cure",
  how_much_in: "how much is in it",
  rules: "Whose rules?",
  us: "United States",
  canada: "Canada",
  use: "What is cured, and how?",
  comminuted: "ground or sausage",
  dry_cured: "dry cured",
  pumped: "pumped",
  immersed: "in a pickle",
  bacon_dry_cured: "bacon, dry cured",
  bacon_pumped: "bacon, pumped",
  bacon_pumped_alternative: "bacon, pumped, other formula",
  bacon_immersed: "bacon, in a pickle",
  substance: "Which substance?",
  nitrite: "sodium nitrite",
  nitrate: "sodium nitrate",
  ascorbate: "ascorbate or erythorbate",
  ascorbic: "ascorbic acid",
  percent: "Of it in the cure",
  percent_hint: "As printed on its pack: 6.25 for 6.25 %.",
  percent_words: "the percent on the pack first",
  cure: "Cure",
  cure_words: "how much cure",
  ppm: "Wanted",
  ppm_words: "the ppm wanted",
  green: "Meat, as weighed in",
  green_words: "the weight of the meat",
  others: "All else in the pickle",
  others_hint: "Water, salt, sugar: without the cure.",
  others_words: "all else in the pickle",
  pickle: "Whole pickle",
  pickle_hint: "Water, salt, sugar and cure together; never the water alone.",
  pickle_words: "the whole pickle",
  pump: "Pumped in, of the green weight",
  pump_words: "how much is pumped in",
  nothing: "Nothing here is 0. Correct the number that is.",
  over_hundred: "No percent here is above 100. Correct the one that is.",
  slip: "More than 1000 ppm of nitrite, or 1 % of anything else: a percent or a unit is wrong. Nothing is worked out.",
  a_little_over: (limit: string) => `A little more than ${limit}`,
  goes_in: "Goes in",
  weigh_cure: "Weigh in cure, at most",
  verdict: (verdict: string) => CURE_VERDICTS[verdict] ?? verdict,
  over: (ppm: string, limit: string, who: string) =>
    `${ppm} is over ${limit}, set by ${who}. No amount is worked out for it.`,
  not_permitted: (who: string) => `Not permitted at all: ${who}. No amount is worked out for it.`,
  cure_to_weigh: "Cure",
  cure_by: (basis: string) => `turned round from: ${INGOING[basis]?.by ?? ""}`,
  substance_in_it: "Of the substance",
  substance_by: "cure \u00d7 share of the substance",
  ppm_of: (basis: string) => INGOING[basis]?.name ?? basis,
  ppm_by: (basis: string) => INGOING[basis]?.by ?? "",
  limit: (kind: string, on: string) =>
    `${LIMIT_KINDS[kind] ?? kind}${on === "" ? "" : `, of ${on}`}`,
  set_by: (who: string, basis: string) => `set by ${who} (${basis})`,
  would_meet: "Cure that would meet it",
  would_meet_by: "the limit, on the same meat or in the same whole of pickle; rounded down",
};

export const ALTITUDE = {
  title: "Altitude",
  what: "Where water boils, what a canner needs",
  altitude: "Altitude",
  altitude_words: "the altitude first",
  canner: "Which canner?",
  boiling_water: "boiling water",
  dial_low_acid: "pressure, dial, low-acid, 11\u00a0lb base",
  dial_fruit: "pressure, dial, fruit, 6\u00a0lb base",
  weighted: "pressure, weighted, low-acid, 10\u00a0lb base",
  pounds: "lb/in\u00b2",
  beyond: "No adjustment is printed for this altitude. Ask your process authority.",
  gauge_says: "Read on the gauge",
  add_says: "Add to the tested time",
  band: (from: string, to: string) => `Band ${from} to ${to}; a foot higher is the next.`,
  added: "Minutes to add",
  gauge: "Pressure on the gauge",
  boils: "Water boils at",
  boils_by: "a straight line between the printed rows",
};

const ACID_SIDES: Record<string, string> = {
  acid: "At or below 4.6: acid.",
  low_acid: "Above pH 4.6 it is low-acid. No hold of acidified food holds for it.",
  low_water:
    "Above pH 4.6, kept by its low water activity. No hold of acidified food holds for it.",
};

export const ACID_HOLD = {
  title: "Acidified food",
  what: "The published hold for five logs",
  ph: "pH, come to rest",
  ph_hint: "Equilibrium pH of the food, not of the brine.",
  ph_words: "the pH first",
  activity: "Water activity",
  activity_hint: "Blank is not measured; it counts as high.",
  heat: "Slowest part of the food",
  heat_hint: "The printed time of the whole degree Fahrenheit at or below is taken.",
  heat_words: "the temperature of the slowest part",
  no_ph: "pH lies between 0 and 14. Type what the meter shows.",
  no_activity: "A water activity is at most 1. Type what the meter shows.",
  beyond:
    "No time is published below 141 \u00b0F (60.6 \u00b0C) or above 180 \u00b0F (82.2 \u00b0C).",
  side: (side: string) => ACID_SIDES[side] ?? side,
  hold: (inF: string, inC: string) => `Hold at ${inF}, ${inC}`,
  meter: "Above pH 4.0 only a pH meter counts.",
  any_method: "At pH 4.0 or below other methods count too.",
  published: "Hold, as published",
  model: "Hold, by its model",
  table_model: "5.6 min \u00d7 10^((160 \u00b0F \u2212 temperature) / 16.7 \u00b0F)",
  low_model: "1.2 min \u00d7 10^((160 \u00b0F \u2212 temperature) / 19.5 \u00b0F)",
  line: "Acid line",
};

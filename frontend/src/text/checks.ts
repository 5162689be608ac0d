/** Words of the guided check: what is asked, what to do and where to look, what it says. */

/** The guided check. */
export const CHECK = {
  known_was: (place: string) => `Known value ${place}`,
  give_or_take: (place: string) => `${place}, true to \u00b1`,
  bench: "The reading",
  of: (at: number, all: number) => `${at} of ${all}`,
  which: "How thorough?",
  depths: {
    scale: {
      quick: "Quick: zero and one mass",
      full: "Full: zero, masses up and down, off centre, repeats",
    },
    thermometer: { quick: "Ice only", full: "Ice and boiling water" },
  } as Record<string, Record<string, string>>,
  which_why: "A full check also finds the correction and the spread.",
  known: {
    scale: "Which check weights?",
    ph_meter: "Which buffers?",
    refractometer: "What does it read?",
    salometer: "What does it float in?",
    timer: "How long does it run?",
  } as Record<string, string>,
  known_else: "What is it compared with?",
  known_why: {
    scale: "Three from light to heavy serve best. Their class tells how far each is true.",
    ph_meter:
      "Two, or three around what you measure. Type the pH the bottle gives at its temperature.",
    refractometer: "Clean water reads 0. A syrup of known strength tells more.",
    salometer: "Clean water reads 0. A brine of known strength tells more.",
    timer: "Type how long the other clock runs. Ten minutes tell more than one.",
  } as Record<string, string>,
  add_known: "Add one",
  value: "How much",
  tolerance: "True to \u00b1",
  class_of: "Class on it",
  no_class: "not marked",
  true_to: (tolerance: string) => `\u00b1\u00a0${tolerance}`,
  not_true: "how true is not known",
  pure_water: "pure water, 0 by definition",
  exact: "taken as exact",
  other_number: "Type another number",
  choose_known: "Choose at least one",
  on_to: "Go on",
  skip: "Skip",
  last_one: "last",
  read_first: "Type what it shows",
  keep: (amount: string) => `Keep ${amount}`,
  start_looking: "It stands level",
  result: "What the check says",
  water: "The water",
  water_why: "Fill it an hour before, so that water and room are alike.",
  celsius: "Temperature of the water",
  on_scale: "Weighed on",
  no_scale: "A scale with known steps is needed first",
  water_first: "Type the temperature first",
  no_volume: "Say in set up how much it holds",
  altitude: "How high is the kitchen?",
  altitude_why: "Water boils cooler higher up: about 1 \u00b0C for each 300 m.",
  altitude_m: "Height above the sea",
  altitude_first: "Type the height first",
  altitude_range:
    "Boiling points are printed from \u2212300 m to 3\u202f000 m. Type a height between them.",
  boils_at: (celsius: string) => `Water boils there at about ${celsius}.`,
  correct: "Later readings",
  lines: {
    "": "leave as they are",
    least_squares: "correct by a line",
    offset: "correct by the same everywhere",
    two_point: "correct by a line through two points",
    none: "stop correcting",
  } as Record<string, string>,
  will: (words: string) => `${words}. It is put to every reading from now on.`,
  will_not: "Chance explains what was found, so no reading is changed.",
  will_not_known: "Nothing tells how far it scatters, so no reading is changed.",
  adjusted: "It was adjusted just now",
  adjusted_why: "What was found no longer holds; check it again.",
  when: "Made earlier?",
  when_why: "Leave the day empty if it was now.",
  day: "On the day",
  clock: "At the hour",
  save: "Save the check",
  save_failed: "Save: failed",
  nothing_read: "Read at least one step",
};

/** A stage: its title, and where to look. `at` is the load or value. */
interface StageWords {
  title: (at: string) => string;
  look: string;
  drawn: string;
}

export const STAGES: Record<string, StageWords> = {
  level: {
    title: () => "Set it level",
    look: "On a firm table, out of the draught. The bubble stands in the middle. Let it warm up.",
    drawn: "A scale on a firm table, its level bubble in the middle of the ring.",
  },
  zero: {
    title: () => "Empty pan",
    look: "Nothing on it. Set it to zero, wait, and read. A needle on zero is read from straight in front.",
    drawn: "An empty pan, the eye on the display, which shows 0; the needle of a dial on its zero.",
  },
  rising: {
    title: (at) => `Put on ${at}`,
    look: "In the middle of the pan. Wait until it stands still.",
    drawn: "A check weight in the middle of the pan, the eye on the display.",
  },
  falling: {
    title: (at) => `Back down to ${at}`,
    look: "Take off the heavier one, put this in the middle. Do not set to zero.",
    drawn: "The heavier weight lifted off, the lighter one in the middle, the eye on the display.",
  },
  return_to_zero: {
    title: () => "Empty again",
    look: "Take everything off. Do not set to zero, just read.",
    drawn: "The weight lifted off the pan, the eye on the display.",
  },
  off_centre: {
    title: (at) => `${at} off centre`,
    look: "Half way to the edge, once on each side.",
    drawn: "The pan from above with a place on each side; the load stands on the full one.",
  },
  repeats: {
    title: (at) => `${at}, five times`,
    look: "Lift it off and put it back in the middle each time. Read each time.",
    drawn: "A check weight lifted off the pan and put back.",
  },
  tare: {
    title: () => "The empty vessel",
    look: "Dry, on the scale. Read it, or set to zero and type 0.",
    drawn: "An empty vessel on a scale, the eye on the display.",
  },
  water: {
    title: () => "Filled with water",
    look: "Eye level with the mark. The lowest point of the curved surface lies on it. Dry the outside, weigh it.",
    drawn: "A vessel of water; the eye is level with the lowest point of its curved surface.",
  },
  cup: {
    title: () => "Filled with water",
    look: "On a level table, eye level with the mark. The lowest point of the curved surface lies on it. Then weigh it.",
    drawn:
      "A cup of water; the eye is level with the lowest point of its curved surface at the mark.",
  },
  spoon: {
    title: () => "A level spoon of water",
    look: "Hold it level. Draw a straight edge over the rim, then pour it into a cup on the scale.",
    drawn: "A spoon of water with a straight edge drawn over its rim.",
  },
  ice: {
    title: () => "In ice and water",
    look: "Crushed ice, water between. Stir. The tip in the middle, off the glass. Wait a minute. Eye level with the top of the column.",
    drawn:
      "A glass of ice and water, the tip of a thermometer in the middle, the eye level with the top of its column.",
  },
  boiling: {
    title: () => "In boiling water",
    look: "A rolling boil. The tip in the water, off the bottom. Eye level with the top of the column. Mind the steam.",
    drawn:
      "A pot of boiling water, the tip of a thermometer clear of the bottom, the eye level with the top of its column.",
  },
  buffer: {
    title: (at) => `Buffer of ${at}`,
    look: "Fresh from the bottle. Rinse the tip, dab it, wait until it stands still.",
    drawn: "A bottle of buffer poured into a beaker with the tip of the meter in it.",
  },
  clocks: {
    title: (at) => `When the other shows ${at}`,
    look: "Start both at the same moment. Read it at the moment the other is there.",
    drawn: "Two clocks started together, their hands at the same place.",
  },
  prism: {
    title: (at) => `Reads ${at}`,
    look: "Two drops on the clean glass, lid shut, against the light. Read where the line between light and dark crosses the scale.",
    drawn: "A tube held level, two drops on its glass; the eye sees a line across the scale.",
  },
  float: {
    title: (at) => `In a brine of ${at}`,
    look: "In a tall glass, swimming free of the wall. Eye level with the surface: read the flat of it, not where it climbs the stem.",
    drawn:
      "A salometer swims in a tall glass; the eye is level with the surface of the brine around its stem.",
  },
  comparison: {
    title: (at) => `Against ${at}`,
    look: "Read it where the known value is.",
    drawn: "The instrument beside the known one.",
  },
};
export const CORNER_WORDS: Record<string, string> = {
  front: "at the front",
  right: "at the right",
  back: "at the back",
  left: "at the left",
};

/** What was typed before a check and cannot be meant: what would be right. */
export const BAD = {
  ph: "pH lies between 0 and 14. Read it again.",
  pairs: {
    water: "Full it weighs more than empty. Read it again.",
    boiling: "Boiling water reads more than ice. Read it again.",
  },
  no_time: "A clock runs longer than 0. Type how long.",
  no_mass: "A check weight weighs more than 0. Type what is on it.",
  too_heavy: (most: string) => `The scale takes ${most} at most. Type a lighter one.`,
  water:
    "Only water from 0 \u00b0C to 40 \u00b0C can be told from its weight. Let it cool or warm.",
};

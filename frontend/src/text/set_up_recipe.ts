/** Words of writing recipes: versions, lines, steps, what changes. */
import { amountWords, figure } from "./numbers.ts";

export const RECIPE = {
  compare: "Compare two versions",
  export_one: "Export as a file",
  sums: "Sums at the bench",
  version: (number: string) => `version ${number}`,
  first: "Publishing makes version 1.",
  next: (latest: string, next: string) =>
    `From version ${latest}. Publishing makes version ${next}.`,
  newer: (number: string) =>
    `Version ${number} was published meanwhile. Compare before you publish yours.`,
  needs_newer:
    "The latest version holds more than this app knows. Update the app first; your draft stays.",
  latest: (number: string, day: string) => `Latest is version ${number}, ${day}.`,
  product: "What comes out",
  product_none: "No product yet. Add one under Materials.",
  makes: "As written it makes",
  packs: "In packs",
  packs_hint: "How many packs that fills. Empty if it is not packed.",
  solids: "Solids aimed at",
  solids_hint: "For jams: what the refractometer should read at the end.",
  loss: "Loss expected",
  loss_hint:
    "Of what it makes: what stays in the kettle, samples, rejects. Packs are counted after it.",
  own_does_not_scale: "What does not scale here",
  own_does_not_scale_hint: "As: more than 10 kg scorch. It is shown where a batch is started.",
  note: "Note",
  lines: "Lines",
  no_lines: "No line yet. Add what goes in first.",
  add_line: "Add a line",
  steps: "Steps",
  no_steps: "No step yet. Write what is done first.",
  add_step: "Add a step",
  publish: (number: string) => `Publish version ${number}`,
  same: "Nothing differs from the latest version",
  changes: (number: string) => `Against version ${number}`,
  no_change: "Nothing differs yet.",
  loading: "Reading the densities",
};

export const LINE = {
  where: (recipe: string) => `Line of ${recipe}`,
  new_title: "New line",
  material: "What goes in",
  choose: "Choose what goes in",
  material_none: "No material yet. Add one under Materials.",
  amount: "How much",
  tolerance: "How far off it may be",
  percent: (percent: string) => `\u00b1 ${percent} %`,
  no_tolerance: "no limit",
  below: "Less by at most",
  above: "More by at most",
  soluble: "Soluble solids",
  soluble_hint: "Sugar is 100, ripe mango about 14. It is used for the sum of solids.",
  note: "Note",
  done: (amount: string) => `Keep, ${amount}`,
  remove: "Take this line out",
  up: "Move it up",
  becomes: "by weight",
  spread: (low: string, high: string) => `Published figures give ${low} to ${high}`,
  one_figure: "Only one figure is published: weigh it once to be sure",
  by: (portion: string, mass: string) => `${portion} weighed ${mass}`,
  measured: (amount: string, source: string) => `Written as ${amount}; density: ${source}`,
  weigh_instead: "A scale tells better than a cup: weigh it where you can.",
};

export const STEP = {
  where: (recipe: string) => `Step of ${recipe}`,
  new_title: "New step",
  says: "What is done, in one sentence",
  measures: "What is checked",
  nothing: "nothing",
  acid: "Reckoned as which acid",
  counts: "Which lines are it",
  of_line: "Of which line",
  any_line: "the whole",
  unit: "Unit",
  low: "Not below",
  high: "Not above",
  set_by: "Who set the limit",
  limit_by: "set by",
  set_by_hint: "As: the tested recipe. A limit without a source is only a habit.",
  minutes: "How long it takes",
  takes: (minutes: string) => `takes ${minutes}`,
  caution: "Caution, shown in full beside the reading",
  done: "Keep the step",
  remove: "Take this step out",
  up: "Move it up",
};

export const CHECKS: Record<string, string> = {
  prepared_mass: "mass once prepared",
  kettle_mass: "mass in the kettle",
  mass: "a mass",
  temperature: "temperature",
  ph: "pH",
  brix: "sugar, \u00b0Bx",
  water_activity: "water activity",
  salt: "salt",
  salometer: "salt, by salometer",
  salt_weighed: "salt, of what was weighed in",
  sugar_weighed: "sugar, of what was weighed in",
  acidity: "acid, by titration",
  minutes: "minutes",
};

export const RECIPE_MISSING = {
  name: "Write the name first",
  product: "Choose what comes out",
  makes: "Say how much it makes",
  lines: "Add a line first",
  amount: (name: string) => `${name}: say how much`,
  percent: (name: string) => `${name}: say how many percent`,
  others: () => "Complete the other lines first",
  yields: (name: string) => `${name}: say how much of 100 is left`,
  no_base: (name: string) => `${name}: mark the line that is 100 % first`,
  base_too_much: () => "The shares of the base are more than the base: mark what is 100 %",
  whole_too_much: () => "The shares leave nothing for the other lines: lower a percent",
  no_amount: () => "Give one line its amount, or say what mass the recipe makes",
  not_whole: () => "The percents do not add up to 100, and no line says how much that is",
  pack: "A size of pack still needs what is in it",
  line_material: "A line still needs its material",
  step: "A step has no words",
  density: (name: string) => `${name}: choose a unit of mass, or its density under Materials`,
  measure: (name: string) => `${name}: choose another unit`,
};

/** What differs between two versions, one sentence each. */
export const DIFFERS = {
  added: (name: string) => `${name}: added`,
  removed: (name: string) => `${name}: taken out`,
  changed: (name: string, from: string, to: string) => `${name}: ${from} becomes ${to}`,
  step: (number: string) => `Step ${number}`,
  points: (by: string) => `${by} points`,
  order_lines: "Lines stand in another order",
  order_steps: "Steps stand in another order",
  fields: {
    name: "Name",
    product: "Product",
    makes: "Makes",
    packs: "Packs",
    target_solids_percent: "Solids aimed at",
    life: "Shelf life",
    note: "Note",
    amount: "amount",
    below: "less by at most",
    above: "more by at most",
    soluble_percent: "soluble solids",
    material: "material",
    says: "words",
    measures: "check",
    line: "of line",
    unit: "unit",
    low: "not below",
    high: "not above",
    set_by: "set by",
    caution: "caution",
    loss_percent: "Loss expected",
    pack_sizes: "Sizes of pack",
    does_not_scale: "What does not scale",
    percent: "percent",
    percent_of: "percent of",
    is_base: "counts as the base",
    state: "the amount is",
    yields: "yield",
    level: "how sure",
    minutes: "takes",
    acid: "reckoned as",
    counts: "counted lines",
  } as Record<string, string>,
  counted: (line: string, percent: string) => `line ${line} with ${percent}`,
  values: {
    base: "the base",
    whole: "the whole",
    as_bought: "as bought",
    prepared: "prepared",
  } as Record<string, string>,
};

/** `2 cup = 400 g`. */
export function becomesWords(from: string, to: string): string {
  return `${from} = ${to}`;
}

/** `60 g, ± 1 g` of a line in the list. */
export function lineWords(amount: string, unit: string, below: string, above: string): string {
  const words = amountWords(amount, unit);
  if (below === "" && above === "") return words;
  if (below === above) return `${words} \u00b1 ${figure(below)}`;
  const parts = [
    below === "" ? "" : `\u2212${figure(below)}`,
    above === "" ? "" : `+${figure(above)}`,
  ];
  return `${words} ${parts.filter(Boolean).join(" ")}`;
}

export const ACIDS: Readonly<Record<string, string>> = {
  citric: "citric",
  tartaric: "tartaric",
  lactic: "lactic (weight from memory)",
  acetic: "acetic (weight from memory)",
  malic: "malic (weight from memory)",
};

/** Published limits that are proposed. */
export const LIMITS = {
  title: "Common limits",
  low: "At least",
  high: "At most",
  set_by: (source: string) => `Set by ${source}.`,
  put: (limit: string) => `Take ${limit}`,
};

/** How a published figure came here. */
export const BASES: Readonly<Record<string, string>> = {
  read: "Read in print.",
  "read-secondary": "Read where somebody else quotes it.",
  memory: "From memory: look it up before you lean on it.",
};

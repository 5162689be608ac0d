/** Words of control charts: which one, what its rules say, what it is worked out from. */
import { countWords, figure } from "./numbers.ts";

export const CHARTS = {
  bench: "Charts",
  which: "Which chart",
  what: "What is charted",
  sorts: {
    xbar_range: "Means and ranges",
    individuals: "One by one",
    ewma: "Slow drift",
  } as Record<string, string>,
  how: {
    xbar_range: (size: number) =>
      `Each point is the mean of ${size}; the second chart shows how far those ${size} lie apart. Limits: mean \u00b1 A2 \u00d7 mean range, and D3 to D4 \u00d7 mean range.`,
    individuals: () =>
      "Each point by itself; the second chart shows the step from the one before. Limits: mean \u00b1 2.66 \u00d7 mean step, and 0 to 3.27 \u00d7 mean step.",
    ewma: () =>
      "Each point remembers the ones before it: 0.3 of the new value, 0.7 of what was. Limits: mean \u00b1 3 \u00d7 sigma \u00d7 \u221a(0.3 / 1.7), narrower at first.",
  } as Record<string, (size: number) => string>,
  constants: "Constants: published tables, read. Rules: recalled, not read.",
  places: {
    xbar_range: "Means",
    individuals: "One by one",
    ewma: "Weighted means",
  } as Record<string, string>,
  ranges: {
    xbar_range: "How far they lie apart",
    individuals: "From one to the next",
  } as Record<string, string>,
  fired: "What fired",
  usual: "No rule fired: what varies is what always varied.",
  centre: "Mean",
  limits: "Limits",
  sigma: "Standard deviation of one",
  worked_out: "How it is worked out",
  to: (low: string, high: string) => `${low} to ${high}`,
  missing: (count: number, one: string, many: string, least: number) =>
    `${countWords(count, `more ${one} is`, `more ${many} are`)} needed: a chart begins with ${least}.`,
  first_of: (size: number, all: number) =>
    `Of each the first ${size} count; the largest has ${all}.`,
  tail: (shown: number, all: number) => `The last ${shown} of ${all} are drawn.`,
  says: (title: string, count: string, low: string, high: string, centre: string) =>
    `${title}: ${count} around ${centre}, limits ${low} to ${high}.`,
};

/** A rule that fired, for the drawing: a few words beside the point. */
export function ruleShort(rule: string, side: number): string {
  const isHigh = side > 0;
  const words: Record<string, string> = {
    beyond_limit: isHigh ? "too high" : "too low",
    eight_on_one_side: isHigh ? "8 above" : "8 below",
    six_in_a_row: isHigh ? "6 rising" : "6 falling",
    two_of_three_far: isHigh ? "2 of 3 high" : "2 of 3 low",
  };
  return words[rule] ?? rule;
}

/** The same in full. */
export function ruleWords(rule: string, side: number): string {
  const isHigh = side > 0;
  const words: Record<string, string> = {
    beyond_limit: isHigh ? "above the upper limit" : "below the lower limit",
    eight_on_one_side: `eight or more ${isHigh ? "above" : "below"} the mean, one after another`,
    six_in_a_row: `six or more that only ${isHigh ? "rise" : "fall"}`,
    two_of_three_far: `two of three far ${isHigh ? "above" : "below"} the mean (beyond two sigma)`,
  };
  return words[rule] ?? rule;
}

/** "7", or "3 to 10": points counted from 1 as a person does. */
export function placesWords(first: number, last: number): string {
  const [from, to] = [first + 1, last + 1].map((each) => figure(String(each)));
  return first === last ? `${to}` : `${from} to ${to}`;
}

/** Yields of one recipe. */
export const YIELDS = {
  key: "The yields of this recipe",
  where: "Yields",
  batches: "All batches",
  sorts: {
    recovery_percent: "Recovery",
    of_theory_percent: "Of the recipe's promise",
    edible_yield_percent: "Edible after preparation",
  } as Record<string, string>,
  how: {
    recovery_percent: "Good mass out of what went into the kettle, in percent.",
    of_theory_percent: "Good mass out of what the recipe promises, in percent.",
    edible_yield_percent: "What was prepared out of what was bought, in percent.",
  } as Record<string, string>,
  none: (least: number) =>
    `No finished batch of this recipe on this phone has a yield yet. It needs what went into the kettle and the mass of the good packs; a chart begins with ${least} batches.`,
  without: (count: number) =>
    `${countWords(count, "finished batch", "finished batches")} without this figure: something was not weighed.`,
  not_here: "This recipe is not on this phone.",
  one: "finished batch",
  many: "finished batches",
  from_phone: "From the batches this phone holds, in the order they were finished.",
};

/** Fills: the packs of one lot, and every check of that product. */
export const FILLS = {
  key: "Charts of the fills",
  where: (lot: string) => `Fills, ${lot}`,
  title: "Net content charted",
  lot: "This lot, pack by pack",
  product: "All checks of this product",
  pack: (number: number) => `Pack ${figure(String(number))}`,
  none: (least: number) => `No pack of this lot was weighed. A chart begins with ${least} packs.`,
  weigh: "Weigh packs",
  sheet: "Its sheet",
  not_here: "This lot is not on this phone.",
  packs: { one: "pack", many: "packs" },
  checks: { one: "check of fills", many: "checks of fills" },
  same_label: (label: string) => `Only packs labelled ${label}.`,
};

/** Checks of one instrument. */
export const CHECK_CHARTS = {
  where: "Control chart",
  none: (least: number) =>
    `It was never checked. Each check becomes a point; a chart begins with ${least}.`,
  one: "check",
  many: "checks",
  why: "Errors: what it showed less what was on it. Limits here are what it usually does, not what is allowed.",
  adjusted: "adjusted after it",
};

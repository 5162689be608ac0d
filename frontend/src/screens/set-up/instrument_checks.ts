/** How an instrument of a sort is checked unless somebody says otherwise, and what it can be judged by. */
import type { Typed } from "../common/drafted.ts";

/** A scale has a class of R 76, a cylinder A or B; the others have none. */
export const CLASSES: Readonly<Record<string, readonly string[]>> = {
  scale: ["I", "II", "III", "IIII"],
  cylinder: ["A", "B"],
};

/** Whose limits a check is judged by. */
export const RULES: Readonly<Record<string, readonly string[]>> = {
  scale: ["r76_in_service", "r76_initial", "hb133", "own"],
  cylinder: ["cylinder", "own"],
  cup: ["household", "own"],
  spoon: ["household", "own"],
};

/** What is filled with water to be checked, and so holds something. */
export function isFilled(sort: string): boolean {
  return sort === "cylinder" || sort === "cup" || sort === "spoon";
}

/** For a sort without published limits the cooperative sets its own. */
export function rulesOf(sort: string): readonly string[] {
  return RULES[sort] ?? ["own"];
}

// Intervals and limits of our own, to begin with: common practice in small kitchens, not a rule.
const AT_FIRST: Readonly<Record<string, Typed>> = {
  scale: { check_days: "30", check_uses: "500" },
  thermometer: { check_days: "30", most_error: "1" },
  ph_meter: { check_days: "1", most_error: "0.1" },
  refractometer: { check_days: "30", most_error: "0.5" },
  salometer: { check_days: "365", most_error: "1" },
  cylinder: { check_days: "365", accuracy_class: "B" },
  cup: { check_days: "365" },
  spoon: { check_days: "365" },
};
const NOTHING = { check_days: "", check_uses: "", most_error: "", accuracy_class: "" };

/** Where a form begins for a sort. */
export function checkedAtFirst(sort: string): Typed {
  return { ...NOTHING, judged_by: rulesOf(sort)[0] ?? "own", ...AT_FIRST[sort] };
}

/** Words about a lot: its date, its place, what was done with it. */
import { dayWords } from "./numbers.ts";

const SORTS: Record<string, string> = {
  use_by: "use by",
  best_before: "best before",
  expires_on: "expires on",
};

/** The kinds of date, to choose from. */
export const LIFE_SORTS = [
  { value: "use_by", word: "use by" },
  { value: "best_before", word: "best before" },
  { value: "expires_on", word: "expires on" },
] as const;

/** "best before 5 Nov 2027". */
export function lifeSortWord(sort: string): string {
  return SORTS[sort] ?? sort.replaceAll("_", " ");
}

export const LOTS = {
  last_day: "use today",
  tomorrow: (sort: string) => `${sort} tomorrow`,
  on: (sort: string, day: string) => `${sort} ${whole(dayWords(day, true))}`,
  past: (sort: string, day: string) => `past ${sort} ${whole(dayWords(day, true))}`,
  past_best: (day: string) => `past its best ${whole(dayWords(day, true))}`,
  below_zero: "below zero",
};

/** `2 jars`, `1 jar`: the word of a pack after its count. */
export function packWords(count: string, word: string | null): string {
  if (word === null || word === "") return "";
  return /^-?1$/.test(count) ? word : `${word}s`;
}

/** A date stays in one line. */
function whole(day: string): string {
  return day.replaceAll(" ", "\u00a0");
}

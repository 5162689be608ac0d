/**
 * Every caution, once, by what it is about. Shown in full beside the number it belongs to, and
 * printed where that number is printed. Each ends by deferring.
 */

/** How every caution ends. */
export const DEFERS =
  "Where this differs from your local code, the tested recipe or a licensed process authority, follow them.";

/** What is said of each, without the ending. */
const OWN = {
  lethality:
    "A sum from readings at one point. It shows what the probe felt and approves nothing. Only a process authority can set a process.",
  cooling:
    "Food that cools too slowly can make people ill although it looks and smells right. Where a reading is late or missing, hold the food and call your coordinator.",
  holding:
    "Food between cold and hot holding is on a clock that does not start again when it is cooled. When the time is over or not known, throw it away.",
} as const;

/** What a caution is about. */
export type CautionAbout = keyof typeof OWN;

/** Whole cautions as one text. Deferring stands once, at the end. Nothing to say is "". */
export function cautionWords(about: readonly CautionAbout[]): string {
  const said = about.map((each) => OWN[each]);
  return said.length === 0 ? "" : [...said, DEFERS].join(" ");
}

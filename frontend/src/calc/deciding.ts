/** Which of its checks an instrument is judged by. */
import type { Check, InDoubt } from "./instruments.ts";

/**
 * The check by which an instrument is judged, and its uses are counted from: the last failed one
 * that nothing has put right, else the last it passed; null where it never passed one.
 * `checks` and `doubts` as its state holds them, in business order.
 */
export function decidingCheck(checks: readonly Check[], doubts: readonly InDoubt[]): Check | null {
  const open = doubts.filter((each) => each.until === null).at(-1);
  const failed = checks.find((each) => each.entry === open?.check);
  if (failed !== undefined) return failed;
  // Put right on the spot: adjusted, or corrected by what it found.
  const isPutRight = ({ entry, happened_at }: Check) =>
    doubts.some((each) => each.check === entry && each.until === happened_at);
  return checks.filter((each) => each.verdict === "fit" || isPutRight(each)).at(-1) ?? null;
}

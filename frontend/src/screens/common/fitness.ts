/** Whether an instrument may be relied on: fit, due, failed or not checked. It is never locked. */
import type { InstrumentState } from "../../calc/instruments.ts";
import { addDays } from "../../calc/shelf_life.ts";

export type Fitness = "fit" | "due" | "failed" | "not_checked";

type Check = InstrumentState["checks"][number];

/** What an instrument's sheet says about its checks, with what has been done since. */
export interface Standing {
  is: Fitness;
  /** The last check that decides, or null. */
  check: Check | null;
  /** The day from which the next one is due by time; null where no interval is set. */
  due_on: string | null;
  /** After how many more uses it is due; null where no interval is set. */
  uses_left: number | null;
  uses: number;
}

/**
 * The state on a day, `uses` being the times of the readings made with it.
 * A failed check stands until something puts it right; one that cannot tell changes nothing.
 */
export function fitnessOn(
  sheet: Partial<InstrumentState>,
  on: string,
  uses: readonly string[],
): Standing {
  const { checks = [], doubts = [], fields = {} } = sheet;
  const open = doubts.filter((each) => each.until === null).at(-1);
  const failed = checks.find((each) => each.entry === open?.check) ?? null;
  const passed = failed ?? checks.filter((each) => hasPassed(each, doubts)).at(-1) ?? null;
  const since = passed === null ? uses : uses.filter((at) => at > passed.happened_at);
  const days = wholeIn(fields.check_days);
  const most = wholeIn(fields.check_uses);
  const due_on = passed === null || days === null ? null : addDays(passed.on, days);
  const uses_left = passed === null || most === null ? null : Math.max(0, most - since.length);
  const isDue = (due_on !== null && due_on <= on) || uses_left === 0;
  const is = passed === null ? "not_checked" : failed !== null ? "failed" : isDue ? "due" : "fit";
  return { is, check: passed, due_on, uses_left, uses: since.length };
}

/**
 * The state at a moment of the past, `on` being its day: only checks and uses before it count, and
 * what was put right later was not right yet.
 */
export function fitnessAt(
  sheet: Partial<InstrumentState>,
  moment: { readonly at: string; readonly on: string },
  uses: readonly string[],
): Standing {
  const { at, on } = moment;
  const { checks = [], doubts = [] } = sheet;
  const known = {
    ...sheet,
    checks: checks.filter((each) => each.happened_at <= at),
    doubts: doubts
      .filter((each) => each.failed_at <= at)
      .map((each) => (each.until !== null && each.until > at ? { ...each, until: null } : each)),
  };
  return fitnessOn(
    known,
    on,
    uses.filter((each) => each < at),
  );
}

/** Passed as it was, or put right on the spot: adjusted, or corrected by what it found. */
function hasPassed(check: Check, doubts: InstrumentState["doubts"]): boolean {
  if (check.verdict === "fit") return true;
  return doubts.some((each) => each.check === check.entry && each.until === check.happened_at);
}

function wholeIn(value: unknown): number | null {
  return typeof value === "number" ? value : null;
}

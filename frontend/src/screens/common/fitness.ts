/** Whether an instrument may be relied on: fit, due, failed or not checked. It is never locked. */
import { decidingCheck } from "../../calc/deciding.ts";
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

/** What the server counted: so many readings since this check, told as of some moment. */
export interface CountedUses {
  readonly check: string;
  readonly count: number;
}

/**
 * The state on a day, `uses` being the times of the readings that this phone knows and `counted`
 * what the server counted, which knows those of every phone but not what still waits here.
 * A failed check stands until something puts it right; one that cannot tell changes nothing.
 */
export function fitnessOn(
  sheet: Partial<InstrumentState>,
  on: string,
  uses: readonly string[],
  counted: CountedUses | null = null,
): Standing {
  const { checks = [], doubts = [], fields = {} } = sheet;
  const check = decidingCheck(checks, doubts);
  const hasFailed = doubts.some((each) => each.until === null && each.check === check?.entry);
  const here = check === null ? uses : uses.filter((at) => at > check.happened_at);
  // A count from another check says nothing about this one.
  const told = counted !== null && counted.check === check?.entry ? counted.count : 0;
  const since = Math.max(here.length, told);
  const days = wholeIn(fields.check_days);
  const most = wholeIn(fields.check_uses);
  const due_on = check === null || days === null ? null : addDays(check.on, days);
  const uses_left = check === null || most === null ? null : Math.max(0, most - since);
  const isDue = (due_on !== null && due_on <= on) || uses_left === 0;
  const is = check === null ? "not_checked" : hasFailed ? "failed" : isDue ? "due" : "fit";
  return { is, check, due_on, uses_left, uses: since };
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

/** The last check where it decided nothing and another one still counts; else null. */
export function undecided({ check }: Standing, checks: InstrumentState["checks"]): Check | null {
  const last = checks.at(-1);
  const isOpen = check !== null && last?.verdict === "cannot_tell";
  return isOpen && last !== undefined && last.entry !== check.entry ? last : null;
}

function wholeIn(value: unknown): number | null {
  return typeof value === "number" ? value : null;
}

/**
 * When a time-temperature log falls through a limit, in exact seconds.
 *
 * A crossing lies on the straight line between two readings, which on a decaying curve is late.
 */

import type { HeatLog } from "./heat_logs.ts";
import { Decimal, difference, divided, ONE, product } from "./numbers.ts";

export const MINUTE_PLACES = 2;
/** How far apart the readings around a limit may be for a straight line to decide; own proposal. */
export const NEAR_S = 1800;
export const MINUTE_S = new Decimal(60n, 0);

/** An exact time or span: `over` / `under` seconds. */
export class Seconds {
  readonly over: Decimal;
  readonly under: Decimal;

  constructor(over: Decimal, under: Decimal) {
    this.over = over;
    this.under = under;
  }

  /** A whole number of seconds. */
  static whole(second: number): Seconds {
    return new Seconds(wholeNumber(second), ONE);
  }

  /** The span from `start` to this time. */
  since(start: Seconds): Seconds {
    const over = difference(product(this.over, start.under), product(start.over, this.under));
    return new Seconds(over, product(start.under, this.under));
  }

  /** Whether the span is longer than so many seconds; as long is not longer. */
  exceeds(limitS: number): boolean {
    return this.over.compare(product(wholeNumber(limitS), this.under)) > 0;
  }

  /** The span in minutes, rounded to MINUTE_PLACES. */
  minutes(): Decimal {
    return divided(this.over, product(this.under, MINUTE_S), MINUTE_PLACES);
  }
}

/**
 * When a limit was passed: between two readings, and on the straight line between them.
 *
 * `earliest_s` is null where it was before the first reading; both are alike where a reading is
 * exactly the limit.
 */
export class Crossing {
  readonly earliest_s: number | null;
  readonly latest_s: number;
  readonly line: Seconds;

  constructor(earliest_s: number | null, latest_s: number, line: Seconds) {
    this.earliest_s = earliest_s;
    this.latest_s = latest_s;
    this.line = line;
  }

  /** Known only to have happened by this reading. */
  static atReading(second: number, earliest_s: number | null): Crossing {
    return new Crossing(earliest_s, second, Seconds.whole(second));
  }

  /**
   * Where `values` (thousandths of a degree) of a log fall through `limit` between the reading
   * before `row` and that one.
   */
  static into(
    log: HeatLog,
    values: readonly number[],
    { row, limit }: { readonly row: number; readonly limit: number },
  ): Crossing {
    const now = at(log.at_s, row);
    if (row === 0) return Crossing.atReading(now, null);
    const before = at(log.at_s, row - 1);
    const [above, below] = [at(values, row - 1), at(values, row)];
    const over = before * (above - below) + (above - limit) * (now - before);
    return new Crossing(
      below === limit ? now : before,
      above === limit ? before : now,
      new Seconds(wholeNumber(over), wholeNumber(above - below)),
    );
  }

  /** Whether the readings around it are close enough for a straight line to decide. */
  get isNear(): boolean {
    return this.earliest_s !== null && this.latest_s - this.earliest_s <= NEAR_S;
  }
}

function wholeNumber(x: number): Decimal {
  return new Decimal(BigInt(x), 0);
}

/** A number of an array by its place; a place that is not there is a defect. */
function at(numbers: readonly number[], place: number): number {
  const found = numbers[place];
  if (found === undefined) throw new Error("a log has no such row");
  return found;
}

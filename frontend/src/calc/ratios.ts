/** Exact fractions, for sums that are rounded once at the end; Python has its own (`Fraction`). */

import { type Decimal, divided, ONE, product, total } from "./numbers.ts";

/** over / under; `under` is above zero. */
export class Ratio {
  readonly over: Decimal;
  readonly under: Decimal;

  constructor(over: Decimal, under: Decimal = ONE) {
    if (under.isZero()) throw new RangeError("division by zero");
    const isTurned = under.isNegative();
    this.over = isTurned ? over.negated() : over;
    this.under = isTurned ? under.negated() : under;
  }

  plus(other: Ratio): Ratio {
    if (this.under.compare(other.under) === 0) {
      return new Ratio(total([this.over, other.over]), this.under);
    }
    const over = total([product(this.over, other.under), product(other.over, this.under)]);
    return new Ratio(over, product(this.under, other.under));
  }

  minus(other: Ratio): Ratio {
    return this.plus(new Ratio(other.over.negated(), other.under));
  }

  times(other: Ratio): Ratio {
    return new Ratio(product(this.over, other.over), product(this.under, other.under));
  }

  dividedBy(other: Ratio): Ratio {
    return new Ratio(product(this.over, other.under), product(this.under, other.over));
  }

  compare(other: Ratio): -1 | 0 | 1 {
    return product(this.over, other.under).compare(product(other.over, this.under));
  }

  rounded(places: number): Decimal {
    return divided(this.over, this.under, places);
  }
}

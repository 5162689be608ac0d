/**
 * Sharing out what was earned among members, to the coin (production 2.5).
 *
 * refund = (net margin - reserve) x use / all use, rounded by largest remainder, ties by member id.
 * Definition: Texas A&M AFPC 2023, read.
 */

import { coinParts } from "./coins.ts";
import type { Cited } from "./limits.ts";
import {
  type Decimal,
  difference,
  divided,
  HUNDRED,
  product,
  rounded,
  total,
  ZERO,
} from "./numbers.ts";
import { Ratio } from "./ratios.ts";

export type Loss = "shared" | "carried";

const CITED: Cited = {
  what: "patronage_refund",
  source: "Texas A&M AFPC 2023, patronage refunds in proportion to use",
  basis: "read",
  note: "",
};

/**
 * How much a member used the cooperative in the period, voids taken off: money, kilograms, hours,
 * or 1 for each where all get the same.
 */
export interface Use {
  readonly member: string;
  readonly amount: Decimal;
}

/** What one member gets; below zero, what a member bears of a loss. */
export interface Share {
  readonly member: string;
  readonly amount: Decimal;
}

/** Reserve, shares and what is carried forward add up to the net margin, to the coin. */
export interface ShareOut {
  readonly reserve: Decimal;
  readonly to_share: Decimal;
  readonly shares: readonly Share[];
  readonly carried: Decimal;
  readonly cited: Cited;
}

/** How a cooperative shares; `places` are those of a coin. */
export interface ShareRule {
  readonly reserve_percent: Decimal;
  readonly loss: Loss;
  readonly places: number;
}

/**
 * What is earned, less the reserve, by use, members in the order of their id.
 *
 * A loss lays nothing aside: it is shared by the same rule or carried forward, as was decided,
 * never left out. Throws RangeError for a net margin with parts of a coin, a reserve that is not 0
 * to 100 %, a member named twice, a use below zero, and no use at all.
 */
export function shareOut(net: Decimal, uses: readonly Use[], rule: ShareRule): ShareOut {
  const { reserve_percent, loss, places } = rule;
  const whole = total(uses.map((use) => use.amount));
  const isTwice = new Set(uses.map((use) => use.member)).size < uses.length;
  if (whole.compare(ZERO) <= 0 || isTwice || uses.some((use) => use.amount.isNegative())) {
    throw new RangeError("nothing to share by");
  }
  const isPercent = !reserve_percent.isNegative() && reserve_percent.compare(HUNDRED) <= 0;
  if (!isPercent || rounded(net, places).compare(net) !== 0) {
    throw new RangeError("not an amount to share");
  }
  const isLoss = net.isNegative();
  const reserve = divided(isLoss ? ZERO : product(net, reserve_percent), HUNDRED, places);
  const isCarried = isLoss && loss === "carried";
  const toShare = rounded(isCarried ? ZERO : difference(net, reserve), places);
  const inOrder = [...uses].sort((a, b) => (a.member < b.member ? -1 : 1));
  const coins = coinParts(
    inOrder.map((use) => new Ratio(product(toShare, use.amount), whole)),
    places,
  );
  return {
    reserve,
    to_share: toShare,
    shares: inOrder.map(({ member }, place) => ({ member, amount: coins[place] ?? ZERO })),
    carried: rounded(isCarried ? net : ZERO, places),
    cited: CITED,
  };
}

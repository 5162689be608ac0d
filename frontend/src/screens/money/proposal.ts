/** From a cost and what a person wants to earn to a price in coins. */
import type { CostAnswer } from "../../calc/batch_costs.ts";
import { type Body, objectIn, textIn } from "../../calc/bodies.ts";
import { type Decimal, parseDecimal, rounded, written, ZERO } from "../../calc/numbers.ts";
import { breakEven, priceProposal } from "../../calc/prices.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Json } from "../../state/types.ts";
import { PRICE } from "../../text/money.ts";
import { figure } from "../../text/numbers.ts";

export type StepRule = "up" | "nearest" | "down";

/** What is to be earned and in which coins, as typed. */
export interface Earning {
  of: string;
  percent: string;
  commission: string;
  coin: string;
  rule: string;
}

/** What is typed on the price screen. */
export interface Asked extends Earning {
  fixed: string;
}

/** What a price is proposed for: the packs of a product and what they cost together. */
export interface Priced {
  readonly lot: string | null;
  /** The lot whose size of pack it is about. */
  readonly pack_of: string | null;
  readonly material: string | null;
  readonly total: string | null;
  readonly good: string | null;
  readonly per: string | null;
  readonly each: string | null;
}

/** Everything as text. */
export interface Proposed {
  readonly exact: string;
  readonly price: string;
  readonly commission: string;
  readonly earned: string;
  readonly markup_percent: string | null;
  readonly margin_percent: string | null;
}

const RULES: readonly StepRule[] = ["up", "nearest", "down"];
const EVEN_PLACES = 1;
const COIN = "0.01"; // where neither the cooperative nor the person says otherwise

/** What the person chose last on this phone, else what the cooperative set. */
export function askedFrom(last: Json, rates: Body): Asked {
  const own: Body = typeof last === "object" && last !== null ? { ...last } : {};
  const set = objectIn(rates, "proposal") ?? {};
  const said = (name: string, of: string) => textIn(own, name) ?? textIn(set, of);
  return {
    of: said("of", "of") === "cost" ? "cost" : "price",
    percent: said("percent", "percent") ?? "30",
    commission: said("commission", "commission_percent") ?? "",
    coin: said("coin", "coin") ?? COIN,
    rule: ruleOf(said("rule", "rule")),
    fixed: "",
  };
}

/** Upwards where nobody says otherwise. */
export function ruleOf(typed: string | null): StepRule {
  return RULES.find((each) => each === typed) ?? "up";
}

/** All packs of a batch where they are alike, else each of its main products. */
export function pricedOf(cost: CostAnswer): readonly Priced[] {
  const main = cost.products.filter((each) => each.sort === "main");
  if (cost.good === null && main.length > 0) {
    return main.map((each) => ({ ...each, pack_of: each.lot, total: each.cost }));
  }
  const { total, good, per } = cost;
  const material = main[0]?.material ?? null;
  const pack_of = main[0]?.lot ?? null;
  return [{ lot: null, pack_of, material, total, good, per, each: cost.per_good_pack }];
}

/** The price, or in one sentence why there is none. */
export function proposalFor(cost: Priced, asked: Asked): Proposed | { readonly why: string } {
  if (cost.total === null || cost.good === null) return { why: PRICE.incomplete };
  const packs = parseDecimal(cost.good);
  const coin = numberOf(asked.coin);
  if (packs.compare(ZERO) <= 0) return { why: PRICE.incomplete };
  if (coin === null || coin.compare(ZERO) <= 0) return { why: PRICE.coin_wrong };
  if (parseDecimal(cost.total).isNegative()) return { why: PRICE.below_nothing };
  const wanted = {
    of: asked.of === "cost" ? ("cost" as const) : ("price" as const),
    percent: numberOf(asked.percent) ?? ZERO,
    commission_percent: numberOf(asked.commission) ?? ZERO,
  };
  try {
    const made = priceProposal({ cost: parseDecimal(cost.total), packs }, wanted, {
      coin,
      rule: ruleOf(asked.rule),
    });
    return {
      exact: written(made.exact),
      price: written(made.price),
      commission: written(made.commission),
      earned: written(made.earned),
      markup_percent: text(made.markup_percent),
      margin_percent: text(made.margin_percent),
    };
  } catch (trouble) {
    if (trouble instanceof RangeError) return { why: PRICE.impossible };
    throw trouble;
  }
}

/** How many packs cover a fixed cost; null while nothing is typed. What a stall keeps is off. */
export function evenFor(
  fixed: string,
  answer: ReturnType<typeof proposalFor>,
  each: string | null,
): string | null {
  const amount = numberOf(fixed);
  if (amount === null || "why" in answer || each === null) return null;
  const price = parseDecimal(answer.price).minus(parseDecimal(answer.commission));
  const even = breakEven(amount, { price, variable: parseDecimal(each) });
  if (even === null) return PRICE.never;
  return PRICE.even_says(
    figure(String(even.packs)),
    figure(written(rounded(even.exact, EVEN_PLACES))),
  );
}

function numberOf(typed: string): Decimal | null {
  const number = typedNumber(typed);
  return number === null ? null : parseDecimal(number);
}

function text(x: Decimal | null): string | null {
  return x === null ? null : written(x);
}

/** The forms about money: what is typed, what is still missing, the bodies they become. */

import type { Quantity } from "../../calc/bodies.ts";
import type { Spent, Worked } from "../../calc/money.ts";
import { parseDecimal } from "../../calc/numbers.ts";
import { typedNumber } from "../../parts/typing.ts";
import { PAID, PRICE, SHARED, SPENT, WORK } from "../../text/money.ts";
import type { Hindrance } from "../common/sentences.ts";

type Body = Record<string, unknown>;

export interface WorkTyped {
  [field: string]: string | boolean;
  member: string;
  name: string;
  minutes: string;
  is_paid: boolean;
}

/** The first open thing of a form, null when all is there. */
export function workMissing(typed: WorkTyped): Hindrance | null {
  if (typed.member === "" && typed.name.trim() === "") {
    return { field: "member", sentence: WORK.choose_who };
  }
  return isSome(typed.minutes) ? null : { field: "minutes", sentence: WORK.choose_minutes };
}

/** The body of `labour`; paid is left out, for it is what counts where nobody says otherwise. */
export function labourOf(typed: WorkTyped, batch: string): Body {
  return {
    batch,
    ...(typed.member === "" ? { name: typed.name.trim() } : { member: typed.member }),
    minutes: typedNumber(typed.minutes) ?? "",
    ...(typed.is_paid ? {} : { is_paid: false }),
  };
}

export interface SpentTyped {
  [field: string]: string;
  part: string;
  amount: string;
  says: string;
}

export function spentMissing(typed: SpentTyped, currency: string | null): Hindrance | null {
  if (currency === null) return { field: "", sentence: SPENT.no_currency };
  return isSome(typed.amount) ? null : { field: "amount", sentence: SPENT.choose_amount };
}

/** The body of `expense`. */
export function expenseOf(typed: SpentTyped, batch: string, currency: string | null): Body {
  const says = typed.says.trim();
  return {
    batch,
    part: typed.part,
    ...(says === "" ? {} : { says }),
    amount: typedNumber(typed.amount) ?? "",
    currency: currency ?? "",
  };
}

/** The whole new body of a row, with another number in it. */
export function rowBody(row: Worked | Spent, batch: string, typed: string): Body {
  const number = typedNumber(typed) ?? "";
  if ("minutes" in row) {
    const { member, name, pay_per_hour } = row;
    return {
      batch,
      ...(member === null ? { name } : { member }),
      minutes: number,
      ...(row.is_paid ? {} : { is_paid: false }),
      ...(pay_per_hour === null ? {} : { pay_per_hour }),
    };
  }
  const { part, says, currency } = row;
  return { batch, part, ...(says === null ? {} : { says }), amount: number, currency };
}

export interface PaidTyped {
  [field: string]: string;
  price: string;
  reason: string;
}

/** What was given is a price too: nothing may be typed as 0. */
export function paidMissing(
  typed: PaidTyped,
  { currency, isCorrected }: { currency: string | null; isCorrected: boolean },
): Hindrance | null {
  if (currency === null) return { field: "", sentence: SPENT.no_currency };
  if (typedNumber(typed.price) === null) return { field: "price", sentence: PAID.choose_price };
  return isCorrected && typed.reason.trim() === ""
    ? { field: "reason", sentence: PAID.choose_reason }
    : null;
}

export interface RatesTyped {
  [field: string]: string;
  since: string;
  pay: string;
  by: string;
  rate: string;
  percent_of: string;
  of: string;
  percent: string;
  commission: string;
  coin: string;
  rule: string;
}

/** The body of `price_asked`; without a size of pack it is of every size. */
export function askedBody(
  said: { material: string; for_whom: string; pack_net: Quantity | null; price: string },
  since: string,
  currency: string | null,
): Body {
  const { material, for_whom, pack_net, price } = said;
  const pack = pack_net === null ? {} : { pack_net };
  return { material, for_whom, ...pack, since, price, currency: currency ?? "" };
}

/** What is said of the products of a batch: of each its sort, and its value as typed. */
export interface SharedTyped {
  [field: string]: string;
  by: string;
}

/** The first open thing about the products, null when all is there. */
export function sharedMissing(
  typed: SharedTyped,
  lots: readonly string[],
  currency: string | null,
): Hindrance | null {
  if (currency === null) return { field: "", sentence: SPENT.no_currency };
  const main = lots.filter((lot) => typed[`sort ${lot}`] !== "by_product");
  if (main.length === 0) return { field: "", sentence: SHARED.one_main };
  const open = lots.find((lot) => hasValue(typed, lot, main.length) && !isTyped(typed, lot));
  return open === undefined ? null : { field: open, sentence: SHARED.choose_value };
}

/** Of a by-product its value is asked, of main products where they share by it. */
export function hasValue(typed: SharedTyped, lot: string, mainCount: number): boolean {
  return typed[`sort ${lot}`] === "by_product" || (mainCount > 1 && typed.by === "sales_value");
}

function isTyped(typed: SharedTyped, lot: string): boolean {
  return typedNumber(typed[`value ${lot}`] ?? "") !== null;
}

/** The body of `cost_shared`. */
export function sharedBody(
  typed: SharedTyped,
  lots: readonly string[],
  { batch, currency }: { batch: string; currency: string | null },
): Body {
  return {
    batch,
    by: typed.by,
    currency: currency ?? "",
    products: lots.map((lot) => {
      const value = typedNumber(typed[`value ${lot}`] ?? "");
      const sort = typed[`sort ${lot}`] ?? "main";
      return { lot, sort, ...(value === null ? {} : { value_each: value }) };
    }),
  };
}

/** The first open number of the rates, null when all is there: a half would be left out unsaid. */
export function ratesMissing(
  typed: RatesTyped,
): { field: "rate" | "percent" | "coin"; sentence: string } | null {
  const isOpen = (name: string) => typedNumber(typed[name] ?? "") === null;
  if (typed.by !== "none" && isOpen("rate"))
    return { field: "rate", sentence: SPENT.choose_amount };
  if (isOpen("percent") && isOpen("coin") && isOpen("commission")) return null;
  if (isOpen("percent")) return { field: "percent", sentence: SPENT.choose_amount };
  if (!isSome(typed.coin)) return { field: "coin", sentence: PRICE.coin_wrong };
  const kept = (typed.of === "cost" ? 0 : Number(typed.percent)) + Number(typed.commission);
  return kept < 100 ? null : { field: "percent", sentence: PRICE.impossible };
}

/** The body of `rates_set`; what was left blank is left out. */
export function ratesBody(typed: RatesTyped, cooperative: string): Body {
  const pay = typedNumber(typed.pay);
  const rate = typedNumber(typed.rate);
  const percent = typedNumber(typed.percent);
  const coin = typedNumber(typed.coin);
  const commission = typedNumber(typed.commission);
  return {
    cooperative,
    since: typed.since,
    ...(pay === null ? {} : { pay_per_hour: pay }),
    ...(typed.by === "none" || rate === null ? {} : { overhead: overheadOf(typed, rate) }),
    ...(percent === null || coin === null
      ? {}
      : {
          proposal: {
            of: typed.of,
            percent,
            ...(commission === null ? {} : { commission_percent: commission }),
            coin,
            rule: typed.rule,
          },
        }),
  };
}

/** Of what its percent is, where it is one. */
function overheadOf({ by, percent_of }: RatesTyped, rate: string): Body {
  return by === "percent" ? { by, rate, percent_of } : { by, rate };
}

function isSome(typed: string): boolean {
  const number = typedNumber(typed);
  return number !== null && !parseDecimal(number).isZero();
}

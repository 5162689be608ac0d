/** What stands on the stall's table: products, how many came and are left, which lot to sell from. */
import type { Against } from "../../calc/against.ts";
import { amountIn } from "../../calc/bodies.ts";
import { difference, parseDecimal, plain, product, total, ZERO } from "../../calc/numbers.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import type { LotState } from "../../calc/stock.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { againstLot } from "../../state/stock.ts";
import { amountWords } from "../../text/numbers.ts";
import { askedPrice } from "../common/asked.ts";
import { materialOf } from "../common/lots.ts";

/** One lot on the table. `left` may lie below zero; `sold` is today's. */
export interface StallLot {
  lot: string;
  unit: string;
  left: string;
  sold: string;
  life: { sort: string; on: string } | null;
  made_on: string | null;
  pack_net: LotState["pack_net"];
  /** What speaks against selling it today. */
  against: readonly Against[];
}

/** One product in one size of pack, its lots in the order in which they should be sold. */
export interface Good {
  /** Of this product in this size, among all on the table. */
  key: string;
  material: string;
  name: string;
  unit: string;
  price: string | null;
  left: string;
  sold: string;
  came: string;
  /** How many of those left are in lots that should not be sold. */
  kept_back: string;
  lots: StallLot[];
}

/** Everything that stands at the stall or was sold there today, by name. */
export function goodsAt(place: string, on: string): Good[] {
  const lots = new Map<string, { material: string; group: StallLot[] }>();
  for (const { state } of sheetsOf<LotState>("lot").value) {
    const found = stallLot(state, place, on);
    if (found === null || state.material === null) continue;
    const key = sizeKey(state.material, found);
    const { group } = lots.get(key) ?? { group: [] };
    lots.set(key, { material: state.material, group: [...group, found] });
  }
  const goods = [...lots].map(([key, { material, group }]) => good(key, material, group));
  return named(goods).sort((a, b) => TEXT_ORDER(a.name, b.name));
}

/** The same for lots of one product in packs alike: 0.25 kg is 250 g. */
export function sizeKey(material: string, { pack_net }: Pick<StallLot, "pack_net">): string {
  const net = amountIn({ pack_net }, "pack_net");
  return net === null ? material : `${material} ${plain(net.value)} ${net.unit}`;
}

/** A product that stands here in several sizes is told apart by them: each has its price. */
export function named(goods: readonly Good[]): Good[] {
  return goods.map((each) => {
    const net = each.lots[0]?.pack_net ?? null;
    const isOnly = goods.every(
      ({ key, material }) => key === each.key || material !== each.material,
    );
    if (isOnly || net === null) return each;
    return { ...each, name: `${each.name}, ${amountWords(net.amount, net.unit)}` };
  });
}

/** How many pieces were sold here today, over all products. */
export function soldToday(goods: readonly Good[]): string {
  return plain(total(goods.map((each) => parseDecimal(each.sold))));
}

/** How a sale is spread over lots: the first that has some left, what is too much on the last. */
export function shares(
  count: string,
  lots: readonly StallLot[],
): { lot: string; amount: string }[] {
  let rest = parseDecimal(count);
  const parts: { lot: string; amount: string }[] = [];
  for (const each of lots) {
    const left = parseDecimal(each.left);
    if (left.isNegative() || left.isZero() || rest.isZero()) continue;
    const part = left.compare(rest) < 0 ? left : rest;
    parts.push({ lot: each.lot, amount: plain(part) });
    rest = difference(rest, part);
  }
  if (rest.isZero()) return parts;
  const last = parts.pop() ?? { lot: lots.at(-1)?.lot ?? "", amount: "0" };
  return [...parts, { lot: last.lot, amount: plain(total([parseDecimal(last.amount), rest])) }];
}

/**
 * The lots to sell from: the chosen one, else those nothing speaks against. Where no such lot has
 * any left, the others: that is asked about before it is written.
 */
export function lotsToSell(good: Good, chosen: string | null): readonly StallLot[] {
  const one = good.lots.filter((each) => each.lot === chosen);
  if (one.length > 0) return one;
  const free = good.lots.filter((each) => each.against.length === 0);
  return free.some(hasLeft) || !good.lots.some(hasLeft) ? free : good.lots;
}

function hasLeft({ left }: StallLot): boolean {
  return parseDecimal(left).compare(ZERO) > 0;
}

/** What to ask for so many; null without a price. */
export function sumOf(price: string | null, count: string): string | null {
  return price === null ? null : plain(product(parseDecimal(price), parseDecimal(count)));
}

/** Whether none is left, by the record. */
export function isSoldOut(good: Good): boolean {
  return parseDecimal(good.left).compare(ZERO) <= 0;
}

function stallLot(state: LotState, place: string, on: string): StallLot | null {
  const left = state.places[place] ?? "0";
  const sold = state.went_to.find((way) => way.to === `day:${place}:${on}`)?.amount ?? "0";
  if (left === "0" && sold === "0") return null;
  const { lot, life, made_on, pack_net } = state;
  const against = againstLot(state, on);
  return { lot, unit: state.unit ?? "pc", left, sold, life, made_on, pack_net, against };
}

function good(key: string, material: string, group: StallLot[]): Good {
  const lots = [...group].sort(
    (a, b) =>
      TEXT_ORDER(a.life?.on ?? "9", b.life?.on ?? "9") ||
      TEXT_ORDER(a.made_on ?? "9", b.made_on ?? "9") ||
      TEXT_ORDER(a.lot, b.lot),
  );
  const sum = (field: "left" | "sold", of = lots) =>
    total(of.map((lot) => parseDecimal(lot[field])));
  const keptBack = lots.filter(({ against, left }) => against.length > 0 && !left.startsWith("-"));
  const defined = materialOf(material);
  return {
    key,
    material,
    name: defined?.name ?? material,
    unit: lots[0]?.unit ?? "pc",
    price: askedPrice(material, { for_whom: "stall", pack_net: lots[0]?.pack_net ?? null }),
    left: plain(sum("left")),
    sold: plain(sum("sold")),
    came: plain(total([sum("left"), sum("sold")])),
    kept_back: plain(sum("left", keptBack)),
    lots,
  };
}

/** What the hands at the stall are doing: the product chosen, the question in the bench, the last deed. */
import { type Signal, useSignal } from "@preact/signals";
import { lacksReason } from "../common/against.ts";
import { nowMs } from "../common/edge.ts";
import type { Hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import type { Good } from "./goods.ts";
import { type Deed, isGivenAway, type Last, partsOf, tookBack, written } from "./selling.ts";

/** What the bench asks: how many (of which deed), a typed number, a price, a lot, what it was. */
export type Asks = "count" | "typed" | "price" | "lot" | "deed" | "return" | "despite";

/** What waits for a reason: the count, its lots, and the words typed so far. */
export interface Despite {
  count: string;
  lots: readonly string[];
  reason: string;
}

const NO_REASON: Despite = { count: "", lots: [], reason: "" };

/** Everything the parts of the stall share. */
export interface Stall {
  place: string;
  good: Good | null;
  asks: Signal<Asks>;
  deed: Signal<Deed>;
  typed: Signal<string>;
  lot: Signal<string | null>;
  prices: Signal<Readonly<Record<string, string>>>;
  price: string | null;
  /** How many are asked for although something speaks against their lots, and why. */
  despite: Signal<Despite>;
  last: Signal<Last | null>;
  found: Signal<Hindrance | null>;
  choose: (key: string) => void;
  keep: (count: string) => void;
  takeBackLast: () => void;
}

/** `goods` are what stands on the table now. */
export function useStall(place: string, goods: readonly Good[]): Stall {
  const chosen = useSignal<string | null>(null);
  const asks = useSignal<Asks>("count");
  const deed = useSignal<Deed>("sale");
  const typed = useSignal("");
  const lot = useSignal<string | null>(null);
  const prices = useSignal<Readonly<Record<string, string>>>({});
  const despite = useSignal<Despite>(NO_REASON);
  const last = useSignal<Last | null>(null);
  const found = useSignal<Hindrance | null>(null);
  const good = goods.find((each) => each.key === chosen.value) ?? null;
  const price = good === null ? null : (prices.value[good.key] ?? good.price);

  function backToSales() {
    asks.value = "count";
    deed.value = "sale";
    typed.value = "";
    despite.value = NO_REASON;
  }
  function choose(key: string) {
    if (key !== chosen.value) lot.value = null;
    chosen.value = key;
    backToSales();
  }
  async function keep(count: string) {
    if (good === null) return;
    const { reason } = despite.value;
    const what = { deed: deed.value, place, good, count, price, lot: lot.value, despite: reason };
    const lots = isGivenAway(what.deed) ? partsOf(what).map((part) => part.lot) : [];
    if (lacksReason(lots, reason)) {
      despite.value = { count, lots, reason };
      asks.value = "despite";
      return;
    }
    const at = new Date(nowMs()).toISOString();
    const show = (entries: string[]) => {
      last.value = { deed: what.deed, name: good.name, count, at, entries };
      tremble(1);
    };
    const answer = await written(what, (entries) => {
      show(entries);
      backToSales();
    });
    found.value = answer.found;
    if (answer.found !== null && answer.entries.length > 0) show(answer.entries);
  }
  async function takeBackLast() {
    if (last.value === null) return;
    found.value = await tookBack(last.value);
    if (found.value === null) last.value = null;
  }
  return {
    place,
    good,
    asks,
    deed,
    typed,
    lot,
    prices,
    price,
    despite,
    last,
    found,
    choose,
    keep: (count) => void keep(count),
    takeBackLast: () => void takeBackLast(),
  };
}

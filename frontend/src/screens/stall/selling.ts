/** What is written at the stall: sales and what is not a sale, and how the last one is taken back. */
import { record, takeBack } from "../../state/record.ts";
import type { Entry, Saved } from "../../state/types.ts";
import { STALL } from "../../text/stall.ts";
import { despitePart } from "../common/against.ts";
import { today } from "../common/edge.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { type Good, lotsToSell, type StallLot, shares } from "./goods.ts";

/** What happened to the goods. */
export type Deed = "sale" | "sample" | "waste" | "return_fit" | "return_unfit";

/** What was written last, to be shown and taken back. */
export interface Last {
  deed: Deed;
  name: string;
  count: string;
  at: string;
  entries: string[];
}

/** One deed. `lot` is the chosen lot; null spreads it over the lots in their order. */
export interface ToWrite {
  deed: Deed;
  place: string;
  good: Good;
  count: string;
  price: string | null;
  lot: string | null;
  /** Why it is sold although something speaks against it; "" where nobody said. */
  despite: string;
}

/**
 * Writes one entry a lot; stops at the first that cannot be kept and says why. `onKept` is told
 * when the last one is on this phone: a buyer waits, the sums may come a moment later.
 */
export async function written(
  deed: ToWrite,
  onKept: (entries: string[]) => void,
): Promise<{ entries: string[]; found: Hindrance | null }> {
  const entries: string[] = [];
  const parts = partsOf(deed);
  for (const part of parts) {
    const answer = await oneLot(deed, part, ({ id }) => {
      entries.push(id);
      if (part === parts.at(-1)) onKept(entries);
    });
    if (!("saved" in answer)) return { entries, found: hindrance(answer) };
  }
  return { entries, found: null };
}

/** Takes back every entry of the last deed. */
export async function tookBack(last: Last): Promise<Hindrance | null> {
  for (const entry of last.entries) {
    const found = hindrance(await takeBack(entry));
    if (found !== null) return found;
  }
  return null;
}

/** How much of which lot a deed takes; what came back is put to any lot of the product. */
export function partsOf({ deed, good, count, lot }: Omit<ToWrite, "despite">) {
  const isGiven = isGivenAway(deed);
  return shares(count, isGiven ? lotsToSell(good, lot) : chosenLots(good, lot));
}

/** Sold or tasted: then what is held, recalled or expired is asked about first. */
export function isGivenAway(deed: Deed): boolean {
  return deed === "sale" || deed === "sample";
}

function chosenLots(good: Good, lot: string | null): readonly StallLot[] {
  const chosen = good.lots.filter((each) => each.lot === lot);
  return chosen.length > 0 ? chosen : good.lots;
}

function oneLot(
  deed: ToWrite,
  share: { lot: string; amount: string },
  onKept: (entry: Entry) => void,
): Promise<Saved> {
  const { place } = deed;
  const told = { onKept };
  const amount = { amount: share.amount, unit: deed.good.unit };
  const despite = isGivenAway(deed.deed) ? despitePart([share.lot], deed.despite) : {};
  const about = { lot: share.lot, amount, place, ...despite };
  if (deed.deed === "sale") {
    const price = deed.price === null ? {} : { price_each: deed.price };
    return record("sale", { ...about, on: today(), ...price }, told);
  }
  if (deed.deed === "sample" || deed.deed === "waste") {
    return record("loss", { ...about, reason: deed.deed, stage: "stall" }, told);
  }
  const isFit = deed.deed === "return_fit";
  const condition = isFit ? "fit" : "unfit";
  const reason = isFit ? STALL.reason_unopened : STALL.reason_damaged;
  return record("return", { ...about, on: today(), condition, reason }, told);
}

/** What is asked for a product: by pack, from a day on, at the stall or from a business. */

import { amountIn, type Body, itemsIn, type Quantity, quantityIn, textIn } from "./bodies.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  type Note,
  notesAbout,
  type Standing,
  settled,
  TEXT_ORDER,
} from "./record.ts";
import { idIn } from "./subjects.ts";

export const ASKED_FOLD = 1;

/** A price for each pack of one size, or of every size where none is named. */
export interface AskedPrice {
  readonly entry: string;
  readonly since: string;
  readonly for_whom: string | null;
  readonly pack_net: Quantity | null;
  readonly price: string | null;
  readonly currency: string | null;
  readonly author: string;
  readonly on: string;
}

/** All prices of a product, the earliest first; of two for one day the last counts. */
export interface AskedState {
  readonly material: string;
  readonly prices: readonly AskedPrice[];
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/** Who is asked, for which size of pack. */
export interface AskedOf {
  readonly for_whom: string;
  readonly pack_net: Quantity | null;
}

/** Fold all entries about `asked:<material>`. */
export function askedState(subject: string, facts: Iterable<Fact>): AskedState {
  const material = idIn(subject);
  const record = asItStands(facts);
  const rows = record.standing
    .filter((each) => each.kind === "price_asked" && textIn(each.body, "material") === material)
    .map(priceOf);
  return {
    material,
    prices: rows.sort((a, b) => TEXT_ORDER(a.since, b.since)),
    findings: settled(record.findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

/**
 * The price in force on a day: of this size of pack before that of every size; a business without a
 * price of its own is asked what the stall asks. Null where nobody said one.
 */
export function askedOn(state: object, on: string, { for_whom, pack_net }: AskedOf): Body | null {
  const rows = itemsIn({ ...state }, "prices").filter((row) => (textIn(row, "since") ?? "") <= on);
  const whose = for_whom === "business" ? ["business", "stall"] : ["stall"];
  for (const who of whose) {
    const own = rows.filter((row) => textIn(row, "for_whom") === who);
    const same = own.filter((row) => isOf(row, pack_net));
    const every = own.filter((row) => row.pack_net == null);
    const found = (same.length > 0 ? same : every).at(-1);
    if (found !== undefined) return found;
  }
  return null;
}

function isOf(row: Body, packNet: Quantity | null): boolean {
  const asked = amountIn(row, "pack_net");
  const pack = amountIn({ pack_net: packNet === null ? null : { ...packNet } }, "pack_net");
  if (asked === null || pack === null || asked.unit !== pack.unit) return false;
  return asked.value.compare(pack.value) === 0;
}

function priceOf(entry: Standing): AskedPrice {
  return {
    entry: entry.id,
    since: textIn(entry.body, "since") ?? entry.local_date,
    for_whom: textIn(entry.body, "for_whom"),
    pack_net: quantityIn(entry.body, "pack_net"),
    price: textIn(entry.body, "price"),
    currency: textIn(entry.body, "currency"),
    author: entry.author,
    on: entry.local_date,
  };
}

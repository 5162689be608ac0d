/**
 * What a batch cost, worked out over sheets when somebody asks: like a trace, a walk.
 *
 * No sheet holds this sum. It rests on the sheets of the batch, of its lots, of what was paid for
 * them and of the batches they come from, so that a price that comes late moves every cost that
 * rests on it, and in whatever order things arrived the cost is the same.
 */

import { amountIn, type Body, decimalIn, itemsIn, sumOf } from "./bodies.ts";
import { CostWalk, type Item } from "./cost_walk.ts";
import type { BatchCost } from "./costs.ts";
import type { Lacking, StatesBySubject } from "./lot_worth.ts";
import {
  type Decimal,
  ONE,
  parseDecimal,
  plain,
  product,
  total,
  written,
  ZERO,
} from "./numbers.ts";

const THOUSANDTH = parseDecimal("0.001");
const PER_OF: Readonly<Record<string, string>> = { pc: "pc", g: "kg", mL: "L" };

/** What one lot, member or expense cost, in coins; `amount` of a lot in its base unit. */
export interface Line {
  readonly part: string;
  readonly of: string;
  readonly material: string | null;
  readonly amount: string | null;
  readonly unit: string | null;
  readonly minutes: string | null;
  readonly entries: readonly string[];
  readonly cost: string;
  readonly is_paid: boolean;
}

/**
 * What a batch cost. Lines and parts add up to `known`; `total` is null, and so is what rests on
 * it, while anything is missing. Good packs are pieces, or kg or L of a mass.
 */
export interface CostAnswer {
  readonly batch: string;
  readonly currency: string | null;
  readonly places: number;
  readonly lines: readonly Line[];
  readonly parts: Readonly<Record<string, string>>;
  readonly known: string;
  readonly unpaid: string;
  readonly total: string | null;
  readonly missing: readonly Lacking[];
  readonly per: string | null;
  readonly good: string | null;
  readonly filled: string | null;
  readonly per_good_pack: string | null;
  readonly per_filled_pack: string | null;
  readonly per_good_pack_paid: string | null;
  readonly minutes: string | null;
}

/**
 * The actual cost of a batch over the sheets at hand; `cooperative` is the id of whose currency
 * and rates count. For a view, `seen` says what its lots of each material cost.
 */
export function costOfBatch(
  batch: string,
  cooperative: string,
  sheets: StatesBySubject,
  seen?: ReadonlyMap<string, Decimal>,
): CostAnswer {
  const walk = new CostWalk(cooperative, sheets);
  const items = walk.itemsOf(batch, [`batch:${batch}`], seen);
  const packs = packsOf({ ...sheets.get(`batch:${batch}`) });
  const made = walk.sumOf(items, packs, walk.places);
  const known = items.filter((item) => item.lacking.length === 0);
  const minutes = items.flatMap((item) => (item.minutes === null ? [] : [item.minutes]));
  return {
    batch,
    currency: walk.currency,
    places: walk.places,
    lines: known.map((item, place) => lineOf(item, made.lines[place])),
    parts: Object.fromEntries(
      Object.entries(made.parts).map(([part, value]) => [part, written(value)]),
    ),
    known: written(made.known),
    unpaid: written(made.unpaid),
    total: text(made.total),
    missing: items.flatMap((item) => item.lacking),
    per: packs.per,
    good: packs.good === null ? null : plain(packs.good),
    filled: packs.filled === null ? null : plain(packs.filled),
    per_good_pack: text(made.per_good_pack),
    per_filled_pack: text(made.per_filled_pack),
    per_good_pack_paid: text(made.per_good_pack_paid),
    minutes: minutes.length === 0 ? null : plain(total(minutes)),
  };
}

interface PacksOf {
  readonly per: string | null;
  readonly good: Decimal | null;
  readonly filled: Decimal | null;
}

/** Good ones, and all that were filled where somebody counted rejects. */
function packsOf(state: Body): PacksOf {
  const outputs = itemsIn(state, "outputs");
  const good = sumOf(outputs.map((each) => amountIn({ amount: each }, "amount")));
  if (good === null) return { per: null, good: null, filled: null };
  const rejected = outputs.map((each) => decimalIn(each, "rejected")).filter((x) => x !== null);
  const factor = good.unit === "pc" ? ONE : THOUSANDTH;
  return {
    per: PER_OF[good.unit] ?? null,
    good: product(good.value, factor),
    filled: rejected.length === 0 ? null : product(total([good.value, ...rejected]), factor),
  };
}

function lineOf(item: Item, line: BatchCost["lines"][number] | undefined): Line {
  return {
    part: line?.part ?? "",
    of: item.of,
    material: item.material,
    amount: item.amount === null ? null : plain(item.amount),
    unit: item.unit,
    minutes: item.minutes === null ? null : plain(item.minutes),
    entries: item.entries,
    cost: written(line?.cost ?? ZERO),
    is_paid: item.what.sort !== "labour" || item.what.cost.is_paid,
  };
}

function text(x: Decimal | null): string | null {
  return x === null ? null : written(x);
}

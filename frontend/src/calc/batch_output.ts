/** What came out of a batch: packs, rejects, losses by stage and reason, lots in and out. */

import {
  type Amount,
  amountIn,
  type Body,
  objectIn,
  type Quantity,
  quantityIn,
  sumOf,
  textIn,
} from "./bodies.ts";
import { type Decimal, plain, product, total, ZERO } from "./numbers.ts";
import { type Standing, TEXT_ORDER } from "./record.ts";
import type { Life } from "./stock.ts";
import { weighed, weighingOf } from "./weighing.ts";

/** Good packs, or a good mass, that became a lot; `rejected` in the same unit. */
export interface Output {
  readonly entry: string;
  readonly lot: string | null;
  readonly material: string | null;
  readonly amount: string | null;
  readonly unit: string | null;
  readonly pack_net: Quantity | null;
  readonly rejected: string | null;
  readonly life: Life | null;
}

/** What was lost from a batch; amount in a base unit. */
export interface Loss {
  readonly entry: string;
  readonly reason: string | null;
  readonly stage: string | null;
  readonly line: string | null;
  readonly amount: string | null;
  readonly unit: string | null;
}

/** How much of a lot went into a batch. */
export interface LotIn {
  readonly lot: string;
  readonly material: string | null;
  readonly amount: string;
  readonly unit: string | null;
}

/** How much of a lot came out of a batch. */
export interface LotOut {
  readonly lot: string;
  readonly amount: string;
  readonly unit: string | null;
}

/** What was filled and what of it was good, in g; packs and rejected ones in one unit. */
export interface Packed {
  readonly filled: Decimal | null;
  readonly good: Decimal | null;
  readonly packs: Decimal | null;
  readonly rejected: Decimal | null;
}

/**
 * All outputs of a batch together. A blank number of rejects says nothing about rejects; the mass
 * filled is that of the packs that were recorded.
 */
export function packedOut(entries: readonly Standing[]): Packed {
  const outputs = entries.filter((each) => each.kind === "output").map((each) => each.body);
  const rejected = outputs.map((body) => amountIn(body, "rejected")).filter((a) => a !== null);
  const every = outputs.map((body) => amountIn(body, "amount"));
  return {
    filled: massOf(outputs, ["amount", "rejected"]),
    good: massOf(outputs, ["amount"]),
    packs: sumOf([...every, ...rejected])?.value ?? null,
    rejected: sumOf(rejected)?.value ?? null,
  };
}

/**
 * Sums in g of what was lost in one stage, by reason in alphabetical order. What was lost in
 * pieces has no mass of its own; a loss without a stage is seen when the kettle is emptied.
 */
export function lostByReason(
  entries: readonly Standing[],
  stage: string,
): ReadonlyMap<string, Decimal> {
  const sums = new Map<string, Decimal>();
  for (const { kind, body } of entries) {
    const amount = amountIn(body, "amount");
    const isHere = kind === "loss" && (textIn(body, "stage") ?? "filling") === stage;
    if (!isHere || amount === null || amount.unit !== "g") continue;
    const reason = textIn(body, "reason") ?? "other";
    sums.set(reason, total([sums.get(reason) ?? ZERO, amount.value]));
  }
  return new Map([...sums].sort(([a], [b]) => TEXT_ORDER(a, b)));
}

/** An output as the batch sheet shows it. */
export function writtenOutput(entry: Standing): Output {
  const amount = amountIn(entry.body, "amount");
  const rejected = amountIn(entry.body, "rejected");
  const life = objectIn(entry.body, "life");
  return {
    entry: entry.id,
    lot: textIn(entry.body, "lot"),
    material: textIn(entry.body, "material"),
    amount: amount === null ? null : plain(amount.value),
    unit: amount?.unit ?? null,
    pack_net: quantityIn(entry.body, "pack_net"),
    rejected: rejected === null ? null : plain(rejected.value),
    life: life === null ? null : { sort: textIn(life, "sort") ?? "", on: textIn(life, "on") ?? "" },
  };
}

/** A loss as the batch sheet shows it. */
export function writtenLoss(entry: Standing): Loss {
  const amount = amountIn(entry.body, "amount");
  return {
    entry: entry.id,
    reason: textIn(entry.body, "reason"),
    stage: textIn(entry.body, "stage"),
    line: textIn(entry.body, "line"),
    amount: amount === null ? null : plain(amount.value),
    unit: amount?.unit ?? null,
  };
}

/**
 * Every lot weighed in, by code and unit. One whose unit measures no amount is named with what
 * was read: a trace must not lose a way.
 */
export function lotsIn(entries: readonly Standing[]): LotIn[] {
  const rows = new Map<string, Row>();
  for (const { kind, body } of entries) {
    if (kind !== "weigh_in") continue;
    const weighing = weighingOf(body);
    const read = weighing === null ? null : { value: weighing.net, unit: weighing.unit };
    addRow(rows, body, weighed(body) ?? read);
  }
  return inRowOrder(rows).map(({ lot, material, value, unit }) => ({
    lot,
    material,
    amount: plain(value),
    unit,
  }));
}

/** Every lot that came out, by code and unit. */
export function lotsOut(entries: readonly Standing[]): LotOut[] {
  const rows = new Map<string, Row>();
  for (const { kind, body } of entries) {
    if (kind === "output") addRow(rows, body, amountIn(body, "amount"));
  }
  return inRowOrder(rows).map(({ lot, value, unit }) => ({ lot, amount: plain(value), unit }));
}

interface Row {
  readonly lot: string;
  readonly material: string | null;
  readonly value: Decimal;
  readonly unit: string | null;
}

function addRow(rows: Map<string, Row>, body: Body, amount: Amount | null): void {
  const lot = textIn(body, "lot");
  if (lot === null) return;
  const unit = amount?.unit ?? null;
  const key = JSON.stringify([lot, unit]);
  const before = rows.get(key) ?? { lot, material: textIn(body, "material"), value: ZERO, unit };
  rows.set(key, { ...before, value: total([before.value, amount?.value ?? ZERO]) });
}

function inRowOrder(rows: ReadonlyMap<string, Row>): Row[] {
  return [...rows.values()].sort(
    (a, b) => TEXT_ORDER(a.lot, b.lot) || TEXT_ORDER(a.unit ?? "", b.unit ?? ""),
  );
}

/** Mass in g of these amounts of all outputs; null where a pack has no net mass. */
function massOf(outputs: readonly Body[], names: readonly string[]): Decimal | null {
  const masses = outputs.flatMap((body) =>
    names
      .map((name) => ({ name, amount: amountIn(body, name) }))
      .filter(({ name, amount }) => name === "amount" || amount !== null)
      .map(({ amount }) => massInG(body, amount)),
  );
  const known = masses.filter((mass) => mass !== null);
  return masses.length > 0 && known.length === masses.length ? total(known) : null;
}

function massInG(body: Body, amount: Amount | null): Decimal | null {
  if (amount === null || amount.unit === "g") return amount?.value ?? null;
  const packNet = amountIn(body, "pack_net");
  if (amount.unit !== "pc" || packNet === null || packNet.unit !== "g") return null;
  return product(amount.value, packNet.value);
}

/** The stock as a screen shows it: lots with their levels, by material, soonest first. */
import { parseDecimal, plain, total } from "../../calc/numbers.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import { daysLeft } from "../../calc/shelf_life.ts";
import type { LotState } from "../../calc/stock.ts";
import { folded } from "../../parts/Choices.tsx";
import { sheetsOf } from "../../state/sheets.ts";
import { allStock, type LotInStock, stockAt } from "../../state/stock.ts";
import { materialOf } from "../common/lots.ts";

/** A material with its lots, soonest first. `whole` is what these lots held when they were made. */
export interface ShelfRow {
  material: string | null;
  name: string;
  unit: string;
  amount: string;
  whole: string;
  lots: LotInStock[];
}

const SOON_DAYS = 7;

/** Lots at a place (everywhere without one) whose code or material holds every word searched for. */
export function lotsFound(place: string | null, search: string, unknown: string): LotInStock[] {
  const words = folded(search).split(/\s+/).filter(Boolean);
  const lots = place === null ? allStock() : stockAt(place);
  return lots.filter((lot) => {
    const text = folded(`${lot.lot} ${materialOf(lot.material)?.name ?? unknown}`);
    return words.every((word) => text.includes(word));
  });
}

/** Lots below zero: they come first, for somebody should explain them. */
export function belowZero(lots: readonly LotInStock[]): LotInStock[] {
  return lots.filter((lot) => lot.is_negative);
}

/** Lots whose date is past or within a week, soonest first. */
export function toUseFirst(lots: readonly LotInStock[], today: string): LotInStock[] {
  return lots
    .filter((lot) => lot.life !== null && !lot.is_negative)
    .filter((lot) => daysLeft(lot.life?.on ?? today, today) <= SOON_DAYS);
}

/** By material, in the order of their names; those not known last. */
export function byMaterial(lots: readonly LotInStock[], unknown: string): ShelfRow[] {
  const groups = new Map<string, LotInStock[]>();
  for (const lot of lots) {
    const key = `${lot.material ?? ""} ${lot.unit}`;
    groups.set(key, [...(groups.get(key) ?? []), lot]);
  }
  const made = madeByLot();
  return [...groups.values()]
    .map((group) => shelfRow(group, made, unknown))
    .sort((a, b) => TEXT_ORDER(folded(a.name), folded(b.name)));
}

function shelfRow(
  lots: LotInStock[],
  made: ReadonlyMap<string, string>,
  unknown: string,
): ShelfRow {
  const [first] = lots;
  const sum = (amounts: string[]) => plain(total(amounts.map(parseDecimal)));
  return {
    material: first?.material ?? null,
    name: materialOf(first?.material ?? null)?.name ?? unknown,
    unit: first?.unit ?? "pc",
    amount: sum(lots.map((lot) => lot.amount)),
    whole: sum(lots.map((lot) => made.get(lot.lot) ?? "0")),
    lots,
  };
}

function madeByLot(): Map<string, string> {
  return new Map(
    sheetsOf<LotState>("lot").value.map(({ state }) => [state.lot, state.made] as const),
  );
}

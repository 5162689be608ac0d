/** Lots that should not be used or sold today, and the reason they are used all the same. */
import type { Against } from "../../calc/against.ts";
import { againstUse } from "../../state/stock.ts";
import { againstWords, DESPITE } from "../../text/holds.ts";
import { today } from "./edge.ts";

/** What speaks against any of these lots, each once. */
export function againstAny(lots: readonly string[]): Against[] {
  return [...new Set(lots.flatMap((lot) => againstUse(lot, today())))];
}

/** Those nothing speaks against come first; the others stay where they can be chosen. */
export function freeFirst<Lot extends { lot: string }>(lots: readonly Lot[]): Lot[] {
  const on = today();
  const isFree = (lot: Lot) => againstUse(lot.lot, on).length === 0;
  return [...lots.filter(isFree), ...lots.filter((lot) => !isFree(lot))];
}

/** The code of a lot, and in words what speaks against it. */
export function lotSays(lot: string): string {
  const against = againstUse(lot, today());
  return against.length === 0 ? lot : `${lot}, ${againstWords(against)}`;
}

/** One sentence for each lot something speaks against. */
export function againstSays(lots: readonly string[]): string[] {
  return [...new Set(lots)].flatMap((lot) => {
    const against = againstUse(lot, today());
    return against.length === 0 ? [] : [DESPITE.says(lot, againstWords(against))];
  });
}

/** The part of a body that says why; nothing where nothing speaks against the lots. */
export function despitePart(lots: readonly string[], reason: string): object {
  const what = againstAny(lots);
  return what.length === 0 ? {} : { despite: { what, reason: reason.trim() } };
}

/** Whether a reason is still to be given. */
export function lacksReason(lots: readonly string[], reason: string): boolean {
  return reason.trim() === "" && againstAny(lots).length > 0;
}

/** What a screen says about a lot: amount, date with its kind, how much of its life is left. */
import { parseDecimal, plain } from "../../calc/numbers.ts";
import { daysLeft, type LifeSort, lifeState } from "../../calc/shelf_life.ts";
import { fromBase, inBase } from "../../calc/units.ts";
import type { LotTagState } from "../../parts/LotTag.tsx";
import { type Defined, materials, places } from "../../state/stock.ts";
import { LOTS, lifeSortWord, packWords } from "../../text/lots.ts";
import { amountWords, figure } from "../../text/numbers.ts";

const SOON_DAYS = 7;
const LARGE: Record<string, string> = { g: "kg", mL: "L" };
const THOUSAND = parseDecimal("1000");
const SMALL: Record<string, string> = { kg: "g", L: "mL" };
const SMALL_BELOW = parseDecimal("0.01");
const LARGE_PLACES = 9; // exact: base amounts carry at most six places

/** The definition of a material, if this phone knows it. */
export function materialOf(id: string | null): Defined | null {
  return materials.value.find((each) => each.id === id) ?? null;
}

/** kitchen, store, stall or box; null for a place this phone does not know. */
export function placeSort(id: string): string | null {
  return textField(places.value.find((each) => each.id === id) ?? null, "sort");
}

/** A text field of a definition; null where it has none. */
export function textField(defined: Defined | null, name: string): string | null {
  const value = defined?.fields[name];
  return typeof value === "string" ? value : null;
}

/** An amount for reading: `10004` g as 10.004 kg, `0.0004` kg as 0.4 g, every digit kept. */
function shownAmount(amount: string, unit: string): { amount: string; unit: string } {
  const [large, small] = [LARGE[unit], SMALL[unit]];
  const value = parseDecimal(amount);
  if (small !== undefined && !value.isZero() && value.abs().compare(SMALL_BELOW) < 0) {
    return { amount: plain(inBase(value, unit)), unit: small };
  }
  if (large === undefined || value.abs().compare(THOUSAND) < 0) return { amount, unit };
  return { amount: plain(fromBase(value, large, LARGE_PLACES)), unit: large };
}

/** The same as one text; pieces are called by the material's pack word: "48 jars". */
export function amountText(amount: string, unit: string, material: Defined | null = null): string {
  if (unit !== "pc") {
    const shown = shownAmount(amount, unit);
    return amountWords(shown.amount, shown.unit);
  }
  const word = packWords(amount, textField(material, "pack_word"));
  return word === "" ? figure(amount) : `${figure(amount)}\u00a0${word}`;
}

/** An amount of a plan or a summary, in the unit one thinks in; a dash where there is none. */
export function quantityText(
  quantity: { amount: string; unit: string } | null | undefined,
  material: Defined | null = null,
): string {
  return quantity ? amountText(quantity.amount, quantity.unit, material) : figure(null);
}

/** How a tag says a life: words, the tag's state, the share still ahead. */
export interface LifeShown {
  words: string | null;
  state: LotTagState;
  left: number | null;
}

/** A life seen from `today`; soon means within a week. */
export function lifeShown(
  life: { sort: string; on: string } | null,
  madeOn: string | null,
  today: string,
): LifeShown {
  if (life === null) return { words: null, state: "fine", left: null };
  const sort = lifeSortWord(life.sort);
  const left = daysLeft(life.on, today);
  const share = madeOn === null ? null : shareLeft(left, daysLeft(life.on, madeOn));
  const state = lifeState(life.on, today, knownSort(life.sort));
  if (state === "past_best") return { words: LOTS.past_best(life.on), state: "past", left: 0 };
  if (state === "expired") return { words: LOTS.past(sort, life.on), state: "past", left: 0 };
  if (state === "last_day") return { words: LOTS.last_day, state: "soon", left: share };
  const words = left === 1 ? LOTS.tomorrow(sort) : LOTS.on(sort, life.on);
  return { words, state: left <= SOON_DAYS ? "soon" : "fine", left: share };
}

/** For the tube only: a drawing, no record. */
function shareLeft(left: number, whole: number): number {
  return whole <= 0 ? 0 : Math.min(1, Math.max(0, left / whole));
}

function knownSort(sort: string): LifeSort {
  return sort === "best_before" || sort === "expires_on" ? sort : "use_by";
}

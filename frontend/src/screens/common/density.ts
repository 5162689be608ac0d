/** The published densities by name: which rows are called alike, what one says and how far others lie. */
import { signal } from "@preact/signals";
import {
  bestDensity,
  type DensityRow,
  type Spread,
  type SpreadRow,
  spreadOf,
  UNSTATED,
} from "../../calc/density.ts";
import { plain, rounded } from "../../calc/numbers.ts";
import { folded } from "../../parts/Choices.tsx";

/** The shipped table with its published ranges. */
export interface DensityTable {
  rows: readonly DensityRow[];
  ranges: readonly SpreadRow[];
}

/** A row to convert with and how far published figures for it lie apart. */
export interface DensityFound {
  key: string;
  row: DensityRow;
  spread: Spread | null;
}

const SHOWN_PLACES = 3; // of g/mL: published portions are weighed to two or three digits
const BETWEEN = "; "; // no ingredient or packing of the table holds one

/** The table once it is read; null before. It is a chunk of its own, loaded when it is needed. */
export const densityTable = signal<DensityTable | null>(null);

/** Reads the table; called again it does nothing. */
export async function readDensities(): Promise<void> {
  if (densityTable.value !== null) return;
  const read = await import("../../calc/tables/density.ts");
  densityTable.value = { rows: read.DENSITY_ROWS, ranges: read.SPREAD_ROWS };
}

/** What `density_of` of a material holds: the ingredient, and the packing where it is stated. */
export function densityKey(row: DensityRow): string {
  return UNSTATED.includes(row.packing)
    ? row.ingredient
    : `${row.ingredient}${BETWEEN}${row.packing}`;
}

/** The row a material converts with; null for a key the table does not know. */
export function densityOf(key: string, table: DensityTable): DensityFound | null {
  const [ingredient = "", packing] = key.split(BETWEEN);
  const packings = packing === undefined ? UNSTATED : [packing];
  for (const each of packings) {
    const row = bestDensity(table.rows, ingredient, each);
    if (row !== null) return { key, row, spread: spreadOf(row, table.rows, table.ranges) };
  }
  return null;
}

/** Every ingredient and packing once, in the order of the table. */
export function densityKeys(table: DensityTable): string[] {
  return [...new Set(table.rows.map(densityKey))];
}

/**
 * Keys called alike a material's name: those that share the most words, at least one; a word
 * counts in singular and plural, and the first word of the table's name counts before others.
 */
export function calledAlike(name: string, table: DensityTable, most: number): string[] {
  const words = wordsOf(name);
  const scored = densityKeys(table).map((key) => {
    const own = wordsOf(key);
    const shared = words.filter((word) => own.includes(word)).length;
    return { key, shared, isFirst: words.includes(own[0] ?? "") };
  });
  return scored
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared || Number(b.isFirst) - Number(a.isFirst))
    .slice(0, most)
    .map(({ key }) => key);
}

/** The figure and its range, ready to show; the range null where only one is published. */
export function densityShown(found: DensityFound): {
  value: string;
  low: string | null;
  high: string | null;
} {
  const { row, spread } = found;
  return {
    value: row.density_g_per_mL,
    low: spread === null ? null : plain(rounded(spread.low_g_per_mL, SHOWN_PLACES)),
    high: spread === null ? null : plain(rounded(spread.high_g_per_mL, SHOWN_PLACES)),
  };
}

function wordsOf(text: string): string[] {
  const words = folded(text).match(/[a-z]+/g) ?? [];
  return words.map((word) => (word.length > 3 ? word.replace(/s$/, "") : word));
}

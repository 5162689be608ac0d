/** What stands on a label, from the lot and the batch that made it. */
import type { BatchState } from "../../calc/batches.ts";
import { quantityIn } from "../../calc/bodies.ts";
import { parseDecimal } from "../../calc/numbers.ts";
import type { LotState } from "../../calc/stock.ts";
import { sheet } from "../../state/sheets.ts";
import { nameOf } from "../../state/stock.ts";
import { LABEL } from "../../text/label.ts";
import { lifeSortWord } from "../../text/lots.ts";
import { amountWords, dayWords } from "../../text/numbers.ts";
import { materialOf } from "../common/lots.ts";

/** What the code on a label says: the page of the lot where the house has an address, else its code. */
export function codeText(lot: string, house: string | null): string {
  return house === null ? lot : `${house}/#/lot/${lot}`;
}

/** Every line of a label, ready to show; null where there is nothing to say. */
export interface LabelLines {
  lot: string;
  /** That made it; not printed. */
  batch: string | null;
  name: string;
  net: string | null;
  life: string | null;
  made: string | null;
  ingredients: string | null;
  allergens: string | null;
}

/** Masses first by size; what is counted is packaging and is not an ingredient. */
function ingredientsOf(batch: BatchState): { id: string; name: string }[] {
  return batch.lines
    .filter((line) => line.in_base !== null && line.unit !== "pc" && line.material !== null)
    .sort((a, b) => parseDecimal(b.in_base ?? "0").compare(parseDecimal(a.in_base ?? "0")))
    .map((line) => ({ id: line.material ?? "", name: nameOf("material", line.material) }));
}

/** Allergens set up for these materials, each once, in the order of the list of kinds. */
function allergensOf(ids: readonly string[]): string[] {
  const found = ids.flatMap((id) => {
    const listed = materialOf(id)?.fields.allergens;
    return Array.isArray(listed) ? listed.filter((each) => typeof each === "string") : [];
  });
  return [...new Set(found)].sort();
}

/** The label of a lot this phone knows; null for one it does not. */
export function labelOf(code: string): LabelLines | null {
  const lot = sheet<LotState>(`lot:${code}`).value?.state;
  if (lot === undefined) return null;
  const batch =
    lot.batch === null ? null : (sheet<BatchState>(`batch:${lot.batch}`).value?.state ?? null);
  const ingredients = batch === null ? [] : ingredientsOf(batch);
  const material = lot.material;
  const allergens = allergensOf([...ingredients.map((each) => each.id), material ?? ""]);
  const net = lot.pack_net ?? quantityIn({ ...(materialOf(material)?.fields ?? {}) }, "pack_net");
  const place = batch?.place ?? Object.keys(lot.places)[0] ?? null;
  return {
    lot: code,
    batch: lot.batch,
    name: nameOf("material", material),
    net: net === null ? null : amountWords(net.amount, net.unit),
    life:
      lot.life === null ? null : `${lifeSortWord(lot.life.sort)} ${dayWords(lot.life.on, true)}`,
    made: lot.made_on === null ? null : LABEL.made(lot.made_on, nameOf("place", place)),
    ingredients: ingredients.length === 0 ? null : ingredients.map((each) => each.name).join(", "),
    allergens: allergens.length === 0 ? null : allergens.map(LABEL.allergen).join(", "),
  };
}

/** Lists a screen needs, computed from sheets: definitions by name, lots by what to use first. */
import type { ReadonlySignal } from "@preact/signals";
import type { Json } from "../store/rows.ts";

export interface Defined {
  id: string;
  name: string;
  is_retired: boolean;
  fields: Record<string, Json>;
  findings: Json[];
}
export interface RecipeVersion {
  entry: string;
  number: number;
  author: string;
  published_on: string;
  body: Record<string, Json>;
}
export interface Recipe {
  id: string;
  name: string;
  latest: RecipeVersion;
  versions: RecipeVersion[];
}
export interface LotInStock {
  lot: string;
  material: string | null;
  unit: string;
  /** On hand at the asked place, else everywhere; plain decimal in `unit` (g, mL, pc). */
  amount: string;
  places: Record<string, string>;
  life: { sort: string; on: string } | null;
  made_on: string | null;
  is_negative: boolean;
}

export declare const materials: ReadonlySignal<Defined[]>;
export declare const places: ReadonlySignal<Defined[]>;
export declare const instruments: ReadonlySignal<Defined[]>;
export declare const sources: ReadonlySignal<Defined[]>;
export declare const recipients: ReadonlySignal<Defined[]>;
export declare const recipes: ReadonlySignal<Recipe[]>;
export declare const members: ReadonlySignal<{ id: string; name: string; roles: string[] }[]>;
/** The cooperative's settings (name, time_zone, currency ...), or null before they are known. */
export declare const cooperative: ReadonlySignal<Defined | null>;

/** Lots of a material with something on hand, first expired first. */
export declare function lotsOf(materialId: string, placeId?: string): LotInStock[];
/** Every lot standing at a place, negative ones first, then first expired first. */
export declare function stockAt(placeId: string): LotInStock[];
/** Every lot with something on hand (or below zero) anywhere. */
export declare function allStock(): LotInStock[];
/** The words for an id: a material's, place's, member's name; the id itself when unknown. */
export declare function nameOf(type: string, id: string | null): string;

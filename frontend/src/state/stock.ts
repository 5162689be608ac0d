/** Lists a screen needs, computed from sheets: definitions by name, lots by what to use first. */
import { computed, type ReadonlySignal } from "@preact/signals";
import { type Against, reasonsAgainst } from "../calc/against.ts";
import type { BatchState } from "../calc/batches.ts";
import type { DefinitionState, RecipeState, Version } from "../calc/definitions.ts";
import { parseDecimal } from "../calc/numbers.ts";
import { TEXT_ORDER } from "../calc/record.ts";
import type { LotState } from "../calc/stock.ts";
import { current } from "./session.ts";
import { sheet, sheetsOf } from "./sheets.ts";

export type RecipeVersion = Version;

export interface Defined {
  id: string;
  name: string;
  is_retired: boolean;
  fields: DefinitionState["fields"];
  findings: DefinitionState["findings"];
}
export interface Recipe {
  id: string;
  name: string;
  latest: RecipeVersion;
  versions: readonly RecipeVersion[];
}
export interface LotInStock {
  lot: string;
  material: string | null;
  unit: string;
  /** On hand at the asked place, else everywhere; plain decimal in `unit` (g, mL, pc). */
  amount: string;
  places: Readonly<Record<string, string>>;
  life: { readonly sort: string; readonly on: string } | null;
  made_on: string | null;
  is_negative: boolean;
  /** Kept back, itself or with its batch. */
  held: "held" | "recalled" | null;
}
export interface MemberShown {
  id: string;
  name: string;
  roles: readonly string[];
  has_left: boolean;
}

const lots = sheetsOf<LotState>("lot");

export const materials = definitions("material");
export const places = definitions("place");
export const instruments = definitions("instrument");
export const sources = definitions("source");
export const recipients = definitions("recipient");

/** Recipes with at least one version, by name. */
export const recipes: ReadonlySignal<Recipe[]> = computed(() =>
  sheetsOf<RecipeState>("recipe")
    .value.flatMap(({ state }) => {
      const latest = state.versions.find((version) => version.entry === state.latest);
      if (latest === undefined) return [];
      const { recipe, name, versions } = state;
      return [{ id: recipe, name: name ?? recipe, latest, versions }];
    })
    .sort((a, b) => TEXT_ORDER(a.name, b.name)),
);

export const members: ReadonlySignal<MemberShown[]> = computed(() =>
  sheetsOf<{ member: string; name: string; roles: string[]; has_left: boolean }>("member")
    .value.map(({ state }) => ({
      id: state.member,
      name: state.name,
      roles: state.roles,
      has_left: state.has_left,
    }))
    .sort((a, b) => TEXT_ORDER(a.name, b.name)),
);

/** The cooperative's settings (name, time_zone, currency ...), or null before they are known. */
export const cooperative: ReadonlySignal<Defined | null> = computed(() => {
  const id = current.value?.cooperative.id;
  const shown = id === undefined ? null : sheet<DefinitionState>(`cooperative:${id}`).value;
  return shown === null || shown.state.defined_by === null ? null : defined(shown.state);
});

/** Fit lots of a material with something on hand, first expired first. */
export function lotsOf(materialId: string, placeId?: string): LotInStock[] {
  return lots.value
    .filter(({ state }) => state.material === materialId && state.condition !== "refused")
    .map(({ state }) => inStock(state, placeId))
    .filter((lot) => parseDecimal(lot.amount).compare(NOTHING) > 0)
    .sort(firstExpiredFirst);
}

/** Every lot standing at a place, those below zero first, then first expired first. */
export function stockAt(placeId: string): LotInStock[] {
  return present(placeId);
}

/** Every lot with something on hand, or below zero, anywhere; the same order. */
export function allStock(): LotInStock[] {
  return present(undefined);
}

/** The words for an id: a material's, place's, member's name; the id itself when unknown. */
export function nameOf(type: string, id: string | null): string {
  if (id === null) return "";
  const state = sheet<Record<string, unknown>>(`${type}:${id}`).value?.state;
  const fields = state?.fields;
  const named =
    typeof fields === "object" && fields !== null && "name" in fields ? fields.name : null;
  const words = named ?? state?.name ?? (type === "batch" ? state?.code : null);
  return typeof words === "string" ? words : id;
}

/** What speaks against using or selling a lot on a day, as far as this phone knows. */
export function againstUse(code: string, on: string): Against[] {
  const state = sheet<LotState>(`lot:${code}`).value?.state;
  return state === undefined ? [] : againstLot(state, on);
}

/** The same for a sheet at hand. */
export function againstLot(state: LotState, on: string): Against[] {
  const batch = state.batch === null ? null : sheet<BatchState>(`batch:${state.batch}`).value;
  return reasonsAgainst({ ...state }, batch && { ...batch.state }, on);
}

const NOTHING = parseDecimal("0");
const LONG_AGO = "2000-01-01"; // before any date: of what speaks against a lot only the hold is asked

function definitions(type: string): ReadonlySignal<Defined[]> {
  return computed(() =>
    sheetsOf<DefinitionState>(type)
      // What was set up and taken back has no fields any more.
      .value.filter(({ state }) => Object.keys(state.fields).length > 0)
      .map(({ state }) => defined(state))
      .sort((a, b) => TEXT_ORDER(a.name, b.name) || TEXT_ORDER(a.id, b.id)),
  );
}

function defined(state: DefinitionState): Defined {
  const { name, is_retired } = state.fields;
  return {
    id: state.id,
    name: typeof name === "string" ? name : state.id,
    is_retired: is_retired === true,
    fields: state.fields,
    findings: state.findings,
  };
}

function present(placeId: string | undefined): LotInStock[] {
  return lots.value
    .map(({ state }) => inStock(state, placeId))
    .filter((lot) => !parseDecimal(lot.amount).isZero() || lot.is_negative)
    .sort((a, b) => Number(b.is_negative) - Number(a.is_negative) || firstExpiredFirst(a, b));
}

function inStock(state: LotState, placeId: string | undefined): LotInStock {
  const amount = placeId === undefined ? state.on_hand : (state.places[placeId] ?? "0");
  const standing = placeId === undefined ? Object.values(state.places) : [amount];
  return {
    lot: state.lot,
    material: state.material,
    unit: state.unit ?? "g",
    amount,
    places: state.places,
    life: state.life,
    made_on: state.made_on,
    is_negative: standing.some((one) => parseDecimal(one).compare(NOTHING) < 0),
    held: againstLot(state, LONG_AGO).find((each) => each !== "expired") ?? null,
  };
}

/** What has no date is used last; at the same date the older lot goes first. */
function firstExpiredFirst(a: LotInStock, b: LotInStock): number {
  return (
    TEXT_ORDER(a.life?.on ?? "9999", b.life?.on ?? "9999") ||
    TEXT_ORDER(a.made_on ?? "9999", b.made_on ?? "9999") ||
    TEXT_ORDER(a.lot, b.lot)
  );
}

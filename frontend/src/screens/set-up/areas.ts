/** The areas of setting up: what is in each, and which comes next in a fresh cooperative. */
import type { ReadonlySignal } from "@preact/signals";
import type { KindName } from "../../entries/kinds.ts";
import {
  cooperative,
  type Defined,
  instruments,
  materials,
  members,
  places,
  recipes,
  recipients,
  sources,
} from "../../state/stock.ts";
import type { AreaName, SetUpSoFar } from "./guidance.ts";

export const AREA_NAMES: readonly AreaName[] = [
  "cooperative",
  "places",
  "instruments",
  "materials",
  "sources",
  "recipients",
  "recipes",
  "people",
];

/** A type of definition that is kept in a list. */
export type ListedType = "place" | "instrument" | "material" | "source" | "recipient";

/** An area that is a list of definitions of one type. */
export interface ListArea {
  area: AreaName;
  type: ListedType;
  kind: KindName;
  list: ReadonlySignal<Defined[]>;
}

export const LIST_AREAS: readonly ListArea[] = [
  { area: "places", type: "place", kind: "place_defined", list: places },
  { area: "instruments", type: "instrument", kind: "instrument_defined", list: instruments },
  { area: "materials", type: "material", kind: "material_defined", list: materials },
  { area: "sources", type: "source", kind: "source_defined", list: sources },
  { area: "recipients", type: "recipient", kind: "recipient_defined", list: recipients },
];

/** All of a type that this phone holds, retired or not; none of what is no list. */
export function listOf(type: string): readonly Defined[] {
  return standing(LIST_AREAS.find((area) => area.type === type)?.list.value ?? []);
}

/** How many are in use, by area. A definition that was taken back has no name and is not listed. */
export function soFar(): SetUpSoFar {
  const lists = LIST_AREAS.map(({ area, list }) => [area, inUse(list.value).length] as const);
  return {
    ...Object.fromEntries(lists),
    cooperative: cooperative.value === null ? 0 : 1,
    recipes: recipes.value.length,
    people: members.value.filter((each) => !each.has_left).length,
  };
}

/** What there is, without what was retired or taken back. */
export function inUse(defined: readonly Defined[]): Defined[] {
  return standing(defined).filter((each) => !each.is_retired);
}

/** What there is, retired or not. */
export function standing(defined: readonly Defined[]): Defined[] {
  return defined.filter((each) => typeof each.fields.name === "string");
}

/** Definitions as things to choose from: those in use, by name. */
import type { Choice } from "../../parts/Choices.tsx";
import type { Defined } from "../../state/stock.ts";
import { MATERIAL_SORTS, PLACE_SORTS } from "../../text/places.ts";

/** `sub` is the sort of a place or material in words, else nothing. */
export function choicesOf(defined: readonly Defined[]): Choice[] {
  return defined
    .filter((each) => !each.is_retired)
    .map(({ id, name, fields }) => {
      const sort = typeof fields.sort === "string" ? fields.sort : "";
      const sub = PLACE_SORTS[sort] ?? MATERIAL_SORTS[sort];
      return sub === undefined ? { id, name } : { id, name, sub };
    });
}

/** Two of one name: nobody could tell which one was meant. */
import { SAME_NAME } from "../../text/same_name.ts";

/** Anything with a name, retired or not. */
export interface Named {
  id: string;
  name: string;
  is_retired?: boolean;
}

/** Two names are one where they differ in capitals and spaces only. */
function keyOf(name: string): string {
  return name.normalize("NFC").trim().replace(/\s+/gu, " ").toLowerCase();
}

/** The one that has this name already, those in use first; null where none has. */
export function namesakeOf<T extends Named>(
  all: readonly T[],
  given: { id: string; name: string },
): T | null {
  const key = keyOf(given.name);
  if (key === "") return null;
  const found = all.filter((each) => each.id !== given.id && keyOf(each.name) === key);
  return found.find((each) => each.is_retired !== true) ?? found[0] ?? null;
}

/** Why a name cannot be kept, in one sentence; null where it can, or is the one it had before. */
export function sameNameSays(
  all: readonly Named[],
  given: { id: string; name: string; before: string | null },
): string | null {
  const { before, name } = given;
  if (before !== null && keyOf(before) === keyOf(name)) return null;
  const other = namesakeOf(all, given);
  if (other === null) return null;
  return other.is_retired === true ? SAME_NAME.retired(other.name) : SAME_NAME.in_use(other.name);
}

/** Ids of those in use that share their name with another in use: two phones offline made one each. */
export function namesakes(all: readonly Named[]): ReadonlySet<string> {
  const used = all.filter((each) => each.is_retired !== true);
  return new Set(used.filter((each) => namesakeOf(used, each) !== null).map((each) => each.id));
}

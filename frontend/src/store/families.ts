/** Correction families: whoever corrects whom is linked to the subjects of all of them. */
import type { Entry, EntryRow } from "./rows.ts";

/** What is needed of the entries store inside an open transaction. */
export interface EntriesInReach {
  get(id: string): Promise<EntryRow | undefined>;
  put(row: EntryRow): Promise<unknown>;
  index(name: "corrects"): { getAll(query?: string): Promise<EntryRow[]> };
}

/** The entry that a correction or void names; undefined for every other kind. */
export function namedBy(entry: Entry): string | undefined {
  if (entry.kind !== "correction" && entry.kind !== "void") return undefined;
  return typeof entry.body.corrects === "string" ? entry.body.corrects : undefined;
}

/**
 * Links every member of `row`'s family to the subjects of all of them, in either order of arrival.
 * `row` must have been put already. Answers every subject of the family.
 */
export async function linkFamily(entries: EntriesInReach, row: EntryRow): Promise<string[]> {
  const family = await familyOf(entries, row);
  if (family.length === 1) return row.linked;
  const union = [...new Set(family.flatMap((member) => member.linked))].sort();
  await Promise.all(
    family
      .filter((member) => member.linked.length < union.length)
      .map((member) => entries.put({ ...member, linked: union })),
  );
  return union;
}

/** Everything held that `row` corrects or is corrected by, however far; `row` among it. */
export async function familyOf(
  entries: Pick<EntriesInReach, "get" | "index">,
  row: EntryRow,
): Promise<EntryRow[]> {
  const found = new Map<string, EntryRow>([[row.id, row]]);
  const asked = new Set<string>();
  const ahead = [row.id];
  if (row.corrects !== undefined) ahead.push(row.corrects);
  for (let id = ahead.pop(); id !== undefined; id = ahead.pop()) {
    if (asked.has(id)) continue;
    asked.add(id);
    const [itself, correctedBy] = await Promise.all([
      entries.get(id),
      entries.index("corrects").getAll(id),
    ]);
    for (const member of itself === undefined ? correctedBy : [itself, ...correctedBy]) {
      found.set(member.id, member);
      ahead.push(member.id);
      if (member.corrects !== undefined) ahead.push(member.corrects);
    }
  }
  return [...found.values()];
}

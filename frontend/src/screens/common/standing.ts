/** Entries held about a subject as they stand: what is in force, what is void, what is contested. */
import { type Body, textIn } from "../../calc/bodies.ts";
import { asItStands, type Fact } from "../../calc/record.ts";
import type { HeldEntry } from "../../state/record.ts";
import { memberName } from "./people.ts";

/** Who did it, when, and why where there is a reason. */
export interface ByWhom {
  author: string;
  at: string;
  day: string;
  reason: string;
}

/** An entry as the calculations take it. */
export function asFact({ entry, seq }: HeldEntry): Fact {
  const { id, kind, author, device, device_seq, happened_at, local_date, body } = entry;
  return { id, kind, author, device, device_seq, happened_at, local_date, seq, body };
}

/** The body of an entry as it stands now; null for one that is void or not held. */
export function inForce(held: readonly HeldEntry[], id: string): Body | null {
  return asItStands(held.map(asFact)).standing.find((each) => each.id === id)?.body ?? null;
}

/** Who made an entry, and with which reason. */
export function byWhom(held: readonly HeldEntry[], id: string | undefined): ByWhom | null {
  const found = held.find(({ entry }) => entry.id === id)?.entry;
  if (found === undefined) return null;
  return {
    author: memberName(found.author),
    at: found.recorded_at,
    day: found.recorded_at.slice(0, 10),
    reason: textIn(found.body, "reason") ?? "",
  };
}

/** The void that names an entry. */
export function voidOf(held: readonly HeldEntry[], id: string): string | undefined {
  return held.find(({ entry }) => entry.kind === "void" && entry.body.corrects === id)?.entry.id;
}

/** Entries of a kind that no longer stand. */
export function voidedOf(held: readonly HeldEntry[], kind: string): HeldEntry[] {
  const standing = new Set(asItStands(held.map(asFact)).standing.map((each) => each.id));
  return held.filter(({ entry }) => entry.kind === kind && !standing.has(entry.id));
}

/** The corrections or voids that compete for an entry; none where one of them counts. */
export function rivalsOf(held: readonly HeldEntry[], id: string): HeldEntry[] {
  const conflict = asItStands(held.map(asFact)).findings.find(
    (each) => each.what === "two_corrections" && each.entry === id,
  );
  const rivals = conflict?.detail?.corrections?.split(" ") ?? [];
  return held.filter(({ entry }) => rivals.includes(entry.id));
}

/** What a fold is given of what this phone holds. */

import { type Beside, FOLDS } from "../calc/folds.ts";
import type { Fact } from "../calc/record.ts";
import { typeIn } from "../calc/subjects.ts";
import { NOTHING_BESIDE } from "../calc/trusted.ts";
import { KINDS } from "../entries/kinds.ts";
import { isKindName, leansOn } from "../entries/links.ts";
import { lifted } from "../entries/upcast.ts";
import type { EntryRow } from "../store/rows.ts";

/** The number of the fold of a subject's type; null where only the server adds up (`member`). */
export function foldNumberOf(subject: string): number | null {
  return FOLDS.get(typeIn(subject))?.[1] ?? null;
}

/**
 * Whether this app's table has the kind and version of an entry, and of what it corrects. What a
 * newer app wrote is kept and handed on, and never read as if it were the same.
 */
export function isUnderstood({ entry }: EntryRow): boolean {
  const { of_kind, of_version } = entry.body;
  return (
    isInTable(entry.kind, entry.version) &&
    (of_kind === undefined || isInTable(of_kind, of_version ?? 1))
  );
}

function isInTable(kind: unknown, version: unknown): boolean {
  return isKindName(kind) && typeof version === "number" && version <= KINDS[kind].version;
}

/**
 * A subject's state from rows and what they lean on, without what this app does not understand;
 * null where the phone has no fold for it.
 */
export function folded(
  subject: string,
  rows: readonly EntryRow[],
  beside: Beside = NOTHING_BESIDE,
): object | null {
  const fold = FOLDS.get(typeIn(subject))?.[0];
  return fold === undefined ? null : fold(subject, rows.filter(isUnderstood).map(factOf), beside);
}

/** The subjects whose sheets the fold of these rows is given too, each once. */
export function leanedOnBy(rows: readonly EntryRow[]): string[] {
  const named = rows.flatMap(({ entry }) =>
    isKindName(entry.kind) ? leansOn(entry.kind, entry.body) : [],
  );
  return [...new Set(named)];
}

/** An entry as a fold is given it, its body in today's form. */
export function factOf(row: EntryRow): Fact {
  const { entry } = row;
  const isKnown = isKindName(entry.kind);
  return {
    id: entry.id,
    kind: entry.kind,
    author: entry.author,
    device: entry.device,
    device_seq: entry.device_seq,
    happened_at: entry.happened_at,
    local_date: entry.local_date,
    seq: row.seq,
    body: isKnown ? lifted(entry.kind, entry.version, entry.body) : entry.body,
  };
}

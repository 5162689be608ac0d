/** What a fold is given of what this phone holds. */

import type { Beside, Fold } from "../calc/folds.ts";
import type { Fact } from "../calc/record.ts";
import { typeIn } from "../calc/subjects.ts";
import { NOTHING_BESIDE } from "../calc/trusted.ts";
import { KINDS } from "../entries/kinds.ts";
import { isKindName, leansOn } from "../entries/links.ts";
import { lifted } from "../entries/upcast.ts";
import type { EntryRow } from "../store/rows.ts";
import { type Folds, mustBeJudged, ROAD_FOLDS } from "./road_folds.ts";

/** Those of the road, until all were fetched. */
let foldsHere = ROAD_FOLDS;

/** From here on everything is added up with these folds. */
export function takeInFolds(all: Folds): void {
  foldsHere = all;
}

/** Whether the folds must be fetched that the road does without, before this is added up. */
export function needsJudging(subject: string, rows: readonly EntryRow[]): boolean {
  return (
    foldsHere === ROAD_FOLDS &&
    mustBeJudged(
      subject,
      rows.map(({ entry }) => entry),
    )
  );
}

/** The number of the fold of a subject's type; null where only the server adds up (`member`). */
export function foldNumberOf(subject: string): number | null {
  return foldsHere.get(typeIn(subject))?.[1] ?? null;
}

/** The fold for these entries. Null where the phone has none; throws where it was not fetched. */
export function foldOf(subject: string, facts: readonly Fact[]): Fold | null {
  if (foldsHere === ROAD_FOLDS && mustBeJudged(subject, facts)) {
    throw new Error(`the fold of a ${typeIn(subject)} was not fetched`);
  }
  return foldsHere.get(typeIn(subject))?.[0] ?? null;
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
  const facts = rows.filter(isUnderstood).map(factOf);
  return foldOf(subject, facts)?.(subject, facts, beside) ?? null;
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

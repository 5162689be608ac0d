/** What all types need for laying newer entries on the server's state. */

import type { Beside } from "../calc/folds.ts";
import { decidedFindings, type Hold, heldFindings, holdOf } from "../calc/holds.ts";
import { parseDecimal, plain } from "../calc/numbers.ts";
import { type Fact, type Finding, type Note, TEXT_ORDER } from "../calc/record.ts";
import { NOTHING_BESIDE } from "../calc/trusted.ts";
import { foldOf } from "./folding.ts";

/** What is held beyond the server's sheet, and what the sheet contains of it already. */
export interface Beyond {
  /** Entries the sheet does not contain. */
  extra: readonly Fact[];
  /** Entries it contains which an extra one corrects: folded on both sides of a difference. */
  covered: readonly Fact[];
}

/** A sum moved by what the extra entries change; null where any of it is not known. */
export function shifted(sum: string | null, was: string | null, is: string | null): string | null {
  if (sum === null || was === null || is === null) return null;
  return plain(parseDecimal(sum).plus(parseDecimal(is)).minus(parseDecimal(was)));
}

/** Findings of the server and those that only the extra entries bring, by key. */
export function mergedFindings(
  server: readonly Finding[],
  after: readonly Finding[],
  before: readonly Finding[],
): Finding[] {
  const known = new Set([...server, ...before].map((each) => each.key));
  const fresh = after.filter((each) => !known.has(each.key));
  return [...server, ...fresh].sort((a, b) => (a.key < b.key ? -1 : 1));
}

/** Own causes and decisions beside the server's; an older sheet has none. */
export function mergedHold(server: Hold | null | undefined, own: Hold | null): Hold {
  const causes = merged(server?.causes ?? [], own?.causes ?? []);
  const decisions = merged(server?.decisions ?? [], own?.decisions ?? []);
  return holdOf(
    causes,
    decisions.sort((a, b) => TEXT_ORDER(a.at, b.at)),
  );
}

/** The findings as they are while something is held back, or no longer. */
export function findingsUnder(hold: Hold, findings: readonly Finding[]): Finding[] {
  const others = findings.filter((each) => each.what !== "held");
  const all = mergedFindings(others, heldFindings(hold), []);
  return decidedFindings(all, hold);
}

function merged<Each extends { readonly entry: string }>(
  server: readonly Each[],
  own: readonly Each[],
): Each[] {
  const known = new Set(server.map((each) => each.entry));
  return [...server, ...own.filter((each) => !known.has(each.entry))];
}

export function mergedNotes(server: readonly Note[], own: readonly Note[]): Note[] {
  const known = new Set(server.map((note) => note.entry));
  return [...server, ...own.filter((note) => !known.has(note.entry))];
}

/** A stand-in for entries that only the server holds; it comes before all others. */
export function fact(id: string, kind: string, body: Fact["body"], seq: number): Fact {
  return {
    id,
    kind,
    author: "",
    device: "",
    device_seq: seq,
    happened_at: "",
    local_date: "",
    seq,
    body,
  };
}

export function foldedAs<T extends object>(
  subject: string,
  facts: readonly Fact[],
  beside: Beside = NOTHING_BESIDE,
): T {
  const fold = foldOf(subject, facts);
  if (fold === null) throw new RangeError(`no fold for ${subject}`);
  const state: object = fold(subject, facts, beside);
  return state as T; // the subject's type decides the form
}

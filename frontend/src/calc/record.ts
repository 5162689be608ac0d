/** What a record says after its corrections: which entries stand, in which order, what is open. */

import { type Body, itemsIn, objectIn, textIn } from "./bodies.ts";

/** Ids, codes and times by code unit, never by a person's locale; Python compares so by itself. */
export const TEXT_ORDER = (a: string, b: string): -1 | 0 | 1 => {
  if (a === b) return 0;
  return a < b ? -1 : 1;
};

/** One entry as a fold is given it; `seq` is null until the server has numbered it. */
export interface Fact {
  readonly id: string;
  readonly kind: string;
  readonly author: string;
  readonly device: string;
  readonly device_seq: number;
  readonly happened_at: string;
  readonly local_date: string;
  readonly seq: number | null;
  readonly body: Body;
}

/** A correction that was applied: the entry, its reason, who made it. */
export interface Was {
  readonly entry: string;
  readonly reason: string;
  readonly author: string;
}

/** Something a person should look at, under a key that stays the same at each fold. */
export interface Finding {
  readonly key: string;
  readonly what: string;
  readonly entry?: string;
  readonly place?: string;
  readonly field?: string;
  readonly is_settled: boolean;
  readonly settled_by?: string;
  readonly detail?: Readonly<Record<string, string>>;
}

/** Words somebody wrote about a subject. */
export interface Note {
  readonly entry: string;
  readonly says: string;
  readonly author: string;
  readonly on: string;
}

/**
 * An entry as it stands: its own id and place in the order, the kind and body in force,
 * and the corrections applied, the one nearest the original first.
 */
export interface Standing extends Fact {
  readonly was: readonly Was[];
}

/** The entries that stand, in business order, and what their corrections leave open. */
export interface RecordOfEntries {
  readonly standing: readonly Standing[];
  readonly findings: readonly Finding[];
}

/** What the corrections naming one entry make of it. */
interface Outcome {
  readonly isVoid: boolean;
  readonly winner: Fact | undefined;
  readonly was: readonly Was[];
  readonly rivals: ReadonlyMap<string, readonly string[]>;
}

/**
 * Apply every correction and void (R47, R48); the same facts give the same record in any order
 * of arrival. A missing original is stood for by its correction.
 */
export function asItStands(facts: Iterable<Fact>): RecordOfEntries {
  const byId = new Map<string, Fact>();
  for (const fact of facts) byId.set(fact.id, fact);
  const naming = namingOf(byId.values());
  const roots = rootsOf(byId, naming);
  const outcomes = new Map<string, Outcome>();
  // What names an entry comes before the entry; no recursion, for a chain may be long.
  for (const entry of reachedFrom(roots, naming).reverse()) {
    outcomes.set(entry, outcomeOf(byId.get(entry), naming.get(entry) ?? [], outcomes));
  }
  const standing: Standing[] = [];
  const findings: Finding[] = [];
  for (const root of roots) {
    const outcome = outcomes.get(root) ?? OWN;
    const made = stands(root, byId.get(root), outcome);
    if (made !== null) standing.push(made);
    for (const [entry, rivals] of outcome.rivals) findings.push(twoCorrections(entry, rivals));
  }
  for (const entry of byId.keys()) {
    if (!outcomes.has(entry)) findings.push(finding(`circle:${entry}`, "circle", { entry }));
  }
  return {
    standing: inBusinessOrder(standing),
    findings: findings.sort((a, b) => TEXT_ORDER(a.key, b.key)),
  };
}

/** By happening, not by arrival (R52): what makes a lot first, counts last at equal times. */
export function inBusinessOrder<Each extends Fact>(standing: Iterable<Each>): Each[] {
  return [...standing].sort(
    (a, b) =>
      TEXT_ORDER(a.happened_at, b.happened_at) ||
      rank(a.kind) - rank(b.kind) ||
      TEXT_ORDER(a.device, b.device) ||
      a.device_seq - b.device_seq ||
      TEXT_ORDER(a.id, b.id),
  );
}

/** By the server's number, own unsent entries last: the order definitions fold in (R49). */
export function inLogOrder<Each extends Fact>(standing: Iterable<Each>): Each[] {
  return [...standing].sort(
    (a, b) =>
      Number(a.seq === null) - Number(b.seq === null) ||
      (a.seq ?? 0) - (b.seq ?? 0) ||
      TEXT_ORDER(a.device, b.device) ||
      a.device_seq - b.device_seq ||
      TEXT_ORDER(a.id, b.id),
  );
}

/**
 * For each entry the root of its correction family, from what each entry corrects.
 * A root may itself be missing from the log. Entries that name each other in a circle share
 * the smallest id among them.
 */
export function familyRoots(corrects: ReadonlyMap<string, string | null>): Map<string, string> {
  const roots = new Map<string, string>();
  for (const start of corrects.keys()) {
    const path = new Map<string, number>();
    let entry = start;
    while (!roots.has(entry) && !path.has(entry)) {
      path.set(entry, path.size);
      entry = corrects.get(entry) ?? entry;
    }
    // The walk ended at a known family, at a root (a circle of one), or in a circle.
    const circle = [...path.keys()].slice(path.get(entry) ?? 0);
    const root = roots.get(entry) ?? circle.sort(TEXT_ORDER)[0] ?? entry;
    for (const member of path.keys()) roots.set(member, root);
  }
  return new Map([...corrects.keys()].map((entry) => [entry, roots.get(entry) ?? entry]));
}

interface About {
  readonly entry?: string;
  readonly place?: string;
  readonly field?: string;
  readonly detail?: Readonly<Record<string, string>>;
}

/** A finding nobody has settled yet. */
export function finding(key: string, what: string, about: About = {}): Finding {
  return { key, what, is_settled: false, ...about };
}

/** The findings of a subject by key, each once, those somebody settled marked as such. */
export function settled(
  findings: Iterable<Finding>,
  standing: readonly Standing[],
  subject: string,
): Finding[] {
  const settledBy = new Map<string, string>();
  for (const each of standing) {
    if (each.kind === "finding_settled" && textIn(each.body, "subject") === subject) {
      settledBy.set(textIn(each.body, "finding") ?? "", each.id);
    }
  }
  const byKey = new Map<string, Finding>();
  for (const each of findings) if (!byKey.has(each.key)) byKey.set(each.key, each);
  return [...byKey.values()]
    .sort((a, b) => TEXT_ORDER(a.key, b.key))
    .map((each) => marked(each, settledBy.get(each.key)));
}

/** What members wrote about a subject, in business order. */
export function notesAbout(standing: readonly Standing[], subject: string): Note[] {
  return standing
    .filter((each) => each.kind === "note" && textIn(each.body, "subject") === subject)
    .map((each) => ({
      entry: each.id,
      says: textIn(each.body, "says") ?? "",
      author: each.author,
      on: each.local_date,
    }));
}

function marked(each: Finding, settledBy: string | undefined): Finding {
  return settledBy === undefined ? each : { ...each, is_settled: true, settled_by: settledBy };
}

const ABOUT_ENTRIES = ["correction", "void"];
const MAKING = ["receipt", "output", "topped_up"];
const OWN: Outcome = { isVoid: false, winner: undefined, was: [], rivals: new Map() };

function rank(kind: string): number {
  if (MAKING.includes(kind)) return 0;
  return kind === "count" ? 2 : 1;
}

/** Entry -> the corrections and voids that name it, by id. */
function namingOf(facts: Iterable<Fact>): Map<string, Fact[]> {
  const naming = new Map<string, Fact[]>();
  for (const fact of [...facts].sort((a, b) => TEXT_ORDER(a.id, b.id))) {
    if (!ABOUT_ENTRIES.includes(fact.kind)) continue;
    const named = textIn(fact.body, "corrects") ?? "";
    const others = naming.get(named);
    if (others === undefined) naming.set(named, [fact]);
    else others.push(fact);
  }
  return naming;
}

/** Entries that correct nothing, and corrected ones that are not here. */
function rootsOf(
  byId: ReadonlyMap<string, Fact>,
  naming: ReadonlyMap<string, readonly Fact[]>,
): string[] {
  const own = [...byId.values()].filter((fact) => !ABOUT_ENTRIES.includes(fact.kind));
  const missing = [...naming.keys()].filter((entry) => !byId.has(entry));
  return [...own.map((fact) => fact.id), ...missing].sort(TEXT_ORDER);
}

/** Roots and all that names them, each after what it names. A circle has no root. */
function reachedFrom(
  roots: readonly string[],
  naming: ReadonlyMap<string, readonly Fact[]>,
): string[] {
  const reached = [...roots];
  // Grows while it is walked.
  for (const entry of reached) {
    for (const fact of naming.get(entry) ?? []) reached.push(fact.id);
  }
  return reached;
}

function outcomeOf(
  own: Fact | undefined,
  namedBy: readonly Fact[],
  outcomes: ReadonlyMap<string, Outcome>,
): Outcome {
  const candidates = namedBy.filter((fact) => !(outcomes.get(fact.id) ?? OWN).isVoid);
  const replaced = new Set(
    candidates.flatMap((fact) => insteadOf(fact).filter((entry) => entry !== fact.id)),
  );
  const unreplaced = candidates.filter((fact) => !replaced.has(fact.id));
  // Two that replace each other are rivals again: nobody has decided.
  const live = unreplaced.length > 0 ? unreplaced : candidates;
  const [first] = live;
  if (first === undefined) return { ...OWN, winner: own };
  if (live.length === 1) return decided(first, outcomes.get(first.id) ?? OWN);
  const named = textIn(first.body, "corrects") ?? "";
  return { ...OWN, winner: own, rivals: new Map([[named, live.map((fact) => fact.id)]]) };
}

function decided(last: Fact, inner: Outcome): Outcome {
  if (last.kind === "void") return { ...OWN, isVoid: true };
  const was: Was = {
    entry: last.id,
    reason: textIn(last.body, "reason") ?? "",
    author: last.author,
  };
  return { isVoid: false, winner: inner.winner, was: [was, ...inner.was], rivals: inner.rivals };
}

function insteadOf(fact: Fact): string[] {
  return itemsIn(fact.body, "instead_of").map((each) => textIn(each, "entry") ?? "");
}

function twoCorrections(entry: string, rivals: readonly string[]): Finding {
  const detail = { corrections: rivals.join(" ") };
  return finding(`two_corrections:${entry}`, "two_corrections", { entry, detail });
}

/** The root with the body in force; its place in the order stays its own. */
function stands(root: string, own: Fact | undefined, outcome: Outcome): Standing | null {
  const winner = outcome.winner;
  if (winner === undefined) return null;
  const place = own ?? winner;
  const isOwn = winner === own;
  return {
    id: root,
    kind: isOwn ? winner.kind : (textIn(winner.body, "of_kind") ?? ""),
    author: place.author,
    device: place.device,
    device_seq: place.device_seq,
    happened_at: place.happened_at,
    local_date: place.local_date,
    seq: place.seq,
    body: isOwn ? winner.body : (objectIn(winner.body, "body") ?? {}),
    was: outcome.was,
  };
}

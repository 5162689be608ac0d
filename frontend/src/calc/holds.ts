/**
 * What keeps a batch or lot back, and what a coordinator decided about it.
 *
 * A cause stays open until a decision names it, whenever either came in: what one phone put on
 * hold is not let go by somebody who had not seen it. What once was a cause is one also after it
 * was corrected or taken back, for that any member may do.
 */

import { type Body, itemsIn, objectIn, textIn } from "./bodies.ts";
import {
  type Fact,
  type Finding,
  familyRoots,
  finding,
  type Standing,
  TEXT_ORDER,
} from "./record.ts";
import { idIn, typeIn } from "./subjects.ts";

/**
 * Why something is kept back: `hold` (a member said so), `outside` or `cannot_tell` (the check of
 * a step), `fail` or `not_proven` (a log of time and temperature by the rule in `judged_by`) or
 * `decision` (a coordinator). `stands` is false where the entry was corrected or taken back since;
 * `decided` is what the decision named `decided_by` said.
 */
export interface Cause {
  readonly entry: string;
  readonly what: string;
  readonly because: string | null;
  readonly step: string | null;
  readonly judged_by: string | null;
  readonly reason: string | null;
  readonly at: string;
  readonly author: string;
  readonly stands: boolean;
  readonly decided: string | null;
  readonly decided_by: string | null;
}

/** What a coordinator decided about the causes named. */
export interface Decision {
  readonly entry: string;
  readonly decision: string;
  readonly decides: readonly string[];
  readonly reason: string | null;
  readonly at: string;
  readonly author: string;
}

/**
 * Whether something is kept back now. `is_decided`: a coordinator looked at all that is open and
 * keeps it back; `since` is when the first open cause happened.
 */
export interface Hold {
  readonly is_held: boolean;
  readonly is_decided: boolean;
  readonly since: string | null;
  readonly causes: readonly Cause[];
  readonly decisions: readonly Decision[];
}

/**
 * A body an entry has or once had. `root` is the entry's id, also where a correction wrote the
 * body; `by` is what wrote it; `fact` is the entry itself as far as it is here.
 */
export interface Written {
  readonly root: string;
  readonly by: string;
  readonly fact: Fact;
  readonly body: Body;
}

const HOLDING = "hold";
const CHECK_CAUSES = ["outside", "cannot_tell"];
const CHECK_FINDINGS = ["step_outside", "step_cannot_tell"];
const LOG_CAUSES = ["fail", "not_proven"];
const LOG_FINDINGS = ["heat_failed", "heat_not_proven"];

/**
 * All that keeps `batch:<id>` or `lot:<code>` back. `standing` are the facts as they stand, in
 * business order; `checks` are the causes that the readings and logs of a batch gave.
 */
export function holdState(
  subject: string,
  facts: Iterable<Fact>,
  standing: readonly Standing[],
  checks: readonly Cause[] = [],
): Hold {
  const named = typeIn(subject);
  const about = standing.filter((each) => textIn(each.body, named) === idIn(subject));
  const decisions = about.filter((each) => each.kind === "hold_decided").map(decisionOf);
  const causes = [
    ...checks,
    ...putOnHold(subject, facts, standing),
    ...decisions.filter((each) => each.decision === HOLDING).map(keptBack),
  ];
  return holdOf(causes, decisions);
}

/** What causes and decisions, in business order, add up to, wherever they came from. */
export function holdOf(causes: readonly Cause[], decisions: readonly Decision[]): Hold {
  const all = causes
    .map((cause) => decided(cause, decisions))
    .sort((a, b) => TEXT_ORDER(a.at, b.at) || TEXT_ORDER(a.entry, b.entry));
  const still = all.filter((cause) => cause.decided !== "release");
  return {
    is_held: still.length > 0,
    is_decided: still.length > 0 && !still.some(isOpen),
    since: still[0]?.at ?? null,
    causes: all,
    decisions,
  };
}

/** One finding while something is kept back about which nobody has decided. */
export function heldFindings(hold: Hold): Finding[] {
  const waiting = hold.causes.find(isOpen);
  return waiting === undefined ? [] : [finding("held", "held", { entry: waiting.entry })];
}

/**
 * The same findings, those about the check of a step or a log settled where a coordinator decided
 * about every reading that failed it, or about the log.
 */
export function decidedFindings(findings: readonly Finding[], hold: Hold): Finding[] {
  return findings.map((each) => settledIn(each, hold));
}

/** Every body entries of a kind have or once had, by the entry and then by what wrote it. */
export function everWritten(facts: Iterable<Fact>, kind: string): Written[] {
  const held = new Map<string, Fact>();
  for (const fact of facts) held.set(fact.id, fact);
  const corrects = new Map(
    [...held.values()].map((fact) => {
      const isAbout = fact.kind === "correction" || fact.kind === "void";
      return [fact.id, isAbout ? textIn(fact.body, "corrects") : null] as const;
    }),
  );
  const roots = familyRoots(corrects);
  return [...held.values()]
    .flatMap((by) => {
      const body = bodyOf(by, kind);
      const root = roots.get(by.id) ?? by.id;
      return body === null ? [] : [{ root, by, body }];
    })
    .sort((a, b) => TEXT_ORDER(a.root, b.root) || TEXT_ORDER(a.by.id, b.by.id))
    .map(({ root, by, body }) => ({ root, by: by.id, fact: held.get(root) ?? by, body }));
}

function bodyOf(fact: Fact, kind: string): Body | null {
  if (fact.kind === kind) return fact.body;
  const isCorrection = fact.kind === "correction" && textIn(fact.body, "of_kind") === kind;
  return isCorrection ? objectIn(fact.body, "body") : null;
}

/** By a member, in words; the words in force, where there are any. */
function putOnHold(subject: string, facts: Iterable<Fact>, standing: readonly Standing[]): Cause[] {
  const named = typeIn(subject);
  const isAbout = (body: Body) => textIn(body, named) === idIn(subject);
  const now = new Map(
    standing.filter((each) => isAbout(each.body)).map((each) => [each.id, each.body]),
  );
  const found = new Map<string, Written>();
  for (const each of everWritten(facts, "held")) if (isAbout(each.body)) found.set(each.root, each);
  return [...found].map(([root, each]) => causeOf(each, now.get(root)));
}

function causeOf(written: Written, now: Body | undefined): Cause {
  const body = now ?? written.body;
  return {
    entry: written.root,
    what: "hold",
    because: textIn(body, "because"),
    step: null,
    judged_by: null,
    reason: textIn(body, "reason"),
    at: written.fact.happened_at,
    author: written.fact.author,
    stands: now !== undefined,
    decided: null,
    decided_by: null,
  };
}

function decisionOf(entry: Standing): Decision {
  return {
    entry: entry.id,
    decision: textIn(entry.body, "decision") ?? HOLDING,
    decides: itemsIn(entry.body, "decides").map((each) => textIn(each, "entry") ?? ""),
    reason: textIn(entry.body, "reason"),
    at: entry.happened_at,
    author: entry.author,
  };
}

/** A decision to keep something back is itself to be let go by name. */
function keptBack({ entry, reason, at, author }: Decision): Cause {
  return {
    entry,
    what: "decision",
    because: null,
    step: null,
    judged_by: null,
    reason,
    at,
    author,
    stands: true,
    decided: null,
    decided_by: null,
  };
}

/** A release that names a cause counts, whatever else was decided about it. */
function decided(cause: Cause, decisions: readonly Decision[]): Cause {
  const about = decisions.filter((each) => each.decides.includes(cause.entry));
  const releases = about.filter((each) => each.decision === "release");
  const last = (releases.length > 0 ? releases : about).at(-1);
  return last === undefined ? cause : { ...cause, decided: last.decision, decided_by: last.entry };
}

function isOpen(cause: Cause): boolean {
  return cause.decided === null && cause.what !== "decision";
}

function settledIn(each: Finding, hold: Hold): Finding {
  const failed = hold.causes.filter((cause) => isBehind(cause, each));
  if (each.is_settled || failed.length === 0) return each;
  const last = failed.at(-1)?.decided_by ?? null;
  if (last === null || failed.some((cause) => cause.decided_by === null)) return each;
  return { ...each, is_settled: true, settled_by: last };
}

/** What a log says since it was corrected is another thing: nobody has decided about it. */
function isBehind(cause: Cause, { what, entry, detail }: Finding): boolean {
  if (LOG_FINDINGS.includes(what)) {
    return LOG_CAUSES.includes(cause.what) && cause.stands && cause.entry === entry;
  }
  const isOfCheck = CHECK_FINDINGS.includes(what) && CHECK_CAUSES.includes(cause.what);
  return isOfCheck && cause.step === detail?.step;
}

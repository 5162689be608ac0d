/** Making entries on a given device: parse, stamp, save. No signals: the simulation uses it too. */
import { asItStands, type Fact } from "../calc/record.ts";
import { makeEntry } from "../entries/envelope.ts";
import { type Bodies, type Content, KINDS, type KindName } from "../entries/kinds.ts";
import { effectiveKind, isKindName } from "../entries/links.ts";
import { parseBody } from "../entries/parse.ts";
import { isRefusal, type Refusal } from "../entries/refusals.ts";
import { isNewer } from "../entries/upcast.ts";
import type { DeviceDb } from "../store/device.ts";
import { familyRows } from "../store/reads.ts";
import type { Entry, EntryRow } from "../store/rows.ts";
import { saveEntry, saveTogether, type Unnumbered } from "../store/save.ts";
import { factOf } from "./folding.ts";
import type { Current } from "./types.ts";

export { TABLE_NUMBER } from "../entries/kinds.ts";

const UUID_CHANCE_BYTES = 10;

export interface Maker {
  db: DeviceDb;
  who: Current;
  nowMs: number;
  bytes(count: number): Uint8Array;
  zone: string;
  app_version: string;
}

export interface Moment {
  /** When it happened, if the person says otherwise than now: "YYYY-MM-DDTHH:MM:SS.mmmZ". */
  happened_at?: string | undefined;
  /** Subjects of the entry that is corrected. */
  also_about?: readonly string[] | undefined;
}

export type Made = { saved: Entry; subjects: string[] } | { refusal: Refusal };

/** One entry of any kind, saved on this phone for good when this resolves (R5). */
export async function make(
  maker: Maker,
  kind: KindName,
  body: object,
  moment: Moment = {},
): Promise<Made> {
  const draft = unnumbered(maker, { kind, body }, moment);
  if (isRefusal(draft)) return { refusal: draft };
  const { entry, subjects } = await saveEntry(maker.db, draft, maker.nowMs);
  return { saved: entry, subjects };
}

/** A part of an act: it becomes an entry of its own. */
export interface Part {
  kind: KindName;
  body: object;
}

export type MadeTogether = { saved: Entry[]; subjects: string[] } | { refusal: Refusal };

/** Every part as an entry, and the draft of the form ended, all at once; nothing if one is wrong. */
export async function makeTogether(
  maker: Maker,
  parts: readonly Part[],
  form: string,
): Promise<MadeTogether> {
  return keptTogether(
    maker,
    parts.map((part) => unnumbered(maker, part, {})),
    form,
  );
}

async function keptTogether(
  maker: Maker,
  drafts: readonly (Unnumbered | Refusal)[],
  form: string,
): Promise<MadeTogether> {
  const good: Unnumbered[] = [];
  for (const draft of drafts) {
    if (isRefusal(draft)) return { refusal: draft };
    good.push(draft);
  }
  const kept = await saveTogether(maker.db, good, { saved_ms: maker.nowMs, form });
  const subjects = new Set(kept.flatMap((each) => each.subjects));
  return { saved: kept.map(({ entry }) => entry), subjects: [...subjects] };
}

function unnumbered(maker: Maker, { kind, body }: Part, moment: Moment): Unnumbered | Refusal {
  const parsed = parseBody(kind, KINDS[kind].version, body);
  if (isRefusal(parsed)) return parsed;
  if (isNewer(parsed)) throw new Error(`${kind} is newer than its own table`);
  const {
    device_seq: _,
    seen: __,
    ...entry
  } = makeEntry(contentOf(kind, parsed), {
    cooperative: maker.who.cooperative.id,
    author: maker.who.member.id,
    device: maker.who.device,
    device_seq: 0, // given by the database, in the transaction that saves
    seen: "", // likewise
    now_ms: maker.nowMs,
    chance: maker.bytes(UUID_CHANCE_BYTES),
    tz: maker.zone,
    app_version: maker.app_version,
    happened_at: moment.happened_at,
    also_about: moment.also_about,
  });
  return { ...entry, body: { ...entry.body } };
}

/**
 * A correction of an entry with a whole new body. Where a correction is in force already it is
 * that one which is corrected; where two are in conflict this one stands instead of both (R48).
 * Null: this phone does not hold the entry.
 */
export async function makeCorrection(
  maker: Maker,
  entryId: string,
  newBody: object,
  reason: string,
): Promise<Made | null> {
  const family = await familyRows(maker.db, entryId);
  const target = targetOf(family, entryId);
  if (target === null) return null;
  const of_kind = kindOf(target.row.entry);
  const version = KINDS[of_kind].version;
  const body = {
    corrects: target.row.id,
    of_kind,
    reason,
    body: newBody,
    ...(version === 1 ? {} : { of_version: version }),
    ...insteadOf(target.rivals),
  };
  return make(maker, "correction", body, momentOf(target.row));
}

/** A void of an entry and of whatever corrected it. Null: this phone does not hold the entry. */
export async function makeVoid(
  maker: Maker,
  entryId: string,
  reason: string,
): Promise<Made | null> {
  const family = await familyRows(maker.db, entryId);
  const row = family.find((member) => member.id === entryId);
  if (row === undefined) return null;
  return make(maker, "void", voidOf(family, row, reason), momentOf(row));
}

/**
 * What happened at another moment than its entry says: that one is void, and its body in force
 * stands anew at `happened_at`, both at once. A correction keeps the moment of what it corrects.
 * Null: this phone does not hold the entry, or it no longer stands.
 */
export async function makeMoved(
  maker: Maker,
  entryId: string,
  moved: { happened_at: string; reason: string; form: string },
): Promise<MadeTogether | null> {
  const { happened_at, reason, form } = moved;
  const family = await familyRows(maker.db, entryId);
  const row = family.find((member) => member.id === entryId);
  const stands = asItStands(family.map(factOf)).standing.find((each) => each.id === entryId);
  if (row === undefined || stands === undefined) return null;
  const voided = { kind: "void" as const, body: voidOf(family, row, reason) };
  const anew = { kind: kindOf(row.entry), body: stands.body };
  const drafts = [
    unnumbered(maker, voided, momentOf(row)),
    unnumbered(maker, anew, { happened_at }),
  ];
  return keptTogether(maker, drafts, form);
}

function voidOf(family: readonly EntryRow[], { id, entry }: EntryRow, reason: string): object {
  const rivals = family.filter((member) => member.corrects === id).map((member) => member.id);
  return { corrects: id, of_kind: kindOf(entry), reason, ...insteadOf(rivals) };
}

/** The entry in force of a family, or the one two corrections compete for. */
function targetOf(
  family: readonly EntryRow[],
  entryId: string,
): { row: EntryRow; rivals: string[] } | null {
  const asked = family.find((row) => row.id === entryId);
  if (asked === undefined) return null;
  const facts: Fact[] = family.map(factOf);
  const record = asItStands(facts);
  const conflict = record.findings.find((finding) => finding.what === "two_corrections");
  const contested = family.find((row) => row.id === conflict?.entry);
  if (contested !== undefined) {
    return { row: contested, rivals: (conflict?.detail?.corrections ?? "").split(" ") };
  }
  const lastId = record.standing[0]?.was.at(-1)?.entry;
  return { row: family.find((row) => row.id === lastId) ?? asked, rivals: [] };
}

function kindOf(entry: Entry): KindName {
  if (!isKindName(entry.kind)) throw new Error(`nobody can correct an unknown ${entry.kind}`);
  return effectiveKind(entry.kind, entry.body);
}

function momentOf(row: EntryRow): Moment {
  return { happened_at: row.entry.happened_at, also_about: row.linked };
}

function insteadOf(rivals: readonly string[]): { instead_of?: { entry: string }[] } {
  return rivals.length === 0 ? {} : { instead_of: rivals.map((entry) => ({ entry })) };
}

function contentOf<K extends KindName>(kind: K, body: Bodies[K]): Content<K> {
  return { kind, body } as Content<K>; // the compiler does not see that K is one kind
}

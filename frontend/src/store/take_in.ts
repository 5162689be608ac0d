/** Taking in what a pull brought: rows and cursor in one transaction (R39). */

import type { IDBPTransaction } from "idb";
import { typeIn } from "../calc/subjects.ts";
import {
  committed,
  type DeviceDb,
  type DeviceSchema,
  putUnheard,
  type StoreName,
} from "./device.ts";
import { linkFamily, namedBy } from "./families.ts";
import { type DeviceMeta, readMeta, writeMeta } from "./meta.ts";
import { isDroppable } from "./prune.ts";
import type { Body, Entry, EntryRow, SheetRow } from "./rows.ts";

export interface PulledEntry {
  type: "entry";
  id: string;
  seq: number;
  data: { entry: Entry; received_at: string; skew_ms?: number };
}
export interface PulledSheet {
  type: "sheet";
  id: string;
  seq: number;
  data: { state: Body; upto_seq: number; entry_count: number; fold: number; is_open: boolean };
}
export interface PulledUses {
  type: "uses";
  /** The instrument. */
  id: string;
  seq: number;
  data: { check: string; count: number; counted_at: string };
}
export type Pulled = PulledEntry | PulledSheet | PulledUses;

type Taking = IDBPTransaction<DeviceSchema, StoreName[], "readwrite">;

/** What was held of a page before it was taken in, read at once. */
interface Held {
  rows: Map<string, EntryRow>;
  /** Ids of those that still wait in the outbox. */
  slips: Set<string>;
  sheets: Map<string, SheetRow>;
  /** Ids that some correction names, of this page too as soon as it is taken in. */
  named: Set<string | undefined>;
  meta: DeviceMeta;
  nowMs: number;
}

/** So few keys are asked for one by one; with more it is worth asking first which are there. */
const FEW_KEYS = 10;

/** Takes in one page with its cursor: all of it or nothing. Answers the subjects touched. */
export async function takeIn(
  db: DeviceDb,
  pulled: readonly Pulled[],
  changed: Partial<DeviceMeta>,
  nowMs: number,
): Promise<string[]> {
  const stores: StoreName[] = ["entries", "outbox", "sheets", "uses", "meta"];
  // The cursor goes with its rows: a page that a dead battery loses is asked for again.
  const tx = db.transaction(stores, "readwrite", { durability: "relaxed" });
  return committed(tx, async () => {
    const held = await heldOf(tx, pulled, nowMs);
    const touched = new Set<string>();
    for (const change of pulled) {
      const subjects =
        change.type === "entry"
          ? await takeInEntry(tx, held, change)
          : change.type === "sheet"
            ? await takeInSheet(tx, held, change)
            : takeInUses(tx, change);
      for (const subject of subjects) touched.add(subject);
    }
    await writeMeta(tx.objectStore("meta"), changed);
    return [...touched];
  });
}

async function heldOf(tx: Taking, pulled: readonly Pulled[], nowMs: number): Promise<Held> {
  const ids = pulled.filter((change) => change.type === "entry").map((change) => change.id);
  const subjects = pulled.filter((change) => change.type === "sheet").map((change) => change.id);
  const [rows, slips, sheets, corrections, meta] = await Promise.all([
    rowsBy(tx.objectStore("entries"), ids),
    rowsBy(tx.objectStore("outbox"), ids),
    rowsBy(tx.objectStore("sheets"), subjects),
    tx.objectStore("entries").index("corrects").getAll(),
    readMeta(tx.objectStore("meta")),
  ]);
  return {
    rows: new Map(rows.map((row) => [row.id, row])),
    slips: new Set(slips.map((slip) => slip.id)),
    sheets: new Map(sheets.map((row) => [row.subject, row])),
    named: new Set(corrections.map((row) => row.corrects)),
    meta,
    nowMs,
  };
}

interface ReadableStore<Row> {
  get(key: string): Promise<Row | undefined>;
  getAllKeys(range: IDBKeyRange): Promise<string[]>;
}

/**
 * The rows with these keys, where there are such. In a first sync there are none: then one
 * question answers for a whole page. Ids begin with their time, so a page spans few others.
 */
async function rowsBy<Row>(store: ReadableStore<Row>, keys: readonly string[]): Promise<Row[]> {
  const wanted = keys.length <= FEW_KEYS ? keys : await heldAmong(store, keys);
  const rows = await Promise.all(wanted.map((key) => store.get(key)));
  return rows.filter((row) => row !== undefined);
}

async function heldAmong(
  store: Pick<ReadableStore<unknown>, "getAllKeys">,
  keys: readonly string[],
): Promise<string[]> {
  const ordered = [...keys].sort();
  const range = IDBKeyRange.bound(ordered[0], ordered.at(-1));
  const held = new Set(await store.getAllKeys(range));
  return keys.filter((key) => held.has(key));
}

/** Own entries come back: the local copy is replaced, nothing doubles (R41). */
async function takeInEntry(tx: Taking, held: Held, change: PulledEntry): Promise<string[]> {
  const entries = tx.objectStore("entries");
  const row = rowOf(held, change);
  putUnheard(entries, row);
  held.rows.set(row.id, row);
  if (row.corrects !== undefined) held.named.add(row.corrects);
  const isInFamily = row.corrects !== undefined || held.named.has(row.id);
  return isInFamily ? linkFamily(entries, row) : row.linked;
}

function rowOf(held: Held, change: PulledEntry): EntryRow {
  const { entry, received_at, skew_ms } = change.data;
  const before = held.rows.get(entry.id);
  const isWaiting = held.slips.has(entry.id);
  // While a slip stands, what this phone wrote stays: it may differ and is then kept aside.
  const made = isWaiting ? (before?.entry ?? entry) : entry;
  const corrects = namedBy(made);
  const isOwn = entry.device === held.meta.device;
  return {
    id: entry.id,
    entry: made,
    seq: change.seq,
    received_at,
    linked: [...new Set([...entry.subjects, ...(before?.linked ?? [])])].sort(),
    handed_over_ms: before?.handed_over_ms ?? (isOwn && !isWaiting ? held.nowMs : null),
    ...(corrects === undefined ? {} : { corrects }),
    ...(skew_ms === undefined ? {} : { skew_ms }),
  };
}

/** With a closed sheet its entries go, unless another open subject needs them (R24 apart). */
async function takeInSheet(tx: Taking, held: Held, change: PulledSheet): Promise<string[]> {
  const { id, seq, data } = change;
  const before = held.sheets.get(id);
  if (before !== undefined && before.seq > seq) return [];
  const sheet: SheetRow = { subject: id, type: typeIn(id), seq, ...data };
  putUnheard(tx.objectStore("sheets"), sheet);
  held.sheets.set(id, sheet);
  if (data.is_open) return [id];
  const entries = tx.objectStore("entries");
  for (const row of await entries.index("linked").getAll(id)) {
    const isNeeded = await hasOpenSubject(tx, row);
    if (!isNeeded && isDroppable(row, held.meta, held.nowMs)) await entries.delete(row.id);
  }
  return [id];
}

/** The server tells of an instrument again only when it counted another number. */
function takeInUses(tx: Taking, { id, seq, data }: PulledUses): string[] {
  putUnheard(tx.objectStore("uses"), { instrument: id, seq, ...data });
  return [`instrument:${id}`];
}

/** A subject whose sheet has not come yet may well be open. */
async function hasOpenSubject(tx: Taking, row: EntryRow): Promise<boolean> {
  const sheets = tx.objectStore("sheets");
  const about = await Promise.all(row.linked.map((subject) => sheets.get(subject)));
  return about.some((sheet) => sheet === undefined || sheet.is_open);
}

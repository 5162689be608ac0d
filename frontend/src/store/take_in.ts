/** Taking in what a pull brought: rows and cursor in one transaction (R39). */
import { typeIn } from "../calc/subjects.ts";
import { committed, type DeviceDb } from "./device.ts";
import { type EntriesInReach, linkFamily, namedBy } from "./families.ts";
import { type DeviceMeta, readMeta, writeMeta } from "./meta.ts";
import { isDroppable } from "./prune.ts";
import type { Body, Entry, EntryRow, SheetRow } from "./rows.ts";

export interface PulledEntry {
  type: "entry";
  id: string;
  seq: number;
  data: { entry: Entry; received_at: string };
}
export interface PulledSheet {
  type: "sheet";
  id: string;
  seq: number;
  data: { state: Body; upto_seq: number; entry_count: number; fold: number; is_open: boolean };
}
export type Pulled = PulledEntry | PulledSheet;

interface Stores {
  entries: EntriesInReach & {
    delete(id: string): Promise<unknown>;
    index(name: "linked" | "corrects"): { getAll(query?: string): Promise<EntryRow[]> };
  };
  outbox: { get(id: string): Promise<unknown> };
  sheets: {
    get(subject: string): Promise<SheetRow | undefined>;
    put(row: SheetRow): Promise<unknown>;
  };
  meta: DeviceMeta;
  nowMs: number;
}

/** Takes in one page with its cursor: all of it or nothing. Answers the subjects touched. */
export async function takeIn(
  db: DeviceDb,
  pulled: readonly Pulled[],
  changed: Partial<DeviceMeta>,
  nowMs: number,
): Promise<string[]> {
  const tx = db.transaction(["entries", "outbox", "sheets", "meta"], "readwrite");
  return committed(tx, async () => {
    const stores: Stores = {
      entries: tx.objectStore("entries"),
      outbox: tx.objectStore("outbox"),
      sheets: tx.objectStore("sheets"),
      meta: await readMeta(tx.objectStore("meta")),
      nowMs,
    };
    const touched = new Set<string>();
    const corrections = await stores.entries.index("corrects").getAll();
    const named = new Set(corrections.map((row) => row.corrects));
    for (const change of pulled) {
      const subjects =
        change.type === "entry"
          ? await takeInEntry(stores, change, named)
          : await takeInSheet(stores, change);
      for (const subject of subjects) touched.add(subject);
    }
    await writeMeta(tx.objectStore("meta"), changed);
    return [...touched];
  });
}

/** Own entries come back: the local copy is replaced, nothing doubles (R41). */
async function takeInEntry(
  stores: Stores,
  change: PulledEntry,
  named: Set<string | undefined>,
): Promise<string[]> {
  const { entry, received_at } = change.data;
  const [before, slip] = await Promise.all([
    stores.entries.get(entry.id),
    stores.outbox.get(entry.id),
  ]);
  // While a slip stands, what this phone wrote stays: it may differ and is then kept aside.
  const made = slip === undefined ? entry : (before?.entry ?? entry);
  const corrects = namedBy(made);
  const isOwn = entry.device === stores.meta.device;
  const row: EntryRow = {
    id: entry.id,
    entry: made,
    seq: change.seq,
    received_at,
    linked: [...new Set([...entry.subjects, ...(before?.linked ?? [])])].sort(),
    handed_over_ms: before?.handed_over_ms ?? (isOwn && slip === undefined ? stores.nowMs : null),
    ...(corrects === undefined ? {} : { corrects }),
  };
  await stores.entries.put(row);
  if (corrects !== undefined) named.add(corrects);
  return corrects !== undefined || named.has(row.id) ? linkFamily(stores.entries, row) : row.linked;
}

/** With a closed sheet its entries go, unless another open subject needs them (R24 apart). */
async function takeInSheet(stores: Stores, change: PulledSheet): Promise<string[]> {
  const before = await stores.sheets.get(change.id);
  if (before !== undefined && before.seq > change.seq) return [];
  await stores.sheets.put({
    subject: change.id,
    type: typeIn(change.id),
    seq: change.seq,
    ...change.data,
  });
  if (change.data.is_open) return [change.id];
  for (const row of await stores.entries.index("linked").getAll(change.id)) {
    const isNeeded = await hasOpenSubject(stores, row);
    if (!isNeeded && isDroppable(row, stores.meta, stores.nowMs)) {
      await stores.entries.delete(row.id);
    }
  }
  return [change.id];
}

/** A subject whose sheet has not come yet may well be open. */
async function hasOpenSubject(stores: Stores, row: EntryRow): Promise<boolean> {
  const sheets = await Promise.all(row.linked.map((subject) => stores.sheets.get(subject)));
  return sheets.some((sheet) => sheet === undefined || sheet.is_open);
}

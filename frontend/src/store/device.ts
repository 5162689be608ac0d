/** The database of one device: this browser as used by one member (R60). */
import {
  type DBSchema,
  type IDBPDatabase,
  type IDBPObjectStore,
  type IDBPTransaction,
  openDB,
  unwrap,
} from "idb";
import type { AttentionRow, DraftRow, EntryRow, Json, SheetRow, Slip, UsesRow } from "./rows.ts";

export interface DeviceSchema extends DBSchema {
  entries: { key: string; value: EntryRow; indexes: { linked: string; corrects: string } };
  outbox: { key: string; value: Slip; indexes: { device_seq: number } };
  meta: { key: string; value: Json };
  drafts: { key: string; value: DraftRow };
  sheets: { key: string; value: SheetRow };
  attention: { key: string; value: AttentionRow };
  uses: { key: string; value: UsesRow };
}
export type DeviceDb = IDBPDatabase<DeviceSchema>;
export type StoreName = "entries" | "outbox" | "meta" | "drafts" | "sheets" | "attention" | "uses";
type Upgrade = IDBPTransaction<DeviceSchema, StoreName[], "versionchange">;

/**
 * Numbered steps, one a version. A step only adds stores and indexes: what waits in the outbox is
 * never rewritten (R89), and a step that was interrupted is rolled back and runs again.
 */
export const STEPS: readonly ((db: DeviceDb, tx: Upgrade) => void)[] = [
  function capture(db) {
    db.createObjectStore("entries", { keyPath: "id" }).createIndex("linked", "linked", {
      multiEntry: true,
    });
    db.createObjectStore("outbox", { keyPath: "id" }).createIndex("device_seq", "device_seq", {
      unique: true,
    });
    db.createObjectStore("meta");
    db.createObjectStore("drafts", { keyPath: "key" });
  },
  function readSide(db, tx) {
    tx.objectStore("entries").createIndex("corrects", "corrects");
    db.createObjectStore("sheets", { keyPath: "subject" });
    db.createObjectStore("attention", { keyPath: "id" });
  },
  function countedUses(db) {
    db.createObjectStore("uses", { keyPath: "instrument" });
  },
];

export interface OpenNotices {
  /** Another tab holds an older version and does not let go (R90). */
  onBlocked?: () => void;
  /** A newer tab wants to upgrade; the connection is closed after this call. */
  onGivenWay?: () => void;
  /** The browser closed the connection by itself. */
  onLost?: () => void;
}

export function databaseName(device: string): string {
  return `kitchenlog-${device}`;
}

/** Opens a device's database, bringing it up to `version` step by step. */
export async function openDevice(
  device: string,
  notices: OpenNotices = {},
  version: number = STEPS.length,
): Promise<DeviceDb> {
  const db = await openDB<DeviceSchema>(databaseName(device), version, {
    upgrade(opened, from, to, tx) {
      for (const step of STEPS.slice(from, to ?? STEPS.length)) step(opened, tx);
    },
    blocked: () => notices.onBlocked?.(),
    blocking: (_current, _wanted, event) => {
      notices.onGivenWay?.();
      if (event.target instanceof IDBDatabase) event.target.close();
    },
    terminated: () => notices.onLost?.(),
  });
  return db;
}

/** Runs `work` inside a transaction and waits for the commit; any trouble rolls all of it back. */
export async function committed<T>(
  tx: { done: Promise<void>; abort(): void },
  work: () => Promise<T>,
): Promise<T> {
  try {
    const answer = await work();
    await tx.done;
    return answer;
  } catch (trouble) {
    abortQuietly(tx);
    await tx.done.catch(() => undefined);
    throw trouble;
  }
}

/**
 * Puts a row without waiting for the answer, which for thousands of rows costs more than the
 * writing. If it fails the whole transaction does, and that is waited for.
 */
export function putUnheard<Name extends StoreName>(
  store: IDBPObjectStore<DeviceSchema, StoreName[], Name, "readwrite">,
  row: DeviceSchema[Name]["value"],
): void {
  unwrap(store).put(row);
}

function abortQuietly(tx: { abort(): void }): void {
  try {
    tx.abort();
  } catch (trouble) {
    // Aborting what has already been aborted is no news; anything else is.
    if (!(trouble instanceof DOMException && trouble.name === "InvalidStateError")) throw trouble;
  }
}

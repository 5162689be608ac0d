/** What tests stand on: empty databases, entries, a world whose clock, chance and wire are given. */
import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { uuidv7 } from "../src/entries/envelope.ts";
import { type DeviceDb, openDevice } from "../src/store/device.ts";
import { setMeta } from "../src/store/meta.ts";
import type { Body, Entry, EntryRow } from "../src/store/rows.ts";
import { saveEntry, type Unnumbered } from "../src/store/save.ts";
import type { WireAnswer, WireRequest, World } from "../src/sync/world.ts";

export const COOPERATIVE = "00000000-0000-4000-8000-00000000c001";
export const AUTHOR = "00000000-0000-4000-8000-00000000a001";
export const DEVICE = "00000000-0000-4000-8000-00000000d001";
export const OTHER_DEVICE = "00000000-0000-4000-8000-00000000d002";
export const START_MS = Date.UTC(2026, 10, 10, 8);

/** Forgets every database: a new browser profile. */
export function emptyProfile(): void {
  globalThis.indexedDB = new IDBFactory();
}

let madeCount = 0;

/** An id that differs from all before it. */
export function newId(): string {
  madeCount += 1;
  const chance = new Uint8Array(10);
  new DataView(chance.buffer).setUint32(4, madeCount);
  return uuidv7(START_MS, chance);
}

/** A note about a lot: the smallest entry there is. */
export function note(changed: Partial<Entry> = {}, says = "as it was"): Unnumbered {
  const at = new Date(START_MS).toISOString();
  const subject = changed.subjects?.[0] ?? "lot:MJ-261110-K7-1";
  return {
    id: newId(),
    kind: "note",
    version: 1,
    subjects: [subject],
    cooperative: COOPERATIVE,
    author: AUTHOR,
    device: DEVICE,
    recorded_at: at,
    tz: "UTC",
    utc_offset_min: 0,
    local_date: "2026-11-10",
    happened_at: at,
    app_version: "test",
    body: { subject, says } as Body,
    ...changed,
  };
}

/** The same, as another device wrote it and the server tells it. */
export function othersEntry(device_seq: number, changed: Partial<Entry> = {}): Entry {
  return { ...note(changed), device: OTHER_DEVICE, device_seq, seen: "", ...changed };
}

/** A signed-in device's database. */
export async function openedDevice(device = DEVICE): Promise<DeviceDb> {
  const db = await openDevice(device);
  await setMeta(db, { device });
  return db;
}

export async function savedNotes(db: DeviceDb, count: number, says?: string): Promise<Entry[]> {
  const saved: Entry[] = [];
  for (let number = 0; number < count; number += 1) {
    saved.push((await saveEntry(db, note({}, says), START_MS + number)).entry);
  }
  return saved;
}

export function allRows(db: DeviceDb): Promise<EntryRow[]> {
  return db.getAll("entries");
}

export interface BenchWorld extends World {
  clock: { nowMs: number };
  requests: WireRequest[];
}

/** A world at rest: time stands still, chance is one half, every lock is free. */
export function benchWorld(
  wire: (request: WireRequest) => WireAnswer | Promise<WireAnswer>,
): BenchWorld {
  const clock = { nowMs: START_MS };
  const requests: WireRequest[] = [];
  const busy = new Set<string>();
  return {
    clock,
    requests,
    async wire(request) {
      requests.push(request);
      return wire(request);
    },
    nowMs: () => clock.nowMs,
    chance: () => 0.5,
    bytes(count) {
      madeCount += 1;
      return Uint8Array.from({ length: count }, (_, index) => (madeCount >> (index * 8)) & 0xff);
    },
    newId,
    async alone(name, work) {
      if (busy.has(name)) return null;
      busy.add(name);
      try {
        return await work();
      } finally {
        busy.delete(name);
      }
    },
    after: () => () => undefined,
  };
}

export function answer(status: number, payload: object, retry_after?: string): WireAnswer {
  const text = JSON.stringify({ protocol: 1, ...payload });
  return { status, retry_after: retry_after ?? null, text };
}

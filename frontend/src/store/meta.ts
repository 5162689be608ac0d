/** The few facts a device's database keeps about itself, one key each. */
import type { DeviceDb } from "./device.ts";
import type { Json } from "./rows.ts";

export interface DeviceMeta {
  device: string;
  /** The last device_seq given; the next entry gets one more. */
  device_seq: number;
  /** Where the next pull begins; "" at the very start. */
  cursor: string;
  /** Which life of the server's database the cursor belongs to; "" before the first contact. */
  epoch: string;
  /** Server's clock minus this phone's; null before the first contact (R55). */
  clock_off_ms: number | null;
  last_exchange_ms: number | null;
  /** False until a pull has once come to its end (R40). */
  is_whole: boolean;
  /** The server's table of kinds is newer: pulling waits for an update of the app (R91). */
  must_upgrade: boolean;
  /** Up to this number the server has proved its backup; null while it has not said so (R24). */
  backed_up_seq: number | null;
  /** Entries sent before the server's database was restored are offered again (R93). */
  must_reoffer: boolean;
}

interface MetaStore {
  get(key: string): Promise<Json | undefined>;
}
interface ListedMetaStore {
  getAllKeys(): Promise<string[]>;
  getAll(): Promise<Json[]>;
}
interface WritableMetaStore {
  put(value: Json, key: string): Promise<unknown>;
}

/** Two questions for the few facts: one for each fact would keep a saving thumb waiting. */
export async function readMeta(store: ListedMetaStore): Promise<DeviceMeta> {
  const [keys, values] = await Promise.all([store.getAllKeys(), store.getAll()]);
  const facts = new Map(keys.map((key, index) => [key, values[index]]));
  return {
    device: textOr(facts.get("device"), ""),
    device_seq: numberOr(facts.get("device_seq"), 0),
    cursor: textOr(facts.get("cursor"), ""),
    epoch: textOr(facts.get("epoch"), ""),
    clock_off_ms: numberOr(facts.get("clock_off_ms"), null),
    last_exchange_ms: numberOr(facts.get("last_exchange_ms"), null),
    is_whole: facts.get("is_whole") === true,
    must_upgrade: facts.get("must_upgrade") === true,
    backed_up_seq: numberOr(facts.get("backed_up_seq"), null),
    must_reoffer: facts.get("must_reoffer") === true,
  };
}

/** What an entry takes from its device when it is saved; all else would only cost time there. */
export async function readStamp(
  store: MetaStore,
): Promise<Pick<DeviceMeta, "device_seq" | "cursor">> {
  const [device_seq, cursor] = await Promise.all([store.get("device_seq"), store.get("cursor")]);
  return { device_seq: numberOr(device_seq, 0), cursor: textOr(cursor, "") };
}

export async function writeMeta(
  store: WritableMetaStore,
  changed: Partial<DeviceMeta>,
): Promise<void> {
  await Promise.all(Object.entries(changed).map(([key, value]) => store.put(value, key)));
}

/** The meta of a device, read in a transaction of its own. */
export async function metaOf(db: DeviceDb): Promise<DeviceMeta> {
  const tx = db.transaction("meta");
  const meta = await readMeta(tx.store);
  await tx.done;
  return meta;
}

export async function setMeta(db: DeviceDb, changed: Partial<DeviceMeta>): Promise<void> {
  const tx = db.transaction("meta", "readwrite");
  await writeMeta(tx.store, changed);
  await tx.done;
}

function textOr<T>(value: Json | undefined, otherwise: T): string | T {
  return typeof value === "string" ? value : otherwise;
}

function numberOr<T>(value: Json | undefined, otherwise: T): number | T {
  return typeof value === "number" ? value : otherwise;
}

/** Half-filled forms, kept as typed (R12). */
import type { DeviceDb } from "./device.ts";
import type { Json } from "./rows.ts";

export async function draftOf(db: DeviceDb, key: string): Promise<Json> {
  return (await db.get("drafts", key))?.typed ?? null;
}

/** All whose key begins so. */
export function draftsUnder(
  db: DeviceDb,
  prefix: string,
): Promise<readonly { readonly key: string; readonly typed: Json }[]> {
  return db.getAll("drafts", IDBKeyRange.bound(prefix, `${prefix}\uffff`));
}

export async function putDraft(db: DeviceDb, key: string, typed: Json): Promise<void> {
  await db.put("drafts", { key, typed });
}

export async function deleteDraft(db: DeviceDb, key: string): Promise<void> {
  await db.delete("drafts", key);
}

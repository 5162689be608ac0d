/** Half-filled forms, kept as typed (R12). */
import type { DeviceDb } from "./device.ts";
import type { Json } from "./rows.ts";

export async function draftOf(db: DeviceDb, key: string): Promise<Json> {
  return (await db.get("drafts", key))?.typed ?? null;
}

/** The keys and forms of all drafts whose key begins so, in the order of their keys. */
export async function draftsUnder(
  db: DeviceDb,
  begin: string,
): Promise<{ key: string; typed: Json }[]> {
  const kept = await db.getAll("drafts", IDBKeyRange.bound(begin, `${begin}\uffff`));
  return kept.map(({ key, typed }) => ({ key, typed }));
}

export async function putDraft(db: DeviceDb, key: string, typed: Json): Promise<void> {
  await db.put("drafts", { key, typed });
}

export async function deleteDraft(db: DeviceDb, key: string): Promise<void> {
  await db.delete("drafts", key);
}

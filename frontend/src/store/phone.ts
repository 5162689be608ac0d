/** The small database of the phone itself: whose devices live here, and remembered choices. */
import { type DBSchema, deleteDB, type IDBPDatabase, openDB } from "idb";
import { databaseName } from "./device.ts";
import type { DeviceRow, Json } from "./rows.ts";

interface PhoneSchema extends DBSchema {
  devices: { key: string; value: DeviceRow };
  choices: { key: string; value: Json };
}
export type PhoneDb = IDBPDatabase<PhoneSchema>;

const PHONE_VERSION = 1;

export function openPhone(): Promise<PhoneDb> {
  return openDB<PhoneSchema>("kitchenlog-phone", PHONE_VERSION, {
    upgrade(db) {
      db.createObjectStore("devices", { keyPath: "device" });
      db.createObjectStore("choices");
    },
    blocking: (_current, _wanted, event) => {
      if (event.target instanceof IDBDatabase) event.target.close();
    },
  });
}

export function devicesOf(phone: PhoneDb): Promise<DeviceRow[]> {
  return phone.getAll("devices");
}

export async function putDevice(phone: PhoneDb, row: DeviceRow): Promise<void> {
  await phone.put("devices", row);
}

/** Changes a device's standing, if the phone still knows it. */
export async function setStanding(
  phone: PhoneDb,
  device: string,
  standing: DeviceRow["standing"],
): Promise<void> {
  const tx = phone.transaction("devices", "readwrite");
  const row = await tx.store.get(device);
  if (row !== undefined) await tx.store.put({ ...row, standing });
  await tx.done;
}

/** Forgets a device whose cookie has ended. */
export async function forgetDevice(phone: PhoneDb, device: string): Promise<void> {
  await phone.delete("devices", device);
}

/** Deletes all that was kept for a device. Call it only when nothing waits there (R61). */
export async function deleteDeviceDatabase(device: string): Promise<void> {
  await deleteDB(databaseName(device));
}

export async function choicesOf(phone: PhoneDb): Promise<Map<string, Json>> {
  const tx = phone.transaction("choices");
  const [keys, choices] = await Promise.all([tx.store.getAllKeys(), tx.store.getAll()]);
  await tx.done;
  return new Map(keys.map((key, index) => [key, choices[index] ?? null]));
}

export async function putChoice(phone: PhoneDb, key: string, choice: Json): Promise<void> {
  await phone.put("choices", choice, key);
}

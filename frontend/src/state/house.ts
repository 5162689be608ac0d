/** What the app stands on while it runs: the world, the phone's databases, who is on the screen. */
import { signal } from "@preact/signals";
import { type DeviceDb, openDevice } from "../store/device.ts";
import type { PhoneDb } from "../store/phone.ts";
import type { World } from "../sync/world.ts";
import type { Current } from "./types.ts";

/** Who is on the screen; null before anybody has signed in. */
export const current = signal<Current | null>(null);
/** Another tab holds an older version of the database: "close other tabs" (R90). */
export const isBlocked = signal(false);
/** Defects met since start, newest last: a screen's last resort shows that there are some. */
export const defects = signal<string[]>([]);

export interface House {
  world: World;
  phone: PhoneDb;
  /** The IANA zone this phone's clock shows. */
  zone(): string;
  /** Tells other tabs which subjects of a device changed; null means all. */
  tell(device: string, subjects: readonly string[] | null): void;
  /** Something waits in the outbox. */
  onSaved(): void;
  /** A newer tab needs the database: drafts are written, the page is loaded anew (R90). */
  onGivenWay(): void;
}

let standing: House | null = null;
const open = new Map<string, Promise<DeviceDb>>();

export function setHouse(house: House | null): void {
  standing = house;
  open.clear();
}

export function house(): House {
  if (standing === null) throw new Error("the app was used before it was started");
  return standing;
}

/** The open database of a device. */
export function deviceDb(device: string): Promise<DeviceDb> {
  const known = open.get(device);
  if (known !== undefined) return known;
  const opening = openDevice(device, {
    onBlocked: () => {
      isBlocked.value = true;
    },
    onGivenWay: () => house().onGivenWay(),
    onLost: () => open.delete(device),
  });
  open.set(device, opening);
  opening.then(
    () => {
      isBlocked.value = false;
    },
    () => open.delete(device),
  );
  return opening;
}

/** Closes a device's database, before it is deleted. */
export async function closeDeviceDb(device: string): Promise<void> {
  const known = open.get(device);
  open.delete(device);
  if (known !== undefined) (await known).close();
}

/**
 * Runs `work` on the database of the person on the screen. A connection that the browser closed
 * is opened again once (R11); null when nobody is signed in.
 */
export async function withDb<T>(work: (db: DeviceDb) => Promise<T>): Promise<T | null> {
  const device = current.value?.device;
  if (device === undefined) return null;
  try {
    return await work(await deviceDb(device));
  } catch (trouble) {
    if (!isClosedConnection(trouble)) throw trouble;
    open.delete(device);
    return work(await deviceDb(device));
  }
}

/** Keeps a defect where a person and a developer can find it; the entries are safe meanwhile. */
export function report(where: string, defect: unknown): void {
  const words = defect instanceof Error ? `${defect.name}: ${defect.message}` : String(defect);
  defects.value = [...defects.value.slice(-19), `${where}: ${words}`];
  // biome-ignore lint/suspicious/noConsole: a defect must reach the log
  console.error(where, defect);
}

function isClosedConnection(trouble: unknown): boolean {
  if (!(trouble instanceof DOMException)) return false;
  return trouble.name === "InvalidStateError" || trouble.name === "UnknownError";
}

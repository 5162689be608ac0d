/** Becoming a device of a member on this phone. No signals: the simulation uses it too. */
import type { DeviceDb } from "../store/device.ts";
import { setMeta } from "../store/meta.ts";
import { devicesOf, type PhoneDb, putDevice, setStanding } from "../store/phone.ts";
import type { DeviceRow } from "../store/rows.ts";
import { deviceRow, type Entrance, joinByCode, signInAgain, signInAsNew } from "../sync/sign_in.ts";
import type { World } from "../sync/world.ts";
import { isUsable } from "./who.ts";

export interface Door {
  world: World;
  phone: PhoneDb;
  open(device: string): Promise<DeviceDb>;
  app_version: string;
}
export type Entered = { row: DeviceRow } | Exclude<Entrance, { welcome: unknown }>;

/** By login and passphrase: the same device again where the phone knows it, else a new one. */
export async function enterBySignIn(
  door: Door,
  login: string,
  passphrase: string,
): Promise<Entered> {
  const typed = login.trim().toLowerCase();
  const rows = await devicesOf(door.phone);
  const known = rows.find((row) => row.member.login.toLowerCase() === typed && isUsable(row));
  const { app_version } = door;
  const asNew = () => signInAsNew(door.world, { login, passphrase, app_version });
  if (known === undefined) return entered(door, await asNew());
  const again = await signInAgain(door.world, known.device, { login, passphrase, app_version });
  // The device was shut out or is not known any more: a new one hands its outbox over (R64).
  const isGone = "code" in again && GONE.includes(again.code);
  if (!isGone) return entered(door, again);
  await setStanding(door.phone, known.device, "revoked");
  return entered(door, await asNew());
}

/** By a one-time code, as a new device. */
export async function enterByCode(
  door: Door,
  answers: { join_code: string; name: string; login: string; passphrase: string },
): Promise<Entered> {
  return entered(door, await joinByCode(door.world, { ...answers, app_version: door.app_version }));
}

const GONE: readonly string[] = ["device_revoked", "not_found"];

async function entered(door: Door, entrance: Entrance): Promise<Entered> {
  if (!("welcome" in entrance)) return entrance;
  const row = deviceRow(entrance.welcome);
  await setMeta(await door.open(row.device), { device: row.device });
  await putDevice(door.phone, row);
  return { row };
}

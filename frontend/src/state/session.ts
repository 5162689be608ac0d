/** Who is on the screen, who else uses this phone, and the ways in and out. */
import { computed, signal } from "@preact/signals";
import { deleteDeviceDatabase, devicesOf, putChoice, setStanding } from "../store/phone.ts";
import { waitingCount } from "../store/reads.ts";
import { askJoinCode } from "../sync/sign_in.ts";
import { writeDrafts } from "./drafts.ts";
import { type Door, type Entered, enterByCode, enterBySignIn } from "./entering.ts";
import { closeDeviceDb, current, deviceDb, house } from "./house.ts";
import { handOverNow, refreshOutbox } from "./outbox.ts";
import { loadShelf } from "./shelf.ts";
import type { Current, Person } from "./types.ts";
import { currentOf, isUsable } from "./who.ts";

export { isForMember } from "../sync/join_codes.ts";
export { current } from "./house.ts";

export const CURRENT_CHOICE = "current_device";

/** Everybody who may use this phone without signal. */
export const people = signal<Person[]>([]);
/** The server ended this session: capture goes on, the screen asks to sign in (R58). */
export const needsSignIn = computed(
  () => people.value.find((one) => one.device === current.value?.device)?.must_sign_in ?? false,
);

/** `code` is one of the wire's codes (not_authenticated, rate_limited ...) or `no_signal`. */
export type SignedIn =
  | { signed_in: Current }
  | { code: string; detail: string; field: string | null };
export type SignedOut = { signed_out: true } | { waiting: number };

/** Signs in with `name@cooperative`: again on a known device, else as a new one. Needs signal. */
export async function signIn(login: string, passphrase: string): Promise<SignedIn> {
  return shown(await enterBySignIn(door(), login, passphrase));
}

/** Joins by a one-time code. Needs signal. */
export async function join(answers: {
  join_code: string;
  name: string;
  login: string;
  passphrase: string;
}): Promise<SignedIn> {
  return shown(await enterByCode(door(), answers));
}

/** Changes the person on this phone, without signal (R60). */
export async function changePerson(device: string): Promise<void> {
  const { phone } = house();
  await writeDrafts(); // while whoever typed them is still the one on the screen
  const row = (await devicesOf(phone)).find((one) => one.device === device && isUsable(one));
  await putChoice(phone, CURRENT_CHOICE, row?.device ?? null);
  current.value = row === undefined ? null : currentOf(row);
  await Promise.all([loadShelf(), refreshOutbox(), refreshPeople()]);
  handOverNow();
}

/** Deletes this device from the phone when nothing waits; else says how much does (R61). */
export async function signOut(): Promise<SignedOut> {
  const device = current.value?.device;
  if (device === undefined) return { signed_out: true };
  const left = await waitingCount(await deviceDb(device));
  if (left > 0) return { waiting: left };
  const { phone } = house();
  current.value = null;
  await closeDeviceDb(device);
  await deleteDeviceDatabase(device);
  await setStanding(phone, device, "leaving");
  await putChoice(phone, CURRENT_CHOICE, null);
  await Promise.all([loadShelf(), refreshOutbox(), refreshPeople()]);
  handOverNow();
  return { signed_out: true };
}

/** A one-time join code for a new member, or for a member who forgot a passphrase. Needs signal. */
export async function makeJoinCode(
  roles: string[],
  member?: string,
): Promise<{ made: { code: string; expires_at: string } } | { code: string }> {
  const device = current.value?.device;
  if (device === undefined) return { code: "not_authenticated" };
  const wanted = member === undefined ? { roles } : { roles, member };
  return askJoinCode(house().world, device, wanted);
}

/** Reads again who is known here and how much of each waits. */
export async function refreshPeople(): Promise<void> {
  const rows = (await devicesOf(house().phone)).filter((row) => row.standing !== "leaving");
  people.value = await Promise.all(
    rows.map(async (row) => ({
      ...currentOf(row),
      waiting: await waitingCount(await deviceDb(row.device)),
      must_sign_in: row.standing !== "in",
    })),
  );
}

function door(): Door {
  const { world, phone } = house();
  return { world, phone, open: deviceDb, app_version: __APP_VERSION__ };
}

async function shown(entered: Entered): Promise<SignedIn> {
  if (!("row" in entered)) return entered;
  await changePerson(entered.row.device);
  return { signed_in: currentOf(entered.row) };
}

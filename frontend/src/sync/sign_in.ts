/** Becoming, and becoming again, a device of a member (R57). Needs signal. */
import type { CooperativeOfPhone, DeviceRow, MemberOfPhone } from "../store/rows.ts";
import { ask, type Fields, isFields } from "./answers.ts";
import type { World } from "./world.ts";

export interface Welcome {
  device: string;
  mark: string;
  epoch: string;
  member: MemberOfPhone;
  cooperative: CooperativeOfPhone;
}
export type Entrance =
  | { welcome: Welcome }
  | { code: string; detail: string; field: string | null };

/** A new device, by `name@cooperative` and passphrase. */
export function signInAsNew(
  world: World,
  answers: { login: string; passphrase: string; app_version: string },
): Promise<Entrance> {
  return enter(world, "/api/v1/devices", null, answers);
}

/** A new device of a new member, or of one who forgot a passphrase, by a one-time code. */
export function joinByCode(
  world: World,
  answers: {
    join_code: string;
    name: string;
    login: string;
    passphrase: string;
    app_version: string;
  },
): Promise<Entrance> {
  return enter(world, "/api/v1/devices", null, answers);
}

/** The same device again: its outbox goes on where it was (R58). */
export function signInAgain(
  world: World,
  device: string,
  answers: { login: string; passphrase: string; app_version: string },
): Promise<Entrance> {
  return enter(world, "/api/v1/session", device, answers);
}

/** A one-time join code from a coordinator's device. */
export async function askJoinCode(
  world: World,
  device: string,
  wanted: { roles: string[]; member?: string },
): Promise<{ made: { code: string; expires_at: string } } | { code: string }> {
  const outcome = await ask(world, {
    method: "POST",
    path: "/api/v1/join-codes",
    device,
    body: JSON.stringify(wanted),
  });
  if (outcome.is !== "answered") return { code: outcome.code };
  const { code, expires_at } = outcome.payload;
  if (typeof code !== "string" || typeof expires_at !== "string") return { code: "nonsense" };
  return { made: { code, expires_at } };
}

export function deviceRow(welcome: Welcome): DeviceRow {
  const { device, mark, member, cooperative } = welcome;
  return { device, mark, member, cooperative, standing: "in" };
}

async function enter(
  world: World,
  path: string,
  device: string | null,
  answers: Fields,
): Promise<Entrance> {
  const body = JSON.stringify(answers);
  const outcome = await ask(world, { method: "POST", path, device, body });
  if (outcome.is === "answered") {
    const welcome = parsedWelcome(outcome.payload);
    return welcome === null ? { code: "nonsense", detail: "", field: null } : { welcome };
  }
  if (outcome.is === "refused") {
    return { code: outcome.code, detail: outcome.detail, field: outcome.field };
  }
  return { code: outcome.code, detail: "", field: null };
}

function parsedWelcome(payload: Fields): Welcome | null {
  const { device, mark, epoch, member, cooperative } = payload;
  if (typeof device !== "string" || typeof mark !== "string" || typeof epoch !== "string") {
    return null;
  }
  const who = parsedMember(member);
  const whose = parsedCooperative(cooperative);
  if (who === null || whose === null) return null;
  return { device, mark, epoch, member: who, cooperative: whose };
}

function parsedMember(value: unknown): MemberOfPhone | null {
  if (!isFields(value) || !Array.isArray(value.roles)) return null;
  const { id, name, login, roles } = value;
  if (typeof id !== "string" || typeof name !== "string" || typeof login !== "string") return null;
  return { id, name, login, roles: roles.filter((role) => typeof role === "string") };
}

function parsedCooperative(value: unknown): CooperativeOfPhone | null {
  if (!isFields(value)) return null;
  const { id, handle, name, starts_with } = value;
  if (typeof id !== "string" || typeof handle !== "string" || typeof name !== "string") return null;
  const given = isFields(starts_with) ? Object.entries(starts_with) : [];
  return {
    id,
    handle,
    name,
    starts_with: Object.fromEntries(given.map(([key, value]) => [key, String(value)])),
  };
}

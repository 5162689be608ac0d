import { beforeEach, describe, expect, test } from "vitest";
import {
  allRows,
  answer,
  benchWorld,
  COOPERATIVE,
  DEVICE,
  emptyProfile,
  note,
  OTHER_DEVICE,
  openedDevice,
  savedNotes,
} from "../../simulation/bench.ts";
import { type SmallServer, smallServer } from "../../simulation/small_server.ts";
import type { DeviceDb } from "../store/device.ts";
import { devicesOf, openPhone, type PhoneDb, putDevice } from "../store/phone.ts";
import { waitingCount } from "../store/reads.ts";
import type { DeviceRow } from "../store/rows.ts";
import { saveEntry } from "../store/save.ts";
import { type ExchangeReport, exchangeAll } from "./exchange.ts";
import type { WireAnswer, WireRequest, World } from "./world.ts";

let phone: PhoneDb;
let dbs: Map<string, DeviceDb>;
let server: SmallServer;

beforeEach(async () => {
  emptyProfile();
  server = smallServer();
  phone = await openPhone();
  dbs = new Map();
  for (const device of [DEVICE, OTHER_DEVICE]) {
    await putDevice(phone, deviceRow(device, `member of ${device}`));
    dbs.set(device, await openedDevice(device));
  }
});

function deviceRow(device: string, member: string): DeviceRow {
  return {
    device,
    mark: "K7",
    member: { id: member, name: "A", login: `${member}@hill`, roles: ["processor"] },
    cooperative: { id: COOPERATIVE, handle: "hill", name: "Hill", starts_with: {} },
    standing: "in",
  };
}

function dbOf(device: string): DeviceDb {
  const db = dbs.get(device);
  if (db === undefined) throw new Error("both devices are open");
  return db;
}

function exchange(world: World): Promise<ExchangeReport | null> {
  return exchangeAll({
    world,
    phone,
    open: async (device) => dbOf(device),
    kinds: 1,
    shown: DEVICE,
    pullForAll: false,
    withStuck: true,
  });
}

function standingOf(device: string): Promise<string | undefined> {
  return devicesOf(phone).then((rows) => rows.find((row) => row.device === device)?.standing);
}

describe("a phone that two members share", () => {
  test("hands both outboxes over, each under its own device", async () => {
    await savedNotes(dbOf(DEVICE), 2);
    await saveEntry(dbOf(OTHER_DEVICE), note({ device: OTHER_DEVICE }), 0);
    const world = benchWorld(server.wire);

    const report = await exchange(world);

    expect(report).toMatchObject({ trouble: null, waitingCount: 0 });
    const pushes = world.requests.filter((request) => request.method === "POST");
    for (const request of pushes) {
      const { device, entries } = JSON.parse(request.body ?? "");
      expect(device).toBe(request.device);
      for (const entry of entries) expect(entry.device).toBe(request.device);
    }
    expect(server.entries.size).toBe(3);
  });

  test("goes on for the one when the other's session is over", async () => {
    await savedNotes(dbOf(DEVICE), 30);
    await saveEntry(dbOf(OTHER_DEVICE), note({ device: OTHER_DEVICE }), 0);
    const world = benchWorld((request) =>
      request.device === DEVICE ? answer(401, { code: "not_authenticated" }) : server.wire(request),
    );

    await exchange(world);

    expect(await standingOf(DEVICE)).toBe("over");
    expect(await waitingCount(dbOf(DEVICE))).toBe(30);
    expect(await waitingCount(dbOf(OTHER_DEVICE))).toBe(0);
  });

  test("sends all thirty once the member has signed in again", async () => {
    await savedNotes(dbOf(DEVICE), 30);
    await exchange(benchWorld(() => answer(401, { code: "not_authenticated" })));

    await exchange(benchWorld(server.wire));

    expect(await standingOf(DEVICE)).toBe("in");
    expect(server.entries.size).toBe(30);
  });
});

describe("a revoked device", () => {
  const revoked = (request: WireRequest): WireAnswer =>
    request.device === DEVICE ? answer(403, { code: "device_revoked" }) : server.wire(request);

  test("keeps what waits and drops what it read", async () => {
    await savedNotes(dbOf(DEVICE), 20);

    await exchange(benchWorld(revoked));
    await exchange(benchWorld(revoked));

    expect(await standingOf(DEVICE)).toBe("revoked");
    expect(await allRows(dbOf(DEVICE))).toHaveLength(20);
    expect(await waitingCount(dbOf(DEVICE))).toBe(20);
  });

  test("has another device of its member hand over, the old id inside", async () => {
    const saved = await savedNotes(dbOf(DEVICE), 20);
    for (const { id } of saved) {
      server.verdicts.set(id, { status: "quarantined", code: "revoked_device", detail: "" });
    }
    await exchange(benchWorld(revoked));
    await putDevice(phone, deviceRow(OTHER_DEVICE, `member of ${DEVICE}`));
    const world = benchWorld(revoked);

    await exchange(world);

    const [push] = world.requests.filter((request) => request.method === "POST");
    expect(push?.device).toBe(OTHER_DEVICE);
    expect(JSON.parse(push?.body ?? "").entries[0].device).toBe(DEVICE);
    expect(await dbOf(DEVICE).count("attention")).toBe(20);
  });
});

test("a device that signed out without signal ends its cookie at the next contact", async () => {
  await putDevice(phone, { ...deviceRow(OTHER_DEVICE, "b"), standing: "leaving" });
  const world = benchWorld((request) =>
    request.method === "DELETE" ? answer(200, {}) : server.wire(request),
  );

  await exchange(world);

  const [ended] = world.requests.filter((request) => request.method === "DELETE");
  expect(ended).toMatchObject({ path: "/api/v1/session", device: OTHER_DEVICE });
  expect((await devicesOf(phone)).map((row) => row.device)).toEqual([DEVICE]);
});

test("only one of two tabs exchanges at a time", async () => {
  await savedNotes(dbOf(DEVICE), 1);
  const world = benchWorld(server.wire);

  const reports = await Promise.all([exchange(world), exchange(world)]);

  expect(reports.filter((report) => report === null)).toHaveLength(1);
  expect(world.requests.filter((request) => request.method === "POST")).toHaveLength(1);
});

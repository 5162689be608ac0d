import { beforeEach, describe, expect, test } from "vitest";
import {
  allRows,
  answer,
  benchWorld,
  DEVICE,
  emptyProfile,
  openedDevice,
  othersEntry,
  savedNotes,
} from "../../simulation/bench.ts";
import { type SmallServer, smallServer } from "../../simulation/small_server.ts";
import type { DeviceDb } from "../store/device.ts";
import { metaOf } from "../store/meta.ts";
import { waitingCount } from "../store/reads.ts";
import { reoffer } from "./have.ts";
import { pullAll } from "./pull.ts";
import { pushAll } from "./push.ts";
import type { WireAnswer, WireRequest } from "./world.ts";

let db: DeviceDb;
let server: SmallServer;

beforeEach(async () => {
  emptyProfile();
  db = await openedDevice();
  server = smallServer();
  server.pageRows = 5;
  for (let number = 1; number <= 100; number += 1) {
    const entry = othersEntry(number);
    server.entries.set(entry.id, entry);
  }
});

function pull(wire: (request: WireRequest) => WireAnswer | Promise<WireAnswer>) {
  const world = benchWorld(wire);
  return pullAll({ world, db, device: DEVICE, kinds: 1 });
}

function cursorOf(request: WireRequest): string | null {
  return new URL(request.path, "http://localhost").searchParams.get("cursor");
}

describe("pulling", () => {
  test("goes on page by page until there is no more", async () => {
    const report = await pull(server.wire);

    expect(report.trouble).toBeNull();
    expect(await allRows(db)).toHaveLength(100);
    expect((await metaOf(db)).is_whole).toBe(true);
  });

  test("killed after page three of twenty asks for page four next", async () => {
    let pages = 0;
    await pull((request) => {
      pages += 1;
      if (pages > 3) throw new TypeError("the phone was switched off");
      return server.wire(request);
    });
    expect((await metaOf(db)).is_whole).toBe(false);

    const asked: (string | null)[] = [];
    await pull((request) => {
      asked.push(cursorOf(request));
      return server.wire(request);
    });

    expect(asked[0]).toBe("first/15");
    expect(asked).toHaveLength(17);
    expect(await allRows(db)).toHaveLength(100);
  });

  test("takes nothing from an answer that is not one", async () => {
    const report = await pull(() =>
      answer(200, { epoch: "first", changes: [{ type: "entry", id: 1 }], next: "x", more: false }),
    );

    expect(report.trouble?.code).toBe("nonsense");
    expect((await metaOf(db)).cursor).toBe("");
  });

  test("leaves types of change alone that only a later app knows", async () => {
    const changes = [{ type: "photo", id: "p1", seq: 1, data: {} }];

    await pull(() => answer(200, { epoch: "first", changes, next: "first/1", more: false }));

    expect((await metaOf(db)).cursor).toBe("first/1");
  });

  test("begins anew when told to, and ends when told so for ever", async () => {
    const report = await pull(() => answer(200, { reset: true, epoch: "first" }));

    expect(report.trouble?.code).toBe("nonsense");
    expect(report.wasReset).toBe(true);
  });

  test("stops for an app that is too old, while pushing goes on", async () => {
    await savedNotes(db, 2);
    const wire = (request: WireRequest) =>
      request.method === "GET" ? answer(409, { code: "upgrade_required" }) : server.wire(request);

    const report = await pull(wire);
    await pushAll({ world: benchWorld(wire), db, speaker: DEVICE, withStuck: false });

    expect(report.trouble?.code).toBe("upgrade_required");
    expect((await metaOf(db)).must_upgrade).toBe(true);
    expect(await waitingCount(db)).toBe(0);
  });
});

test("a restored server gets back what it had confirmed and lost", async () => {
  const saved = await savedNotes(db, 3);
  const world = benchWorld((request) => server.wire(request));
  await pushAll({ world, db, speaker: DEVICE, withStuck: false });
  await pull(server.wire);
  server = smallServer();
  server.epoch = "second";
  const kept = saved[0];
  if (kept !== undefined) server.entries.set(kept.id, kept);

  await pull(server.wire);
  await reoffer(world, db, DEVICE);
  await pushAll({ world, db, speaker: DEVICE, withStuck: false });

  expect([...server.entries.keys()].sort()).toEqual(saved.map(({ id }) => id).sort());
  expect((await metaOf(db)).must_reoffer).toBe(false);
});

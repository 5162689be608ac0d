import { beforeEach, describe, expect, test } from "vitest";
import {
  answer,
  benchWorld,
  DEVICE,
  emptyProfile,
  note,
  openedDevice,
  savedNotes,
} from "../../simulation/bench.ts";
import { type SmallServer, smallServer } from "../../simulation/small_server.ts";
import type { DeviceDb } from "../store/device.ts";
import { metaOf, setMeta } from "../store/meta.ts";
import { attentionRows, slips, waitingCount } from "../store/reads.ts";
import type { Entry } from "../store/rows.ts";
import { saveEntry } from "../store/save.ts";
import { PUSH_BYTES_MAX } from "./portions.ts";
import { pushAll } from "./push.ts";
import type { WireAnswer, WireRequest } from "./world.ts";

let db: DeviceDb;
let server: SmallServer;

beforeEach(async () => {
  emptyProfile();
  db = await openedDevice();
  server = smallServer();
});

function push(wire: (request: WireRequest) => WireAnswer | Promise<WireAnswer>, withStuck = false) {
  return pushAll({ world: benchWorld(wire), db, speaker: DEVICE, withStuck });
}

function entriesOf(request: WireRequest): Entry[] {
  return JSON.parse(request.body ?? "").entries;
}

describe("what empties the outbox", () => {
  test.each([
    ["400", answer(400, { code: "csrf" })],
    ["401", answer(401, { code: "not_authenticated" })],
    ["403", answer(403, { code: "forbidden" })],
    ["404", answer(404, { code: "not_found" })],
    ["409", answer(409, { code: "server_error" })],
    ["422", answer(422, { code: "server_error" })],
    ["429", answer(429, { code: "rate_limited" }, "7")],
    ["500", answer(500, { code: "server_error" })],
    ["502 of a box", { status: 502, retry_after: null, text: "<html>Bad gateway</html>" }],
    ["503", answer(503, { code: "server_error" }, "7")],
    ["a portal", { status: 200, retry_after: null, text: "<html>Welcome guest</html>" }],
    ["half an answer", { status: 200, retry_after: null, text: '{"protocol":1,"push":"' }],
    ["another protocol", { status: 200, retry_after: null, text: '{"protocol":2,"results":[]}' }],
    ["an answer to another push", answer(200, { push: "x", epoch: "e", results: [] })],
  ])("is not %s", async (_, refusal) => {
    await savedNotes(db, 3);

    const report = await push(() => refusal);

    expect(report.trouble).not.toBeNull();
    expect(await waitingCount(db)).toBe(3);
    expect((await slips(db)).every((slip) => slip.stuck === null)).toBe(true);
  });

  test("is not a lost connection", async () => {
    await savedNotes(db, 3);

    const report = await push(() => Promise.reject(new TypeError("network")));

    expect(report.trouble).toEqual({ code: "no_signal", retry_after_ms: null });
    expect(await waitingCount(db)).toBe(3);
  });

  test("is an answer that names each entry", async () => {
    const saved = await savedNotes(db, 3);

    const report = await push(server.wire);

    expect(report.trouble).toBeNull();
    expect(await waitingCount(db)).toBe(0);
    expect([...server.entries.keys()]).toEqual(saved.map(({ id }) => id));
  });

  test("is also the answer `exists` after an answer was lost", async () => {
    await savedNotes(db, 3);
    await push((request) => {
      server.wire(request);
      throw new TypeError("the answer was lost");
    });

    await push(server.wire);

    expect(await waitingCount(db)).toBe(0);
    expect(server.entries.size).toBe(3);
  });

  test("moves what the server keeps aside under needs attention, with its sentence", async () => {
    const [first, second, third] = await savedNotes(db, 3);
    const detail = "kind: this app is too old.";
    server.verdicts.set(first?.id ?? "", { status: "quarantined", code: "unknown_kind", detail });
    server.verdicts.set(second?.id ?? "", { status: "mismatch", code: "mismatch", detail: "" });

    await push(server.wire);

    const aside = await attentionRows(db);
    expect(aside.map(({ id, status }) => [id, status]).sort()).toEqual(
      [
        [first?.id, "quarantined"],
        [second?.id, "mismatch"],
      ].sort(),
    );
    expect(aside.find((row) => row.id === first?.id)?.detail).toBe(detail);
    expect((await db.getAllKeys("entries")).map(String)).toEqual([third?.id]);
  });
});

describe("what goes into one push", () => {
  test("is at most a hundred entries, in the order they were written", async () => {
    const saved = await savedNotes(db, 250);
    const sizes: number[] = [];

    await push((request) => {
      sizes.push(entriesOf(request).length);
      return server.wire(request);
    });

    expect(sizes).toEqual([100, 100, 50]);
    expect([...server.entries.keys()]).toEqual(saved.map(({ id }) => id));
  });

  test("is at most 256 KiB", async () => {
    await savedNotes(db, 60, "ü".repeat(4_000));
    const sizes: number[] = [];

    await push((request) => {
      sizes.push(new TextEncoder().encode(request.body ?? "").byteLength);
      return server.wire(request);
    });

    expect(Math.max(...sizes)).toBeLessThanOrEqual(PUSH_BYTES_MAX);
    expect(server.entries.size).toBe(60);
  });
});

describe("a push that is too large", () => {
  test("is halved until only the impossible entry is left, which stays", async () => {
    await savedNotes(db, 40);
    const { entry: large } = await saveEntry(db, note({}, "x".repeat(12_000)), 0);
    await savedNotes(db, 40);
    const limited = (request: WireRequest) =>
      (request.body ?? "").length > 10_240
        ? answer(413, { code: "too_large" })
        : server.wire(request);

    const report = await push(limited);

    expect(report.trouble).toBeNull();
    expect(server.entries.size).toBe(80);
    expect(await slips(db)).toEqual([
      expect.objectContaining({ id: large.id, stuck: "too_large" }),
    ]);
  });

  test("is halved as well when a box on the way says so in its own words", async () => {
    await savedNotes(db, 8);
    const box = (request: WireRequest) =>
      entriesOf(request).length > 2
        ? { status: 413, retry_after: null, text: "<html>Too large</html>" }
        : server.wire(request);

    await push(box);

    expect(await waitingCount(db)).toBe(0);
  });

  test("of one entry is offered again, alone, and goes when the box is gone", async () => {
    await savedNotes(db, 1);
    await push(() => answer(413, { code: "too_large" }));
    await push(server.wire);
    expect(await waitingCount(db)).toBe(1);

    await push(server.wire, true);

    expect(await waitingCount(db)).toBe(0);
  });
});

describe("an entry to bring again later", () => {
  test("does not hold back the others", async () => {
    const saved = await savedNotes(db, 100);
    const heldId = saved[16]?.id ?? "";
    server.verdicts.set(heldId, { status: "retry" });

    for (let round = 0; round < 20; round += 1) await push(server.wire);
    expect(server.entries.size).toBe(99);

    server.verdicts.clear();
    await push(server.wire);
    expect(await waitingCount(db)).toBe(0);
  });

  test("holds back what names it", async () => {
    const [first] = await savedNotes(db, 1);
    const corrects = first?.id ?? "";
    const body = { corrects, of_kind: "note", reason: "slip" };
    await saveEntry(db, note({ kind: "void", body }), 0);
    server.verdicts.set(corrects, { status: "retry" });
    const sent: string[] = [];
    const watched = (request: WireRequest) => {
      sent.push(...entriesOf(request).map((entry) => entry.kind));
      return server.wire(request);
    };

    await push(watched);
    await push(watched);

    expect(sent).toEqual(["note", "note"]);
    server.verdicts.clear();
    await push(watched);
    expect(sent).toEqual(["note", "note", "note", "void"]);
  });
});

test("another epoch rebuilds the read side and still sends all fifty", async () => {
  await savedNotes(db, 50);
  await setMeta(db, { epoch: "before", cursor: "before/9" });

  const report = await push(server.wire);

  expect(report.wasReset).toBe(true);
  expect(server.entries.size).toBe(50);
  expect(await metaOf(db)).toMatchObject({ epoch: "first", cursor: "" });
});

test("the difference to the server's clock is kept", async () => {
  await savedNotes(db, 1);
  const world = benchWorld(server.wire);
  world.clock.nowMs += 300_000;

  await pushAll({ world, db, speaker: DEVICE, withStuck: false });

  expect((await metaOf(db)).clock_off_ms).toBe(-300_000);
});

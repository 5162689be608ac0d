import { beforeEach, describe, expect, test } from "vitest";
import {
  allRows,
  emptyProfile,
  openedDevice,
  othersEntry,
  START_MS,
  savedNotes,
} from "../../simulation/bench.ts";
import { metaOf, setMeta } from "./meta.ts";
import { dropReadData, OWN_ENTRIES_KEPT_DAYS, prune, resetReadSide } from "./prune.ts";
import { handedOverIds, slips } from "./reads.ts";
import { settle } from "./settle.ts";
import { takeIn } from "./take_in.ts";

beforeEach(emptyProfile);

const DAY_MS = 86_400_000;
const LOT = "lot:MJ-261110-K7-1";

async function handedOver(count: number) {
  const db = await openedDevice();
  const saved = await savedNotes(db, count);
  const verdicts = saved.map(({ id }) => ({
    id,
    status: "created" as const,
    code: "",
    detail: "",
  }));
  await settle(db, verdicts, START_MS);
  const told = saved.map((entry, index) => ({
    type: "entry" as const,
    id: entry.id,
    seq: index + 1,
    data: { entry, received_at: entry.recorded_at },
  }));
  const data = { state: {}, upto_seq: count, entry_count: count, fold: 1, is_open: false };
  const sheet = { type: "sheet" as const, id: LOT, seq: count + 1, data };
  await takeIn(db, [...told, sheet], {}, START_MS);
  return { db, saved };
}

describe("pruning", () => {
  test("keeps a sent entry for thirty days", async () => {
    const { db } = await handedOver(1);
    await setMeta(db, { backed_up_seq: 1 });

    await prune(db, START_MS + OWN_ENTRIES_KEPT_DAYS * DAY_MS - 1);
    expect(await allRows(db)).toHaveLength(1);

    await prune(db, START_MS + OWN_ENTRIES_KEPT_DAYS * DAY_MS);
    expect(await allRows(db)).toHaveLength(0);
  });

  test("keeps it longer while no proved backup covers it", async () => {
    const { db } = await handedOver(2);
    await setMeta(db, { backed_up_seq: 1 });

    await prune(db, START_MS + 400 * DAY_MS);

    expect((await allRows(db)).map((row) => row.seq)).toEqual([2]);
  });

  test("never takes what waits, however old", async () => {
    const db = await openedDevice();
    await savedNotes(db, 3);
    await setMeta(db, { backed_up_seq: 99 });

    await prune(db, START_MS + 4_000 * DAY_MS);

    expect(await allRows(db)).toHaveLength(3);
  });
});

describe("a reset", () => {
  test("with fifty waiting leaves fifty waiting and throws the read side away", async () => {
    const db = await openedDevice();
    await savedNotes(db, 50);
    const entry = othersEntry(1, { subjects: ["lot:B"] });
    const told = { entry, received_at: entry.recorded_at };
    const data = { state: {}, upto_seq: 1, entry_count: 1, fold: 1, is_open: true };
    await takeIn(
      db,
      [
        { type: "entry", id: entry.id, seq: 1, data: told },
        { type: "sheet", id: "lot:B", seq: 2, data },
      ],
      { cursor: "first/2", epoch: "first", is_whole: true },
      START_MS,
    );

    await resetReadSide(db, "first");

    expect(await slips(db)).toHaveLength(50);
    expect(await allRows(db)).toHaveLength(50);
    expect(await db.count("sheets")).toBe(0);
    expect(await metaOf(db)).toMatchObject({ cursor: "", is_whole: false, must_reoffer: false });
  });

  test("into a new epoch forgets numbers and remembers to offer sent entries again", async () => {
    const { db, saved } = await handedOver(2);
    await setMeta(db, { epoch: "first", backed_up_seq: 2 });

    await resetReadSide(db, "second");

    expect((await allRows(db)).map((row) => row.seq)).toEqual([0, 0]);
    expect((await handedOverIds(db)).sort()).toEqual(saved.map(({ id }) => id).sort());
    expect(await metaOf(db)).toMatchObject({
      epoch: "second",
      must_reoffer: true,
      backed_up_seq: null,
    });
  });
});

test("a revoked device keeps what waits and nothing else", async () => {
  const { db } = await handedOver(2);
  const [waiting] = await savedNotes(db, 1);

  await dropReadData(db);

  expect((await allRows(db)).map((row) => row.id)).toEqual([waiting?.id]);
  expect(await db.count("sheets")).toBe(0);
  expect(await slips(db)).toHaveLength(1);
});

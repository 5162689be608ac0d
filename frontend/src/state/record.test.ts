import { beforeEach, describe, expect, test, vi } from "vitest";
import { answer, DEVICE, START_MS } from "../../simulation/bench.ts";
import { type TestHouse, testHouse, welcome } from "../../simulation/house.ts";
import type { LotState } from "../calc/stock.ts";
import { draftOf } from "../store/drafts.ts";
import { draft } from "./drafts.ts";
import { deviceDb } from "./house.ts";
import { attention, oldestWaitingAt, waiting } from "./outbox.ts";
import { correct, entriesAbout, record, recordTogether, takeBack } from "./record.ts";
import { current, signIn } from "./session.ts";
import { sheet } from "./sheets.ts";
import type { Entry, Saved } from "./types.ts";

const LOT = "lot:JAR-261110-K7-1";
const RECEIPT = {
  lot: "JAR-261110-K7-1",
  material: "jar",
  source: "glass-works",
  amount: { amount: "48", unit: "pc" },
  place: "store",
  condition: "fit",
};

let house: TestHouse;

beforeEach(async () => {
  house = await testHouse((request) =>
    request.path.endsWith("/devices") ? welcome(DEVICE) : answer(500, { code: "server_error" }),
  );
  await signIn("ama@hill", "a spoon of thyme");
  house.world.clock.nowMs = START_MS;
});

function entryOf(saved: Saved): Entry {
  if (!("saved" in saved)) throw new Error(JSON.stringify(saved));
  return saved.saved;
}

function lot(): LotState | undefined {
  return sheet<LotState>(LOT).value?.state;
}

function later(): void {
  house.world.clock.nowMs += 1_000;
}

describe("recording", () => {
  test("shows the entry on its sheet and in the outbox, and asks to hand over", async () => {
    const saved = entryOf(await record("receipt", RECEIPT));

    expect(sheet<LotState>(LOT).value).toMatchObject({ from: "phone", waiting: 1 });
    expect(lot()?.on_hand).toBe("48");
    expect(waiting.value.map((slip) => [slip.id, slip.kind])).toEqual([[saved.id, "receipt"]]);
    expect(oldestWaitingAt.value).toBe(START_MS);
    expect(house.savedCount).toBe(1);
    expect(house.told).toEqual([[LOT]]);
  });

  test("of two taps at once makes one entry", async () => {
    const [first, second] = await Promise.all([
      record("receipt", RECEIPT),
      record("receipt", RECEIPT),
    ]);

    expect(entryOf(second).id).toBe(entryOf(first).id);
    expect(waiting.value).toHaveLength(1);
  });

  test("of the same thing a second later makes another", async () => {
    await record("receipt", RECEIPT);
    later();
    await record("receipt", RECEIPT);

    expect(waiting.value).toHaveLength(2);
  });

  test("refuses with the field and keeps nothing", async () => {
    const saved = await record("receipt", { ...RECEIPT, amount: { amount: "4 8", unit: "pc" } });

    expect(saved).toMatchObject({ refusal: { field: "amount.amount" } });
    expect(waiting.value).toEqual([]);
    expect(house.savedCount).toBe(0);
  });

  test("says so when the disk is full, and nothing is counted as saved", async () => {
    const full = vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(() => {
      throw new DOMException("no room", "QuotaExceededError");
    });

    const saved = await record("receipt", RECEIPT);
    full.mockRestore();

    expect(saved).toEqual({ trouble: "trouble.storage_full" });
    expect(waiting.value).toEqual([]);
    later();
    expect(entryOf(await record("receipt", RECEIPT)).device_seq).toBe(1);
  });

  test("opens the database again when the browser has closed it under the form", async () => {
    (await deviceDb(DEVICE)).close();

    const saved = await record("receipt", RECEIPT);

    expect(entryOf(saved).device_seq).toBe(1);
  });

  test("needs somebody on the screen", async () => {
    current.value = null;

    expect(await record("receipt", RECEIPT)).toEqual({ trouble: "trouble.nobody" });
  });
});

describe("putting right", () => {
  test("corrects and takes back, and shows both among the entries", async () => {
    const first = entryOf(await record("receipt", RECEIPT));
    later();
    const fewer = { ...RECEIPT, amount: { amount: "47", unit: "pc" } };
    await correct(first.id, fewer, "one was broken");
    expect(lot()?.on_hand).toBe("47");

    await takeBack(first.id);

    expect(lot()?.made).toBe("0");
    const rows = await entriesAbout(LOT);
    expect(rows.map((row) => [row.entry.kind, row.is_waiting, row.seq])).toEqual([
      ["receipt", true, null],
      ["correction", true, null],
      ["void", true, null],
    ]);
  });
});

test("an entry refused alone is listed under needs attention and still waits", async () => {
  const saved = entryOf(await record("receipt", RECEIPT));
  const db = await deviceDb(DEVICE);
  const { markStuck } = await import("../store/settle.ts");
  const { refreshOutbox } = await import("./outbox.ts");

  await markStuck(db, saved.id, "too_large");
  await refreshOutbox();

  expect(attention.value).toMatchObject([{ id: saved.id, status: "stuck", code: "too_large" }]);
  expect(waiting.value).toHaveLength(1);
});

describe("recording together", () => {
  const PRICE = { lot: RECEIPT.lot, price: "12.50", currency: "EUR" };
  const parts = (price: object) =>
    [
      { kind: "receipt", body: RECEIPT },
      { kind: "price_paid", body: price },
    ] as const;

  test("keeps all parts and ends what was typed, also what was not written yet", async () => {
    draft("receive").save({ price: "12.50" });

    const answer = await recordTogether(parts(PRICE), "receive");
    house.world.clock.nowMs += 10_000;

    expect("saved" in answer && answer.saved.map(({ kind }) => kind)).toEqual([
      "receipt",
      "price_paid",
    ]);
    expect(await draftOf(await deviceDb(DEVICE), "receive")).toBeNull();
    expect(lot()?.on_hand).toBe("48");
    expect(waiting.value).toHaveLength(2);
  });

  test("keeps nothing when one part is refused; what was typed stays", async () => {
    draft("receive").save({ price: "-1" });

    const answer = await recordTogether(parts({ ...PRICE, price: "-1" }), "receive");

    expect(answer).toMatchObject({ refusal: { field: "price" } });
    expect(waiting.value).toEqual([]);
    expect(await draftOf(await deviceDb(DEVICE), "receive")).toEqual({ price: "-1" });
  });

  test("of a second tap while the first is being saved answers the first", async () => {
    const [first, second] = await Promise.all([
      recordTogether(parts(PRICE), "receive"),
      recordTogether(parts({ ...PRICE, price: "13" }), "receive"),
    ]);

    expect(second).toBe(first);
    expect(waiting.value).toHaveLength(2);
  });
});

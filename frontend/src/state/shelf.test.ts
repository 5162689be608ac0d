import { beforeEach, describe, expect, test, vi } from "vitest";
import { answer, DEVICE, OTHER_DEVICE, othersEntry, START_MS } from "../../simulation/bench.ts";
import { type TestHouse, testHouse, welcome } from "../../simulation/house.ts";
import type { LotState } from "../calc/stock.ts";
import { LOT_FOLD } from "../calc/stock.ts";
import type { Body, Entry } from "../store/rows.ts";
import { settle } from "../store/settle.ts";
import { type Pulled, takeIn } from "../store/take_in.ts";
import type { WireRequest } from "../sync/world.ts";
import { noteHands } from "./hands.ts";
import { deviceDb } from "./house.ts";
import { record } from "./record.ts";
import { changePerson, current, signIn } from "./session.ts";
import { sheet, sheetsOf } from "./sheets.ts";
import { isAddingUp, loadShelf, refold } from "./shelf.ts";

const CODE = "JAR-261110-K7-1";
const LOT = `lot:${CODE}`;
const AMOUNT = { amount: "48", unit: "pc" };
const RECEIPT = {
  lot: CODE,
  material: "jar",
  source: "glass-works",
  amount: AMOUNT,
  place: "store",
  condition: "fit",
};
const SALE = { lot: CODE, amount: { amount: "2", unit: "pc" }, place: "store", on: "2026-11-10" };

let house: TestHouse;
let onEntries: (request: WireRequest) => ReturnType<typeof answer>;

beforeEach(async () => {
  onEntries = () => answer(503, { code: "server_error" });
  house = await testHouse((request) => {
    if (request.path.startsWith("/api/v1/entries")) return onEntries(request);
    const { login } = JSON.parse(request.body ?? "{}");
    return login === "ben@hill" ? welcome(OTHER_DEVICE, login, "ben") : welcome(DEVICE, login);
  });
  await signIn("ama@hill", "a spoon of thyme");
});

function told(entry: Entry, seq: number): Pulled {
  return { type: "entry", id: entry.id, seq, data: { entry, received_at: entry.recorded_at } };
}

function sheetOf(seq: number, state: Body, isOpen: boolean): Pulled {
  const data = { state, upto_seq: seq - 1, entry_count: 1, fold: LOT_FOLD, is_open: isOpen };
  return { type: "sheet", id: LOT, seq, data };
}

function receipt(): Entry {
  return othersEntry(1, { kind: "receipt", subjects: [LOT], body: RECEIPT });
}

/** The state a server sends of the receipt alone. */
async function serverState(): Promise<Body> {
  const { folded } = await import("./folding.ts");
  const entry = receipt();
  const row = {
    id: entry.id,
    entry,
    seq: 1,
    received_at: null,
    linked: [LOT],
    handed_over_ms: null,
  };
  return { ...folded(LOT, [row]) };
}

describe("the shelf", () => {
  test("shows what was made here and never handed over, after a cold start", async () => {
    await record("receipt", RECEIPT);

    await loadShelf();
    await vi.waitUntil(() => !isAddingUp.value);

    expect(sheetsOf<LotState>("lot").value.map((one) => one.state.on_hand)).toEqual(["48"]);
  });

  test("fetches what judges a fill check before it adds up the lot", async () => {
    await record("receipt", RECEIPT);
    const label = [{ amount: { amount: "250", unit: "g" } }];
    const weighed = { unit: "g", tares: ["20", "20"], gross: ["260", "270"], lot_size: 2 };

    await record("fill_checked", { lot: CODE, on: "2026-11-10", label, rules: "us", ...weighed });

    expect(sheet<LotState>(LOT).value?.state.fills.map((fill) => fill.errors)).toEqual([
      ["-10", "0"],
    ]);
  });

  test("shows the server's sheets at once, before anything is added up", async () => {
    await takeIn(await deviceDb(DEVICE), [sheetOf(2, await serverState(), false)], {}, START_MS);

    await loadShelf();

    expect(sheet<LotState>(LOT).value).toMatchObject({ from: "server", state: { on_hand: "48" } });
  });

  test("shows nothing of one person to the next", async () => {
    await record("receipt", RECEIPT);

    await signIn("ben@hill", "a spoon of thyme");
    expect(sheet(LOT).value).toBeNull();

    await changePerson(DEVICE);
    await vi.waitUntil(() => !isAddingUp.value);
    expect(sheet(LOT).value).not.toBeNull();
  });

  test("keeps a sheet in its place while it is read again", async () => {
    await record("receipt", RECEIPT);
    const before = sheet(LOT).value;

    await loadShelf();
    await vi.waitUntil(() => !isAddingUp.value);

    expect(sheet(LOT).value).toBe(before);
  });

  test("adds up what nobody waits for when the hands rest, what was just saved at once", async () => {
    await record("receipt", RECEIPT);
    await record("receipt", { ...RECEIPT, lot: "JAR-261110-K7-2" });
    noteHands();

    await loadShelf();
    await record("sale", SALE);

    expect(sheet<LotState>(LOT).value?.state.on_hand).toBe("46");
    expect(isAddingUp.value).toBe(true);
    await vi.waitUntil(() => !isAddingUp.value);
  });

  test("answers who waits for a sheet also when the shelf is read again meanwhile", async () => {
    await record("receipt", RECEIPT);

    await Promise.all([refold([LOT, "lot:UNKNOWN"]), loadShelf(), refold([LOT])]);

    expect(sheet(LOT).value).not.toBeNull();
  });

  test("is empty when nobody is signed in", async () => {
    await record("receipt", RECEIPT);
    current.value = null;

    await loadShelf();

    expect(sheet(LOT).value).toBeNull();
    expect(sheetsOf("lot").value).toEqual([]);
  });
});

describe("a lot of which only a part is held", () => {
  test("is asked for, taken in and then added up here", async () => {
    const made = receipt();
    const data = { entry: made, seq: 1, received_at: made.recorded_at, skew_ms: 0 };
    onEntries = () => answer(200, { entries: [data], sheet: null });
    const state = await serverState();
    await takeIn(await deviceDb(DEVICE), [sheetOf(2, state, true)], {}, START_MS);

    await record("sale", SALE);
    await vi.waitUntil(() => sheet(LOT).value?.from === "phone");

    expect(sheet<LotState>(LOT).value?.state.on_hand).toBe("46");
  });

  test("is shown with own entries on top while there is no signal", async () => {
    const state = await serverState();
    await takeIn(await deviceDb(DEVICE), [sheetOf(2, state, true)], {}, START_MS);

    await record("sale", SALE);

    expect(sheet<LotState>(LOT).value).toMatchObject({
      from: "server_and_own",
      waiting: 1,
      state: { on_hand: "46" },
    });
  });
});

test("own entries that come back by pull change nothing on the screen but their waiting", async () => {
  const saved = await record("receipt", RECEIPT);
  if (!("saved" in saved)) throw new Error("it was saved");
  const db = await deviceDb(DEVICE);
  const seen: (string | undefined)[] = [];
  const stop = sheet<LotState>(LOT).subscribe((shown) => seen.push(shown?.state.on_hand));

  const created = { id: saved.saved.id, status: "created" as const, code: "", detail: "" };
  await refold(await settle(db, [created], START_MS));
  await refold(await takeIn(db, [told(saved.saved, 1)], {}, START_MS));
  const { folded } = await import("./folding.ts");
  const rows = await db.getAll("entries");
  const state = { ...folded(LOT, rows) };
  await refold(await takeIn(db, [sheetOf(2, state, true)], {}, START_MS));
  stop();

  expect(new Set(seen)).toEqual(new Set(["48"]));
  expect(sheet(LOT).value).toMatchObject({ from: "phone", waiting: 0 });
  expect(house.savedCount).toBe(1);
});

import { beforeEach, describe, expect, test } from "vitest";
import {
  AUTHOR,
  COOPERATIVE,
  DEVICE,
  emptyProfile,
  openedDevice,
  START_MS,
} from "../../simulation/bench.ts";
import type { LotState } from "../calc/stock.ts";
import type { DeviceDb } from "../store/device.ts";
import { heldAbout, slips } from "../store/reads.ts";
import type { Entry } from "../store/rows.ts";
import { type Made, type Maker, make, makeCorrection, makeMoved, makeVoid } from "./making.ts";
import { shownOf } from "./shown.ts";

const RECEIPT = {
  lot: "MJ-261110-K7-1",
  material: "pectin",
  source: "mill",
  amount: { amount: "12.50", unit: "kg" },
  place: "store",
  condition: "fit",
};
const LOT = "lot:MJ-261110-K7-1";

let db: DeviceDb;
let clockMs: number;

beforeEach(async () => {
  emptyProfile();
  db = await openedDevice();
  clockMs = START_MS;
});

function maker(): Maker {
  clockMs += 1_000;
  const nowMs = clockMs;
  return {
    db,
    who: {
      device: DEVICE,
      mark: "K7",
      member: { id: AUTHOR, name: "A", login: "a@hill", roles: ["processor"] },
      cooperative: { id: COOPERATIVE, handle: "hill", name: "Hill", starts_with: {} },
    },
    nowMs,
    bytes: (count) => new Uint8Array(count).fill(nowMs % 251),
    zone: "Pacific/Auckland",
    app_version: "test",
  };
}

function saved(made: Made | null): Entry {
  if (made === null || !("saved" in made)) throw new Error(`not saved: ${JSON.stringify(made)}`);
  return made.saved;
}

async function lot(): Promise<LotState> {
  return shownOf(await heldAbout(db, LOT), DEVICE)?.state as LotState;
}

function received(amount: string): object {
  return { ...RECEIPT, amount: { amount, unit: "kg" } };
}

describe("an entry", () => {
  test("carries who, where, when and about what", async () => {
    const entry = saved(await make(maker(), "receipt", RECEIPT));

    expect(entry).toMatchObject({
      kind: "receipt",
      version: 1,
      subjects: [LOT],
      cooperative: COOPERATIVE,
      author: AUTHOR,
      device: DEVICE,
      device_seq: 1,
      recorded_at: "2026-11-10T08:00:01.000Z",
      happened_at: "2026-11-10T08:00:01.000Z",
      tz: "Pacific/Auckland",
      utc_offset_min: 780,
      local_date: "2026-11-10",
      seen: "",
      app_version: "test",
    });
    expect(entry.body.amount).toEqual({ amount: "12.50", unit: "kg" });
  });

  test("lies on the day it happened, not the day it was written", async () => {
    const moment = { happened_at: "2026-11-08T12:00:00.000Z" };

    const entry = saved(await make(maker(), "receipt", RECEIPT, moment));

    expect(entry.local_date).toBe("2026-11-09");
  });

  test("that cannot be stored is refused with its field, and nothing is kept", async () => {
    const made = await make(maker(), "receipt", received("12,5"));

    expect(made).toMatchObject({ refusal: { key: "decimal.wrong", field: "amount.amount" } });
    expect(await slips(db)).toEqual([]);
  });
});

describe("a correction", () => {
  test("has the time of what it corrects and is about the subjects of both", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));
    const moved = { ...RECEIPT, lot: "MJ-261110-K7-2" };

    const second = saved(await makeCorrection(maker(), first.id, moved, "wrong label"));

    expect(second.happened_at).toBe(first.happened_at);
    expect(second.subjects).toEqual([LOT, "lot:MJ-261110-K7-2"]);
    expect((await lot()).on_hand).toBe("0");
  });

  test("of a corrected entry corrects the correction, so that they never compete", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));
    const second = saved(await makeCorrection(maker(), first.id, received("12"), "misread"));

    const third = saved(await makeCorrection(maker(), first.id, received("11"), "misread again"));

    expect(third.body.corrects).toBe(second.id);
    expect(await lot()).toMatchObject({ on_hand: "11000", findings: [] });
  });

  test("decides between two that compete", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));
    const rival = { corrects: first.id, of_kind: "receipt", reason: "r", body: received("9") };
    const moment = { happened_at: first.happened_at, also_about: first.subjects };
    await make(maker(), "correction", rival, moment);
    await make(maker(), "correction", { ...rival, body: received("8") }, moment);
    expect(await lot()).toMatchObject({ on_hand: "12500" });

    await makeCorrection(maker(), first.id, received("7"), "weighed again");

    expect(await lot()).toMatchObject({ on_hand: "7000", findings: [] });
  });

  test("of an entry that is not held is not made", async () => {
    const unknown = "0192f3a0-0000-7000-8000-000000000000";

    expect(await makeCorrection(maker(), unknown, RECEIPT, "why")).toBeNull();
  });
});

describe("a void", () => {
  test("takes an entry back", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));

    const voided = saved(await makeVoid(maker(), first.id, "slip"));

    expect(voided).toMatchObject({ kind: "void", subjects: [LOT] });
    expect(await lot()).toMatchObject({ made: "0", findings: [] });
  });

  test("takes a corrected entry back with its correction", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));
    await makeCorrection(maker(), first.id, received("12"), "misread");

    await makeVoid(maker(), first.id, "never came");

    expect(await lot()).toMatchObject({ made: "0", findings: [] });
  });

  test("of a correction brings back what it corrected", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));
    const second = saved(await makeCorrection(maker(), first.id, received("12"), "misread"));

    await makeVoid(maker(), second.id, "it was right");

    expect(await lot()).toMatchObject({ on_hand: "12500", findings: [] });
  });
});

describe("a moved entry", () => {
  const HOUR_EARLIER = { happened_at: "2026-11-10T07:00:00.000Z", reason: "late", form: "f" };

  test("is void where it stood, and what is in force stands at the other moment", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));
    await makeCorrection(maker(), first.id, received("12"), "misread");

    let chance = 0; // two entries of one moment must not be alike
    const bytes = (count: number) => new Uint8Array(count).fill(chance++);
    const made = await makeMoved({ ...maker(), bytes }, first.id, HOUR_EARLIER);

    expect(made !== null && "saved" in made && made.saved).toMatchObject([
      { kind: "void", happened_at: first.happened_at },
      { kind: "receipt", happened_at: HOUR_EARLIER.happened_at, body: received("12") },
    ]);
    expect(await lot()).toMatchObject({ on_hand: "12000", findings: [] });
  });

  test("that no longer stands is not moved", async () => {
    const first = saved(await make(maker(), "receipt", RECEIPT));
    await makeVoid(maker(), first.id, "slip");

    expect(await makeMoved(maker(), first.id, HOUR_EARLIER)).toBeNull();
    expect((await lot()).made).toBe("0");
  });
});

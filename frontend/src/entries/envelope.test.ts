import { describe, expect, it } from "vitest";
import { type Circumstances, localDay, makeEntry, utcOffsetMin, uuidv7 } from "./envelope.ts";
import { nearestTypedDay } from "./moments.ts";

const TEN_BYTES = Uint8Array.from([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);

const AT_THE_STALL: Circumstances = {
  cooperative: "0192f0c4-0000-4000-8000-000000000001",
  author: "0192f0c4-0000-4000-8000-000000000002",
  device: "0192f0c4-0000-4000-8000-000000000003",
  device_seq: 17,
  now_ms: 1_794_297_600_000,
  chance: TEN_BYTES,
  tz: "Pacific/Auckland",
  seen: "c5",
  app_version: "0.1.0",
};

const SALE = {
  kind: "sale",
  body: { lot: "MJ-1", amount: { amount: "1", unit: "pc" }, place: "s2", on: "2026-11-10" },
} as const;

describe("a clock", () => {
  it.each([
    [-62_198_755_200_001, "1000-01-02"],
    [-2_147_483_648_000, "1901-12-13"],
    [253_402_300_800_000, "9999-12-30"],
    [8_640_000_000_000_000, "9999-12-30"],
  ])("at %s ms is written in four digits of a year, in every zone", (now_ms, on) => {
    for (const tz of ["UTC", "Pacific/Auckland", "Pacific/Honolulu"]) {
      const entry = makeEntry(SALE, { ...AT_THE_STALL, now_ms, tz });

      expect(entry.recorded_at.slice(0, 10)).toBe(on);
      expect(entry.local_date).toMatch(/^\d{4}-\d{2}-\d{2}$/);
      expect(Math.abs(entry.utc_offset_min)).toBeLessThanOrEqual(900);
    }
  });
});

describe("a day nobody may type", () => {
  it.each([
    ["1970-01-01", "2000-01-01"],
    ["0001-01-01", "2000-01-01"],
    ["2026-11-10", "2026-11-10"],
    ["2101-01-01", "2100-12-31"],
    ["10000-01-01", "2100-12-31"],
  ])("%s is written as %s", (day, written) => {
    expect(nearestTypedDay(day)).toBe(written);
  });
});

describe("an entry", () => {
  it("is made of its content and circumstances, and of nothing else", () => {
    expect(makeEntry(SALE, AT_THE_STALL)).toStrictEqual({
      ...SALE,
      id: "01a1c478-9800-7001-8203-040506070809",
      version: 1,
      subjects: ["day:s2:2026-11-10", "lot:MJ-1"],
      cooperative: AT_THE_STALL.cooperative,
      author: AT_THE_STALL.author,
      device: AT_THE_STALL.device,
      device_seq: 17,
      recorded_at: "2026-11-10T08:00:00.000Z",
      tz: "Pacific/Auckland",
      utc_offset_min: 780,
      local_date: "2026-11-10",
      seen: "c5",
      happened_at: "2026-11-10T08:00:00.000Z",
      app_version: "0.1.0",
    });
  });

  it("takes the day of when it happened, not of when it was written down", () => {
    const entry = makeEntry(SALE, { ...AT_THE_STALL, happened_at: "2026-11-08T20:00:00.000Z" });

    expect(entry.local_date).toBe("2026-11-09");
    expect(entry.recorded_at).toBe("2026-11-10T08:00:00.000Z");
  });

  it("that voids another is about what that one was about", () => {
    const content = {
      kind: "void",
      body: { corrects: "e1", of_kind: "sale", reason: "twice" },
    } as const;

    const entry = makeEntry(content, { ...AT_THE_STALL, also_about: ["lot:MJ-1", "day:s2:x"] });

    expect(entry.subjects).toEqual(["day:s2:x", "lot:MJ-1"]);
  });
});

describe("an id", () => {
  it("is refused without its ten bytes of chance", () => {
    expect(() => uuidv7(0, new Uint8Array(9))).toThrow(RangeError);
  });

  it("keeps version and variant whatever chance says", () => {
    expect(uuidv7(2 ** 48 - 1, new Uint8Array(10).fill(255))).toBe(
      "ffffffff-ffff-7fff-bfff-ffffffffffff",
    );
    expect(uuidv7(0, new Uint8Array(10))).toBe("00000000-0000-7000-8000-000000000000");
  });

  it("of a clock before its beginning still has its form", () => {
    expect(uuidv7(-1, new Uint8Array(10))).toBe("00000000-0000-7000-8000-000000000000");
  });
});

describe("the day and the offset of a moment", () => {
  it.each([
    ["2026-11-10T10:59:59.999Z", "Pacific/Auckland", "2026-11-10", 780],
    ["2026-11-10T11:00:00.000Z", "Pacific/Auckland", "2026-11-11", 780],
    ["2026-11-10T09:59:59.000Z", "Pacific/Honolulu", "2026-11-09", -600],
    ["2028-02-29T23:30:00.000Z", "Europe/Lisbon", "2028-02-29", 0],
    ["2026-03-29T00:59:59.000Z", "Europe/Lisbon", "2026-03-29", 0],
    ["2026-03-29T01:00:00.000Z", "Europe/Lisbon", "2026-03-29", 60],
    ["2026-10-25T23:30:00.000Z", "Asia/Kathmandu", "2026-10-26", 345],
  ])("%s in %s is %s", (at, tz, day, offset) => {
    expect(localDay(at, tz)).toBe(day);
    expect(utcOffsetMin(at, tz)).toBe(offset);
  });
});

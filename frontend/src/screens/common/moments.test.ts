import { describe, expect, it } from "vitest";
import { instantAt, movedTo, wallAt } from "./moments.ts";

const NINE = instantAt({ day: "2026-11-20", clock: "09:05" });
const LATER = { happened_at: NINE, now_ms: Date.parse(NINE) + 86_400_000 };
const AS_IT_WAS = { day: null, clock: null };

describe("a moment on the wall", () => {
  it("is written as the fields of a form take it", () => {
    expect(wallAt(NINE)).toEqual({ day: "2026-11-20", clock: "09:05" });
  });

  it("is noon where nobody knows the hour", () => {
    expect(wallAt(instantAt({ day: "2026-11-20", clock: "" })).clock).toBe("12:00");
  });
});

describe("a corrected moment", () => {
  it("is another day at the same hour", () => {
    const moved = movedTo({ ...AS_IT_WAS, day: "2026-11-18" }, LATER);

    expect(moved).toMatchObject({ wall: { day: "2026-11-18", clock: "09:05" }, why: null });
    expect(Date.parse(moved.at)).toBeLessThan(Date.parse(NINE));
  });

  it("is none where nothing was changed, and none that is still to come", () => {
    expect(movedTo(AS_IT_WAS, LATER).why).toBe("same");
    expect(movedTo({ ...AS_IT_WAS, day: "2026-11-22" }, LATER).why).toBe("to_come");
    expect(movedTo({ ...AS_IT_WAS, day: "" }, LATER).why).toBe("no_day");
  });
});

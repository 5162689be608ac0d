import { expect, test } from "vitest";
import { BLANK_DRILL, offTheScale, QUESTIONS_COUNT, takenUp } from "./asked.ts";

const ANSWERS = Array.from({ length: QUESTIONS_COUNT }, () => "1");
const HALF = {
  ...BLANK_DRILL,
  seed: 7,
  at: QUESTIONS_COUNT + 2,
  reads: [...ANSWERS, "501", "502"],
};

test("what another scale showed is no repeat of this one's: the thing is weighed anew", () => {
  expect(takenUp(HALF, "bench", "pinch")).toEqual({
    instrument: "bench",
    at: QUESTIONS_COUNT,
    reads: ANSWERS,
  });
  expect(takenUp(HALF, "bench", "bench")).toEqual({ instrument: "bench" });
});

test("nobody reads beyond what is drawn, nor weighs more than the scale takes", () => {
  const dial = { low: "-10", high: "50", unit: "degC" };
  const scale = { capacity: "5000", unit: "g" };
  expect(offTheScale(dial, null, "-10")).toBeNull();
  expect(offTheScale(dial, scale, "51")).toBe(
    "It goes from \u221210\u00a0\u00b0C to 50\u00a0\u00b0C: read again",
  );
  expect(offTheScale(null, scale, "99999999")).toContain("to 5\u202f000\u00a0g: read again");
  expect(offTheScale(null, scale, "0")).toBeNull();
  expect(offTheScale(null, { capacity: null, unit: "g" }, "99999999")).toBeNull();
});

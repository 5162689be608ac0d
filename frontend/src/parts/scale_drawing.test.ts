/** What is drawn to be read stands where the figures say. */
import { describe, expect, test } from "vitest";
import { drillQuestions } from "../calc/drills.ts";
import { filledTo, marksOf, windowOn } from "./scale_drawing.ts";

const DIAL = { low: "0", high: "2", division: "0.02", numbered: "0.2" };

describe("marks", () => {
  test("a numeral stands at every tenth mark and a longer mark half way", () => {
    const marks = marksOf(DIAL, 0, 2);

    expect(marks).toHaveLength(101);
    expect(marks.filter((mark) => mark.rank === 2)).toHaveLength(11);
    expect(marks[5]).toEqual({ at: 0.1, rank: 1 });
    expect(marks.at(-1)?.at).toBeCloseTo(2, 12);
  });

  test("an odd count of marks has none half way", () => {
    const marks = marksOf({ low: "0", high: "10", division: "0.2", numbered: "1" }, 0, 10);

    expect(marks.some((mark) => mark.rank === 1)).toBe(false);
  });
});

describe("the window on a cylinder", () => {
  test("holds the reading, begins at a numeral and does not always have it in one place", () => {
    const places = new Set<number>();
    for (let seed = 0; seed < 300; seed += 1) {
      for (const question of drillQuestions(seed, 1).filter((each) => each.sort === "surface")) {
        const truth = Number(question.truth);
        const { from, to } = windowOn(question, truth);

        expect(from).toBeLessThan(truth);
        expect(to).toBeGreaterThan(truth);
        expect((from / Number(question.numbered)) % 1).toBeCloseTo(0, 9);
        places.add(Math.floor((truth - from) / Number(question.numbered)));
      }
    }

    expect([...places].sort()).toEqual([0, 1, 2]);
  });
});

describe("how full a measure stands", () => {
  const cup = { radius: 60, depth: 80, isRound: false };
  const spoon = { radius: 80, depth: 60, isRound: true };

  test("a level one stands at its rim, without a mound", () => {
    expect(filledTo(1, cup)).toEqual({ height: 80, mound: 0 });
    expect(filledTo(1, spoon).height).toBeCloseTo(60, 6);
  });

  test("straight walls fill evenly, a round bowl to 5/16 of its volume at half its depth", () => {
    expect(filledTo(0.75, cup).height).toBe(60);
    expect(filledTo(5 / 16, spoon).height).toBeCloseTo(30, 6);
  });

  test("a mound holds what is over the rim", () => {
    const { mound } = filledTo(1.25, cup);
    const volume = (mound * (3 * 60 ** 2 + mound ** 2)) / 6;

    expect(volume / (60 ** 2 * 80)).toBeCloseTo(0.25, 9);
  });

  test("the fullest mound a drill draws is still lower than its cup is wide", () => {
    expect(filledTo(1.28, cup).mound).toBeLessThan(60);
    expect(filledTo(1.28, spoon).mound).toBeLessThan(60);
  });
});

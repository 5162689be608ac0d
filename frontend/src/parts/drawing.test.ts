import { describe, expect, it } from "vitest";
import {
  bands,
  evenStep,
  glassWindow,
  numeralPlaces,
  stepReaching,
  streamWidths,
  ticksOf,
  whiskerShare,
} from "./drawing.ts";

describe("the geometry of drawings", () => {
  it("cuts the glass when the limits lie far from nought", () => {
    const window = glassWindow({ target: 60, low: 58.5, high: 61.5, level: null });

    expect(window.isCut).toBe(true);
    expect(window.from).toBeCloseTo(55.65);
    expect(window.to).toBeCloseTo(64.35);
  });

  it("starts at nought when the limits lie close to it", () => {
    expect(glassWindow({ target: 2, low: 1, high: 3, level: null })).toMatchObject({
      from: 0,
      isCut: false,
    });
  });

  it("shows a quantity without limits from nought", () => {
    expect(glassWindow({ target: 50, low: null, high: null, level: 40 })).toEqual({
      from: 0,
      to: 60,
      isCut: false,
    });
  });

  it("numbers a scale by one, two or five", () => {
    expect(evenStep(8.7, 4)).toBe(2);
    expect(evenStep(100, 4)).toBe(20);
    expect(evenStep(0.9, 4)).toBeCloseTo(0.2);
  });

  it("numbers rings so that every numeral is the ring it stands at", () => {
    for (const most of [0.5, 0.9, 1, 1.24, 2.4, 3, 3.1, 7, 12, 28.9, 31]) {
      const step = stepReaching(most, 3);
      const numerals = [1, 2, 3].map((ring) => (ring * step).toFixed(numeralPlaces(step)));

      expect(step * 3).toBeGreaterThanOrEqual(most);
      expect(step * 3).toBeLessThan(most * 2.1);
      numerals.forEach((numeral, at) => {
        expect(Number(numeral)).toBeCloseTo(step * (at + 1), 9);
      });
    }
  });

  it("cuts a step of two into halves or fifths that are easily read", () => {
    const { ticks, step } = ticksOf(56, 64, 240);

    expect(step).toBe(2);
    expect(ticks.map((tick) => tick.at).slice(0, 5)).toEqual([56, 56.5, 57, 57.5, 58]);
    expect(ticks.filter((tick) => tick.rank === 2)).toHaveLength(5);
  });

  it("draws the whisker longer the less a number is worth", () => {
    expect(whiskerShare("10004", "2")).toBe(0.25);
    expect(whiskerShare("60.2", "0.1")).toBe(0.5);
    expect(whiskerShare("61", "0.8")).toBe(0.75);
    expect(whiskerShare("5", "1")).toBe(1);
  });

  it("draws every stream that is recorded, however thin", () => {
    const [broad, thin, missing] = streamWidths(["10000", "1", null], 30);

    expect(broad).toBeCloseTo(29.997, 3);
    expect([thin, missing]).toEqual([2, 2]);
  });

  it("gives every stream room for its words", () => {
    const [first, second] = bands(["90", "10"], { full: 100, leastRows: [40, 40] });

    expect(first).toEqual({ rowStart: 0, rowEnd: 96, lineStart: 0, lineEnd: 90 });
    expect(second).toEqual({ rowStart: 96, rowEnd: 136, lineStart: 90, lineEnd: 100 });
  });
});

import { expect, test } from "vitest";
import { goodFor } from "./instrument_use.ts";

test("a scale of 0.1 g weighs with a bowl to 0.067 g and judges tolerances from 0.2 g", () => {
  // u = sqrt(2 x 0.1^2 / 12) = 0.0408 g; the guard band is 1.645 u = 0.067 g, so that
  // 2 x 0.1 g leaves 0.066 g, less than one step, and 2 x 0.2 g leaves 0.27 g.
  expect(goodFor({ division: "0.1", repeatability: null, readings: 2 })).toEqual({
    reach: "0.067",
    tolerance: "0.2",
  });
});

test("a known spread makes it coarser", () => {
  // u = sqrt(2 x 1/12 + 2 x 2^2) = 2.858 g; the guard band is 4.70 g.
  expect(goodFor({ division: "1", repeatability: "2", readings: 2 })).toEqual({
    reach: "4.7",
    tolerance: "6",
  });
});

test("a thermometer is read once", () => {
  // u = sqrt(0.1^2 / 12) = 0.0289; the guard band is 0.0475, so 2 x 0.1 leaves just over one step.
  expect(goodFor({ division: "0.1", repeatability: null, readings: 1 })).toEqual({
    reach: "0.047",
    tolerance: "0.1",
  });
});

test("without a step nothing is said", () => {
  expect(goodFor({ division: "0", repeatability: null, readings: 2 })).toBeNull();
});

test("one that spreads over a hundred steps judges nothing", () => {
  const wild = goodFor({ division: "0.1", repeatability: "20", readings: 2 });

  expect(wild?.tolerance).toBeNull();
});

import { expect, test } from "vitest";
import { withNumbers } from "../common/numbers_in.ts";
import { checkNumbers } from "./check_history.ts";

const mass = { reference: "500", tolerance: "0.025" };
const BODY = {
  unit: "g",
  steps: [
    { sort: "zero", readings: ["0"] },
    { sort: "rising", ...mass, readings: ["502"] },
    { sort: "rising", reference: "1000", readings: ["1004"] },
    { sort: "falling", ...mass, readings: ["501"] },
  ],
};

test("a mass that was put on twice is corrected once, with how true it is", () => {
  const known = checkNumbers(BODY).filter(({ path }) => !path.includes("readings"));

  expect(known.map(({ path, also }) => [path, also])).toEqual([
    ["steps.1.reference", ["steps.3.reference"]],
    ["steps.1.tolerance", ["steps.3.tolerance"]],
    ["steps.2.reference", []],
  ]);
  expect(known.map(({ value, unit }) => `${value} ${unit}`)).toEqual([
    "500 g",
    "0.025 g",
    "1000 g",
  ]);
});

test("the tolerance of another class goes to every step of that mass and to no other", () => {
  const now = withNumbers(BODY, { "steps.1.tolerance": "0.25" }, checkNumbers(BODY));

  expect(now.steps).toEqual([
    BODY.steps[0],
    { ...BODY.steps[1], tolerance: "0.25" },
    BODY.steps[2],
    { ...BODY.steps[3], tolerance: "0.25" },
  ]);
});

import { expect, test } from "vitest";
import { CAUTIONS_ABOUT, cautionsOfStep, cautionWords, DEFERS } from "./cautions.ts";
import { CHECKS } from "./set_up_recipe.ts";

const MEASURES_A_MASS = ["prepared_mass", "kettle_mass", "mass"];

test("every caution ends by deferring to code, recipe and process authority", () => {
  for (const about of CAUTIONS_ABOUT) {
    expect(cautionWords([about]).endsWith(` ${DEFERS}`), about).toBe(true);
  }
  for (const whom of ["local code", "tested recipe", "licensed process authority"]) {
    expect(DEFERS).toContain(whom);
  }
});

test("a caution says something of its own, in full sentences, and approves nothing", () => {
  const texts = CAUTIONS_ABOUT.map((about) => cautionWords([about]));

  expect(new Set(texts).size).toBe(texts.length);
  for (const text of texts) {
    expect(text).toMatch(/^[A-Z0-9].+\. .+\.$/);
    expect(text).not.toMatch(/\bsafe|!/i);
  }
});

test("what a recipe says itself comes first, and deferring stands once at the end", () => {
  const both = cautionWords(["heat", "ph"], `Hot jam burns. ${DEFERS}`);

  expect(both.startsWith("Hot jam burns. The thermometer")).toBe(true);
  expect(both.split(DEFERS)).toHaveLength(2);
  expect(both.endsWith(DEFERS)).toBe(true);
  expect(cautionWords([], "Hot jam burns.")).toBe(`Hot jam burns. ${DEFERS}`);
  expect(cautionWords([], "")).toBe("");
});

test("whatever a step can measure, but a mass, has its caution", () => {
  const without = Object.keys(CHECKS).filter((measures) => cautionsOfStep(measures).length === 0);

  expect(without.sort()).toEqual([...MEASURES_A_MASS].sort());
  expect(cautionsOfStep(null)).toEqual([]);
});

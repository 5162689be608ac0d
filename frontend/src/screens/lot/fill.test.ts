import { expect, test } from "vitest";
import { fillOf } from "../../calc/fills.ts";
import { FILL, fillSentence } from "../../text/fill.ts";
import {
  driesBy,
  type FillTyped,
  fillBody,
  fillSaid,
  missingOfFill,
  nextOpen,
  planned,
} from "./fill.ts";

// Twelve jars of NIST HB 133 (2026): "NET WT 12 OZ (340 g)".
const TYPED: FillTyped = {
  amount: "12",
  unit: "oz",
  other: "340.",
  other_unit: "g",
  rules: "us",
  instrument: "",
  lot_size: "12",
  density: "",
  loses_moisture: false,
  shown: "",
  tares: ["182.1", "182.7"],
  gross: "522.1 523.4 521.7 520.9 524.0 522.8 519.6 521.2 523.1 520.4 522.6 521.9".split(" "),
};
const ABOUT = { lot: "MJ-261110-K7-1", on: "2026-11-10", scale: null };

function sentenceOf(typed: FillTyped): string {
  const said = fillSaid(fillOf(fillBody(typed, ABOUT) ?? {}));
  return said === null ? "" : fillSentence(said).replaceAll("\u00a0", " ");
}

test("both declarations go into the entry as they were typed", () => {
  const body = fillBody(TYPED, ABOUT);

  expect(body?.label).toEqual([
    { amount: { amount: "12", unit: "oz" } },
    { amount: { amount: "340", unit: "g" } },
  ]);
});

test("packs dry where the product says so, or the last check did", () => {
  const flour = fillOf(fillBody({ ...TYPED, loses_moisture: true }, ABOUT) ?? {});
  const jars = fillOf(fillBody(TYPED, ABOUT) ?? {});

  expect(driesBy([], { loses_moisture: true })).toBe(true);
  expect(driesBy([jars, flour], {})).toBe(true);
  expect(driesBy([flour, jars], {})).toBe(false);
  expect(driesBy([], {})).toBe(false);
});

test("a mean that is short and allowed is told in one sentence", () => {
  expect(sentenceOf(TYPED)).toBe(
    "The mean is 0.6 g short; allowed 0.8 g. None short beyond 16.3 g.",
  );
});

test("a pack beyond what one may be short is named by its number", () => {
  const gross = "524.6 525.9 524.2 505.4 526.5 525.3 522.1 523.7 525.6 522.9 525.1 524.4";

  expect(sentenceOf({ ...TYPED, gross: gross.split(" ") })).toBe(
    "The mean is 0.4 g over. Short beyond 16.3 g: pack 4.",
  );
});

test("a figure two recollections differ on decides nothing and says so", () => {
  const packs = { tares: ["14", "14"], gross: ["4014", "4014"], lot_size: "2" };
  const typed = { ...TYPED, amount: "4000", unit: "g", other: "", ...packs };

  expect(fillOf(fillBody(typed, ABOUT) ?? {}).verdict).toBe("not_decided");
  expect(sentenceOf(typed)).toContain("Two recollections of the table differ");
});

test("the plan says how many packs of a lot are weighed, where it knows", () => {
  expect(planned(TYPED)).toBe(12);
  expect(planned({ ...TYPED, rules: "eu", lot_size: "150" })).toBe(30);
  expect(planned({ ...TYPED, lot_size: "" })).toBeNull();
});

test("the first open thing is asked for", () => {
  expect(missingOfFill({ ...TYPED, amount: "" })?.sentence).toBe(FILL.say_label);
  expect(missingOfFill({ ...TYPED, rules: "" })?.sentence).toBe(FILL.say_rules);
  expect(missingOfFill({ ...TYPED, tares: ["182.1"] })?.sentence).toBe(FILL.say_empty);
  expect(missingOfFill(TYPED)).toBeNull();
});

test("flour and dry pasta may have dried: the US rules allow 3 % by weight, others nothing", () => {
  const flour = { ...TYPED, amount: "907", unit: "g", other: "", loses_moisture: true };

  expect(fillBody(flour, ABOUT)).toMatchObject({ loses_moisture: true });
  expect(fillBody({ ...flour, rules: "eu" }, ABOUT)).not.toHaveProperty("loses_moisture");
  expect(fillBody({ ...flour, unit: "mL", density: "1" }, ABOUT)).not.toHaveProperty(
    "loses_moisture",
  );
});

test("after the second empty pack a full one is weighed, and more empty ones where one goes back", () => {
  const empties = (...tares: string[]) => nextOpen("empty", { ...TYPED, tares, gross: [] });

  expect(empties("182")).toBe("empty");
  expect(empties("182", "181")).toBe("full");
  expect(empties("182", "181", "183")).toBe("empty");
  expect(nextOpen("full", { ...TYPED, gross: ["522"] })).toBe("full");
});

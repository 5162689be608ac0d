/** What is said of a reader follows from the figures, and a drawing's words never tell the answer. */
import { describe, expect, test } from "vitest";
import { drillQuestions, type Question } from "../../calc/drills.ts";
import type { ClassSkill } from "../../calc/skill_class.ts";
import type { Figures } from "../../calc/skills.ts";
import { CLASS, SKILLS } from "../../text/skills.ts";
import { BLANK_DRILL, drawnWords, drillBody, placeInWords, withRead } from "./asked.ts";
import { classSays, meanShown, signedFigure, spreadShown, whatIsSo } from "./says.ts";

function figures(bias: string | null, spread: string | null, count = 12): Figures {
  return { bias, spread, count, bias_percent: null, within_half_percent: null };
}

const DIAL: Question = {
  sort: "dial",
  shape: "dial",
  low: "0",
  high: "500",
  division: "5",
  numbered: "50",
  unit: "g",
  holds: null,
  truth: "386",
};

describe("two sentences", () => {
  test("a mean within twice its own doubt is true on average", () => {
    expect(whatIsSo(figures("0.25", "0.645", 12))).toBe(
      SKILLS.but(SKILLS.true_average, SKILLS.scattered),
    );
    expect(whatIsSo(figures("0.05", "0.3"))).toBe(SKILLS.and(SKILLS.true_average, SKILLS.close));
  });

  test("a mean beyond it is high or low", () => {
    expect(whatIsSo(figures("-0.40", "0.2"))).toBe(SKILLS.and(SKILLS.low("0.40"), SKILLS.close));
    expect(whatIsSo(figures("1.50", "0.9"))).toBe(
      SKILLS.and(SKILLS.high("1.50"), SKILLS.scattered),
    );
  });

  test("nothing scored says nothing", () => {
    expect(whatIsSo(figures(null, null, 0))).toBeNull();
  });

  test("a bias has its sign, none has none", () => {
    expect([signedFigure("0.25"), signedFigure("-0.10"), signedFigure("0.00")]).toEqual([
      "+0.25",
      "\u22120.10",
      "0.00",
    ]);
  });
});

describe("no more digits than the readings carry", () => {
  test("a spread has two, and a mean goes no further than they do", () => {
    expect([
      spreadShown("0.0816"),
      spreadShown("0.434"),
      spreadShown("12.3"),
      spreadShown("0"),
    ]).toEqual(["0.082", "0.43", "12", "0"]);
    expect(meanShown("0.43", "1.64")).toBe("0.4");
    expect(meanShown("-0.04", "1.64")).toBe("0.0");
    expect(meanShown("250.12", "0.141")).toBe("250.12");
  });

  test("a mean gets no digits it did not have, and none is lost to a spread of nothing", () => {
    expect(meanShown("0.80", "0.0816")).toBe("0.80");
    expect(meanShown("0.25", "0")).toBe("0.25");
    expect([meanShown("0.25", null), meanShown(null, "0.3"), spreadShown(null)]).toEqual([
      "0.25",
      null,
      null,
    ]);
  });
});

describe("what a class says of a skill", () => {
  const skill: ClassSkill = {
    sort: "dial",
    count: 8,
    readers: [],
    bias: "0.50",
    bias_u: "0.2",
    repeatability: "0.3",
    person_to_person: "0.4",
    is_set_to_zero: false,
    intermediate: "0.5",
    p: "0.03",
    differ: true,
  };

  test("a bias beyond twice its doubt is named, and people who differ", () => {
    expect(classSays(skill)).toBe("Reads 0.50 divisions high, but people read differently.");
  });

  test("a bias within it is none; a component at zero says why", () => {
    const alike = { ...skill, bias_u: "0.3", differ: false, is_set_to_zero: true };

    expect(classSays(alike)).toBe(SKILLS.and(SKILLS.true_average, CLASS.set_to_zero));
    expect(classSays({ ...alike, is_set_to_zero: false })).toContain(CLASS.alike);
  });

  test("one reading each says that too few tell", () => {
    const few = { ...skill, bias_u: null, differ: null };

    expect(classSays(few)).toBe(SKILLS.but(CLASS.no_doubt, CLASS.not_told));
  });
});

describe("words for one who cannot see", () => {
  test("the needle is told by marks to count from a numeral", () => {
    expect(placeInWords(DIAL)).toBe("Past 350\u00a0g by 7 marks and 2 tenths of one.");
    expect(
      placeInWords({
        ...DIAL,
        low: "-30",
        high: "30",
        division: "1",
        numbered: "10",
        truth: "-8.7",
      }),
    ).toBe("Past \u221210\u00a0g by 1 mark and 3 tenths of one.");
  });

  test("what a drawing says of itself holds no answer", () => {
    for (let seed = 0; seed < 200; seed += 1) {
      for (const question of drillQuestions(seed, 1)) {
        const { low, high, division, numbered, holds, truth } = question;
        const isOnScale = [low, high, division, numbered, holds].includes(truth);

        expect(isOnScale || !drawnWords(question).includes(`${truth}\u00a0`)).toBe(true);
      }
    }
  });
});

describe("the entry of a drill", () => {
  test("what was not typed is left out, also the weighing without a scale", () => {
    const typed = { ...BLANK_DRILL, seed: 1, reads: withRead([], 1, "468.") };

    const body = drillBody(typed, "ana", null);

    expect(body.questions).toEqual([{ sort: "dial", truth: "468", division: "10", read: "468" }]);
    expect(body).not.toHaveProperty("weighing");
    expect(body).not.toHaveProperty("note");
  });
});

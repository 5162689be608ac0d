import { describe, expect, test } from "vitest";
import { CURE_ROWS } from "../../calc/tables/bench.ts";
import {
  type Answer,
  eachAsked,
  type Found,
  type Refused,
  type SumAbout,
  type Typed,
} from "./plan.ts";
import { ALL_SUMS } from "./sums.ts";
import { noteWords } from "./use_sum.ts";

const NOTHING: SumAbout = { lines: [], target_percent: null, altitude_m: null };
const JAM: SumAbout = {
  ...NOTHING,
  target_percent: "68",
  lines: [
    { name: "Fruit", amount: "10", solids_percent: "10", u: 0.002 },
    { name: "Sugar", amount: "10", solids_percent: "100", u: 0.002 },
    { name: "Pectin", amount: "0.06", solids_percent: "100", u: 0 },
    { name: "Citric acid", amount: "0.055", solids_percent: "100", u: 0 },
  ],
};

function planOf(sum: string) {
  const plan = ALL_SUMS[sum];
  if (plan === undefined) throw new Error(`no sum called ${sum}`);
  return plan;
}

function answerOf(sum: string, typed: Typed, about = NOTHING): Answer {
  const plan = planOf(sum);
  return plan.answer({ ...plan.begin(about), ...typed }, about);
}

function found(sum: string, typed: Typed, about = NOTHING): Found {
  const answer = answerOf(sum, typed, about);
  if (answer.is !== "found") throw new Error(JSON.stringify(answer));
  return answer;
}

function refusal(sum: string, typed: Typed): Refused {
  const answer = answerOf(sum, typed);
  if (answer.is !== "refused") throw new Error(JSON.stringify(answer));
  return answer;
}

function amountOf(answer: Found | Refused, name: string): string | null | undefined {
  return answer.rows.find((row) => row.name === name)?.amount;
}

describe("the kettle", () => {
  test("a batch is cooked until the scale shows jam and kettle together", () => {
    // Practical Action recipe 1, read: 11.115 kg of solids at 68 Brix make 16.3456 kg.
    const answer = found("kettle", { tare: "4.20" }, JAM);

    expect(answer.says).toBe("Cook until the scale shows");
    expect(answer.main).toMatchObject({ amount: "20.55", unit: "kg" });
    expect(answer.why).toBe("3.77\u00a0kg of water has to boil off.");
  });

  test("what the scale shows now says how much still has to go, and then that it is there", () => {
    const short = found("kettle", { tare: "4.200", now: "21.050" }, JAM);
    const past = found("kettle", { tare: "4.200", now: "20.500" }, JAM);

    expect(short.main?.amount).toBe("20.546");
    expect(short.why).toBe("0.504\u00a0kg still to boil off.");
    expect(short.watched).toMatchObject({ level: "21.050", target: "20.546" });
    expect(past.why).toBe("It is there, 0.046\u00a0kg below. Take it off.");
  });

  test("pectin and acid need not count as soluble solids", () => {
    const answer = found("kettle", { tare: "4.20", counts2: "no", counts3: "no" }, JAM);

    // (1 + 10) kg / 0.68 + 4.20 kg
    expect(answer.main?.amount).toBe("20.38");
  });

  test("solids that nobody typed are asked for, never taken as nought", () => {
    const answer = answerOf("kettle", { tare: "4.20", target: "68", amount0: "10" });

    expect(answer).toMatchObject({ is: "missing", key: "solids0" });
  });

  test("the tare of the kettle is asked for", () => {
    expect(answerOf("kettle", {}, JAM)).toMatchObject({ is: "missing", key: "tare" });
  });

  test("its note says the target, what it rests on and what boils off", () => {
    const words = noteWords(planOf("kettle"), found("kettle", { tare: "4.20" }, JAM));

    expect(words).toContain("Jam in the kettle: Cook until the scale shows 20.55\u00a0kg.");
    expect(words).toContain("Soluble solids wanted 68\u00a0%");
  });
});

describe("drying", () => {
  test("50 kg at 400 % of the solids to 25 % of the whole make 13.33 kg", () => {
    const answer = found("drying", {
      mass: "50",
      before: "400",
      before_basis: "dry",
      after: "25",
    });

    expect(answer.main).toMatchObject({ amount: "13.33", unit: "kg" });
    expect(amountOf(answer, "Water that leaves")).toBe("36.67");
  });

  test("all water of the whole is refused", () => {
    expect(refusal("drying", { mass: "1", before: "100", after: "20" }).sentence).toContain(
      "100 %",
    );
  });

  test("200 kg at 10 % to 15 % of its own and 15 % of sugar", () => {
    const answer = found("drying", {
      way: "concentrate",
      mass: "200",
      solids: "10",
      to: "15",
      added: "15",
    });

    expect(answer.main?.amount).toBe("133.3");
    expect(amountOf(answer, "To stir in")).toBe("20");
    expect(amountOf(answer, "Water that leaves")).toBe("86.67");
  });
});

describe("brine", () => {
  test("25 % of the water and 20 % of the brine are one brine", () => {
    const ofWater = found("brine", { said: "of_water", strength: "25", amount: "1000" });
    const ofWhole = found("brine", { said: "of_whole", strength: "20", amount: "1000" });

    expect(ofWater.main).toMatchObject({ amount: "250", unit: "g" });
    expect(amountOf(ofWater, "% of the brine")).toBe("20");
    expect(ofWhole.main?.amount).toBe("250");
  });

  test("the same degrees are other brines on the two scales", () => {
    const inAll = { known: "brine", amount: "1000", strength: "40" };

    expect(found("brine", { ...inAll, said: "standard" }).main?.amount).toBe("105.6");
    expect(found("brine", { ...inAll, said: "canning" }).main?.amount).toBe("100");
  });

  test("more salt than a brine holds is refused", () => {
    expect(refusal("brine", { said: "of_whole", strength: "30", amount: "1" }).sentence).toContain(
      "26.395 %",
    );
  });
});

describe("mixing", () => {
  const acid = { solute: "acid", strong: "60", weak: "0", target: "8", amount: "20" };

  test("20 g of 60 % acid down to 8 % takes 130 g of water", () => {
    const answer = found("mixing", { ...acid, wanted: "strong" });

    expect(answer.says).toBe("Add: water");
    expect(answer.main).toMatchObject({ amount: "130", unit: "g" });
    expect(amountOf(answer, "Makes")).toBe("150");
  });

  test("a target outside both strengths is refused in one sentence", () => {
    const answer = refusal("mixing", { strong: "10", weak: "4", target: "2.5", amount: "1" });

    expect(answer.sentence).toBe(
      "2.5\u00a0% lies outside 4\u00a0% and 10\u00a0%: no mixture of these two makes it.",
    );
  });

  test("only what is mixed of acid carries the caution about acid", () => {
    expect(planOf("mixing").aboutNow?.(acid)).toEqual(["acidified"]);
    expect(planOf("mixing").aboutNow?.({ ...acid, solute: "fat" })).toEqual([]);
  });
});

describe("curing", () => {
  const belly = { use: "bacon_dry_cured", percent: "6.25", green: "1" };

  test("over the limit it is refused: the limit, who set it, the amount that would meet it", () => {
    const answer = refusal("curing", { ...belly, way: "made", cure: "7.5" });

    expect(answer.sentence).toContain(
      "468.75\u00a0ppm is over 200\u00a0ppm, set by 9 CFR 424.22(b)",
    );
    expect(amountOf(answer, "Cure that would meet it")).toBe("3.2");
    expect(answer.rows.every((row) => row.amount !== "7.5")).toBe(true);
  });

  test("a limit stands as it was printed, and a hair over it is over", () => {
    const answer = refusal("curing", { ...belly, use: "comminuted", ppm: "156.26" });

    expect(answer.sentence).toContain("156.26\u00a0ppm is over 156.25\u00a0ppm");
    expect(amountOf(answer, "Cure that would meet it")).toBe("2.5");
  });

  test("what rounds to the limit it is over is said in words", () => {
    const typed = { ...belly, way: "wanted", ppm: "200.001" };

    expect(refusal("curing", typed).sentence).toBe(
      "A little more than 200\u00a0ppm is over 200\u00a0ppm, set by 9 CFR 424.22(b)(3). No amount is worked out for it.",
    );
  });

  test("too much is not worked out when it is only wanted", () => {
    const answer = refusal("curing", { ...belly, way: "wanted", ppm: "201" });

    expect(amountOf(answer, "Cure that would meet it")).toBe("3.2");
    expect(amountOf(answer, "Cure")).toBeUndefined();
  });

  test("exactly at a limit passes, and the cure is rounded down", () => {
    const exactly = found("curing", { ...belly, way: "wanted", ppm: "200" });
    const between = found("curing", { ...belly, percent: "6", way: "wanted", ppm: "200" });

    expect(exactly.main).toMatchObject({ amount: "3.2", unit: "g" });
    // 0.2 g / 0.06 = 3.3333... g
    expect(between.main?.amount).toBe("3.333");
  });

  test("a pumped cure is counted on the whole pickle", () => {
    // 45 g of 6.25 % in 2145 g of brine, 12 % pumped: 157.3427 ppm, own example.
    const answer = found("curing", {
      way: "made",
      use: "pumped",
      percent: "6.25",
      cure: "45",
      others: "2.1",
      pump: "12",
    });

    expect(answer.main?.amount).toBe("157.3");
  });

  test("nitrate in bacon is not permitted, and nothing would meet it", () => {
    const answer = refusal("curing", { ...belly, substance: "sodium_nitrate", ppm: "10" });

    expect(answer.sentence).toMatch(/^Not permitted at all: 9 CFR 424.21\(c\)/);
    expect(amountOf(answer, "Cure that would meet it")).toBeUndefined();
  });

  test("a slip of a hundredfold is refused", () => {
    const answer = refusal("curing", { ...belly, way: "made", cure: "750" });

    expect(answer.sentence).toContain("More than 1000 ppm");
  });

  test("every limit is told with its source and how it was come by", () => {
    const answer = found("curing", { ...belly, way: "wanted", ppm: "120" });
    const rows = CURE_ROWS.filter(
      (row) => row.substance === "sodium_nitrite" && row.holds_for.includes("bacon_dry_cured"),
    ).filter((row) => row.rules === "us");

    expect(answer.rows.filter((row) => row.basis === "booked")).toHaveLength(rows.length);
    for (const row of answer.rows.filter((each) => each.basis === "booked")) {
      expect(row.source).toMatch(/^set by .+ \((read|read-secondary|memory)\)$/);
    }
  });
});

describe("altitude", () => {
  test("a foot above the end of a band is the next one", () => {
    const at = (altitude: string) =>
      found("altitude", { altitude, unit: "ft", canner: "dial_low_acid" }).main?.amount;

    expect([at("2000"), at("2001")]).toEqual(["11", "12"]);
  });

  test("water boils at 95.1 degrees at 5000 ft", () => {
    const answer = found("altitude", { altitude: "1524" });

    expect(amountOf(answer, "Water boils at")).toBe("95.12");
  });

  test("the altitude of the kitchen stands there at first", () => {
    expect(found("altitude", {}, { ...NOTHING, altitude_m: "900" }).main?.amount).toBe("5");
  });

  test("beyond the table nothing is guessed", () => {
    expect(refusal("altitude", { altitude: "4000" }).sentence).toContain("No adjustment");
  });
});

describe("acidified food", () => {
  test("the printed time of the whole degree at or below", () => {
    const answer = found("acid-hold", { ph: "4.4", heat: "166.9", unit: "degF" });

    expect(answer.main).toMatchObject({ amount: "2.5", unit: "min", basis: "booked" });
    expect(amountOf(answer, "Hold, by its model")).toBe("2.45");
  });

  test("below pH 4.1 only the model is known", () => {
    const answer = found("acid-hold", { ph: "3.9", heat: "160", unit: "degF" });

    expect(answer.main).toMatchObject({ amount: "1.20", basis: "computed" });
  });

  test("above the acid line no hold is told", () => {
    expect(refusal("acid-hold", { ph: "4.7", heat: "75" }).sentence).toContain("Above pH 4.6");
  });

  test("outside the printed degrees no hold is told", () => {
    expect(refusal("acid-hold", { ph: "4.3", heat: "50" }).sentence).toContain("No time");
  });
});

describe("every sum", () => {
  test.each(Object.keys(ALL_SUMS))("%s asks for what is missing among what it asks", (sum) => {
    const plan = planOf(sum);
    const typed = plan.begin(NOTHING);
    const answer = plan.answer(typed, NOTHING);

    expect(answer.is).toBe("missing");
    const keys = eachAsked(plan.asked(typed, NOTHING)).map((each) => each.key);
    expect(keys).toContain(answer.is === "missing" ? answer.key : null);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test.each(Object.keys(ALL_SUMS))("%s has a caution", (sum) => {
    expect(planOf(sum).about.length).toBeGreaterThan(0);
  });
});

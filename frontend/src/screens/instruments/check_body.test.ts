import { describe, expect, it } from "vitest";
import type { InstrumentShown } from "../common/batches.ts";
import { type CheckTyped, checkBody, linesFor, toldBy, waterScale } from "./check_body.ts";
import { stagesOf } from "./plan.ts";

const SCALE: InstrumentShown = {
  id: "bench",
  name: "Bench scale",
  sort: "scale",
  unit: "g",
  division: "1",
  capacity: "10000",
  repeatability: null,
  bowl_tare: null,
  place: "lane",
  is_here: true,
};
const FIELDS = { sort: "scale", division: "1", capacity: "10000", judged_by: "r76_in_service" };
const M1 = ["2000", "500", "1000"].map((value) => ({ value, accuracy_class: "M1", tolerance: "" }));

function typed(more: Partial<CheckTyped> = {}): CheckTyped {
  return {
    at: 0,
    depth: "full",
    known: M1,
    read: {},
    typing: {},
    open: "",
    celsius: "",
    altitude: "",
    scale: "",
    value: "",
    accuracy_class: "",
    tolerance: "",
    line: "auto",
    is_adjusted: false,
    day: "",
    clock: "",
    ...more,
  };
}

const FULL = {
  zero: ["0"],
  "rising:500": ["502"],
  "rising:1000": ["1004"],
  "rising:2000": ["2008"],
  off_centre: ["1004", "1005"],
};

describe("the steps of a check", () => {
  it("go up through the masses and back down, the heaviest once", () => {
    const keys = stagesOf("scale", "full", M1).map((stage) => stage.key);

    expect(keys).toEqual([
      "level",
      "zero",
      "rising:500",
      "rising:1000",
      "rising:2000",
      "falling:1000",
      "falling:500",
      "return_to_zero",
      "off_centre",
      "repeats",
    ]);
  });

  it("become what was read, with how true each mass is; a skipped step is left out", () => {
    const body = checkBody(typed({ read: FULL }), {
      instrument: SCALE,
      fields: FIELDS,
      scale: null,
    });

    expect(body.steps).toEqual([
      { sort: "zero", readings: ["0"] },
      // OIML R 111-1:2004 Table 1, class M1: 25, 50 and 100 mg
      { sort: "rising", readings: ["502"], reference: "500", tolerance: "0.025" },
      { sort: "rising", readings: ["1004"], reference: "1000", tolerance: "0.05" },
      { sort: "rising", readings: ["2008"], reference: "2000", tolerance: "0.1" },
      {
        sort: "off_centre",
        readings: ["1004"],
        where: "front",
        reference: "1000",
        tolerance: "0.05",
      },
      {
        sort: "off_centre",
        readings: ["1005"],
        where: "right",
        reference: "1000",
        tolerance: "0.05",
      },
    ]);
  });
});

describe("the correction a check asks for", () => {
  const checked = { instrument: SCALE, fields: FIELDS, scale: null };

  it("is a line for a thorough check, and takes off what was shown too much", () => {
    const { correction, result } = toldBy(typed({ read: FULL }), checked);

    expect(result.verdict).toBe("failed");
    expect(correction?.is_significant).toBe(true);
    expect(Number(correction?.slope)).toBeCloseTo(-0.004, 4);
  });

  it("is none for a quick one, so that what was found before stays in force", () => {
    expect(checkBody(typed({ depth: "quick", read: FULL }), checked).line).toBeUndefined();
  });

  it("is none after an adjustment, which makes what was read a thing of the past", () => {
    const body = checkBody(typed({ read: FULL, is_adjusted: true }), checked);

    expect(body.line).toBeUndefined();
    expect(body.is_adjusted).toBe(true);
  });

  it("rests on what lies on the line alone", () => {
    expect(linesFor([{ sort: "off_centre" }, { sort: "return_to_zero" }])).toEqual([]);
    expect(linesFor([{ sort: "zero" }, { sort: "rising" }])).toEqual(["two_point", "offset"]);
  });
});

describe("a thermometer in Fahrenheit", () => {
  const dial: InstrumentShown = { ...SCALE, sort: "thermometer", unit: "degF" };
  const fields = { sort: "thermometer", division: "1", most_error: "2" };

  it("is compared with the same points in its own degrees", () => {
    const read = { ice: ["33"], boiling: ["203"] };
    const body = checkBody(typed({ read, altitude: "1500" }), {
      instrument: dial,
      fields,
      scale: null,
    });

    expect(body.steps).toEqual([
      { sort: "comparison", readings: ["33"], where: "ice", reference: "32", tolerance: "0" },
      {
        sort: "comparison",
        readings: ["203"],
        where: "boiling",
        reference: "203.3528",
        tolerance: "0.9",
      },
    ]);
  });

  it("has nothing to compare with where no boiling point is printed", () => {
    const read = { boiling: ["203"] };
    const body = checkBody(typed({ read, altitude: "9000" }), {
      instrument: dial,
      fields,
      scale: null,
    });

    expect(body.steps).toEqual([{ sort: "comparison", readings: ["203"], where: "boiling" }]);
  });
});

describe("a vessel weighed on a scale that shows ounces", () => {
  it("is written down in grams, as its water is", () => {
    const cup: InstrumentShown = { ...SCALE, sort: "cup", unit: "us_cup" };
    const scale: InstrumentShown = { ...SCALE, unit: "oz", division: "0.1", repeatability: "0.05" };
    const read = { tare: ["4"], water: ["12"] };
    const body = checkBody(typed({ read, celsius: "20" }), { instrument: cup, fields: {}, scale });

    expect(body.unit).toBe("g");
    expect(body.steps).toEqual([
      {
        sort: "water",
        readings: ["340.194278"],
        celsius: "20",
        tare: "113.398092",
        division: "2.834952",
        repeatability: "1.417476",
      },
    ]);
  });
});

describe("the scale proposed for the water of a vessel", () => {
  const PINCH = { ...SCALE, id: "pinch", division: "0.1", capacity: "500" };
  const holds = (amount: string) => ({ holds: { amount, unit: "mL" } });

  it("is the finest for a spoon", () => {
    expect(waterScale([SCALE, PINCH], holds("15"))?.id).toBe("pinch");
  });

  it("is one that takes two litres for a cylinder of two litres", () => {
    expect(waterScale([PINCH, SCALE], holds("2000"))?.id).toBe("bench");
  });

  it("compares steps in one unit", () => {
    const kitchen = { ...SCALE, id: "kitchen", unit: "kg", division: "0.05", capacity: "20" };
    expect(waterScale([kitchen, SCALE], holds("2000"))?.id).toBe("bench");
  });

  it("is the finest where none is known to take it, and none where there is none", () => {
    expect(waterScale([SCALE, PINCH], holds("20000"))?.id).toBe("pinch");
    expect(waterScale([], holds("15"))).toBe(null);
  });
});

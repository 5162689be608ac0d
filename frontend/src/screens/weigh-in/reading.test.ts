import { describe, expect, it } from "vitest";
import type { BatchLine, InstrumentShown } from "../common/batches.ts";
import { measured, readingRefusal, type WeighTyped, weighed } from "./reading.ts";
import { canTell, instrumentsFor } from "./which_instrument.ts";

const PECTIN: BatchLine = {
  line: "3",
  material: "pectin",
  planned: { amount: "60", unit: "g" },
  below: "1.5",
  above: "1.5",
  level: null,
  soluble_percent: null,
  state: null,
  yields: null,
  laid_out: [],
  in_base: null,
  corrected: null,
  unit: "g",
  u: null,
  verdict: null,
  prepared: null,
  weigh_ins: [],
};

const SMALL: InstrumentShown = {
  id: "small",
  name: "Small scale",
  sort: "scale",
  unit: "g",
  division: "0.1",
  capacity: "500",
  repeatability: null,
  bowl_tare: "213.2",
  place: null,
  is_here: true,
};
const BLUE: InstrumentShown = { ...SMALL, id: "blue", name: "Blue scale", division: "1" };
const FLOOR: InstrumentShown = { ...SMALL, id: "floor", unit: "kg", division: "0.01" };

function typed(shown: string, more: Partial<WeighTyped> = {}): WeighTyped {
  return {
    shown,
    tare: "213.2",
    repeats: [],
    unit: "g",
    instrument: "",
    lot: "",
    despite: "",
    into: "shown",
    ...more,
  };
}

function weighOn(instrument: InstrumentShown, form: WeighTyped, line = PECTIN) {
  const by = { unit: form.unit, tare: form.tare, division: instrument.division };
  return weighed(line, measured(form, instrument, false), by);
}

describe("a reading against its line", () => {
  it("says what to stop at before anything is typed, the bowl included", () => {
    expect(weighOn(SMALL, typed(""))).toMatchObject({
      net: null,
      level: null,
      stop_at: "273.2",
      low: "58.5",
      high: "61.5",
      verdict: null,
    });
  });

  it("never says to stop at what the display cannot show", () => {
    const onTwos: InstrumentShown = { ...SMALL, division: "2" };

    expect(weighOn(onTwos, typed("", { tare: "213" }))).toMatchObject({ stop_at: "272" });
  });

  it("is within where the scale is fine enough to tell", () => {
    expect(weighOn(SMALL, typed("273.4"))).toMatchObject({
      net: "60.2",
      level: "60.2",
      verdict: "within",
      is_over: true,
      off: "0.2",
    });
  });

  it("cannot be told on a coarse scale near the limit", () => {
    const form = typed("274", { tare: "213" });

    expect(weighOn(BLUE, form)).toMatchObject({ net: "61", verdict: "cannot_tell" });
  });

  it("is outside with what to take out", () => {
    expect(weighOn(SMALL, typed("276.9"))).toMatchObject({
      net: "63.7",
      verdict: "outside",
      off: "3.7",
      stop_at: "273.2",
    });
  });

  it("adds to what is in the bowl already", () => {
    const line = { ...PECTIN, in_base: "40", u: "0.041" };

    expect(weighOn(SMALL, typed("233.3"), line)).toMatchObject({
      net: "20.1",
      level: "60.1",
      stop_at: "233.2",
      verdict: "within",
    });
  });

  it("takes the first reading as shown and all later ones as repeats", () => {
    const form = typed("273.6", { repeats: ["273.4", "273.5"] });

    expect(measured(form, SMALL, false)).toEqual({
      reading: {
        instrument: "small",
        unit: "g",
        shown: "273.4",
        tare: "213.2",
        division: "0.1",
        repeats: ["273.5", "273.6"],
      },
    });
  });

  it("counts pieces without an instrument", () => {
    expect(measured(typed("66", { unit: "pc", tare: "" }), null, true)).toEqual({
      counted: { amount: "66", unit: "pc" },
    });
  });

  it("is no reading while nothing is typed", () => {
    expect(measured(typed(""), SMALL, false)).toBeNull();
  });

  it("is refused beyond the end of the scale and below the empty bowl", () => {
    expect(readingRefusal(measured(typed("512"), SMALL, false), SMALL)).toBe("over_capacity");
    expect(readingRefusal(measured(typed("100"), SMALL, false), SMALL)).toBe("below_bowl");
    expect(readingRefusal(measured(typed("273.4"), SMALL, false), SMALL)).toBeNull();
  });
});

describe("instruments for a line", () => {
  it("cannot tell where their steps are too coarse", () => {
    expect(canTell(SMALL, PECTIN)).toBe(true);
    expect(canTell(FLOOR, PECTIN)).toBe(false);
  });

  it("come finest first, those that cannot tell last", () => {
    expect(instrumentsFor(PECTIN, [FLOOR, BLUE, SMALL]).map((each) => each.id)).toEqual([
      "small",
      "blue",
      "floor",
    ]);
  });

  it("of another kitchen come after what is at hand", () => {
    const away = { ...SMALL, id: "away", place: "mill", is_here: false };

    expect(instrumentsFor(PECTIN, [away, BLUE]).map((each) => each.id)).toEqual(["blue", "away"]);
  });
});

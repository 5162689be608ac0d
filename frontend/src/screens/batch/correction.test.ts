import { describe, expect, it } from "vitest";
import { correctedBody, numbersOf } from "./correction.ts";

const BODY = {
  batch: "b",
  lot: "PE-1",
  reading: { instrument: "small", unit: "g", shown: "273.4", tare: "213.2", division: "0.1" },
};

describe("correcting an entry", () => {
  it("offers the reading and the bowl of a weigh-in", () => {
    expect(numbersOf("weigh_in", BODY).map(({ key, value }) => [key, value])).toEqual([
      ["reading.shown", "273.4"],
      ["reading.tare", "213.2"],
    ]);
  });

  it("gives the whole new body and leaves the rest as it was", () => {
    const numbers = [{ group: "reading", name: "shown", value: "272.4" }];

    expect(correctedBody(BODY, numbers, null)).toEqual({
      ...BODY,
      reading: { ...BODY.reading, shown: "272.4" },
    });
  });

  it("takes a bowl away that was none", () => {
    const numbers = [{ group: "reading", name: "tare", value: null }];

    const { reading } = correctedBody(BODY, numbers, null);

    expect(reading).toEqual({ instrument: "small", unit: "g", shown: "273.4", division: "0.1" });
  });

  it("judges by the steps of the other instrument", () => {
    const blue = { id: "blue", division: "1", repeatability: null };

    expect(correctedBody(BODY, [], blue).reading).toMatchObject({
      instrument: "blue",
      division: "1",
      shown: "273.4",
    });
  });
});

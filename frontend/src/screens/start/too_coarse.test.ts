import { expect, test } from "vitest";
import { tooCoarseFor } from "./too_coarse.ts";

const BENCH = { name: "Bench scale", division: "1", unit: "g" };
const SMALL = { name: "Small scale", division: "100", unit: "mg" };

test("twenty steps of the finest scale are enough, less are not", () => {
  expect(tooCoarseFor({ amount: "2", unit: "g" }, [BENCH, SMALL])).toBeNull();
  expect(tooCoarseFor({ amount: "1.9", unit: "g" }, [BENCH, SMALL])).toEqual(SMALL);
  expect(tooCoarseFor({ amount: "0.019", unit: "kg" }, [BENCH])).toEqual(BENCH);
});

test("of pieces, of nothing and without a scale nobody can say so", () => {
  expect(tooCoarseFor({ amount: "3", unit: "pc" }, [BENCH])).toBeNull();
  expect(tooCoarseFor({ amount: "0", unit: "g" }, [BENCH])).toBeNull();
  expect(tooCoarseFor({ amount: "1", unit: "g" }, [])).toBeNull();
});

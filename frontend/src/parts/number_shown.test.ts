import { expect, test } from "vitest";
import { saidOf } from "./NumberShown.tsx";

test("only what was counted is called exact", () => {
  expect(saidOf({ amount: "24", basis: "counted" })).toBe("24, counted, exact");
  expect(saidOf({ amount: "15472", unit: "g", basis: "plain" })).toBe("15\u202f472\u00a0g");
});

test("what was measured is said with how good it is", () => {
  const said = saidOf({ amount: "60.2", unit: "g", basis: "measured", uncertainty: "0.1" });

  expect(said).toBe("60.2\u00a0g, measured, give or take 0.1\u00a0g");
});

/** The short way from a decimal to a double says what the text of the number says. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { asDouble, Decimal } from "./numbers.ts";

test("a decimal becomes the double nearest to it, as its text does", () => {
  const digits = fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n });
  const few = fc.bigInt({ min: -(2n ** 54n), max: 2n ** 54n });
  fc.assert(
    fc.property(fc.oneof(digits, few), fc.nat({ max: 30 }), (units, scale) => {
      const x = new Decimal(units, scale);
      expect(asDouble(x) + 0).toBe(Number(x.toString()) + 0);
    }),
    { numRuns: 10_000 },
  );
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { viewedCost } from "./cost_views.ts";
import { parseDecimal, total, written } from "./numbers.ts";

const COINS = fc.integer({ min: 0, max: 99_999 }).map((coins) => (coins / 100).toFixed(2));
const GRAMS = fc.integer({ min: 1, max: 500 });
const LOTS = fc.array(
  fc.record({ made: GRAMS, used: GRAMS, sold: GRAMS, lost: GRAMS, price: COINS }),
  {
    minLength: 1,
    maxLength: 4,
  },
);

test("in a view all that was paid is here, elsewhere, lost or left, to the coin", () => {
  fc.assert(
    fc.property(LOTS, fc.constantFrom("fifo" as const, "moving_average" as const), (lots, view) => {
      const sheets = new Map<string, object>([
        ["batch:b", { lots_in: lots.map((_, at) => ({ lot: `L${at}`, material: "m" })) }],
      ]);
      for (const [at, each] of lots.entries()) {
        sheets.set(`lot:L${at}`, {
          ...{ lot: `L${at}`, made_by: "receipt", material: "m", unit: "g", last_on: "2026-06-09" },
          ...{ made: String(each.made), made_on: `2026-06-0${at + 1}`, lost: String(each.lost) },
          went_to: [
            { to: "batch:b", amount: String(each.used), on: "2026-06-05" },
            { to: "recipient:r", amount: String(each.sold), on: "2026-06-06" },
          ],
        });
        sheets.set(`price:L${at}`, { price: each.price, currency: "EUR" });
      }

      const codes = lots.map((_, at) => `L${at}`);
      const { parts } = viewedCost("b", view, { cooperative: "c", sheets, lots: codes });

      const { bought, ...where } = parts ?? {};
      const sum = (texts: string[]) => written(total(texts.map(parseDecimal)));
      expect(sum(Object.values(where))).toBe(bought);
      expect(bought).toBe(sum(lots.map((each) => each.price)));
    }),
  );
});

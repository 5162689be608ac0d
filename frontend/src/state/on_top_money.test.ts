import { expect, test } from "vitest";
import { type CostState, costState, type RatesState, ratesState } from "../calc/money.ts";
import { costOnTop, ratesOnTop } from "./on_top_money.ts";
import { fact } from "./on_top_parts.ts";
import "./judging.ts";

const labour = (id: string, minutes: string) =>
  fact(id, "labour", { batch: "b1", member: "ana", minutes }, 1);

const minutesOf = (state: CostState) => state.labour.map((each) => each.minutes);

test("own work is added to what the server knows, once", () => {
  const server = costState("cost:b1", [labour("w1", "90")]);

  const shown = costOnTop("cost:b1", server, { extra: [labour("w2", "30")], covered: [] });
  const again = costOnTop("cost:b1", shown, { extra: [labour("w2", "30")], covered: [] });

  expect(minutesOf(shown)).toEqual(["90", "30"]);
  expect(minutesOf(again)).toEqual(["90", "30"]);
});

test("an own correction stands in for the row the server knows, and a void takes it off", () => {
  const wrong = labour("w1", "900");
  const server = costState("cost:b1", [wrong, labour("w2", "30")]);
  const body = { batch: "b1", member: "ana", minutes: "90" };
  const named = { corrects: "w1", of_kind: "labour", reason: "slip" };
  const corrected = fact("c1", "correction", { ...named, body }, 2);

  const shown = costOnTop("cost:b1", server, { extra: [corrected], covered: [wrong] });
  const voided = costOnTop("cost:b1", server, {
    extra: [fact("v1", "void", named, 2)],
    covered: [wrong],
  });

  expect(minutesOf(shown).sort()).toEqual(["30", "90"]);
  expect(minutesOf(voided)).toEqual(["30"]);
});

test("own rates take their place by the day from which they count", () => {
  const rates = (id: string, since: string) =>
    fact(id, "rates_set", { cooperative: "c", since }, 1);
  const server: RatesState = ratesState("rates:c", [rates("r2", "2026-07-01")]);

  const shown = ratesOnTop("rates:c", server, { extra: [rates("r1", "2026-05-01")], covered: [] });

  expect(shown.rates.map((each) => each.since)).toEqual(["2026-05-01", "2026-07-01"]);
});

import { expect, test } from "vitest";
import { citedIn } from "../../calc/checks.ts";
import { fillOf } from "../../calc/fills.ts";
import { checkResult } from "../../calc/instrument_checks.ts";
import { FILL } from "../../text/fill.ts";
import { CITED } from "../../text/instruments.ts";
import { citedBy } from "./Recalled.tsx";

function usFill(label: string, net: number) {
  const tares = ["100.0", "100.0"];
  const gross = Array.from({ length: 12 }, () => (net + 100).toFixed(1));
  return fillOf({
    label: [{ amount: { amount: label, unit: "g" } }],
    rules: "us",
    unit: "g",
    lot_size: 12,
    division: "0.1",
    tares,
    gross,
  });
}

test("a fill check says which figures of its rules are recalled", () => {
  const fill = usFill("340", 345);

  expect(fill.verdict).toBe("pass");
  expect(fill.leans_on_memory).toBe(true);
  expect(citedBy(fill.cited, "memory", FILL)).toEqual([
    expect.stringMatching(/^how many packs are weighed \(/),
    expect.stringMatching(/^how short one pack may be \(/),
  ]);
});

test("a figure on which recollections differ is named and decides nothing", () => {
  const fill = usFill("4000", 3500);

  expect(fill.verdict).toBe("not_decided");
  expect(fill.reasons).toContain("mav_disputed");
  expect(citedBy(fill.cited, "disputed", FILL)).toHaveLength(1);
});

test("a check of a cylinder names the recalled row of its class", () => {
  const capacity = "1000";
  const body = {
    unit: "g",
    steps: [{ sort: "water", readings: ["997"], celsius: "20", division: "0.1" }],
    holds: { amount: capacity, unit: "mL" },
    judged_by: "cylinder",
    accuracy_class: "A",
  };
  const cited = citedIn(checkResult("cylinder", body, { sort: "cylinder" }));

  expect(citedBy(cited, "memory", CITED)).toEqual([expect.stringMatching(/^Cylinders \(/)]);
});

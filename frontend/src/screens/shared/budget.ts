/** What a reading rests on: the readings, the bowl, the instrument, its step, and how it is worked out. */
import { type Body, objectIn, textIn, textsIn } from "../../calc/bodies.ts";
import { plain, significant } from "../../calc/numbers.ts";
import { coverageFactor, guardBand } from "../../calc/readings.ts";
import { weighingOf } from "../../calc/weighing.ts";
import type { BudgetLines } from "../../parts/NumberShown.tsx";
import { nameOf } from "../../state/stock.ts";
import { BUDGET } from "../../text/budget.ts";
import { amountWords, figure } from "../../text/numbers.ts";

const U_DIGITS = 2;

/** The budget of the reading in a body; null where nothing was read, such as what was counted. */
export function readingBudget(body: Body | null): BudgetLines | null {
  const reading = body === null ? null : objectIn(body, "reading");
  const weighing = body === null ? null : weighingOf(body);
  if (reading === null || weighing === null) return null;
  const { net, unit, doubt } = weighing;
  const instrument = textIn(reading, "instrument");
  return {
    value: amountWords(plain(net), unit),
    uncertainty:
      doubt === null
        ? BUDGET.not_known
        : amountWords(significant(guardBand(doubt), U_DIGITS), unit),
    coverage: doubt === null ? null : BUDGET.one_sided(String(coverageFactor(doubt.degrees))),
    instrument: instrument === null ? null : nameOf("instrument", instrument),
    inputs: inputsOf(reading, unit),
    formula: formulaOf(reading),
    source: BUDGET.reading_source,
  };
}

function readingsIn(reading: Body): string[] {
  return [textIn(reading, "shown") ?? "", ...textsIn(reading, "repeats")];
}

function inputsOf(reading: Body, unit: string): { name: string; value: string }[] {
  const read = readingsIn(reading);
  const named = read.map((each, at): [string, string | null] => [BUDGET.read(at + 1), each]);
  const rest: [string, string | null][] = [
    [BUDGET.bowl, textIn(reading, "tare")],
    [BUDGET.step, textIn(reading, "division")],
    [BUDGET.repeatability, textIn(reading, "repeatability")],
  ];
  return [...named, ...rest].flatMap(([name, value]) =>
    value === null ? [] : [{ name, value: amountWords(value, unit) }],
  );
}

function formulaOf(reading: Body): string {
  const read = readingsIn(reading);
  const shown = read.length > 1 ? BUDGET.mean_of(read.length) : figure(read[0]);
  const tare = textIn(reading, "tare");
  return tare === null ? shown : BUDGET.less_bowl(shown, figure(tare));
}

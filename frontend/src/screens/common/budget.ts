/** What a reading rests on: the readings, the bowl, the instrument, its step, and how it is worked out. */
import { type Body, decimalIn, objectIn, textIn, textsIn } from "../../calc/bodies.ts";
import { plain, significant } from "../../calc/numbers.ts";
import { coverageFactor, guardBand, resolutionU } from "../../calc/readings.ts";
import type { TrustedReading } from "../../calc/trusted.ts";
import type { BudgetLines } from "../../parts/NumberShown.tsx";
import { nameOf } from "../../state/stock.ts";
import { BUDGET } from "../../text/budget.ts";
import { FITNESS } from "../../text/fitness.ts";
import { amountWords, dayWords, figure } from "../../text/numbers.ts";
import { asGoodAsU, checkNamed, trusted } from "./trust.ts";

const U_DIGITS = 2;
const LEAST_SHARE = 1e-6; // what is left of two equal doubles is no spread

/**
 * The budget of the reading in a body made at this time; null where nothing was read, such as what
 * was counted.
 */
export function readingBudget(body: Body | null, happened_at = ""): BudgetLines | null {
  const reading = body === null ? null : objectIn(body, "reading");
  const found = body === null ? null : trusted(body, happened_at);
  if (reading === null || found === null) return null;
  const { doubt, read } = found;
  const { net, unit } = read;
  const instrument = textIn(reading, "instrument");
  const check = checkNamed(instrument, found.found_by);
  const shown = amountWords(plain(net), unit);
  return {
    value:
      check === null
        ? shown
        : FITNESS.corrected(
            shown,
            amountWords(asGoodAsU(plain(found.value), doubt && String(doubt.u)), unit),
          ),
    uncertainty:
      doubt === null
        ? BUDGET.not_known
        : amountWords(significant(guardBand(doubt), U_DIGITS), unit),
    coverage: doubt === null ? null : BUDGET.one_sided(String(coverageFactor(doubt.degrees))),
    instrument: instrument === null ? null : nameOf("instrument", instrument),
    checked: check && dayWords(check.on, true),
    inputs: [...inputsOf(reading, unit), ...doubtsOf(reading, found)],
    formula: found.found_by === null ? formulaOf(reading) : BUDGET.plus(formulaOf(reading)),
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

/** What the doubt is made of, each as a standard uncertainty: display, spread, correction. */
function doubtsOf(
  reading: Body,
  { read, calibration_u, is_extrapolated }: TrustedReading,
): { name: string; value: string }[] {
  const division = decimalIn(reading, "division");
  if (division === null || read.doubt === null) return [];
  const display = resolutionU(division, textIn(reading, "tare") === null ? 1 : 2);
  const spread = Math.sqrt(Math.max(0, read.doubt.u ** 2 - display ** 2));
  const rows: [string, number | null][] = [
    [BUDGET.from_display, display],
    [BUDGET.from_spread, spread > display * LEAST_SHARE ? spread : null],
    [is_extrapolated ? BUDGET.from_beyond : BUDGET.from_correction, calibration_u],
  ];
  return rows.flatMap(([name, u]) =>
    u === null ? [] : [{ name, value: amountWords(significant(u, U_DIGITS), read.unit) }],
  );
}

function formulaOf(reading: Body): string {
  const read = readingsIn(reading);
  const shown = read.length > 1 ? BUDGET.mean_of(read.length) : figure(read[0]);
  const tare = textIn(reading, "tare");
  return tare === null ? shown : BUDGET.less_bowl(shown, figure(tare));
}

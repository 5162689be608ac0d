/** What a reading stands for, with its instrument's sheet as this phone shows it. */
import { type Body, objectIn, textIn } from "../../calc/bodies.ts";
import type { InstrumentState } from "../../calc/instruments.ts";
import { parseDecimal, rounded, significant } from "../../calc/numbers.ts";
import { ONE_SIDED_95 } from "../../calc/readings.ts";
import { type Trust, type TrustedReading, trustedReading } from "../../calc/trusted.ts";
import { instrumentSheet } from "./instruments.ts";

/** Null where nothing was read or counted. */
export function trusted(body: Body, happened_at: string): TrustedReading | null {
  const instrument = textIn(objectIn(body, "reading") ?? {}, "instrument");
  const state = instrument === null ? null : instrumentSheet(instrument);
  const instruments = new Map(state === null ? [] : [[`instrument:${instrument}`, state]]);
  return trustedReading(body, { happened_at, instruments });
}

/** A check that a trust names, on its instrument's sheet. */
export function checkNamed(
  instrument: string | null,
  entry: string | null,
): InstrumentState["checks"][number] | null {
  if (instrument === null || entry === null) return null;
  return instrumentSheet(instrument)?.checks?.find((each) => each.entry === entry) ?? null;
}

/** A corrected figure to as many digits as its doubt has two of: 1995.01992 give or take 1.6 is 1995.0. */
export function asGoodAs(value: string, reach: string | null): string {
  if (reach === null) return value;
  const places = significant(Number(reach), REACH_DIGITS).split(".")[1]?.length ?? 0;
  return rounded(parseDecimal(value), places).toString();
}

/** The same by a standard uncertainty, as sheets have it. */
export function asGoodAsU(value: string, u: string | null): string {
  return asGoodAs(value, u === null ? null : significant(Number(u) * ONE_SIDED_95, REACH_DIGITS));
}

/** The corrected figure of a row on a sheet, where a correction was in force; else what was read. */
export function correctedOr(
  read: string | null,
  row: { readonly trust?: Trust; readonly u: string | null },
): string | null {
  const corrected = row.trust?.corrected;
  return corrected ? asGoodAsU(corrected, row.u) : read;
}

/** How far something would move, to two digits. */
export function movesText(moves: string): string {
  return significant(Number(moves), REACH_DIGITS);
}

const REACH_DIGITS = 2;

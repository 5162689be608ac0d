/** What a reading stands for, with its instrument's sheet as this phone shows it. */
import { type Body, objectIn, textIn } from "../../calc/bodies.ts";
import type { InstrumentState } from "../../calc/instruments.ts";
import { type TrustedReading, trustedReading } from "../../calc/trusted.ts";
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

/**
 * A reading with what is known of its instrument: corrected, doubted, or in question.
 * What counts is what held when the reading was made, also where the check came later.
 */

import { type Body, decimalIn, itemsIn, objectIn, textIn } from "./bodies.ts";
import {
  asDouble,
  type Decimal,
  difference,
  parseDecimal,
  plain,
  rounded,
  significant,
  total,
  ZERO,
} from "./numbers.ts";
import type { Doubt } from "./readings.ts";
import { loadOf, PLACES, sumDoubt, type Weighing, weighingOf } from "./weighing.ts";

/** States by subject. */
export type Sheets = ReadonlyMap<string, object>;
export const NOTHING_BESIDE: Sheets = new Map();

const CORRECTION_DIGITS = 12; // of a double, before it is added to an exact reading
const LEAST_MOVE = 5e-7; // less than this is no step at PLACES
const MOST_MOVE = 1e15; // more than any reading: what says so is no correction

/**
 * What a reading stands for, in the unit it was read in.
 *
 * `read` is what was read, net, with the doubt of the reading alone. `value` is that with the
 * correction in force, and `doubt` counts the correction's `calibration_u`, too. `found_by` is the
 * check the correction comes from. `failed_by` is a failed check that puts the reading in
 * question, and `moves` what would be added if the error it found counted.
 */
export interface TrustedReading {
  readonly read: Weighing;
  readonly value: Decimal;
  readonly doubt: Doubt | null;
  readonly calibration_u: number | null;
  readonly found_by: string | null;
  readonly is_extrapolated: boolean;
  readonly failed_by: string | null;
  readonly moves: Decimal | null;
}

/**
 * What a sheet says of a reading's instrument: the corrected value and the check it comes from,
 * the failed check that puts it in question and how far that would move it.
 */
export interface Trust {
  readonly corrected: string | null;
  readonly found_by: string | null;
  readonly is_extrapolated: boolean;
  readonly failed_by: string | null;
  readonly moves: string | null;
}

/** What a correction line makes of one reading. */
interface Found {
  readonly correction: number;
  readonly u: number;
  readonly degrees: number | null;
  readonly is_extrapolated: boolean;
}

/**
 * The reading or count in a body made at this time; null where there is neither.
 * `instruments` are sheets by subject; without its own a reading stands as it was read. One of many
 * in a row is in question where any time up to `until` is.
 */
export function trustedReading(
  body: Body,
  made: { readonly happened_at: string; readonly until?: string; readonly instruments: Sheets },
): TrustedReading | null {
  const reading = objectIn(body, "reading") ?? {};
  const sheet: Body = { ...made.instruments.get(`instrument:${textIn(reading, "instrument")}`) };
  const held = inForce(sheet, made.happened_at);
  const weighing = weighingOf(withSpread(body, reading, held));
  if (weighing === null) return null;
  const line = fittingLine(objectIn(held, "line"), weighing);
  const found = line?.is_significant === true ? correctionAt(line, reading) : null;
  const value = found === null ? weighing.net : moved(weighing.net, found.correction);
  const questioned = inDoubt(sheet, made.happened_at, made.until ?? made.happened_at);
  return {
    read: weighing,
    value,
    doubt: found === null ? weighing.doubt : withFound(weighing.doubt, found),
    calibration_u: found === null ? null : found.u,
    found_by: found === null ? null : textIn(held, "found_by"),
    is_extrapolated: found?.is_extrapolated === true,
    failed_by: questioned === null ? null : textIn(questioned, "check"),
    moves: questioned === null ? null : movesBy(questioned, weighing, { reading, value }),
  };
}

/**
 * What a reading stands for as a weighing of its own; `isMoved` as if the error that a failed
 * check found counted.
 */
export function meant(trusted: TrustedReading, isMoved = false): Weighing {
  const by = isMoved ? trusted.moves : null;
  const value = by === null ? trusted.value : total([trusted.value, by]);
  return { net: value, unit: trusted.read.unit, doubt: trusted.doubt };
}

/** The same as text; a reading nobody corrected says so by nothing. */
export function writtenTrust(trusted: TrustedReading | null): Trust {
  const found_by = trusted?.found_by ?? null;
  const moves = trusted?.moves ?? null;
  return {
    corrected: trusted === null || found_by === null ? null : plain(trusted.value),
    found_by,
    is_extrapolated: trusted?.is_extrapolated === true,
    failed_by: trusted?.failed_by ?? null,
    moves: moves === null ? null : plain(moves),
  };
}

/** The last row that holds at a time; nothing before the first check. */
function inForce(sheet: Body, happenedAt: string): Body {
  const held = itemsIn(sheet, "corrections").filter(
    (row) => (textIn(row, "since") ?? "") <= happenedAt,
  );
  return held.at(-1) ?? {};
}

/** The first failed check whose stretch of time holds some of the reading's. */
function inDoubt(sheet: Body, fromAt: string, toAt: string): Body | null {
  const row = itemsIn(sheet, "doubts").find((each) => {
    const after = textIn(each, "after");
    const until = textIn(each, "until");
    return (after === null || after < toAt) && (until === null || fromAt <= until);
  });
  return row ?? null;
}

/** The spread a check found stands in where the reading has none of its own. */
function withSpread(body: Body, reading: Body, held: Body): Body {
  const spread = textIn(held, "repeatability");
  if (spread === null || textIn(reading, "unit") !== textIn(held, "unit")) return body;
  if (textIn(reading, "repeatability") !== null) return body;
  return { ...body, reading: { ...reading, repeatability: spread } };
}

function fittingLine(line: Body | null, weighing: Weighing): Body | null {
  return line !== null && textIn(line, "unit") === weighing.unit ? line : null;
}

/**
 * The line at a reading; of a net mass, which is a difference, only the slope is left and what
 * both readings have in common falls out, with its doubt.
 */
function correctionAt(line: Body, reading: Body): Found | null {
  const gross = loadOf(reading);
  const tare = decimalIn(reading, "tare");
  if (gross === null) return null;
  const { correction, u } = tare === null ? atLoad(line, gross) : ofNet(line, gross, tare);
  if (Math.abs(correction) > MOST_MOVE) return null;
  const { degrees } = line;
  const ends = tare === null ? [gross] : [gross, tare];
  return {
    correction,
    u,
    degrees: typeof degrees === "number" ? degrees : null,
    is_extrapolated: ends.some((each) => isBeyond(line, asDouble(each))),
  };
}

function atLoad(line: Body, gross: Decimal): { correction: number; u: number } {
  const sumXx = double(line, "sum_xx");
  const away = asDouble(gross) - double(line, "centre");
  const lever = sumXx > 0 ? (away * away) / sumXx : 0;
  return {
    correction: double(line, "height") + double(line, "slope") * away,
    u: double(line, "sd") * Math.sqrt(1 / Math.max(double(line, "count"), 1) + lever),
  };
}

function ofNet(line: Body, gross: Decimal, tare: Decimal): { correction: number; u: number } {
  const sumXx = double(line, "sum_xx");
  const net = asDouble(difference(gross, tare));
  const u = sumXx > 0 ? (double(line, "sd") * Math.abs(net)) / Math.sqrt(sumXx) : 0;
  return { correction: double(line, "slope") * net, u };
}

function isBeyond(line: Body, x: number): boolean {
  return x < double(line, "low") || x > double(line, "high");
}

/** A double of a line as its sheet writes it; 0 where there is none. */
function double(line: Body, name: string): number {
  const value = line[name];
  return typeof value === "string" || typeof value === "number" ? Number(value) : 0;
}

function moved(net: Decimal, by: number): Decimal {
  if (Math.abs(by) < LEAST_MOVE) return net;
  const exact = parseDecimal(significant(by, CORRECTION_DIGITS));
  return rounded(total([net, exact]), PLACES);
}

function withFound(doubt: Doubt | null, found: Found): Doubt | null {
  return sumDoubt([doubt, { u: found.u, degrees: found.degrees }]);
}

/** From the value in force to what the failed check would make of it; null where it cannot say. */
function movesBy(
  questioned: Body,
  weighing: Weighing,
  now: { readonly reading: Body; readonly value: Decimal },
): Decimal | null {
  const line = fittingLine(objectIn(questioned, "line"), weighing);
  const found = line === null ? null : correctionAt(line, now.reading);
  if (found === null) return null;
  const by = difference(moved(weighing.net, found.correction), now.value);
  return by.isZero() ? ZERO : by;
}

/** A fill check with what is known of its scale: as the masses stand for, or in question. */

import { type Body, textIn, textsIn } from "./bodies.ts";
import { type Fill, fillOf } from "./fills.ts";
import type { NetVerdict } from "./net_content.ts";
import { difference, parseDecimal, plain } from "./numbers.ts";
import { type Finding, finding, type Standing, TEXT_ORDER, type Was } from "./record.ts";
import { meant, type Sheets, type TrustedReading, trustedReading } from "./trusted.ts";

const MASSES = ["tares", "gross"] as const;

/**
 * What the checks of its scale say of a fill check, as Trust does of a reading.
 *
 * `moves` is how far the mean content would move, in the unit of the fill, and `would_be` the
 * verdict, if the error that a failed check found counted; null where nobody can say.
 */
export interface FillTrust {
  readonly found_by: string | null;
  readonly is_extrapolated: boolean;
  readonly failed_by: string | null;
  readonly moves: string | null;
  readonly would_be: NetVerdict | null;
}

/**
 * A fill check of the lot: its entry, the day, who made it, what was corrected; the scale and what
 * the checks of that scale say of it.
 */
export interface FillCheck extends Fill {
  readonly entry: string;
  readonly on: string;
  readonly happened_at: string;
  readonly author: string;
  readonly instrument: string | null;
  readonly trust: FillTrust;
  readonly was: readonly Was[];
}

/** What a finding needs to know of a fill check. */
export interface DoubtedFill {
  readonly entry: string;
  readonly verdict: NetVerdict;
  readonly trust: FillTrust;
}

/** What a fill check says with every mass as it stands for, and how far to trust it. */
export interface TrustedFill {
  readonly fill: Fill;
  readonly trust: FillTrust;
}

type Readings = Readonly<Record<(typeof MASSES)[number], readonly (TrustedReading | null)[]>>;

/**
 * Every mass on the scale is corrected as a reading of that time is, then judged.
 * `instruments` are sheets by subject; without its scale's own the masses stand as read.
 */
export function trustedFill(
  body: Body,
  made: { readonly happened_at: string; readonly instruments: Sheets },
): TrustedFill {
  const read = (name: string) =>
    textsIn(body, name).map((mass) => trustedReading(readingOf(body, mass), made));
  const readings: Readings = { tares: read("tares"), gross: read("gross") };
  const known = [...readings.tares, ...readings.gross].filter((each) => each !== null);
  const fill = fillOf(withMasses(body, readings, false));
  const failed_by = known.find((each) => each.failed_by !== null)?.failed_by ?? null;
  const isKnownHow = failed_by !== null && known.every((each) => each.moves !== null);
  const moved = isKnownHow ? fillOf(withMasses(body, readings, true)) : null;
  return {
    fill,
    trust: {
      found_by: known.find((each) => each.found_by !== null)?.found_by ?? null,
      is_extrapolated: known.some((each) => each.is_extrapolated),
      failed_by,
      moves: moved === null ? null : movesBy(fill, moved),
      would_be: moved?.verdict ?? null,
    },
  };
}

/** The fill checks of a lot in the order they were made; `scales` are sheets by subject. */
export function fillChecks(
  standing: readonly Standing[],
  code: string,
  scales: Sheets,
): FillCheck[] {
  return standing
    .filter((each) => each.kind === "fill_checked" && textIn(each.body, "lot") === code)
    .map((each) => {
      const { happened_at } = each;
      const { fill, trust } = trustedFill(each.body, { happened_at, instruments: scales });
      return {
        ...fill,
        entry: each.id,
        on: textIn(each.body, "on") ?? each.local_date,
        happened_at,
        author: each.author,
        instrument: textIn(each.body, "instrument"),
        trust,
        was: each.was,
      };
    });
}

/**
 * By failed check: how many fill checks it puts in question, and which verdicts would change:
 * `<entry>:pass:fail`.
 */
export function failedScales(fills: readonly DoubtedFill[]): Finding[] {
  const checks = fills.flatMap(({ trust }) => (trust.failed_by === null ? [] : trust.failed_by));
  return [...new Set(checks)].sort(TEXT_ORDER).map((check) =>
    findingOf(
      check,
      fills.filter((each) => each.trust.failed_by === check),
    ),
  );
}

function readingOf(body: Body, shown: string): Body {
  const instrument = textIn(body, "instrument");
  const reading = { shown, unit: textIn(body, "unit") ?? "" };
  return { reading: instrument === null ? reading : { ...reading, instrument } };
}

/** The body with masses as they stand for. */
function withMasses(body: Body, readings: Readings, isMoved: boolean): Body {
  const masses = MASSES.map((name) => [
    name,
    textsIn(body, name).map((text, place) => massOf(text, readings[name][place] ?? null, isMoved)),
  ]);
  return { ...body, ...Object.fromEntries(masses) };
}

/** What nothing moves, and what cannot be read, stays as it was written. */
function massOf(text: string, reading: TrustedReading | null, isMoved: boolean): string {
  if (reading === null) return text;
  const stands = meant(reading, isMoved).net;
  return stands.compare(reading.read.net) === 0 ? text : plain(stands);
}

function movesBy(fill: Fill, moved: Fill): string | null {
  if (fill.mean_error === null || moved.mean_error === null) return null;
  return plain(difference(parseDecimal(moved.mean_error), parseDecimal(fill.mean_error)));
}

function findingOf(check: string, fills: readonly DoubtedFill[]): Finding {
  const changes = fills.flatMap(({ entry, verdict, trust }) =>
    trust.would_be === null || trust.would_be === verdict
      ? []
      : `${entry}:${verdict}:${trust.would_be}`,
  );
  const detail = { readings: `${fills.length}`, would_change: changes.join(" ") };
  return finding(`instrument_failed:${check}`, "instrument_failed", { entry: check, detail });
}

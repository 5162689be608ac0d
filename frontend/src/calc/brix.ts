/**
 * A refractometer's degrees Brix at another temperature than 20 degC.
 *
 * Between printed rows of one table a straight line, never between two tables, and never by a row
 * that was recalled and not read: then the answer is that it cannot be corrected. Cooling the
 * sample to 20 degC is better than any correction.
 */

import type { Cited } from "./limits.ts";
import {
  type Decimal,
  difference,
  divided,
  ONE,
  parseDecimal,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import { BRIX_ROWS, type BrixRow } from "./tables/bench.ts";

export const CORRECTION_PLACES = 2; // as printed
export const TABLES: readonly string[] = ["oiv", "gost", "extrapolated"]; // of equal gaps the first
const EVERY_TABLE = "all"; // how the rows of the reference temperature are named

/**
 * Percent at 20 degC and what was added for it, or that it cannot be told. `tolerance` is how far
 * the correction may be off; `table` names the printed one.
 */
export interface BrixCorrection {
  readonly answer: "corrected" | "cannot_correct";
  readonly percent: Decimal | null;
  readonly correction: Decimal | null;
  readonly tolerance: Decimal | null;
  readonly table: string | null;
  readonly cited: readonly Cited[];
}

/** A place between two printed ones: each with its weight, and what the weights add up to. */
interface Weights {
  readonly near: readonly { readonly place: Decimal; readonly weight: Decimal }[];
  readonly span: Decimal;
}

/** A correction summed up with weights, still to be divided by their sum. */
interface Weighted {
  readonly over: Decimal;
  readonly under: Decimal;
  readonly used: readonly BrixRow[];
}

const UNKNOWN: BrixCorrection = {
  answer: "cannot_correct",
  percent: null,
  correction: null,
  tolerance: null,
  table: null,
  cited: [],
};

/**
 * The percent a refractometer would show at 20 degC: measured plus correction.
 *
 * `table` keeps one instrument to one table (oiv, gost, extrapolated); without it the one whose
 * rows lie nearest answers. OIV-MA-AS2-02 Table I and GOST annex A, read.
 */
export function brixCorrection(
  measuredPercent: Decimal,
  celsius: Decimal,
  table: string | null = null,
): BrixCorrection {
  let best: { gap: Decimal; correction: BrixCorrection } | null = null;
  for (const name of TABLES) {
    if (table !== null && table !== name) continue;
    const found = byTable(name, measuredPercent, celsius);
    if (found !== null && (best === null || found.gap.compare(best.gap) < 0)) best = found;
  }
  return best?.correction ?? UNKNOWN;
}

/** The answer of one table and how far its temperatures lie apart around this one. */
function byTable(
  name: string,
  percent: Decimal,
  celsius: Decimal,
): { gap: Decimal; correction: BrixCorrection } | null {
  const rows = BRIX_ROWS.filter((row) => counts(row, name));
  const across = weightsAt(celsius, rows.map(celsiusOf));
  if (across === null) return null;
  let sum: Weighted = { over: ZERO, under: ONE, used: [] };
  for (const { place, weight } of across.near) {
    const here = rows.filter((row) => celsiusOf(row).compare(place) === 0);
    const along = alongPercents(here, percent);
    if (along === null) return null;
    sum = added(sum, { ...along, over: product(along.over, weight) });
  }
  const correction = divided(sum.over, product(across.span, sum.under), CORRECTION_PLACES);
  return { gap: across.span, correction: corrected(percent, correction, name, sum.used) };
}

function counts(row: BrixRow, name: string): boolean {
  return (row.scale === name || row.scale === EVERY_TABLE) && row.basis !== "memory";
}

function celsiusOf(row: BrixRow): Decimal {
  return parseDecimal(row.temp_C);
}

/** The printed places around this one; null outside. At a place itself it stands alone. */
function weightsAt(at: Decimal, places: readonly Decimal[]): Weights | null {
  let below: Decimal | null = null;
  let above: Decimal | null = null;
  for (const place of places) {
    const way = place.compare(at);
    if (way <= 0 && (below === null || place.compare(below) > 0)) below = place;
    if (way >= 0 && (above === null || place.compare(above) < 0)) above = place;
  }
  if (below === null || above === null) return null;
  if (below.compare(above) === 0) return { near: [{ place: below, weight: ONE }], span: ONE };
  const near = [
    { place: below, weight: difference(above, at) },
    { place: above, weight: difference(at, below) },
  ];
  return { near, span: difference(above, below) };
}

/** The correction of one temperature, on a straight line between its printed percents. */
function alongPercents(rows: readonly BrixRow[], percent: Decimal): Weighted | null {
  const percents = rows.map((row) => parseDecimal(row.measured_percent));
  const along = weightsAt(percent, percents);
  if (along === null) return null;
  const used = along.near.flatMap(({ place }) =>
    rows.filter((_, at) => percents[at]?.compare(place) === 0),
  );
  const over = total(
    along.near.map(({ weight }, at) =>
      product(parseDecimal(used[at]?.correction_percent ?? "0"), weight),
    ),
  );
  return { over, under: along.span, used };
}

/** Two fractions over one under: percents may lie further apart at one temperature. */
function added(a: Weighted, b: Weighted): Weighted {
  return {
    over: total([product(a.over, b.under), product(b.over, a.under)]),
    under: product(a.under, b.under),
    used: [...a.used, ...b.used],
  };
}

function corrected(
  percent: Decimal,
  correction: Decimal,
  name: string,
  used: readonly BrixRow[],
): BrixCorrection {
  const texts = new Map<string, Cited>();
  let tolerance = ZERO;
  for (const { source, basis, note, tolerance: known } of used) {
    texts.set(`${source}\n${basis}\n${note}`, { what: "brix", source, basis, note });
    const most = parseDecimal(known);
    if (most.compare(tolerance) > 0) tolerance = most;
  }
  return {
    answer: "corrected",
    percent: total([percent, correction]),
    correction,
    tolerance,
    table: name,
    cited: [...texts.values()],
  };
}

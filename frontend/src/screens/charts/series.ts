/** From sheets to the series a chart is drawn from. */
import type { BatchState } from "../../calc/batches.ts";
import { chartSorts } from "../../calc/charts_of.ts";
import type { FillCheck } from "../../calc/fill_trust.ts";
import type { Fill } from "../../calc/fills.ts";
import { type Decimal, parseDecimal, significant, total } from "../../calc/numbers.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import type { LotState } from "../../calc/stock.ts";
import { nameOf } from "../../state/stock.ts";
import { FILLS, YIELDS } from "../../text/charts.ts";
import { FITNESS } from "../../text/fitness.ts";
import { amountWords, dayWords } from "../../text/numbers.ts";
import { doubtOfBatch } from "../common/InQuestion.tsx";
import { standingAt } from "../common/instruments.ts";

/** One point: a day, a pack, a batch; `values` are what repeats there are. */
export interface SeriesPoint {
  id: string;
  name: string;
  values: readonly Decimal[];
  /** Where one reads more. */
  href?: string | undefined;
}

/** Points of one kind in their order. */
export interface Series {
  id: string;
  name: string;
  unit: string | null;
  /** Decimals a figure is shown with. */
  places: number;
  points: readonly SeriesPoint[];
  /** What a point is called, one and many. */
  one: string;
  many: string;
  why: string;
}

export type YieldSort = "recovery_percent" | "of_theory_percent" | "edible_yield_percent";

const YIELD_SORTS: readonly YieldSort[] = [
  "recovery_percent",
  "of_theory_percent",
  "edible_yield_percent",
];
const PERCENT_PLACES = 1;
const PLACES_MOST = 3;
const SPREAD_DIGITS = 2; // a doubt has two at most, a value goes as far: JCGM 100:2008 7.2.6

/** As fine as the values were read. */
export function decimalsIn(points: readonly SeriesPoint[]): number {
  const scales = points.flatMap(({ values }) => values.map(({ scale }) => scale));
  return Math.min(PLACES_MOST, Math.max(0, ...scales));
}

/**
 * Decimals of what is worked out from values of so many: one more, where two digits of their
 * standard deviation reach as far. A spread of nothing says nothing about digits.
 */
export function workedPlaces(places: number, sigma: number): number {
  if (sigma === 0) return places;
  return Math.min(places + 1, significant(sigma, SPREAD_DIGITS).split(".")[1]?.length ?? 0);
}

/** The finished batches of a recipe in the order they were finished. */
export function finishedOf(recipe: string, batches: readonly BatchState[]): BatchState[] {
  return batches
    .filter((batch) => batch.recipe === recipe && batch.is_finished)
    .sort(
      (a, b) =>
        TEXT_ORDER(a.finished_at ?? "", b.finished_at ?? "") || TEXT_ORDER(a.batch, b.batch),
    );
}

/** Whether any of them has enough points to be drawn. */
export function isDrawn(series: readonly Series[]): boolean {
  return series.some(({ points }) => chartSorts(points.map(({ values }) => values)).length > 0);
}

/** One series for each yield that could be worked out, as the batch sheet gives it. */
export function yieldSeries(finished: readonly BatchState[]): Series[] {
  return YIELD_SORTS.map((sort) => {
    const points = finished.flatMap((batch) => {
      const percent = batch.balance[sort];
      if (percent === null) return [];
      const doubt = doubtOfBatch(batch);
      const name = [dayWords(batch.finished_at), batch.code ?? "", doubt ?? []].flat().join(", ");
      return [
        {
          id: batch.batch,
          name,
          values: [parseDecimal(percent)],
          href: `#/batch/${batch.batch}`,
        },
      ];
    });
    const left = finished.length - points.length;
    return {
      id: sort,
      name: YIELDS.sorts[sort] ?? sort,
      unit: "%",
      places: PERCENT_PLACES,
      points,
      one: YIELDS.one,
      many: YIELDS.many,
      why: [YIELDS.how[sort], left > 0 ? YIELDS.without(left) : ""].filter(Boolean).join(" "),
    };
  }).filter(({ points }) => points.length > 0);
}

/** The packs of one check in the order they were weighed; null where no net content is known. */
export function packSeries(fill: Fill): Series | null {
  if (fill.declared === null) return null;
  const points = netsOf(fill).map((net, at) => ({
    id: String(at),
    name: FILLS.pack(at + 1),
    values: [net],
  }));
  return { ...aboutFill(fill, points), id: "lot", name: FILLS.lot, points, ...FILLS.packs };
}

/** The packs of the lot's last check, and all checks of its product under the same label. */
export function fillSeries(lot: LotState, lots: readonly LotState[]): Series[] {
  const last = lot.fills.at(-1);
  const packs = last === undefined ? null : packSeries(last);
  if (last === undefined || packs === null) return [];
  const points = lots
    .filter(({ material }) => material !== null && material === lot.material)
    .flatMap((each) => each.fills.map((fill) => ({ fill, code: each.lot })))
    .filter(({ fill }) => fill.declared === last.declared && fill.unit === last.unit)
    .sort((a, b) => TEXT_ORDER(a.fill.on, b.fill.on) || TEXT_ORDER(a.fill.entry, b.fill.entry))
    .map(({ fill, code }) => ({
      id: fill.entry,
      name: [dayWords(fill.on), code, SCALE_SHORT[scaleDoubt(fill)] ?? []].flat().join(", "),
      values: netsOf(fill),
      href: `#/lot/${code}`,
    }))
    .filter(({ values }) => values.length > 0);
  const checks = { ...aboutFill(last, points), id: "product", name: FILLS.product, points };
  return [
    { ...packs, why: `${packs.why} ${scaleSentence(last)}`.trim() },
    { ...checks, ...FILLS.checks },
  ];
}

const SCALE_SHORT: Readonly<Record<string, string>> = {
  failed: FITNESS.scale_failed,
  due: FITNESS.scale_due,
};

/** Whether the scale of a fill check failed a check, or was due for one. */
function scaleDoubt({ trust, instrument, happened_at }: FillCheck): "failed" | "due" | "" {
  if (trust?.failed_by) return "failed"; // a sheet of an earlier version knows no trust
  return instrument && standingAt(instrument, happened_at).is === "due" ? "due" : "";
}

function scaleSentence(fill: FillCheck): string {
  const doubt = scaleDoubt(fill);
  if (doubt === "") return "";
  const name = nameOf("instrument", fill.instrument);
  return doubt === "failed" ? FITNESS.failed_on(name, null) : FITNESS.was_due(name);
}

/** A volume worked out with a density gets no more decimals than the scale shows. */
function aboutFill({ declared, unit, division }: Fill, points: readonly SeriesPoint[]) {
  const most = division === null ? PLACES_MOST : (division.split(".")[1]?.length ?? 0);
  const why = FILLS.same_label(amountWords(declared, unit));
  return { unit, places: Math.min(most, decimalsIn(points)), why };
}

/** What is in each pack: what the label declares and the error of the pack. */
function netsOf({ declared, errors }: Fill): Decimal[] {
  if (declared === null) return [];
  const label = parseDecimal(declared);
  return errors.map((error) => total([label, parseDecimal(error)]));
}

/** What the body of a check says about an instrument of its sort, whoever made it. */

import { amountIn, type Body, decimalIn, itemsIn, textIn } from "./bodies.ts";
import {
  type CheckPoint,
  type Correction,
  correctionOf,
  type Sort,
  significance,
} from "./calibration.ts";
import { type CheckResult, judged, type Point, readingsIn, summedUp } from "./checks.ts";
import type { Limit } from "./limits.ts";
import { type Decimal, difference, plain, significant, total } from "./numbers.ts";
import { type PhMeter, phCheck } from "./ph_checks.ts";
import { type Rules, type Scale, scaleCheck } from "./scale_checks.ts";
import { type Thermometer, thermometerCheck } from "./thermometer_checks.ts";
import { type Vessel, vesselCheck } from "./vessel_checks.ts";

export const SIGNIFICANT_AT = 0.95; // a correction that chance explains is not applied
export const U_DIGITS = 3;

export type VesselSort = Vessel["sort"];

const VESSELS: readonly VesselSort[] = ["spoon", "cup", "cylinder"];
const RULES: readonly Rules[] = ["r76_initial", "r76_in_service", "hb133"];
const SORTS: readonly Sort[] = ["offset", "two_point", "least_squares"];
// What says nothing about how the instrument reads along its range.
const NOT_ON_THE_LINE: readonly string[] = ["tare", "return_to_zero", "off_centre", "water"];
const LINE_DIGITS = 15; // as many as a double holds for certain

/**
 * One step: error = reading - reference, in the check's unit. `repeats` are the errors of single
 * readings, none where there was one or where water was weighed to tell a volume.
 */
export interface CheckedPoint {
  readonly step: number;
  readonly sort: string;
  readonly reference: string;
  readonly error: string;
  readonly u: string | null;
  readonly limit: string | null;
  readonly verdict: string | null;
  readonly repeats: readonly string[];
}

/** A line of corrections over readings (calibration's Correction), doubles as text. */
export interface CorrectionLine {
  readonly unit: string | null;
  readonly sort: string;
  readonly terms: number;
  readonly count: number;
  readonly centre: string;
  readonly height: string;
  readonly slope: string;
  readonly sum_xx: string;
  readonly sd: string | null;
  readonly degrees: number | null;
  readonly low: string;
  readonly high: string;
  readonly is_significant: boolean | null;
}

/**
 * Errors and verdict of a check of an instrument of this `sort`.
 * What the check's own body says of the instrument (division, class, limit) counts before the
 * `fields` of its definition, which may have been edited since.
 */
export function checkResult(sort: string | null, body: Body, fields: Body): CheckResult {
  const known = { ...fields, ...body };
  const result = resultOf(sort, known, itemsIn(body, "steps"));
  const own = decimalIn(known, "most_error");
  return textIn(known, "judged_by") === "own" && own !== null ? byOwnLimit(result, own) : result;
}

/** The unit of the errors of a check: water is weighed, but tells what a vessel holds. */
export function checkedUnit(sort: string | null, body: Body): string | null {
  return vesselSort(sort) === undefined ? textIn(body, "unit") : "mL";
}

function resultOf(sort: string | null, known: Body, steps: readonly Body[]): CheckResult {
  if (sort === "scale") return scaleCheck(scaleIn(known), steps);
  const vessel = vesselSort(sort);
  if (vessel !== undefined) return vesselResult(vessel, known, steps);
  if (sort === "ph_meter") return phCheck(comparedIn(known), steps).result;
  return thermometerCheck(comparedIn(known), steps);
}

function vesselSort(sort: string | null): VesselSort | undefined {
  return VESSELS.find((each) => each === sort);
}

/** The same check judged by the limit the cooperative has set. */
function byOwnLimit(result: CheckResult, mostError: Decimal): CheckResult {
  const limit: Limit = { amount: mostError, cited: [] };
  const points = result.points.map((each) => judged({ ...each, value: readingAt(each) }, limit));
  const { repeatability, hysteresis } = result;
  return summedUp(points, { repeatability, hysteresis });
}

/** Of a vessel of which nobody said what it holds nothing can be told. */
function vesselResult(sort: VesselSort, known: Body, steps: readonly Body[]): CheckResult {
  const holds = amountIn(known, "holds");
  if (holds === null) return summedUp([], { repeatability: null, hysteresis: null });
  const cylinder_class = textIn(known, "accuracy_class");
  return vesselCheck({ sort, capacity_mL: holds.value, cylinder_class }, steps);
}

/** The correction line the check asked for, null where it asked for none or the steps do not carry one. */
export function correctionFound(body: Body, result: CheckResult): Correction | null {
  const asked = SORTS.find((each) => each === textIn(body, "line"));
  return asked === undefined ? null : lineOf(asked, result);
}

/** How far a check found it off, as a correction: the line it asked for, else through what it compared. */
export function errorFound(body: Body, result: CheckResult): Correction | null {
  return (
    correctionFound(body, result) ??
    lineOf("least_squares", result) ??
    lineOf("two_point", result) ??
    lineOf("offset", result)
  );
}

/** The steps of a check as text for a sheet; `body` is that of its entry. */
export function writtenPoints(result: CheckResult, body: Body): CheckedPoint[] {
  const steps = itemsIn(body, "steps");
  return result.points.map((point) => ({
    step: point.step,
    sort: point.sort,
    reference: plain(point.reference),
    error: plain(point.error),
    u: point.doubt === null ? null : significant(point.doubt.u, U_DIGITS),
    limit: point.limit === null ? null : plain(point.limit.amount),
    verdict: point.verdict,
    repeats: repeatsAt(point, steps[point.step] ?? {}),
  }));
}

function repeatsAt({ sort, reference }: Point, step: Body): string[] {
  const readings = sort === "water" ? [] : readingsIn(step);
  const errors = readings.map((each) => plain(difference(each, reference)));
  return errors.length > 1 ? errors : [];
}

/** A line as text for a sheet, in the unit of the readings it is for, with its judgement. */
export function writtenCorrection(correction: Correction, unit: string | null): CorrectionLine {
  const { sort, terms, line } = correction;
  return {
    unit,
    sort,
    terms,
    count: line.count,
    centre: double(line.centre),
    height: double(line.height),
    slope: double(line.slope),
    sum_xx: double(line.sum_xx),
    sd: line.sd === null ? null : double(line.sd),
    degrees: line.degrees,
    low: double(line.low),
    high: double(line.high),
    is_significant: isSignificant(correction),
  };
}

/** Points that agree to the last digit of a display nobody knows prove nothing. */
function isSignificant(correction: Correction): boolean | null {
  if (correction.line.sd === 0) return null;
  return significance(correction, SIGNIFICANT_AT).is_significant;
}

function double(x: number): string {
  return significant(x, LINE_DIGITS);
}

function lineOf(sort: Sort, result: CheckResult): Correction | null {
  const points = result.points.filter((each) => !NOT_ON_THE_LINE.includes(each.sort));
  const pairs = points.map(pairAt);
  const ends = sort === "two_point" ? outermost(pairs) : pairs;
  if (ends.length === 0) return null;
  try {
    return correctionOf(ends, sort, knownSd(points));
  } catch (refused) {
    if (refused instanceof RangeError) return null; // too few points, or all at one reading
    throw refused;
  }
}

/** Those with the lowest and the highest reading. */
function outermost(pairs: readonly CheckPoint[]): CheckPoint[] {
  const sorted = [...pairs].sort((a, b) => a.reading.compare(b.reading));
  const [first] = sorted;
  const last = sorted.at(-1);
  return first === undefined || last === undefined ? [] : [first, last];
}

function scaleIn(known: Body): Scale {
  return {
    division: decimalIn(known, "division"),
    e: decimalIn(known, "interval"),
    accuracy_class: textIn(known, "accuracy_class"),
    capacity: decimalIn(known, "capacity"),
    repeatability: decimalIn(known, "repeatability"),
    rules: rulesIn(known),
    unit: textIn(known, "unit") ?? "",
  };
}

/** In service where nobody says: a scale at the bench is one. */
function rulesIn(known: Body): Rules {
  return RULES.find((each) => each === textIn(known, "judged_by")) ?? "r76_in_service";
}

function comparedIn(known: Body): Thermometer & PhMeter {
  return {
    division: decimalIn(known, "division"),
    repeatability: decimalIn(known, "repeatability"),
    allowed_error: decimalIn(known, "most_error"),
    unit: textIn(known, "unit") ?? "",
  };
}

function pairAt(point: Point): CheckPoint {
  return { reading: readingAt(point), reference: point.reference };
}

function readingAt(point: Point): Decimal {
  return total([point.reference, point.error]);
}

/** The largest doubt of a point; null where one is not known. */
function knownSd(points: readonly Point[]): number | null {
  let largest = 0;
  for (const { doubt } of points) {
    if (doubt === null) return null;
    largest = Math.max(largest, doubt.u);
  }
  return largest;
}

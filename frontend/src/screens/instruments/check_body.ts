/** From what is typed in a check to the entry it becomes, and what that entry would say. */
import { amountIn, type Body, decimalIn, inBaseUnit, textIn } from "../../calc/bodies.ts";
import type { CheckResult } from "../../calc/checks.ts";
import {
  type CorrectionLine,
  checkedUnit,
  checkResult,
  correctionFound,
  writtenCorrection,
} from "../../calc/instrument_checks.ts";
import { massTolerance } from "../../calc/limits.ts";
import { parseDecimal, plain, ZERO } from "../../calc/numbers.ts";
import { fahrenheit } from "../../calc/temperature.ts";
import { boilingPointAtAltitude } from "../../calc/thermometer_checks.ts";
import { converted, isUnit } from "../../calc/units.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { InstrumentShown } from "../common/batches.ts";
import type { Typed } from "../common/drafted.ts";
import { CORNERS, type Depth, isVessel, type Reference, type Stage, stagesOf } from "./plan.ts";

/** All that is typed in one check so far; it is kept as it is. */
export type CheckTyped = Typed & {
  /** Which page is open. */
  at: number;
  depth: Depth;
  known: Reference[];
  read: { [stage: string]: string[] };
  /** Digits on the keypad that are not kept yet, by stage: leaving a page loses none. */
  typing: { [stage: string]: string };
  /** The number of a form the keypad fills. */
  open: string;
  celsius: string;
  altitude: string;
  scale: string;
  value: string;
  accuracy_class: string;
  tolerance: string;
  line: string;
  is_adjusted: boolean;
  day: string;
  clock: string;
};

/** What a check rests on besides what is typed. */
export interface Checked {
  instrument: InstrumentShown;
  fields: Body;
  /** The scale the water of a vessel is weighed on. */
  scale: InstrumentShown | null;
}

const PLACES = 6;
const DEGREES_F = { ice: "32", weather: "0.9" } as const; // 0.5 degC is 0.9 degF
// What the definition says of the instrument counts as it was at the time of the check.
const OF_INSTRUMENT = [
  "division",
  "interval",
  "accuracy_class",
  "judged_by",
  "most_error",
  "holds",
];

/** The body of `instrument_checked`; one without any reading has no steps. */
export function checkBody(typed: CheckTyped, checked: Checked): Body {
  const { instrument, fields, scale } = checked;
  const isFilled = isVessel(instrument.sort);
  const known = OF_INSTRUMENT.filter((name) => !(isFilled && name === "division"));
  const read = isFilled ? waterSteps(typed, scale) : steps(typed, instrument);
  const line = lineAsked(typed, read);
  return {
    instrument: instrument.id,
    ...(instrument.place === null ? {} : { place: instrument.place }),
    unit: isFilled ? "g" : instrument.unit,
    ...Object.fromEntries(known.flatMap((name) => (fields[name] ? [[name, fields[name]]] : []))),
    steps: read,
    ...(line === "" ? {} : { line }),
    ...(typed.is_adjusted ? { is_adjusted: true } : {}),
    ...(isFilled && scale !== null ? { check_scale: scale.id } : {}),
  };
}

/**
 * The line the check asks for, "" for none. A thorough one asks by itself for what its steps
 * carry; after an adjustment what was found before it corrects nothing any more.
 */
function lineAsked(typed: CheckTyped, read: readonly Body[]): string {
  const [first = ""] = linesFor(read);
  if (typed.is_adjusted) return "";
  if (typed.line !== "auto") return typed.line;
  return typed.depth === "full" && first !== "offset" ? first : "";
}

// What says nothing about how an instrument reads along its range; calc knows the same sorts.
const OFF_THE_LINE: readonly string[] = ["tare", "return_to_zero", "off_centre", "water"];

/** The lines of correction that so many steps can carry, the fullest first. */
export function linesFor(read: readonly Body[]): string[] {
  const count = read.filter((step) => !OFF_THE_LINE.includes(String(step.sort))).length;
  if (count === 0) return [];
  const line = count > 2 ? ["least_squares"] : count === 2 ? ["two_point"] : [];
  return [...line, "offset"];
}

function steps(typed: CheckTyped, instrument: InstrumentShown): Body[] {
  return stagesOf(instrument.sort, typed.depth, typed.known).flatMap((stage) => {
    const readings = typed.read[stage.key] ?? [];
    if (readings.length === 0) return [];
    const about = aboutStage(stage, typed, instrument);
    if (stage.where.length === 0) return [{ sort: stage.sort, readings, ...about }];
    return readings.map((each, index) => ({
      sort: stage.sort,
      readings: [each],
      where: CORNERS[index] ?? "",
      ...about,
    }));
  });
}

function aboutStage(stage: Stage, typed: CheckTyped, instrument: InstrumentShown): Body {
  const { reference, sort } = stage;
  if (reference !== null) {
    const tolerance = toleranceOf(reference, instrument.unit);
    return { reference: reference.value, ...(tolerance === null ? {} : { tolerance }) };
  }
  if (sort !== "ice" && sort !== "boiling") return {};
  const altitude = typedNumber(typed.altitude);
  if (instrument.unit === "degF") return inFahrenheit(sort, altitude);
  return sort === "ice" || altitude === null ? {} : { altitude_m: altitude };
}

/** A thermometer that shows Fahrenheit is compared with the same points in its own degrees. */
function inFahrenheit(sort: "ice" | "boiling", altitude: string | null): Body {
  const told = { sort: "comparison", where: sort };
  if (sort === "ice") return { ...told, reference: DEGREES_F.ice, tolerance: "0" };
  const celsius = altitude === null ? null : boilingAt(altitude);
  if (celsius === null) return told;
  const reference = plain(fahrenheit(celsius));
  return { ...told, reference, tolerance: DEGREES_F.weather };
}

/** Where water boils at an altitude, degC; null beyond the table. */
export function boilingAt(altitude: string) {
  try {
    return boilingPointAtAltitude(parseDecimal(altitude)).celsius;
  } catch (refused) {
    if (refused instanceof RangeError) return null;
    throw refused;
  }
}

function waterSteps(typed: CheckTyped, scale: InstrumentShown | null): Body[] {
  const readings = typed.read.water ?? [];
  const celsius = typedNumber(typed.celsius);
  if (readings.length === 0 || celsius === null) return [];
  const [tare] = typed.read.tare ?? [];
  const grams = (text: string) => inGrams(text, scale?.unit ?? "g");
  return [
    {
      sort: "water",
      readings: readings.map(grams),
      celsius,
      ...(tare === undefined ? {} : { tare: grams(tare) }),
      ...(scale?.division ? { division: grams(scale.division) } : {}),
      ...(scale?.repeatability ? { repeatability: grams(scale.repeatability) } : {}),
    },
  ];
}

/** What a scale showed, in g; one that shows g is taken as it was read. */
function inGrams(text: string, unit: string): string {
  if (unit === "g" || !isUnit(unit)) return text;
  return plain(converted(parseDecimal(text), unit, "g", PLACES));
}

/** True to plus or minus how much: by its class for a mass, else as it was typed. */
export function toleranceOf(reference: Reference, unit: string): string | null {
  const { accuracy_class, tolerance, value } = reference;
  if (accuracy_class === "" || !isUnit(unit)) return typedNumber(tolerance);
  const grams = converted(parseDecimal(value), unit, "g", PLACES);
  const limit = massTolerance(grams, accuracy_class);
  return limit === null
    ? typedNumber(tolerance)
    : plain(converted(limit.amount, "g", unit, PLACES));
}

/** What a check says: the verdict, and the correction its readings carry. */
export interface Told {
  body: Body;
  result: CheckResult;
  unit: string | null;
  correction: CorrectionLine | null;
}

/** What the check would say if it were saved now. */
export function toldBy(typed: CheckTyped, checked: Checked): Told {
  const body = checkBody(typed, checked);
  const { sort } = checked.instrument;
  const result = checkResult(sort, body, checked.fields);
  const unit = checkedUnit(sort, body);
  const found = correctionFound(body, result);
  return { body, result, unit, correction: found && writtenCorrection(found, unit) };
}

/** Whether the volume of a vessel is known, without which weighed water tells nothing. */
export function isVolumeKnown(fields: Body): boolean {
  return amountIn(fields, "holds") !== null;
}

/** The finest scale that takes what a vessel holds, 1 mL of water taken for 1 g; where none is
 * known to take it, the finest. The vessel's own mass is not known before it is weighed. */
export function waterScale(
  scales: readonly InstrumentShown[],
  fields: Body,
): InstrumentShown | null {
  const held = amountIn(fields, "holds")?.value ?? ZERO;
  const taking = scales.filter(({ capacity, unit }) => {
    const most = inBaseUnit(capacity === null ? null : parseDecimal(capacity), unit);
    return most === null || most.value.compare(held) > 0;
  });
  const step = ({ division, unit }: InstrumentShown) =>
    division === null ? Number.POSITIVE_INFINITY : Number(inGrams(division, unit));
  const among = taking.length === 0 ? scales : taking;
  return [...among].sort((a, b) => step(a) - step(b))[0] ?? null;
}

/** The height above the sea of a place, as text; null where nobody wrote it. */
export function altitudeOf(fields: Body): string | null {
  return decimalIn(fields, "altitude_m") === null ? null : textIn(fields, "altitude_m");
}

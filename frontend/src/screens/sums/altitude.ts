/** Altitude: where water boils, and what a canner needs more of there. */
import { type Canner, type CannerAdjustment, cannerAdjustment } from "../../calc/altitude.ts";
import { type Decimal, plain, product, ZERO } from "../../calc/numbers.ts";
import { boilingPointAtAltitude, METRES_IN_FOOT } from "../../calc/thermometer_checks.ts";
import { amountWords } from "../../text/numbers.ts";
import { ALTITUDE } from "../../text/sums_of_limits.ts";
import { firstBlank, input, numberIn, printed, refused, shown } from "./figures.ts";
import {
  type Answer,
  type Asked,
  chosen,
  type Row,
  type SumAbout,
  type SumPlan,
  type Typed,
} from "./plan.ts";

const CANNERS: readonly { value: Canner; word: string }[] = [
  { value: "boiling_water", word: ALTITUDE.boiling_water },
  { value: "dial_low_acid", word: ALTITUDE.dial_low_acid },
  { value: "dial_fruit", word: ALTITUDE.dial_fruit },
  { value: "weighted", word: ALTITUDE.weighted },
];
const UNITS = ["m", "ft"] as const;
const TENTH_C = 1;

function asked(): Asked[] {
  return [
    { is: "number", key: "altitude", label: ALTITUDE.altitude, unit_key: "unit", units: UNITS },
    { is: "choice", key: "canner", label: ALTITUDE.canner, options: CANNERS },
  ];
}

function answer(typed: Typed): Answer {
  const blank = firstBlank(typed, [["altitude", ALTITUDE.altitude_words]]);
  if (blank !== null) return blank;
  const unit = typed.unit === "ft" ? "ft" : "m";
  const altitude = numberIn(typed, "altitude") ?? ZERO;
  try {
    const band = cannerAdjustment(chosen(typed, "canner", CANNERS), altitude, unit);
    return found(typed, unit, band, boiling(altitude, unit));
  } catch (trouble) {
    if (trouble instanceof RangeError) return refused(ALTITUDE.beyond);
    throw trouble;
  }
}

function boiling(altitude: Decimal, unit: "m" | "ft") {
  return boilingPointAtAltitude(unit === "m" ? altitude : product(altitude, METRES_IN_FOOT));
}

function found(
  typed: Typed,
  unit: string,
  band: CannerAdjustment,
  point: ReturnType<typeof boilingPointAtAltitude>,
): Answer {
  const main = adjustmentRow(band);
  const from = `${plain(band.from_ft)}`;
  return {
    is: "found",
    says: band.added_min === null ? ALTITUDE.gauge_says : ALTITUDE.add_says,
    main,
    why: ALTITUDE.band(from, amountWords(plain(band.to_ft), "ft")),
    rows: [
      main,
      {
        name: ALTITUDE.boils,
        amount: shown(point.celsius, TENTH_C),
        unit: "degC",
        basis: "booked",
        uncertainty: amountWords(plain(point.tolerance), "degC"),
        inputs: [input(ALTITUDE.altitude, typed, "altitude", unit)],
        formula: ALTITUDE.boils_by,
        source: point.cited[0]?.source ?? "",
      },
    ],
    cited: [...band.cited, ...point.cited],
  };
}

/** Minutes for water, pounds for steam under pressure; the table says one of them. */
function adjustmentRow({ added_min, gauge_lb_per_in2, cited }: CannerAdjustment): Row {
  const source = cited[0]?.source ?? "";
  if (added_min !== null) return printed(ALTITUDE.added, added_min, "min", source);
  return printed(ALTITUDE.gauge, gauge_lb_per_in2 ?? ZERO, ALTITUDE.pounds, source);
}

function begin({ altitude_m }: SumAbout): Typed {
  return { altitude: altitude_m ?? "" };
}

export const ALTITUDE_SUM: SumPlan = {
  title: ALTITUDE.title,
  what: ALTITUDE.what,
  sign: "column",
  about: ["altitude"],
  begin,
  asked,
  answer,
};

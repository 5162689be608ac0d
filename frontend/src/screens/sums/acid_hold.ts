/** Acidified vegetables: which side of the acid line, and the published hold for five logs. */
import { type AcidLine, acidLine, type FiveLogHold, fiveLogHold } from "../../calc/acidified.ts";
import { type Decimal, ONE, parseDecimal, plain, significant, ZERO } from "../../calc/numbers.ts";
import { celsius } from "../../calc/temperature.ts";
import { amountWords } from "../../text/numbers.ts";
import { ACID_HOLD } from "../../text/sums_of_limits.ts";
import { firstBlank, input, numberIn, refused, shown } from "./figures.ts";
import type { Answer, Asked, Row, SumPlan, Typed } from "./plan.ts";

const PH_MAX = parseDecimal("14");
const MODEL_DIGITS = 3;
const TENTH = 1;
type Unit = "degC" | "degF";

function asked(): Asked[] {
  return [
    { is: "number", key: "ph", label: ACID_HOLD.ph, hint: ACID_HOLD.ph_hint, units: ["ph"] },
    {
      is: "number",
      key: "activity",
      label: ACID_HOLD.activity,
      hint: ACID_HOLD.activity_hint,
      units: [""],
    },
    {
      is: "number",
      key: "heat",
      label: ACID_HOLD.heat,
      hint: ACID_HOLD.heat_hint,
      unit_key: "unit",
      units: ["degC", "degF"],
    },
  ];
}

function answer(typed: Typed): Answer {
  const blank = firstBlank(typed, [
    ["ph", ACID_HOLD.ph_words],
    ["heat", ACID_HOLD.heat_words],
  ]);
  if (blank !== null) return blank;
  const ph = numberIn(typed, "ph") ?? ZERO;
  const activity = numberIn(typed, "activity");
  if (ph.isZero() || ph.compare(PH_MAX) > 0) return refused(ACID_HOLD.no_ph);
  if (activity !== null && activity.compare(ONE) > 0) return refused(ACID_HOLD.no_activity);
  const line = acidLine(ph, activity);
  if (line.side !== "acid") {
    return {
      ...refused(ACID_HOLD.side(line.side)),
      rows: [lineRow(typed, line)],
      cited: line.cited,
    };
  }
  return held(typed, ph, line);
}

function held(typed: Typed, ph: Decimal, line: AcidLine): Answer {
  const unit: Unit = typed.unit === "degF" ? "degF" : "degC";
  try {
    return found(typed, unit, fiveLogHold(numberIn(typed, "heat") ?? ZERO, unit, ph), line);
  } catch (trouble) {
    if (trouble instanceof RangeError) return refused(ACID_HOLD.beyond);
    throw trouble;
  }
}

function found(typed: Typed, unit: Unit, hold: FiveLogHold, line: AcidLine): Answer {
  const source = hold.cited[0]?.source ?? "";
  const model: Row = {
    name: ACID_HOLD.model,
    amount: significant(hold.model_min, MODEL_DIGITS),
    unit: "min",
    basis: "computed",
    exact: hold.model_min,
    inputs: [input(ACID_HOLD.ph, typed, "ph", "ph"), input(ACID_HOLD.heat, typed, "heat", unit)],
    formula: hold.published_min === null ? ACID_HOLD.low_model : ACID_HOLD.table_model,
    source,
  };
  const published: Row[] =
    hold.published_min === null
      ? []
      : [
          {
            name: ACID_HOLD.published,
            amount: plain(hold.published_min),
            unit: "min",
            basis: "booked",
            source,
          },
        ];
  const at = hold.temp_F;
  const atC = amountWords(shown(celsius(at, "degF", TENTH), TENTH), "degC");
  return {
    is: "found",
    says: ACID_HOLD.hold(amountWords(plain(at), "degF"), atC),
    main: published[0] ?? model,
    why: line.needs_meter ? ACID_HOLD.meter : ACID_HOLD.any_method,
    rows: [...published, model, lineRow(typed, line)],
    cited: [...hold.cited, ...line.cited],
  };
}

function lineRow(typed: Typed, { cited, side }: AcidLine): Row {
  return {
    name: ACID_HOLD.line,
    amount: "4.6",
    unit: "ph",
    basis: "booked",
    inputs: [input(ACID_HOLD.ph, typed, "ph", "ph")],
    formula: ACID_HOLD.side(side),
    source: cited[0]?.source ?? "",
  };
}

export const ACID_HOLD_SUM: SumPlan = {
  title: ACID_HOLD.title,
  what: ACID_HOLD.what,
  sign: "stem",
  about: ["acidified", "lethality"],
  begin: () => ({}),
  asked,
  answer,
};

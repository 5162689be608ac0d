/** Brine: one strength said in four ways, and the salt for an amount of it. */
import {
  percentByMass,
  percentOfWater,
  SATURATED_PERCENT,
  type Salometer,
  salometerDegrees,
  salometerPercent,
} from "../../calc/brine.ts";
import type { Cited } from "../../calc/limits.ts";
import { addedToReach, mixedTo, type Square } from "../../calc/mixing.ts";
import { type Decimal, difference, HUNDRED, total, ZERO } from "../../calc/numbers.ts";
import { amountWords } from "../../text/numbers.ts";
import { BRINE } from "../../text/sums.ts";
import { firstBlank, input, numberIn, refused, shown, workedOut } from "./figures.ts";
import { type Answer, type Asked, chosen, type Row, type SumPlan, type Typed } from "./plan.ts";

/** Which scale a number is on is always asked: the same digits are other brines. */
const SAID = [
  { value: "of_water", word: BRINE.of_water },
  { value: "of_whole", word: BRINE.of_whole },
  { value: "standard", word: BRINE.standard },
  { value: "canning", word: BRINE.canning },
] as const;
const KNOWN = [
  { value: "water", word: BRINE.have_water },
  { value: "brine", word: BRINE.want_brine },
] as const;
const MASS = { is: "number", unit_key: "unit", units: ["g", "kg"] } as const;
const PLACES = 12; // more than any kitchen: what rests on it is rounded once, later
type Said = (typeof SAID)[number]["value"];

function asked(typed: Typed): Asked[] {
  const said = chosen(typed, "said", SAID);
  const isDegrees = said === "standard" || said === "canning";
  return [
    { is: "choice", key: "said", label: BRINE.said, hint: BRINE.said_hint, options: SAID },
    {
      is: "number",
      key: "strength",
      label: BRINE.strength,
      units: [isDegrees ? BRINE.degrees : "%"],
      is_wanted: true,
    },
    { is: "choice", key: "known", label: BRINE.known, options: KNOWN },
    {
      ...MASS,
      key: "amount",
      label: BRINE.amount,
      is_wanted: chosen(typed, "known", KNOWN) === "brine",
    },
  ];
}

/** Percent by mass of the whole brine; null where no brine is so strong. */
function byMass(
  strength: Decimal,
  said: Said,
): { percent: Decimal; cited: readonly Cited[] } | null {
  try {
    const percent = percentFrom(strength, said);
    return percent.percent.compare(SATURATED_PERCENT) > 0 ? null : percent;
  } catch (trouble) {
    if (trouble instanceof RangeError) return null;
    throw trouble;
  }
}

function percentFrom(strength: Decimal, said: Said): Pick<Salometer, "percent" | "cited"> {
  if (said === "of_whole") return { percent: strength, cited: [] };
  if (said === "of_water") return { percent: percentByMass(strength, PLACES), cited: [] };
  return salometerPercent(strength, said);
}

function answer(typed: Typed): Answer {
  const blank = firstBlank(typed, [
    ["strength", BRINE.strength_words],
    ["amount", BRINE.amount_words],
  ]);
  if (blank !== null) return blank;
  const found = byMass(numberIn(typed, "strength") ?? ZERO, chosen(typed, "said", SAID));
  if (found === null) return refused(BRINE.too_strong);
  if (found.percent.isZero()) return refused(BRINE.no_salt);
  return salted(typed, found.percent, found.cited);
}

function salted(typed: Typed, percent: Decimal, cited: readonly Cited[]): Answer {
  const unit = MASS.units.find((each) => each === typed.unit) ?? "g";
  const amount = numberIn(typed, "amount") ?? ZERO;
  const square: Square = {
    strong: HUNDRED,
    weak: ZERO,
    target: percent,
    basis: "by_mass",
    solute: "salt",
  };
  const isWater = chosen(typed, "known", KNOWN) === "water";
  const salt = isWater
    ? addedToReach(amount, square, "weak").to_add
    : mixedTo(amount, square).strong;
  const water = isWater ? amount : difference(amount, salt);
  const main = workedOut(BRINE.salt, salt, unit, {
    inputs: [
      input(
        BRINE.strength,
        typed,
        "strength",
        SAID.some((s) => s.value === typed.said && /st|ca/.test(s.value)) ? "" : "%",
      ),
      input(isWater ? BRINE.have_water : BRINE.want_brine, typed, "amount", unit),
    ],
    formula: isWater ? BRINE.salt_for_water : BRINE.salt_for_brine,
  });
  return {
    is: "found",
    says: BRINE.weigh_salt,
    main,
    why: BRINE.into(amountWords(shown(water), unit)),
    rows: [
      main,
      workedOut(BRINE.water, water, unit, { formula: BRINE.water_by }),
      workedOut(BRINE.makes, total([salt, water]), unit, { formula: BRINE.makes_by }),
      ...strengthRows(percent),
    ],
    cited,
  };
}

/** The same brine in every way of saying it. */
function strengthRows(percent: Decimal): Row[] {
  const degrees = (["standard", "canning"] as const).flatMap((scale) => {
    const found = salometerDegrees(percent, scale);
    const [cited] = found.cited;
    return [
      workedOut(
        scale === "standard" ? BRINE.standard : BRINE.canning,
        found.degrees,
        BRINE.degrees,
        {
          formula: BRINE.degrees_by,
          ...(cited === undefined ? {} : { source: cited.source }),
        },
      ),
    ];
  });
  return [
    workedOut(BRINE.of_whole, percent, "%", { formula: BRINE.of_whole_by }),
    workedOut(BRINE.of_water, percentOfWater(percent), "%", { formula: BRINE.of_water_by }),
    ...degrees,
  ];
}

export const BRINE_SUM: SumPlan = {
  title: BRINE.title,
  what: BRINE.what,
  sign: "jar",
  about: ["brine"],
  begin: () => ({}),
  asked,
  answer,
};

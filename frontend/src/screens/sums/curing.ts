/** Curing: what goes in beside every limit; over one, the limit and what would meet it. */
import type { CureCase, CureLimit, CureRules, CureUse, Substance } from "../../calc/cure_limits.ts";
import { type CureNeeded, cureNeeded, type Ingoing, ingoing } from "../../calc/curing.ts";
import {
  asDouble,
  type Decimal,
  HUNDRED,
  plain,
  rounded,
  total,
  ZERO,
} from "../../calc/numbers.ts";
import { amountWords } from "../../text/numbers.ts";
import { CURING } from "../../text/sums_of_limits.ts";
import { firstBlank, gramsIn, input, numberIn, refused, shownBelow, workedOut } from "./figures.ts";
import {
  type Answer,
  type Asked,
  chosen,
  type NumberAsked,
  type Row,
  type SumPlan,
  type Typed,
} from "./plan.ts";

const USES: readonly { value: CureUse; word: string }[] = [
  { value: "comminuted", word: CURING.comminuted },
  { value: "dry_cured", word: CURING.dry_cured },
  { value: "pumped", word: CURING.pumped },
  { value: "immersed", word: CURING.immersed },
  { value: "bacon_dry_cured", word: CURING.bacon_dry_cured },
  { value: "bacon_pumped", word: CURING.bacon_pumped },
  { value: "bacon_pumped_alternative", word: CURING.bacon_pumped_alternative },
  { value: "bacon_immersed", word: CURING.bacon_immersed },
];
const SUBSTANCES: readonly { value: Substance; word: string }[] = [
  { value: "sodium_nitrite", word: CURING.nitrite },
  { value: "sodium_nitrate", word: CURING.nitrate },
  { value: "sodium_ascorbate", word: CURING.ascorbate },
  { value: "ascorbic_acid", word: CURING.ascorbic },
];
const RULES: readonly { value: CureRules; word: string }[] = [
  { value: "us", word: CURING.us },
  { value: "canada", word: CURING.canada },
];
const WAYS = [
  { value: "wanted", word: CURING.how_much_cure },
  { value: "made", word: CURING.how_much_in },
] as const;
const PPM_PLACES = 2; // as the limits are printed
const CURE: NumberAsked = {
  is: "number",
  key: "cure",
  label: CURING.cure,
  unit_key: "cure_unit",
  units: ["g", "oz"],
};
const MASS = { is: "number", unit_key: "unit", units: ["kg", "g", "lb"] } as const;
const PERCENT = { is: "number", units: ["%"] } as const;

function caseOf(typed: Typed): CureCase {
  return {
    use: chosen(typed, "use", USES),
    substance: chosen(typed, "substance", SUBSTANCES),
    rules: chosen(typed, "rules", RULES),
  };
}

function isPumped(typed: Typed): boolean {
  return chosen(typed, "use", USES).includes("pumped");
}

function isInPickle(typed: Typed): boolean {
  return isPumped(typed) || chosen(typed, "use", USES).includes("immersed");
}

function isMade(typed: Typed): boolean {
  return chosen(typed, "way", WAYS) === "made";
}

function asked(typed: Typed): Asked[] {
  const choices: Asked[] = [
    { is: "choice", key: "way", label: CURING.way, options: WAYS },
    { is: "choice", key: "rules", label: CURING.rules, options: RULES },
    { is: "choice", key: "use", label: CURING.use, options: USES },
    { is: "choice", key: "substance", label: CURING.substance, options: SUBSTANCES },
  ];
  return [...choices, ...numbersFor(typed).map(({ asked: each }) => each)];
}

/** What the method counts on: meat, pickle or both. */
function numbersFor(typed: Typed): { asked: NumberAsked; words: string }[] {
  const made = isMade(typed);
  const all: [boolean, NumberAsked, string][] = [
    [
      true,
      { ...PERCENT, key: "percent", label: CURING.percent, hint: CURING.percent_hint },
      CURING.percent_words,
    ],
    [made, CURE, CURING.cure_words],
    [!made, { is: "number", key: "ppm", label: CURING.ppm, units: ["ppm"] }, CURING.ppm_words],
    [!isPumped(typed), { ...MASS, key: "green", label: CURING.green }, CURING.green_words],
    [
      isInPickle(typed) && made,
      { ...MASS, key: "others", label: CURING.others, hint: CURING.others_hint },
      CURING.others_words,
    ],
    [
      isInPickle(typed) && !made,
      { ...MASS, key: "pickle", label: CURING.pickle, hint: CURING.pickle_hint },
      CURING.pickle_words,
    ],
    [isPumped(typed), { ...PERCENT, key: "pump", label: CURING.pump }, CURING.pump_words],
  ];
  return all.flatMap(([isAsked, each, words]) => (isAsked ? [{ asked: each, words }] : []));
}

function answer(typed: Typed): Answer {
  const numbers = numbersFor(typed);
  const blank = firstBlank(
    typed,
    numbers.map(({ asked: each, words }) => [each.key, words] as const),
  );
  if (blank !== null) return blank;
  return impossible(typed, numbers) ?? worked(typed);
}

/** A percent above 100, or nothing where something is needed. */
function impossible(typed: Typed, numbers: readonly { asked: NumberAsked }[]): Answer | null {
  const isNothing = numbers.some(({ asked: each }) => numberIn(typed, each.key)?.isZero());
  if (isNothing) return refused(CURING.nothing);
  const percents = numbers.filter(({ asked: each }) => each.units.includes("%"));
  const isOver = percents.some(
    ({ asked: each }) => (numberIn(typed, each.key) ?? ZERO).compare(HUNDRED) > 0,
  );
  return isOver ? refused(CURING.over_hundred) : null;
}

interface Masses {
  readonly cure: Decimal;
  readonly green: Decimal | null;
  readonly others: readonly Decimal[];
  readonly pickle: Decimal | null;
  readonly pump_percent: Decimal | null;
  readonly substance_percent: Decimal;
}

function massesIn(typed: Typed): Masses {
  const unit = MASS.units.find((each) => each === typed.unit) ?? "kg";
  const cure = gramsIn(typed, "cure", CURE.units.find((each) => each === typed.cure_unit) ?? "g");
  const others = isInPickle(typed) ? gramsIn(typed, "others", unit) : null;
  const whole = isMade(typed)
    ? total([cure ?? ZERO, others ?? ZERO])
    : gramsIn(typed, "pickle", unit);
  return {
    cure: cure ?? ZERO,
    green: isPumped(typed) ? null : gramsIn(typed, "green", unit),
    others: others === null ? [] : [others],
    pickle: isInPickle(typed) ? whole : null,
    pump_percent: isPumped(typed) ? numberIn(typed, "pump") : null,
    substance_percent: numberIn(typed, "percent") ?? ZERO,
  };
}

/** What calc refuses here is more nitrite than any method knows. */
function worked(typed: Typed): Answer {
  try {
    return isMade(typed) ? madeAnswer(typed) : wantedAnswer(typed);
  } catch (trouble) {
    if (trouble instanceof RangeError) return refused(CURING.slip);
    throw trouble;
  }
}

function madeAnswer(typed: Typed): Answer {
  const masses = massesIn(typed);
  const found = ingoing(caseOf(typed), masses);
  if (isRefused(found)) return over(typed, found, found.ppm);
  return {
    is: "found",
    says: CURING.goes_in,
    main: ppmRow(typed, found),
    why: CURING.verdict(found.verdict),
    rows: [ppmRow(typed, found), ...found.limits.map(limitRow)],
    cited: found.cited,
  };
}

function wantedAnswer(typed: Typed): Answer {
  const masses = massesIn(typed);
  const ppm = numberIn(typed, "ppm") ?? ZERO;
  const found = cureNeeded(caseOf(typed), { ...masses, ppm });
  if (isRefused(found) || found.cure === null) return over(typed, found, ppm);
  const main = cureRow(CURING.cure_to_weigh, found.cure, CURING.cure_by(found.basis));
  return {
    is: "found",
    says: CURING.weigh_cure,
    main,
    why: CURING.verdict(found.verdict),
    rows: [
      main,
      ...(found.substance === null
        ? []
        : [cureRow(CURING.substance_in_it, found.substance, CURING.substance_by)]),
      ...found.limits.map(limitRow),
    ],
    cited: found.cited,
  };
}

function isRefused({ verdict }: Ingoing | CureNeeded): boolean {
  return verdict === "over" || verdict === "not_permitted";
}

/** Rounded down: a limit that is just met must not be passed by a rounding. */
function cureRow(name: string, grams: Decimal, formula: string): Row {
  return {
    name,
    amount: shownBelow(grams),
    unit: "g",
    basis: "computed",
    exact: asDouble(grams),
    formula,
  };
}

function ppmRow(typed: Typed, { ppm, basis }: Ingoing): Row {
  return workedOut(CURING.ppm_of(basis), ppm, "ppm", {
    inputs: numbersFor(typed).map(({ asked: each }) =>
      input(each.label, typed, each.key, unitTyped(typed, each)),
    ),
    formula: CURING.ppm_by(basis),
  });
}

function unitTyped(typed: Typed, { unit_key = "", units }: NumberAsked): string {
  return units.find((each) => each === typed[unit_key]) ?? units[0] ?? "";
}

/** A limit as printed, with who set it and what it counts on. */
function limitRow({ kind, limit_ppm, basis_weight, cited }: CureLimit): Row {
  return {
    name: CURING.limit(kind, basis_weight),
    amount: limit_ppm === null ? "0" : plain(limit_ppm),
    unit: "ppm",
    basis: "booked",
    source: CURING.set_by(cited.source, cited.basis),
  };
}

/** Over a limit: which, who set it, and the amount that would meet it. Nothing else. */
function over(typed: Typed, found: Ingoing | CureNeeded, ppm: Decimal): Answer {
  const limits = found.limits.filter(({ verdict }) => verdict === found.verdict);
  const lowest = limits
    .map(({ limit_ppm }) => limit_ppm)
    .filter((each) => each !== null)
    .sort((a, b) => a.compare(b))[0];
  const meets = lowest === undefined ? null : meeting(typed, lowest);
  const [limit] = limits;
  const who = limit === undefined ? "" : limit.cited.source;
  return {
    is: "refused",
    sentence:
      lowest === undefined
        ? CURING.not_permitted(who)
        : CURING.over(overWords(ppm, lowest), amountWords(plain(lowest), "ppm"), who),
    rows: [...(meets === null ? [] : [meets]), ...found.limits.map(limitRow)],
    cited: found.cited,
  };
}

/** What is over, as far as it is printed; what rounds to the limit itself is said in words. */
function overWords(ppm: Decimal, limit: Decimal): string {
  const near = rounded(ppm, PPM_PLACES);
  const isNear = near.compare(limit) <= 0;
  return isNear
    ? CURING.a_little_over(amountWords(plain(limit), "ppm"))
    : amountWords(plain(near), "ppm");
}

/** The cure that meets a limit on the same meat, in the same whole of pickle. */
function meeting(typed: Typed, ppm: Decimal): Row | null {
  const { cure } = cureNeeded(caseOf(typed), { ...massesIn(typed), ppm });
  return cure === null ? null : cureRow(CURING.would_meet, cure, CURING.would_meet_by);
}

export const CURING_SUM: SumPlan = {
  title: CURING.title,
  what: CURING.what,
  sign: "tag",
  about: ["curing"],
  begin: () => ({}),
  asked,
  answer,
};

/** Drying and concentrating: what stays is the solids. */
import { type Basis, concentrated, type Dried, dried, type Moisture } from "../../calc/drying.ts";
import { type Decimal, ZERO } from "../../calc/numbers.ts";
import { amountWords } from "../../text/numbers.ts";
import { DRYING } from "../../text/sums.ts";
import { firstBlank, input, numberIn, refused, shown, workedOut } from "./figures.ts";
import { type Answer, type Asked, chosen, type Row, type SumPlan, type Typed } from "./plan.ts";

const WAYS = [
  { value: "dry", word: DRYING.dry },
  { value: "concentrate", word: DRYING.concentrate },
] as const;
const BASES: readonly { value: Basis; word: string }[] = [
  { value: "wet", word: DRYING.wet },
  { value: "dry", word: DRYING.of_solids },
];
const MASS = { is: "number", unit_key: "unit", units: ["kg", "g", "lb"] } as const;
const PERCENT = { is: "number", units: ["%"] } as const;

function asked(typed: Typed): Asked[] {
  const way: Asked = { is: "choice", key: "way", label: DRYING.way, options: WAYS };
  const mass: Asked = { ...MASS, key: "mass", label: DRYING.mass };
  if (chosen(typed, "way", WAYS) === "concentrate") {
    return [
      way,
      mass,
      { ...PERCENT, key: "solids", label: DRYING.solids_now },
      { ...PERCENT, key: "to", label: DRYING.solids_then, is_wanted: true },
      { ...PERCENT, key: "added", label: DRYING.added, hint: DRYING.added_hint, is_wanted: true },
    ];
  }
  return [
    way,
    mass,
    { ...PERCENT, key: "before", label: DRYING.before },
    { is: "choice", key: "before_basis", label: DRYING.before_of, options: BASES },
    { ...PERCENT, key: "after", label: DRYING.after, is_wanted: true },
    { is: "choice", key: "after_basis", label: DRYING.after_of, options: BASES },
  ];
}

function unitOfMass(typed: Typed): string {
  return MASS.units.find((unit) => unit === typed.unit) ?? "kg";
}

function answer(typed: Typed): Answer {
  return chosen(typed, "way", WAYS) === "dry" ? drying(typed) : concentrating(typed);
}

function moistureIn(typed: Typed, key: string): Moisture {
  const basis = chosen(typed, `${key}_basis`, BASES);
  return { percent: numberIn(typed, key) ?? ZERO, basis, u: 0 };
}

/** Of the whole, all water would leave nothing. */
function isImpossible({ percent, basis }: Moisture): boolean {
  return basis === "wet" && shown(percent) !== "" && Number(percent.toString()) >= 100;
}

function drying(typed: Typed): Answer {
  const blank = firstBlank(typed, [
    ["mass", DRYING.mass_words],
    ["before", DRYING.before_words],
    ["after", DRYING.after_words],
  ]);
  if (blank !== null) return blank;
  const [before, after] = [moistureIn(typed, "before"), moistureIn(typed, "after")];
  if (isImpossible(before) || isImpossible(after)) return refused(DRYING.all_water);
  const mass = numberIn(typed, "mass") ?? ZERO;
  return driedFound(typed, dried(mass, { before, after }));
}

function driedFound(typed: Typed, { makes, water_out, solids, drying_ratio }: Dried): Answer {
  const unit = unitOfMass(typed);
  const isWetted = water_out.isNegative();
  const inputs = [
    input(DRYING.mass, typed, "mass", unit),
    input(DRYING.before, typed, "before", "%"),
    input(DRYING.after, typed, "after", "%"),
  ];
  const water = amountWords(shown(water_out.abs()), unit);
  return {
    is: "found",
    says: isWetted ? DRYING.wet_until : DRYING.dry_until,
    main: workedOut(DRYING.makes, makes, unit, { inputs, formula: DRYING.makes_by }),
    why: isWetted ? DRYING.add_water(water) : DRYING.water_leaves(water),
    rows: [
      workedOut(DRYING.makes, makes, unit, { inputs, formula: DRYING.makes_by }),
      waterRow(water_out, unit),
      workedOut(DRYING.solids, solids, unit, { formula: DRYING.solids_by }),
      workedOut(DRYING.ratio, drying_ratio, "", { formula: DRYING.ratio_by }),
    ],
    cited: [],
  };
}

function waterRow(water_out: Decimal, unit: string): Row {
  const name = water_out.isNegative() ? DRYING.water_in : DRYING.water_out;
  return workedOut(name, water_out.abs(), unit, { formula: DRYING.water_by });
}

function concentrating(typed: Typed): Answer {
  const blank = firstBlank(typed, [
    ["mass", DRYING.mass_words],
    ["solids", DRYING.solids_words],
    ["to", DRYING.to_words],
  ]);
  if (blank !== null) return blank;
  const [mass, solids_percent, to_percent] = ["mass", "solids", "to"].map(
    (key) => numberIn(typed, key) ?? ZERO,
  );
  const added_percent = numberIn(typed, "added") ?? ZERO;
  if (mass === undefined || solids_percent === undefined || to_percent === undefined) {
    return refused(DRYING.more_than_all);
  }
  try {
    const found = concentrated(mass, { solids_percent, to_percent, added_percent });
    return concentratedFound(typed, found);
  } catch (trouble) {
    if (trouble instanceof RangeError) return refused(DRYING.more_than_all);
    throw trouble;
  }
}

function concentratedFound(
  typed: Typed,
  { makes, to_add, water_out }: ReturnType<typeof concentrated>,
): Answer {
  const unit = unitOfMass(typed);
  const isThinned = water_out.isNegative();
  const water = amountWords(shown(water_out.abs()), unit);
  const main = workedOut(DRYING.makes, makes, unit, {
    inputs: [
      input(DRYING.mass, typed, "mass", unit),
      input(DRYING.solids_now, typed, "solids", "%"),
      input(DRYING.solids_then, typed, "to", "%"),
    ],
    formula: DRYING.concentrated_by,
  });
  return {
    is: "found",
    says: isThinned ? DRYING.wet_until : DRYING.boil_until,
    main,
    why: isThinned ? DRYING.add_water(water) : DRYING.water_leaves(water),
    rows: [
      main,
      waterRow(water_out, unit),
      ...(to_add.isZero()
        ? []
        : [workedOut(DRYING.stir_in, to_add, unit, { formula: DRYING.stir_in_by })]),
    ],
    cited: [],
  };
}

export const DRYING_SUM: SumPlan = {
  title: DRYING.title,
  what: DRYING.what,
  sign: "crate",
  about: ["water_activity"],
  begin: () => ({}),
  asked,
  answer,
};

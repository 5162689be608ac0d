/** Two strengths to a third: the Pearson square, dilution with water, refused outside. */
import {
  addedToReach,
  type Marks,
  mixedTo,
  pearsonShares,
  type Solute,
  type Square,
  type StrengthBasis,
} from "../../calc/mixing.ts";
import { type Decimal, difference, HUNDRED, ZERO } from "../../calc/numbers.ts";
import type { CautionAbout } from "../../text/cautions.ts";
import { amountWords } from "../../text/numbers.ts";
import { MIXING } from "../../text/sums.ts";
import { firstBlank, numberIn, refused, shown, workedOut } from "./figures.ts";
import { type Answer, type Asked, chosen, type SumPlan, type Typed } from "./plan.ts";

const SOLUTES: readonly { value: Solute; word: string }[] = [
  { value: "acid", word: MIXING.acid },
  { value: "salt", word: MIXING.salt },
  { value: "sugar", word: MIXING.sugar },
  { value: "fat", word: MIXING.fat },
  { value: "alcohol", word: MIXING.alcohol },
  { value: "other", word: MIXING.other },
];
const BASES: readonly { value: StrengthBasis; word: string }[] = [
  { value: "by_mass", word: MIXING.by_mass },
  { value: "of_water", word: MIXING.of_water },
  { value: "per_100_mL", word: MIXING.per_100_mL },
];
const WANTED = [
  { value: "makes", word: MIXING.make_so_much },
  { value: "strong", word: MIXING.have_strong },
  { value: "weak", word: MIXING.have_weak },
] as const;
/** What a strength of this touches; of something unnamed the acid is what matters most. */
const CAUTIONS: Readonly<Record<Solute, readonly CautionAbout[]>> = {
  acid: ["acidified"],
  salt: ["brine"],
  sugar: ["sugar"],
  fat: [],
  alcohol: [],
  other: ["acidified"],
};
type Wanted = (typeof WANTED)[number]["value"];

/** What is mixed by volume is measured by volume. */
function unitsFor(basis: StrengthBasis): string[] {
  return basis === "per_100_mL" ? ["mL", "L"] : ["g", "kg"];
}

function asked(typed: Typed): Asked[] {
  const percent = { is: "number", units: ["%"] } as const;
  const basis = chosen(typed, "basis", BASES);
  return [
    { is: "choice", key: "solute", label: MIXING.of_what, options: SOLUTES },
    { is: "choice", key: "basis", label: MIXING.basis, options: BASES },
    { ...percent, key: "strong", label: MIXING.strong },
    { ...percent, key: "weak", label: MIXING.weak, hint: MIXING.weak_hint },
    { ...percent, key: "target", label: MIXING.target, is_wanted: true },
    { is: "choice", key: "wanted", label: MIXING.wanted, options: WANTED },
    {
      is: "number",
      key: "amount",
      label: MIXING.amount,
      unit_key: "unit",
      units: unitsFor(basis),
      is_wanted: chosen(typed, "wanted", WANTED) === "makes",
    },
  ];
}

function squareOf(typed: Typed): Square {
  const of = (key: string): Decimal => numberIn(typed, key) ?? ZERO;
  return {
    strong: of("strong"),
    weak: of("weak"),
    target: of("target"),
    basis: chosen(typed, "basis", BASES),
    solute: chosen(typed, "solute", SOLUTES),
  };
}

/** Why the square cannot be drawn, in one sentence; null where it can. */
function impossible({ strong, weak, target, basis }: Square): string | null {
  const [s, w, t] = [strong, weak, target].map((each) => amountWords(shown(each), "%"));
  if (basis !== "of_water" && strong.compare(HUNDRED) > 0) return MIXING.over_all;
  if (strong.compare(weak) <= 0) return MIXING.not_stronger(s ?? "", w ?? "");
  const isOutside = target.compare(weak) < 0 || target.compare(strong) > 0;
  return isOutside ? MIXING.outside(t ?? "", w ?? "", s ?? "") : null;
}

function answer(typed: Typed): Answer {
  const blank = firstBlank(typed, [
    ["strong", MIXING.strong_words],
    ["weak", MIXING.weak_words],
    ["target", MIXING.target_words],
    ["amount", MIXING.amount_words],
  ]);
  if (blank !== null) return blank;
  const square = squareOf(typed);
  const why = impossible(square);
  if (why !== null) return refused(why);
  const wanted = chosen(typed, "wanted", WANTED);
  const isThere = square.target.compare(wanted === "strong" ? square.weak : square.strong) === 0;
  if (wanted !== "makes" && isThere) return refused(MIXING.never_reached);
  return mixed(typed, square, amountsFor(typed, square, wanted));
}

interface Mixed {
  readonly strong: Decimal;
  readonly weak: Decimal;
  readonly makes: Decimal;
  readonly marks: Marks;
  readonly wanted: Wanted;
}

function amountsFor(typed: Typed, square: Square, wanted: Wanted): Mixed {
  const amount = numberIn(typed, "amount") ?? ZERO;
  if (wanted === "makes") {
    const { strong, weak, marks } = mixedTo(amount, square);
    return { strong, weak, makes: amount, marks, wanted };
  }
  const { makes, to_add, marks } = addedToReach(amount, square, wanted);
  const other = wanted === "strong" ? "weak" : "strong";
  const both = {
    strong: to_add,
    weak: to_add,
    [wanted]: difference(makes, to_add),
    [other]: to_add,
  };
  return { strong: both.strong, weak: both.weak, makes, marks, wanted };
}

function mixed(typed: Typed, square: Square, found: Mixed): Answer {
  const unit =
    unitsFor(square.basis).find((each) => each === typed.unit) ?? unitsFor(square.basis)[0] ?? "g";
  const shares = pearsonShares(square);
  const inputs = [
    { name: MIXING.strong, value: amountWords(shown(square.strong), "%") },
    { name: MIXING.weak, value: amountWords(shown(square.weak), "%") },
    { name: MIXING.target, value: amountWords(shown(square.target), "%") },
  ];
  const strong = workedOut(MIXING.of_strong, found.strong, unit, {
    inputs,
    formula: MIXING.strong_by,
  });
  const weak = workedOut(weakName(square), found.weak, unit, { inputs, formula: MIXING.weak_by });
  const add = found.wanted === "weak" ? strong : weak;
  return {
    is: "found",
    says:
      found.wanted === "makes"
        ? MIXING.take(weakName(square), amountWords(shown(found.weak), unit))
        : MIXING.add(add.name),
    main: found.wanted === "makes" ? strong : add,
    why: found.marks.is_exact
      ? MIXING.makes_so_much(amountWords(shown(found.makes), unit))
      : MIXING.about(amountWords(shown(found.makes), unit)),
    rows: [
      strong,
      weak,
      workedOut(MIXING.makes, found.makes, unit, { formula: MIXING.makes_by }),
      workedOut(MIXING.share_strong, shares.strong_percent, "%", {
        inputs,
        formula: MIXING.share_by,
      }),
      workedOut(MIXING.share_weak, shares.weak_percent, "%", { formula: MIXING.share_rest }),
    ],
    cited: [],
  };
}

/** What has nothing of it is water. */
function weakName({ weak }: Square): string {
  return weak.isZero() ? MIXING.water : MIXING.of_weak;
}

export const MIXING_SUM: SumPlan = {
  title: MIXING.title,
  what: MIXING.what,
  sign: "trace",
  about: ["acidified", "brine", "sugar"],
  aboutNow: (typed) => CAUTIONS[chosen(typed, "solute", SOLUTES)],
  begin: () => ({}),
  asked,
  answer,
};

/** Jam by soluble solids: the gross weight of the kettle as the target. */
import { impliedSolidsPercent } from "../../calc/balance.ts";
import { type Charge, type KettleTarget, kettleTarget } from "../../calc/kettle.ts";
import type { Cited } from "../../calc/limits.ts";
import {
  asDouble,
  type Decimal,
  difference,
  HUNDRED,
  parseDecimal,
  rounded,
  ZERO,
} from "../../calc/numbers.ts";
import { amountWords } from "../../text/numbers.ts";
import { KETTLE } from "../../text/sums.ts";
import {
  firstBlank,
  input,
  missing,
  numberIn,
  placesTyped,
  refused,
  workedOut,
} from "./figures.ts";
import type { Answer, Asked, LineIn, Row, SumAbout, SumPlan, Typed } from "./plan.ts";

const UNITS = ["kg", "g", "lb"];
/** What a jam is made of, where no batch says it; sugar, pectin and acid are solids through and through. */
const USUAL: readonly LineIn[] = KETTLE.usual.map(({ name, solids_percent }) => ({
  name,
  amount: null,
  solids_percent,
  u: 0,
}));
const KG_PLACES = 2;
const BALANCE: Cited = {
  what: "solids_balance",
  source: "Practical Action, Jams, jellies and marmalade",
  basis: "read",
  note: "",
};

interface Read {
  readonly unit: string;
  readonly tare: Decimal;
  readonly now: Decimal | null;
  readonly places: number;
}

function linesOf(about: SumAbout): readonly LineIn[] {
  return about.lines.length > 0 ? about.lines : USUAL;
}

function begin(about: SumAbout): Typed {
  const typed: Record<string, string> = { target: about.target_percent ?? "" };
  for (const [at, line] of linesOf(about).entries()) {
    typed[`amount${at}`] = line.amount ?? "";
    typed[`solids${at}`] = line.solids_percent ?? "";
    typed[`counts${at}`] = isNought(line.solids_percent) ? "no" : "yes";
  }
  return typed;
}

function isNought(percent: string | null): boolean {
  return percent !== null && parseDecimal(percent).isZero();
}

/** What was weighed in for a batch is in kg. */
function unitsFor(about: SumAbout): string[] {
  return about.lines.length > 0 ? ["kg"] : UNITS;
}

function asked(_typed: Typed, about: SumAbout): Asked[] {
  const mass = { is: "number", unit_key: "unit", units: unitsFor(about) } as const;
  const percent = { is: "number", units: ["%"] } as const;
  return [
    { ...mass, key: "tare", label: KETTLE.tare, hint: KETTLE.tare_hint, is_gross: true },
    { ...percent, key: "target", label: KETTLE.target, is_wanted: true },
    { ...mass, key: "now", label: KETTLE.now, hint: KETTLE.now_hint, is_gross: true },
    ...linesOf(about).map(
      ({ name }, at): Asked => ({
        is: "group",
        label: name,
        asked: [
          { ...mass, key: `amount${at}`, label: KETTLE.amount },
          { ...percent, key: `solids${at}`, label: KETTLE.solids },
          { is: "tick", key: `counts${at}`, label: KETTLE.counts },
        ],
      }),
    ),
  ];
}

/** Every line with an amount; one that is not counted has 0 % of solids. */
function chargesOf(typed: Typed, lines: readonly LineIn[]): Charge[] {
  return lines.flatMap(({ u }, at) => {
    const amount = numberIn(typed, `amount${at}`);
    if (amount === null) return [];
    const isCounted = typed[`counts${at}`] !== "no";
    const solids_percent = isCounted ? numberIn(typed, `solids${at}`) : ZERO;
    return [{ amount, solids_percent, u, solids_u: 0 }];
  });
}

function answer(typed: Typed, about: SumAbout): Answer {
  const lines = linesOf(about);
  const charges = chargesOf(typed, lines);
  if (charges.length === 0) return missing("amount0", KETTLE.something);
  const unknown = lines.findIndex(
    (_, at) =>
      numberIn(typed, `amount${at}`) !== null &&
      typed[`counts${at}`] !== "no" &&
      numberIn(typed, `solids${at}`) === null,
  );
  if (unknown >= 0) {
    return missing(`solids${unknown}`, KETTLE.solids_of(lines[unknown]?.name ?? ""));
  }
  const blank = firstBlank(typed, [
    ["target", KETTLE.target_words],
    ["tare", KETTLE.tare_words],
  ]);
  return blank ?? cooked(typed, about, charges);
}

function cooked(typed: Typed, about: SumAbout, charges: readonly Charge[]): Answer {
  const target = numberIn(typed, "target") ?? ZERO;
  if (target.compare(ZERO) <= 0 || target.compare(HUNDRED) > 0) return refused(KETTLE.no_target);
  if (charges.some(({ solids_percent }) => (solids_percent ?? ZERO).compare(HUNDRED) > 0)) {
    return refused(KETTLE.too_solid);
  }
  const tare = numberIn(typed, "tare");
  const to = kettleTarget(charges, { target_percent: target, tare });
  if (to === null || to.gross === null || tare === null || to.solids.isZero()) {
    return refused(KETTLE.no_solids);
  }
  const unit = unitsFor(about).includes(typed.unit ?? "") ? (typed.unit ?? "") : "kg";
  const least = unit === "kg" || unit === "lb" ? KG_PLACES : 0;
  const places = Math.max(least, placesTyped(typed, "tare"));
  return found(typed, to, to.gross, { unit, tare, now: numberIn(typed, "now"), places });
}

function found(typed: Typed, to: KettleTarget, gross: Decimal, read: Read): Answer {
  const { unit, now, places } = read;
  const amount = rounded(gross, places).toString();
  const left = now === null ? null : difference(now, gross);
  const isThere = left !== null && left.compare(ZERO) <= 0;
  return {
    is: "found",
    says: KETTLE.cook_until,
    main: {
      name: KETTLE.gross,
      amount,
      unit,
      basis: "computed",
      exact: asDouble(gross),
      inputs: [
        { name: KETTLE.makes, value: amountWords(rounded(to.makes, places).toString(), unit) },
        input(KETTLE.tare, typed, "tare", unit),
      ],
      formula: KETTLE.gross_by,
    },
    why:
      left === null
        ? KETTLE.boil_off(amountWords(rounded(to.boil_off, places).toString(), unit))
        : isThere
          ? KETTLE.is_there(amountWords(rounded(left.abs(), places).toString(), unit))
          : KETTLE.still(amountWords(rounded(left, places).toString(), unit)),
    rows: rowsOf(typed, to, read),
    cited: [BALANCE],
    watched: {
      says: KETTLE.glass(amountWords(typed.now ?? "", unit), amountWords(amount, unit)),
      level: now === null ? null : now.toString(),
      target: amount,
    },
  };
}

function rowsOf(typed: Typed, to: KettleTarget, { unit, tare, now }: Read): Row[] {
  const isShort = to.boil_off.isNegative();
  const net = now === null ? null : difference(now, tare);
  const implied =
    net === null || net.compare(ZERO) <= 0 ? null : impliedSolidsPercent(to.solids, net);
  return [
    workedOut(KETTLE.makes, to.makes, unit, {
      inputs: [
        { name: KETTLE.solids_in, value: amountWords(to.solids.toString(), unit) },
        input(KETTLE.target, typed, "target", "%"),
      ],
      formula: KETTLE.makes_by,
    }),
    workedOut(KETTLE.solids_in, to.solids, unit, { formula: KETTLE.solids_by }),
    workedOut(KETTLE.put_in, to.put_in, unit, { formula: KETTLE.put_in_by }),
    workedOut(isShort ? KETTLE.to_add : KETTLE.steam, to.boil_off.abs(), unit, {
      formula: isShort ? KETTLE.to_add_by : KETTLE.steam_by,
    }),
    ...(implied === null
      ? []
      : [workedOut(KETTLE.implied, implied, "%", { formula: KETTLE.implied_by })]),
  ];
}

export const KETTLE_SUM: SumPlan = {
  title: KETTLE.title,
  what: KETTLE.what,
  sign: "kettle",
  about: ["sugar", "ph"],
  begin,
  asked,
  answer,
  weighed: (about) =>
    about.lines.flatMap(({ amount, u }, at) =>
      amount === null || u === 0 ? [] : [{ key: `amount${at}`, amount, u }],
    ),
};

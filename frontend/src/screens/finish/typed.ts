/** What a person says came out, as entries: one output, one loss a reason, the end. */
import { decimalIn, textIn } from "../../calc/bodies.ts";
import { parseDecimal } from "../../calc/numbers.ts";
import { type LifeSort, lastDay } from "../../calc/shelf_life.ts";
import type { KindName } from "../../entries/kinds.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Body, Json } from "../../state/types.ts";

/** The form; amounts as typed, blank is not recorded. */
export interface FinishTyped {
  [field: string]: Json;
  good: string;
  rejected: string;
  rejected_why: string;
  residue: string;
  sample: string;
  spilled: string;
  breakage: string;
  life_sort: string;
  life_on: string;
  /** The field the keypad types into. */
  into: string;
  /** What is saved already, should saving stop half way: it is not saved twice. */
  saved: string[];
}

export const BLANK_FINISH: FinishTyped = {
  good: "",
  rejected: "",
  rejected_why: "",
  residue: "",
  sample: "",
  spilled: "",
  breakage: "",
  life_sort: "",
  life_on: "",
  into: "good",
  saved: [],
};

/** Losses one weighs when the kettle is emptied, by reason of the wire. */
export const LOSSES = ["residue", "sample", "spilled", "breakage"] as const;

/** The fields one types numbers into. */
export type AmountField = "good" | "rejected" | (typeof LOSSES)[number];

/** The field the keypad types into; what is good, where a draft names none. */
export function fieldInto(typed: FinishTyped): AmountField {
  return (
    LOSSES.find((each) => each === typed.into) ?? (typed.into === "rejected" ? "rejected" : "good")
  );
}

/** What is known about the batch that finishes. */
export interface FinishAbout {
  batch: string;
  lot: string;
  material: string;
  place: string;
  unit: string;
  lossUnit: string;
  packNet: Body | null;
}

/** An entry to be made; `key` tells it from the others of one finish. */
export interface Wanted {
  key: string;
  kind: KindName;
  body: Body;
}

function quantity(typed: string, unit: string): Body | null {
  const amount = typedNumber(typed);
  return amount === null ? null : { amount, unit };
}

/** The entries in their order; without a good amount there is no output. */
export function wantedEntries(typed: FinishTyped, about: FinishAbout): Wanted[] {
  const { batch, lot, material, place, unit, packNet } = about;
  const good = quantity(typed.good, unit);
  const rejected = quantity(typed.rejected, unit);
  const why = typed.rejected_why.trim();
  const output: Wanted[] =
    good === null
      ? []
      : [
          {
            key: "output",
            kind: "output",
            body: {
              batch,
              lot,
              material,
              place,
              amount: good,
              ...(packNet === null || unit !== "pc" ? {} : { pack_net: packNet }),
              ...(rejected === null ? {} : { rejected }),
              ...(rejected === null || why === "" ? {} : { rejected_why: why }),
              ...lifeBody(typed),
            },
          },
        ];
  const losses = LOSSES.flatMap((reason): Wanted[] => {
    const amount = quantity(typed[reason], about.lossUnit);
    if (amount === null || isNothing(amount)) return [];
    return [{ key: reason, kind: "loss", body: { batch, amount, reason, stage: "filling" } }];
  });
  return [...output, ...losses].filter(({ key }) => !typed.saved.includes(key));
}

function isNothing(amount: Body): boolean {
  return decimalIn(amount, "amount")?.compare(parseDecimal("0")) === 0;
}

function lifeBody(typed: FinishTyped): Body {
  if (typed.life_sort === "" || typed.life_on === "") return {};
  return { life: { sort: typed.life_sort, on: typed.life_on } };
}

const SORTS: readonly LifeSort[] = ["use_by", "best_before", "expires_on"];

/** The day a rule of the recipe or the product gives, counted from the day of making. */
export function lifeFrom(rule: unknown, madeOn: string): { sort: string; on: string } | null {
  if (typeof rule !== "object" || rule === null) return null;
  const body: Body = { ...rule };
  const sort = SORTS.find((each) => each === textIn(body, "sort"));
  const length = Number(body.length);
  const unit = body.unit === "months" ? "months" : "days";
  if (sort === undefined || !Number.isInteger(length) || length < 1) return null;
  return { sort, on: lastDay(madeOn, { sort, length, unit }) };
}

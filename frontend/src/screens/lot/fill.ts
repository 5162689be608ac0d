/** A fill check while it is typed: what is missing, the entry it becomes, and what it says. */
import { type TrustedFill, trustedFill } from "../../calc/fill_trust.ts";
import type { Fill } from "../../calc/fills.ts";
import { batchPlan, packPlan } from "../../calc/net_limits.ts";
import { parseDecimal, plain, rounded } from "../../calc/numbers.ts";
import type { Sheets } from "../../calc/trusted.ts";
import { dimensionOf } from "../../calc/units.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Json } from "../../state/types.ts";
import { FILL, type FillSaid } from "../../text/fill.ts";
import type { InstrumentShown } from "../common/batches.ts";
import type { Hindrance } from "../common/sentences.ts";

/** The number the keypad types into. */
export type FillOpen = "amount" | "other" | "lot_size" | "density" | "empty" | "full";

/** Every field as it was typed; "" is not answered yet. `shown` is the pack on the scale now. */
export interface FillTyped {
  [field: string]: Json;
  amount: string;
  unit: string;
  other: string;
  other_unit: string;
  rules: string;
  instrument: string;
  lot_size: string;
  density: string;
  /** Flour or dry pasta, which may dry on the shelf: HB 133 2.3.8. */
  loses_moisture: boolean;
  shown: string;
  tares: string[];
  gross: string[];
}

export const LABEL_UNITS = ["g", "kg", "oz", "lb", "mL", "L", "us_floz"] as const;
const TARES_LEAST = 2; // one empty pack says nothing of how much they differ
const PLACES_LEAST = 1;
const PLACES_MOST = 4;

/** The body of the entry; null while it cannot be one. */
export function fillBody(
  typed: FillTyped,
  about: Pick<FillAbout, "lot" | "on" | "scale">,
): Record<string, Json> | null {
  if (typedNumber(typed.amount) === null || typed.rules === "") return null;
  const label = [
    { amount: typedNumber(typed.amount), unit: typed.unit },
    { amount: typedNumber(typed.other), unit: typed.other_unit },
  ].flatMap((each) => (each.amount === null ? [] : [{ amount: each }]));
  const size = Number(typed.lot_size);
  const density = isByVolume(typed) ? typedNumber(typed.density) : null;
  return {
    lot: about.lot,
    on: about.on,
    label,
    rules: typed.rules,
    unit: about.scale?.unit ?? "g",
    tares: typed.tares,
    gross: typed.gross,
    ...(about.scale === null ? {} : { instrument: about.scale.id }),
    ...(about.scale?.division == null ? {} : { division: about.scale.division }),
    ...(size >= 1 ? { lot_size: size } : {}),
    ...(density === null ? {} : { density }),
    ...(mayHaveDried(typed) && typed.loses_moisture ? { loses_moisture: true } : {}),
  };
}

/** What the entry needs beside what was typed. */
export interface FillAbout {
  lot: string;
  on: string;
  scale: InstrumentShown | null;
  happened_at: string;
  /** The sheet of the scale, by subject. */
  instruments: Sheets;
}

/** The packs weighed so far, and nothing on the scale. */
export function weighed(field: "empty" | "full", masses: string[]): Partial<FillTyped> {
  return field === "empty" ? { tares: masses, shown: "" } : { gross: masses, shown: "" };
}

export function isByVolume({ unit }: FillTyped): boolean {
  return dimensionOf(unit) === "volume";
}

/** The allowance for what dries stands in the US rules, for labels by weight. */
export function mayHaveDried(typed: FillTyped): boolean {
  return typed.rules === "us" && !isByVolume(typed);
}

/** What the packs weighed so far say on such a scale; null before there are any. */
export function fillSoFar(typed: FillTyped, about: FillAbout): TrustedFill | null {
  const body = fillBody(typed, about);
  return body === null || typed.tares.length === 0 || typed.gross.length === 0
    ? null
    : trustedFill(body, about);
}

/** Whether packs of it dry: as the product says, or as the last check of the lot did. */
export function driesBy(
  fills: readonly Pick<Fill, "cited">[],
  fields: Readonly<Record<string, unknown>>,
): boolean {
  const wasSaid = fills.at(-1)?.cited.some(({ what }) => what === "moisture") ?? false;
  return wasSaid || fields.loses_moisture === true;
}

/** How many packs the plan asks for; null where the rules have no plan for such a lot. */
export function planned(typed: FillTyped): number | null {
  const size = Number(typed.lot_size);
  try {
    if (size < 1 || typed.rules === "") return null;
    return (typed.rules === "us" ? packPlan(size) : batchPlan(size)).sample_size;
  } catch (refused) {
    if (refused instanceof RangeError) return null;
    throw refused;
  }
}

/** The first open thing, by the number to be typed. */
export function missingOfFill(typed: FillTyped): (Hindrance & { open?: FillOpen }) | null {
  if (typedNumber(typed.amount) === null) {
    return { field: "amount", open: "amount", sentence: FILL.say_label };
  }
  if (typed.rules === "") return { field: "rules", sentence: FILL.say_rules };
  if (isByVolume(typed) && typedNumber(typed.density) === null) {
    return { field: "amount", open: "density", sentence: FILL.say_density };
  }
  if (typed.tares.length < TARES_LEAST) {
    return { field: "tares", open: "empty", sentence: FILL.say_empty };
  }
  return typed.gross.length === 0
    ? { field: "gross", open: "full", sentence: FILL.say_full }
    : null;
}

/** What is weighed after a pack was kept: full ones once there are enough empty ones. */
export function nextOpen(open: FillOpen, typed: FillTyped): FillOpen {
  const isFirstEnough = typed.tares.length === TARES_LEAST && typed.gross.length === 0;
  return open === "empty" && isFirstEnough ? "full" : open;
}

/** Mean and limit with as many places as tell them apart; null where no mean is known. */
export function fillSaid(fill: Fill): FillSaid | null {
  if (fill.mean_error === null || fill.most_short === null) return null;
  const written = (text: string, places: number) => plain(rounded(parseDecimal(text), places));
  const { mean_error, mean_allowed } = fill;
  let places = Math.max(PLACES_LEAST, fill.division?.split(".")[1]?.length ?? 0);
  const looksEqual = () =>
    mean_allowed !== null &&
    written(mean_error, places).replace("-", "") === written(mean_allowed, places);
  while (places < PLACES_MOST && looksEqual()) places += 1;
  return {
    mean: written(mean_error, places),
    allowed: mean_allowed === null ? null : written(mean_allowed, places),
    most_short: fill.most_short,
    short: fill.short,
    unit: fill.unit ?? "g",
    reasons: fill.reasons,
  };
}

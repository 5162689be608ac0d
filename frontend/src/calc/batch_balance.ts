/**
 * The mass balance of one batch: what went in, what came out, what is unaccounted, in g.
 * Rules of the production pack 1.4, 1.5, 1.8 and 1.9: a figure that was not recorded is null and
 * makes null of what rests on it, never 0.
 */

import {
  edibleYieldPercent,
  evaporated,
  impliedSolidsPercent,
  needsALook,
  percentOf,
  recoveryPercent,
  rejectsPercent,
  solidsIn,
  spoilagePercent,
  theoreticalOut,
  unaccounted,
} from "./balance.ts";
import { type LineWork, lineSum } from "./batch_lines.ts";
import { lostByReason, packedOut } from "./batch_output.ts";
import { measuredMass, type StepWork, U_DIGITS } from "./batch_steps.ts";
import { decimalIn } from "./bodies.ts";
import { type Decimal, HUNDRED, plain, product, significant, total, written } from "./numbers.ts";
import type { Doubt } from "./readings.ts";
import { type Finding, finding, type Standing } from "./record.ts";
import { sumDoubt } from "./weighing.ts";

export const THEORY_PLACES = 1; // of g: the fourth place of a kg

/** What was lost in preparation for one reason. */
export interface LostFor {
  readonly reason: string;
  readonly amount: string;
}

/** Lines that are prepared before the kettle: as bought, as prepared, what was lost. */
export interface PreparationBalance {
  readonly prepared_in: string | null;
  readonly prepared_out: string | null;
  readonly preparation_losses: readonly LostFor[];
  readonly preparation_unaccounted: string | null;
  readonly preparation_unaccounted_u: string | null;
  readonly edible_yield_percent: string | null;
  readonly spoilage_percent: string | null;
}

/** All that was put together by mass, and what was weighed when it was done. */
export interface KettleBalance {
  readonly kettle_in: string | null;
  readonly kettle_out: string | null;
  readonly evaporated: string | null;
  readonly solids_in: string | null;
  readonly theoretical_out: string | null;
  readonly implied_solids_percent: string | null;
}

/** What was filled into packs, good and rejected, and what was left behind. */
export interface FillingBalance {
  readonly filled: string | null;
  readonly good_out: string | null;
  readonly residue: string | null;
  readonly samples: string | null;
  readonly filling_unaccounted: string | null;
  readonly unaccounted_u: string | null;
  readonly rejects_percent: string | null;
  readonly recovery_percent: string | null;
  readonly of_theory_percent: string | null;
}

/** Masses in g, percentages to four places, ties to even; null where not computable. */
export type Balance = PreparationBalance & KettleBalance & FillingBalance;

/** A mass in g and its doubt; either may be unknown. */
interface KnownMass {
  readonly g: Decimal | null;
  readonly doubt: Doubt | null;
}

/** The masses of the kettle that the filling is measured against. */
interface Kettle {
  readonly putIn: KnownMass;
  readonly out: KnownMass;
  readonly solids: Decimal | null;
  readonly targetPercent: Decimal | null;
}

const UNKNOWN: KnownMass = { g: null, doubt: null };

/**
 * Balance a batch from its lines, its weighed steps, its outputs and its losses.
 * What is counted in pieces (packaging, mostly) is left out; a line by volume makes the kettle
 * not computable, for mass and volume are never mixed without a density.
 */
export function batchBalance(
  lines: readonly LineWork[],
  steps: readonly StepWork[],
  entries: readonly Standing[],
  targetPercent: Decimal | null,
): readonly [Balance, Finding[]] {
  const inMass = lines.filter((work) => work.unit !== null && work.unit !== "pc");
  const kettle: Kettle = {
    putIn: sumMasses(inMass.map(toKettle)),
    out: weighedOut(steps),
    solids: solidsOf(inMass),
    targetPercent,
  };
  const [preparation, preparedTooMuch] = preparationOf(lines, entries);
  const [boiled, boiledTooMuch] = boiledIn(kettle);
  const [filling, filledTooMuch] = fillingFrom(kettle, entries);
  const findings = [...preparedTooMuch, ...boiledTooMuch, ...filledTooMuch];
  return [{ ...preparation, ...boiled, ...filling }, findings.slice(0, 1)];
}

function preparationOf(
  lines: readonly LineWork[],
  entries: readonly Standing[],
): readonly [PreparationBalance, Finding[]] {
  const prepared = lines.filter((work) => work.is_prepared);
  const received = sumMasses(prepared.map(putIn));
  const out = sumMasses(prepared.map(preparedMass));
  const byReason = lostByReason(entries, "preparation");
  const rest = restOf(received.g, [out.g, ...byReason.values()]);
  const doubt = sumDoubt([received.doubt, out.doubt]);
  const balance: PreparationBalance = {
    prepared_in: text(received.g),
    prepared_out: text(out.g),
    preparation_losses: [...byReason].map(([reason, g]) => ({ reason, amount: plain(g) })),
    preparation_unaccounted: text(rest),
    preparation_unaccounted_u: uText(doubt),
    edible_yield_percent: percent(edibleYieldPercent(out.g, received.g)),
    spoilage_percent: percent(spoilagePercent(byReason.get("spoiled") ?? null, received.g)),
  };
  return [balance, tooMuch("preparation_unaccounted", rest, received.g, doubt)];
}

function boiledIn(kettle: Kettle): readonly [KettleBalance, Finding[]] {
  const boiledOff = evaporated(kettle.putIn.g, kettle.out.g);
  const solids = kettle.solids;
  const balance: KettleBalance = {
    kettle_in: text(kettle.putIn.g),
    kettle_out: text(kettle.out.g),
    evaporated: text(boiledOff),
    solids_in: text(solids),
    theoretical_out: text(theoryOf(kettle)),
    implied_solids_percent: percent(
      solids === null ? null : impliedSolidsPercent(solids, kettle.out.g),
    ),
  };
  const doubt = sumDoubt([kettle.putIn.doubt, kettle.out.doubt]);
  return [balance, tooMuch("evaporated", boiledOff, kettle.putIn.g, doubt)];
}

function fillingFrom(
  kettle: Kettle,
  entries: readonly Standing[],
): readonly [FillingBalance, Finding[]] {
  const packed = packedOut(entries);
  const byReason = lostByReason(entries, "filling");
  const rest = restOf(kettle.out.g, [packed.filled, ...byReason.values()]);
  const balance: FillingBalance = {
    filled: text(packed.filled),
    good_out: text(packed.good),
    residue: text(byReason.get("residue") ?? null),
    samples: text(byReason.get("sample") ?? null),
    filling_unaccounted: text(rest),
    unaccounted_u: uText(kettle.out.doubt),
    rejects_percent: percent(rejectsPercent(packed.rejected, packed.packs)),
    recovery_percent: percent(recoveryPercent(packed.good, kettle.putIn.g)),
    of_theory_percent: percent(ofTheory(packed.good, kettle)),
  };
  return [balance, tooMuch("filling_unaccounted", rest, kettle.out.g, kettle.out.doubt)];
}

function putIn(work: LineWork): KnownMass {
  const { amount, doubt } = lineSum(work);
  return amount === null || amount.unit !== "g" ? UNKNOWN : { g: amount.value, doubt };
}

function preparedMass(work: LineWork): KnownMass {
  if (work.prepared === null) return UNKNOWN;
  return { g: work.prepared.amount.value, doubt: work.prepared.doubt };
}

/** What is prepared goes in as prepared, the rest as weighed in. */
function toKettle(work: LineWork): KnownMass {
  return work.is_prepared ? preparedMass(work) : putIn(work);
}

function weighedOut(steps: readonly StepWork[]): KnownMass {
  const mass = measuredMass(steps, "kettle_mass", null);
  return mass === null ? UNKNOWN : { g: mass.amount.value, doubt: mass.doubt };
}

/** The sum of what is known as a whole: one missing mass makes the sum unknown. */
function sumMasses(masses: readonly KnownMass[]): KnownMass {
  const known = masses.map((mass) => mass.g).filter((g) => g !== null);
  if (masses.length === 0 || known.length < masses.length) return UNKNOWN;
  return { g: total(known), doubt: sumDoubt(masses.map((mass) => mass.doubt)) };
}

/** Soluble solids of all that went in; a line of unknown share makes the sum unknown. */
function solidsOf(lines: readonly LineWork[]): Decimal | null {
  const known: [Decimal, Decimal][] = [];
  for (const work of lines) {
    const g = toKettle(work).g;
    const share = decimalIn(work.plan, "soluble_percent");
    if (g === null || share === null) return null;
    known.push([g, share]);
  }
  return known.length > 0 ? solidsIn(known) : null;
}

function theoryOf(kettle: Kettle): Decimal | null {
  if (kettle.solids === null || kettle.targetPercent === null) return null;
  return theoreticalOut(kettle.solids, kettle.targetPercent, THEORY_PLACES);
}

/** Good mass of the theoretical one, from the exact solids: nothing is rounded before. */
function ofTheory(good: Decimal | null, kettle: Kettle): Decimal | null {
  if (good === null || kettle.solids === null || kettle.targetPercent === null) return null;
  return percentOf(product(good, kettle.targetPercent), product(kettle.solids, HUNDRED));
}

function restOf(whole: Decimal | null, cameOut: readonly (Decimal | null)[]): Decimal | null {
  const known = cameOut.filter((amount) => amount !== null);
  return known.length === cameOut.length ? unaccounted(whole, known) : null;
}

/** More came out than went in, by more than the scales explain. */
function tooMuch(
  name: string,
  rest: Decimal | null,
  whole: Decimal | null,
  doubt: Doubt | null,
): Finding[] {
  if (rest === null || whole === null || !rest.isNegative()) return [];
  if (!needsALook(rest, whole, doubt?.u ?? 0)) return [];
  return [finding("more_out_than_in", "more_out_than_in", { field: name })];
}

function text(massG: Decimal | null): string | null {
  return massG === null ? null : plain(massG);
}

function percent(value: Decimal | null): string | null {
  return value === null ? null : written(value);
}

function uText(doubt: Doubt | null): string | null {
  return doubt === null ? null : significant(doubt.u, U_DIGITS);
}

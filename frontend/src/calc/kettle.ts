/**
 * The kettle: what solids allow it to give, its gross weight as the target, and where its water
 * went.
 *
 * Soluble solids are conserved: mass out x degrees Brix / 100 = sum of mass in x solids / 100.
 * Whether pectin and acid count is each line's own choice, for sources disagree. Doubt by JCGM
 * 100:2008 5.1.2, each term its own partial derivative. Source of the balance: Practical Action,
 * Jams, jellies and marmalade, read.
 */

import { MASS_PLACES, solidsIn } from "./balance.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  HUNDRED,
  product,
  total,
  ZERO,
} from "./numbers.ts";
import { combinedU } from "./readings.ts";

/**
 * One line in the kettle: its mass, its soluble solids in percent (0 where they are not counted,
 * null where nobody knows) and the standard uncertainties of both.
 */
export interface Charge {
  readonly amount: Decimal;
  readonly solids_percent: Decimal | null;
  readonly u: number;
  readonly solids_u: number;
}

/** A figure that was read and its standard uncertainty. */
export interface Measured {
  readonly value: Decimal;
  readonly u: number;
}

/**
 * What to cook down to, in the unit of the charges. `boil_off` below zero: water is missing.
 * `gross` is what the scale shows with the kettle; null without its tare.
 */
export interface KettleTarget {
  readonly solids: Decimal;
  readonly put_in: Decimal;
  readonly makes: Decimal;
  readonly makes_u: number;
  readonly boil_off: Decimal;
  readonly gross: Decimal | null;
}

/**
 * What left as steam: by two weighings, by the solids, and what is left between the two.
 *
 * `remainder` is what solids say there must be less what was weighed out: below zero means a
 * wrong tare, a missing input or a wrong Brix, so it is shown and never cut to 0.
 */
export interface Evaporation {
  readonly weighed: Decimal | null;
  readonly weighed_u: number | null;
  readonly calculated: Decimal | null;
  readonly calculated_u: number | null;
  readonly remainder: Decimal | null;
  readonly remainder_u: number | null;
}

/** A part of a formula and its soluble solids in percent; 0 where they are not counted. */
export interface Share {
  readonly share: Decimal;
  readonly solids_percent: Decimal;
}

/** How much of each part makes a product of a wanted strength. */
export interface Formula {
  readonly amounts: readonly Decimal[];
  readonly boil_off: Decimal;
}

/**
 * The mass at which the solids are target_percent of it, and what the scale shows then. Null where
 * the solids of a line are unknown. Throws unless the target is above 0 and at most 100.
 */
export function kettleTarget(
  charges: readonly Charge[],
  to: { readonly target_percent: Decimal; readonly tare: Decimal | null },
): KettleTarget | null {
  refusePercent(to.target_percent);
  const lines = known(charges);
  if (lines === null) return null;
  const putIn = total(charges.map((charge) => charge.amount));
  const makes = made(lines, to.target_percent);
  return {
    solids: solids(lines),
    put_in: putIn,
    makes,
    makes_u: madeU(lines, { value: to.target_percent, u: 0 }),
    boil_off: difference(putIn, makes),
    gross: to.tare === null ? null : total([makes, to.tare]),
  };
}

/**
 * Where the kettle's water went, from its weight out and its degrees Brix.
 *
 * What was not read, or solids that nobody knows, make null of what rests on them. Throws for a
 * Brix that is not above 0 and at most 100.
 */
export function kettleEvaporation(
  charges: readonly Charge[],
  read: { readonly out: Measured | null; readonly brix: Measured | null },
): Evaporation {
  const { out, brix } = read;
  if (brix !== null) refusePercent(brix.value);
  const putIn = total(charges.map((charge) => charge.amount));
  const makes = bySolids(charges, brix);
  const both = out === null || makes === null ? null : { out, makes };
  return {
    weighed: out === null ? null : difference(putIn, out.value),
    weighed_u: out === null ? null : combinedU([...charges.map((c) => c.u), out.u]),
    calculated: makes === null ? null : difference(putIn, makes.value),
    calculated_u: makes === null ? null : makes.steam_u,
    remainder: both === null ? null : difference(both.makes.value, both.out.value),
    remainder_u: both === null ? null : combinedU([both.makes.u, both.out.u]),
  };
}

/**
 * How much of each part gives `makes` of a product with target_percent of solids.
 *
 * Shares are of one another: fruit 45, sugar 55. Throws without solids, and for a target that is
 * not above 0 and at most 100.
 */
export function formulaFor(
  shares: readonly Share[],
  wanted: { readonly makes: Decimal; readonly target_percent: Decimal },
): Formula {
  refusePercent(wanted.target_percent);
  const solid = solidsIn(shares.map((s) => [s.share, s.solids_percent]));
  if (solid.compare(ZERO) <= 0) throw new RangeError("nothing in the formula has solids");
  const strength = product(wanted.makes, wanted.target_percent);
  const base = product(solid, HUNDRED);
  const amounts = shares.map((s) => divided(product(s.share, strength), base, MASS_PLACES));
  return { amounts, boil_off: difference(total(amounts), wanted.makes) };
}

function refusePercent(percent: Decimal): void {
  if (percent.compare(ZERO) <= 0 || percent.compare(HUNDRED) > 0) {
    throw new RangeError("solids are more than 0 % and at most 100 %");
  }
}

/** A charge whose solids are known. */
interface Line extends Charge {
  readonly solids_percent: Decimal;
}

/** What solids and Brix say there is, its doubt, and the doubt of the steam. */
interface Made extends Measured {
  readonly steam_u: number;
}

function known(charges: readonly Charge[]): Line[] | null {
  const lines = charges.flatMap((charge) => {
    const { solids_percent } = charge;
    return solids_percent === null ? [] : [{ ...charge, solids_percent }];
  });
  return lines.length === charges.length ? lines : null;
}

function bySolids(charges: readonly Charge[], brix: Measured | null): Made | null {
  const lines = known(charges);
  if (lines === null || brix === null) return null;
  return {
    value: made(lines, brix.value),
    u: madeU(lines, brix),
    steam_u: steamU(lines, brix),
  };
}

function solids(lines: readonly Line[]): Decimal {
  return solidsIn(lines.map((line) => [line.amount, line.solids_percent]));
}

function made(lines: readonly Line[], brix: Decimal): Decimal {
  return divided(product(solids(lines), HUNDRED), brix, MASS_PLACES);
}

/** Of solids / Brix: each mass by its percent, each percent by its mass, and the Brix. */
function madeU(lines: readonly Line[], brix: Measured): number {
  const percent = asDouble(brix.value);
  const parts = lines.map((line) => (asDouble(line.solids_percent) / percent) * line.u);
  return combinedU([...parts, ...percentParts(lines, brix)]);
}

/** Of mass in - solids / Brix: a line that has the strength of the product adds nothing. */
function steamU(lines: readonly Line[], brix: Measured): number {
  const percent = asDouble(brix.value);
  const parts = lines.map((line) => (1 - asDouble(line.solids_percent) / percent) * line.u);
  return combinedU([...parts, ...percentParts(lines, brix)]);
}

function percentParts(lines: readonly Line[], brix: Measured): number[] {
  const percent = asDouble(brix.value);
  const parts = lines.map((line) => (asDouble(line.amount) / percent) * line.solids_u);
  const makes = (asDouble(solids(lines)) / percent) * 100;
  return [...parts, (makes / percent) * brix.u];
}

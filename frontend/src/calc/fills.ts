/**
 * Fill checks: what the packs of a lot, weighed against their label, say of its net content.
 *
 * The rules themselves are in net_packs.ts (US) and net_batches.ts (EU).
 */

import {
  type Body,
  decimalIn,
  inBaseUnit,
  itemsIn,
  type Quantity,
  quantityIn,
  textIn,
  textsIn,
} from "./bodies.ts";
import { type Cited, leansOnMemory } from "./limits.ts";
import { batchCheck } from "./net_batches.ts";
import { largerDeclaration, type NetVerdict, PLACES } from "./net_content.ts";
import type { MavColumn } from "./net_limits.ts";
import { categoryA, type Moisture } from "./net_packs.ts";
import {
  asDouble,
  type Decimal,
  difference,
  divided,
  parseDecimal,
  plain,
  significant,
  ZERO,
} from "./numbers.ts";
import { mean } from "./readings.ts";
import { baseUnitOf } from "./units.ts";

export const FILL_DIGITS = 4; // of a standard deviation and of what the mean may be short
// Flour and dry pasta, taken off the nominal gross weight: NIST HB 133 (2026) 2.3.8, read.
const DRIED: Moisture = { percent: parseDecimal("3"), places: 1, taken: "off_nominal" };
const DRIED_SAYS: Cited = {
  what: "moisture",
  source: "NIST HB 133 (2026) 2.3.8",
  basis: "read",
  note: "",
};

/**
 * A fill check; amounts in `unit`, g or mL, errors below zero are short.
 *
 * `declared` is the larger declaration and `label` how it is written. `mean_allowed` is how short
 * the mean may be, `most_short` the MAV or T of one pack, `short` the positions of packs beyond it
 * and `far_short` of those beyond 2 T (EU). `reasons` are keys of sentences.
 */
export interface Fill {
  readonly rules: string | null;
  readonly label: Quantity | null;
  readonly declared: string | null;
  readonly unit: string | null;
  readonly packs: number;
  readonly lot_size: number;
  readonly division: string | null;
  readonly verdict: NetVerdict;
  readonly reasons: readonly string[];
  readonly errors: readonly string[];
  readonly mean_error: string | null;
  readonly sd: string | null;
  readonly mean_allowed: string | null;
  readonly most_short: string | null;
  readonly short: readonly number[];
  readonly far_short: readonly number[];
  readonly sample_size: number | null;
  readonly cited: readonly Cited[];
  readonly leans_on_memory: boolean;
}

/** Packs as they were weighed, in g: empty ones, full ones, division of the scale. */
interface Weighed {
  readonly tares: readonly Decimal[];
  readonly gross: readonly Decimal[];
  readonly division: Decimal | null;
  readonly lot_size: number;
  readonly column: MavColumn;
}

/**
 * What a fill check says; without a lot's size the packs weighed are the whole lot.
 *
 * Not decided, with the reason, where a number cannot be read or the rules have no figures for
 * such packs: the US tables here are for labels by weight.
 */
export function fillOf(body: Body): Fill {
  const [weighed, label, blank] = [weighedIn(body), labelIn(body), blankOf(body)];
  if (weighed === null) return { ...blank, reasons: ["unreadable"] };
  if (weighed.gross.length === 0 || weighed.tares.length === 0) {
    return { ...blank, reasons: ["nothing_weighed"] };
  }
  let known = blank;
  try {
    const declared = largerDeclaration(
      label.map(({ amount, unit }) => [parseDecimal(amount), unit] as const),
    );
    const written = label[declared.position] ?? null;
    const unit = written === null ? null : baseUnitOf(written.unit);
    known = { ...blank, label: written, declared: plain(declared.in_base), unit };
    return judged(known, weighed, declared.in_base, body);
  } catch (refused) {
    if (refused instanceof RangeError) return { ...known, reasons: ["no_figures"] };
    throw refused;
  }
}

/** Throws RangeError where the rules have no figures for such packs. */
function judged(known: Fill, weighed: Weighed, declared: Decimal, body: Body): Fill {
  const isByWeight = known.unit === "g";
  if (known.rules === "us" && isByWeight) {
    return byUs(known, weighed, declared, body.loses_moisture === true);
  }
  if (known.rules !== "eu" || (known.unit !== "g" && known.unit !== "mL")) {
    throw new RangeError("no table here has such packs");
  }
  const density = isByWeight ? null : decimalIn(body, "density");
  if (!isByWeight && (density === null || density.compare(ZERO) <= 0)) {
    return { ...known, reasons: ["no_density"] };
  }
  return byEu(known, weighed, declared, density);
}

function byUs(known: Fill, weighed: Weighed, declared: Decimal, hasDried: boolean): Fill {
  const result = categoryA({ ...weighed, label: declared, moisture: hasDried ? DRIED : null });
  return {
    ...known,
    verdict: result.verdict,
    reasons: result.reasons,
    errors: result.errors.map(plain),
    mean_error: plain(result.mean_error),
    sd: significant(result.sd, FILL_DIGITS),
    mean_allowed: result.sel === null ? null : significant(result.sel, FILL_DIGITS),
    most_short: plain(result.mav),
    short: result.beyond_mav,
    sample_size: result.plan.sample_size,
    ...citedIn([...result.cited, ...(hasDried ? [DRIED_SAYS] : [])]),
  };
}

function byEu(known: Fill, weighed: Weighed, declared: Decimal, density: Decimal | null): Fill {
  const tare = mean(weighed.tares, PLACES);
  const nets = weighed.gross.map((each) => {
    const net = difference(each, tare);
    return density === null ? net : divided(net, density, PLACES);
  });
  const result = batchCheck({
    nominal: declared,
    contents: nets,
    batch_size: weighed.lot_size,
    rules: "arrete_1978",
    is_destructive: false,
    division: weighed.division,
  });
  const allowed = result.sd * asDouble(result.plan.mean_factor);
  return {
    ...known,
    verdict: result.verdict,
    reasons: result.reasons,
    errors: nets.map((each) => plain(difference(each, declared))),
    mean_error: plain(difference(result.mean ?? declared, declared)),
    sd: significant(result.sd, FILL_DIGITS),
    mean_allowed: significant(allowed, FILL_DIGITS),
    most_short: plain(result.t),
    short: result.below_t1,
    far_short: result.below_t2,
    sample_size: result.plan.sample_size,
    ...citedIn(result.cited),
  };
}

/** The two fields of a fill that say who says so; a figure used twice is told once. */
function citedIn(cited: readonly Cited[]) {
  const once = new Map(cited.map((each) => [JSON.stringify(each), each]));
  return { cited: [...once.values()], leans_on_memory: leansOnMemory(cited) };
}

/** A fill of which nothing is decided yet. */
function blankOf(body: Body): Fill {
  return {
    rules: textIn(body, "rules"),
    label: null,
    declared: null,
    unit: null,
    packs: textsIn(body, "gross").length,
    lot_size: lotSizeIn(body),
    division: textIn(body, "division"),
    verdict: "not_decided",
    reasons: [],
    errors: [],
    mean_error: null,
    sd: null,
    mean_allowed: null,
    most_short: null,
    short: [],
    far_short: [],
    sample_size: null,
    cited: [],
    leans_on_memory: false,
  };
}

/** Null where a number or the unit cannot be read. */
function weighedIn(body: Body): Weighed | null {
  const [tares, gross] = [massesIn(body, "tares"), massesIn(body, "gross")];
  if (tares === null || gross === null) return null;
  const unit = textIn(body, "unit");
  return {
    tares,
    gross,
    division: inBaseUnit(decimalIn(body, "division"), unit)?.value ?? null,
    lot_size: lotSizeIn(body),
    // The MAV is read in the unit the packs are weighed in, whatever the label declares.
    column: unit === "lb" || unit === "oz" ? unit : "g",
  };
}

function massesIn(body: Body, name: string): Decimal[] | null {
  const unit = textIn(body, "unit");
  const texts = textsIn(body, name);
  const masses = texts.flatMap((each) => {
    const found = inBaseUnit(decimalIn({ [name]: each }, name), unit);
    return found?.unit === "g" ? [found.value] : [];
  });
  return masses.length === texts.length ? masses : null;
}

function lotSizeIn(body: Body): number {
  const size = body.lot_size;
  return typeof size === "number" ? size : textsIn(body, "gross").length;
}

function labelIn(body: Body): Quantity[] {
  return itemsIn(body, "label").flatMap((each) => quantityIn(each, "amount") ?? []);
}

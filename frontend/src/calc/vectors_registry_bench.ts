/**
 * How each function for yields, the kettle, mixing, curing and checks at the bench is called; the
 * twin of tests/calc/registry_bench.py, where the short forms of a vector are told.
 */

import * as acidified from "./acidified.ts";
import * as acidity from "./acidity.ts";
import * as altitude from "./altitude.ts";
import * as brine from "./brine.ts";
import * as brix from "./brix.ts";
import * as cureLimits from "./cure_limits.ts";
import * as curing from "./curing.ts";
import * as drying from "./drying.ts";
import * as keeping from "./keeping.ts";
import * as kettle from "./kettle.ts";
import type { Cited } from "./limits.ts";
import * as mixing from "./mixing.ts";
import { Decimal, parseDecimal, plain, significant, written } from "./numbers.ts";
import { YIELD_ROWS, type YieldRow } from "./tables/yields.ts";
import type { Adapter, Adapters, Given } from "./vectors_registry.ts";
import * as yields from "./yields.ts";

/** Fields that are whole numbers in Python too; every other number of an answer is a double. */
const WHOLE = new Set(["counted", "left_out", "minutes"]);

const dec = (text: string): Decimal => parseDecimal(text);
const d = (text: string | null | undefined): Decimal | null => (text == null ? null : dec(text));
const w = (x: Decimal | null): string | null => (x === null ? null : written(x));

function limitLine(limit: cureLimits.CureLimit): string {
  const most = limit.limit_ppm === null ? "nothing" : plain(limit.limit_ppm);
  const on = limit.basis_weight === "" ? "anything" : limit.basis_weight;
  return `${limit.kind} ${most} on ${on}: ${limit.verdict} (${limit.cited.basis})`;
}

function shown(answer: unknown, digits: number): unknown {
  if (typeof answer === "number") return significant(answer, digits);
  if (answer instanceof Decimal) return written(answer);
  if (Array.isArray(answer)) return answer.map((each) => shown(each, digits));
  return typeof answer === "object" && answer !== null ? shownFields(answer, digits) : answer;
}

function shownFields(answer: object, digits: number): Readonly<Record<string, unknown>> {
  const fields = Object.entries(answer).map(([name, value]) => [
    name,
    WHOLE.has(name) ? value : shown(value, digits),
  ]);
  return Object.fromEntries(fields);
}

function pair([first = "", second = ""]: readonly string[]): readonly [Decimal, Decimal] {
  return [dec(first), dec(second)];
}

function lifeModel(g: Given): keeping.LifeModel {
  const { kind, parameter, life_days, at } = g;
  return { kind, parameter: dec(parameter), life_days: dec(life_days), at: dec(at) };
}

interface Leaning {
  readonly cited?: readonly Cited[];
  readonly limits?: readonly cureLimits.CureLimit[];
}

/** An answer as JSON, the fields a vector asks for. */
function answerOf(found: Leaning | null, g: Given): unknown {
  if (found === null) return null;
  const { cited, limits, ...rest } = found;
  const bases = cited?.map((each) => `${each.what}: ${each.basis}`);
  const made: Record<string, unknown> = {
    ...rest,
    ...(cited === undefined ? {} : { bases, source: cited[0]?.source ?? null }),
    ...(limits === undefined ? {} : { limits: limits.map(limitLine) }),
  };
  const asked: string[] = g.show ?? Object.keys(made);
  const whole = shownFields(made, g.digits ?? 17);
  return Object.fromEntries(asked.map((name) => [name, whole[name]]));
}

function answering(call: (g: Given) => object | null): Adapter {
  return (g) => answerOf(call(g), g);
}

function rowOf(g: Given): YieldRow {
  const row = YIELD_ROWS.find(
    (each) => each.item === g.item && each.source.startsWith(g.source ?? ""),
  );
  if (row === undefined) throw new Error("a vector names a yield that is not in the table");
  return row;
}

function ownYield(g: Given): yields.OwnYield {
  return yields.ownYield(
    g.preparations.map(([edible, bought]: [string | null, string | null]) => [
      d(edible),
      d(bought),
    ]),
  );
}

function stagesOf(g: Given): yields.Stage[] {
  return g.stages.map(([added, out]: [string, string | null]) => ({
    added: dec(added),
    out: d(out),
  }));
}

function chargesOf(g: Given): kettle.Charge[] {
  return g.charges.map((each: Given) => ({
    amount: dec(each.amount),
    solids_percent: d(each.solids_percent),
    u: Number(each.u ?? "0"),
    solids_u: Number(each.solids_u ?? "0"),
  }));
}

function measured(given: Given): kettle.Measured | null {
  return given === null ? null : { value: dec(given.value), u: Number(given.u ?? "0") };
}

function sharesOf(g: Given): kettle.Share[] {
  return g.shares.map(([share, percent]: [string, string]) => ({
    share: dec(share),
    solids_percent: dec(percent),
  }));
}

function moisture([percent, basis, u]: [string, drying.Basis, string?]): drying.Moisture {
  return { percent: dec(percent), basis, u: Number(u ?? "0") };
}

function squareOf(g: Given): mixing.Square {
  return {
    strong: dec(g.strong),
    weak: dec(g.weak),
    target: dec(g.target),
    basis: g.basis ?? "by_mass",
    solute: g.solute ?? "other",
  };
}

function weighedOf(g: Given): brine.Weighed[] {
  return g.parts.map(([amount, percent, u]: [string, string, string]) => ({
    amount: dec(amount),
    percent: dec(percent),
    u: Number(u),
  }));
}

function titrationOf(g: Given): acidity.Titration {
  return {
    acid: g.acid,
    naoh_N: dec(g.naoh_N),
    naoh_mL: dec(g.naoh_mL),
    sample: dec(g.sample),
    sample_unit: g.sample_unit ?? "mL",
    blank_mL: dec(g.blank_mL ?? "0"),
  };
}

function caseOf(g: Given): cureLimits.CureCase {
  return {
    use: g.use,
    substance: g.substance ?? "sodium_nitrite",
    rules: g.rules ?? "us",
  };
}

function madeOf(g: Given): curing.CureMade {
  return {
    cure: dec(g.cure),
    substance_percent: dec(g.substance_percent),
    green: d(g.green),
    others: (g.others ?? []).map(dec),
    pump_percent: d(g.pump_percent),
  };
}

function wantedOf(g: Given): curing.CureWanted {
  return {
    ppm: dec(g.ppm),
    substance_percent: dec(g.substance_percent),
    green: d(g.green),
    pickle: d(g.pickle),
    pump_percent: d(g.pump_percent),
  };
}

function limitsOf(g: Given): cureLimits.CureLimit[] {
  return cureLimits.cureLimits(caseOf(g), { wanted: dec(g.ppm), base: dec(g.base ?? "1") });
}

const YIELDS: Record<string, Adapter> = {
  yields_named: (g) =>
    yields
      .yieldsNamed(YIELD_ROWS, g.words)
      .map((row) => `${row.item}: ${row.yield_fraction}, ${row.basis}`),
  published_yield: answering((g) => yields.publishedYield(rowOf(g))),
  own_yield: answering(ownYield),
  proposed_yield: (g) => w(yields.proposedYield(d(g.in_use), ownYield(g))),
  to_buy: (g) =>
    written(
      yields.toBuy(dec(g.edible), { yield_percent: dec(g.yield_percent), step: dec(g.step) }),
    ),
  stage_yields: answering((g) => yields.stageYields(dec(g.raw), stagesOf(g))),
};

const KETTLE: Record<string, Adapter> = {
  kettle_target: answering((g) =>
    kettle.kettleTarget(chargesOf(g), {
      target_percent: dec(g.target_percent),
      tare: d(g.tare),
    }),
  ),
  kettle_evaporation: answering((g) =>
    kettle.kettleEvaporation(chargesOf(g), { out: measured(g.out), brix: measured(g.brix) }),
  ),
  formula_for: answering((g) =>
    kettle.formulaFor(sharesOf(g), {
      makes: dec(g.makes),
      target_percent: dec(g.target_percent),
    }),
  ),
};

const DRYING: Record<string, Adapter> = {
  dry_basis_percent: (g) => written(drying.dryBasisPercent(dec(g.wet_basis_percent), g.places)),
  wet_basis_percent: (g) => written(drying.wetBasisPercent(dec(g.dry_basis_percent), g.places)),
  dried: answering((g) =>
    drying.dried(
      dec(g.mass),
      { before: moisture(g.before), after: moisture(g.after) },
      Number(g.mass_u ?? "0"),
    ),
  ),
  concentrated: answering((g) =>
    drying.concentrated(dec(g.mass), {
      solids_percent: dec(g.solids_percent),
      to_percent: dec(g.to_percent),
      added_percent: dec(g.added_percent ?? "0"),
    }),
  ),
};

const MIXING: Record<string, Adapter> = {
  pearson_shares: answering((g) => mixing.pearsonShares(squareOf(g))),
  mixed_to: answering((g) => mixing.mixedTo(dec(g.makes), squareOf(g))),
  added_to_reach: answering((g) => mixing.addedToReach(dec(g.amount), squareOf(g), g.at_hand)),
  strength_of: (g) =>
    w(mixing.strengthOf(g.parts.map(([m, p]: [string, string]) => [dec(m), dec(p)]))),
};

const BRINE: Record<string, Adapter> = {
  weighed_strength: answering((g) => brine.weighedStrength(weighedOf(g))),
  percent_by_mass: (g) => written(brine.percentByMass(dec(g.percent_of_water), g.places)),
  percent_of_water: (g) => written(brine.percentOfWater(dec(g.percent_by_mass), g.places)),
  salometer_percent: answering((g) => brine.salometerPercent(dec(g.degrees), g.scale)),
  salometer_degrees: answering((g) => brine.salometerDegrees(dec(g.percent), g.scale)),
};

export const BENCH: Adapters = {
  yields: YIELDS,
  kettle: KETTLE,
  drying: DRYING,
  mixing: MIXING,
  brine: BRINE,
  brix: {
    brix_correction: answering((g) =>
      brix.brixCorrection(dec(g.measured_percent), dec(g.celsius), g.table ?? null),
    ),
  },
  acidity: { titratable_acidity: answering((g) => acidity.titratableAcidity(titrationOf(g))) },
  cure_limits: {
    cure_limits: (g) => limitsOf(g).map(limitLine),
    worst_verdict: (g) => cureLimits.worstVerdict(limitsOf(g)),
  },
  curing: {
    ingoing: answering((g) => curing.ingoing(caseOf(g), madeOf(g))),
    cure_needed: answering((g) => curing.cureNeeded(caseOf(g), wantedOf(g))),
  },
  altitude: {
    canner_adjustment: answering((g) =>
      altitude.cannerAdjustment(g.canner, dec(g.altitude), g.unit),
    ),
  },
  keeping: {
    q10_of_lives: (g) => shown(keeping.q10OfLives(pair(g.cold), pair(g.warm)), g.digits ?? 17),
    life_at: (g) => shown(keeping.lifeAt(lifeModel(g.model), dec(g.celsius)), g.digits ?? 17),
    life_used: answering((g) =>
      keeping.lifeUsed(lifeModel(g.model), g.history.map(pair), dec(g.stored_at)),
    ),
    out_of_chill: answering((g) => keeping.outOfChill(g.minutes)),
  },
  acidified: {
    acid_line: answering((g) => acidified.acidLine(dec(g.ph), d(g.water_activity))),
    five_log_hold: answering((g) => acidified.fiveLogHold(dec(g.temperature), g.unit, dec(g.ph))),
  },
};

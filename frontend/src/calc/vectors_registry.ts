/**
 * How each function of calc is called with what a vector gives; the twin of
 * tests/calc/registry.py. Only tests import this file.
 *
 * An adapter takes the vector's `given` and returns the answer as JSON, decimals as text; doubles
 * are written to the `digits` the vector gives.
 */

import * as balance from "./balance.ts";
import * as codes from "./codes.ts";
import * as density from "./density.ts";
import * as numbers from "./numbers.ts";
import { type Decimal, parseDecimal, significant, written } from "./numbers.ts";
import * as readings from "./readings.ts";
import * as recipes from "./recipes.ts";
import * as shelfLife from "./shelf_life.ts";
import { DENSITY_ROWS, SPREAD_ROWS } from "./tables/density.ts";
import * as temperature from "./temperature.ts";
import * as units from "./units.ts";
import { BENCH } from "./vectors_registry_bench.ts";
import { CHECKS } from "./vectors_registry_checks.ts";
import { COSTS } from "./vectors_registry_costs.ts";
import { FOLDS } from "./vectors_registry_folds.ts";
import { HEAT } from "./vectors_registry_heat.ts";
import { HOLDS, MORE } from "./vectors_registry_holds.ts";
import { INSTRUMENT_FOLDS, INSTRUMENTS } from "./vectors_registry_instruments.ts";
import { MONEY } from "./vectors_registry_money.ts";
import { NET } from "./vectors_registry_net.ts";
import { RECIPES_WRITTEN } from "./vectors_registry_recipes.ts";
import { SKILLS } from "./vectors_registry_skills.ts";
import { STATISTICS } from "./vectors_registry_statistics.ts";

// biome-ignore lint/suspicious/noExplicitAny: what a vector file holds is known to its adapter only.
export type Given = any;
export type Adapter = (given: Given) => unknown;
export type Adapters = Readonly<Record<string, Readonly<Record<string, Adapter>>>>;

const d = (text: string | null | undefined): Decimal | null => (text == null ? null : dec(text));
const dec = (text: string): Decimal => parseDecimal(text);
const ds = (texts: readonly string[]): Decimal[] => texts.map(dec);
const w = (x: Decimal | null): string | null => (x === null ? null : written(x));
const ws = (xs: readonly Decimal[]): string[] => xs.map(written);
const double = (x: number | null, g: Given): string | null =>
  x === null ? null : significant(x, g.digits);

function pairs(given: readonly (readonly [string | null, string | null])[]) {
  return given.map(([part, whole]) => [d(part), d(whole)] as const);
}

function factorOf(g: Given): recipes.Factor {
  return { wanted: dec(g.factor.wanted), base: dec(g.factor.base) };
}

function factorJson(factor: recipes.Factor) {
  return { wanted: written(factor.wanted), base: written(factor.base) };
}

function doubtOf(g: Given): readings.Doubt | null {
  return g.doubt === null ? null : { u: Number(g.doubt.u), degrees: g.doubt.degrees };
}

function certainDoubt(g: Given): readings.Doubt {
  return { u: Number(g.doubt.u), degrees: g.doubt.degrees };
}

function rowAndSpread(g: Given) {
  const row = density.bestDensity(DENSITY_ROWS, g.ingredient, g.packing);
  if (row === null) throw new Error("a vector names a density that is not in the table");
  return { row, spread: density.spreadOf(row, DENSITY_ROWS, SPREAD_ROWS) };
}

function spreadJson(spread: density.Spread | null) {
  if (spread === null) return null;
  return {
    low_g_per_mL: written(spread.low_g_per_mL),
    high_g_per_mL: written(spread.high_g_per_mL),
    sources: spread.sources,
  };
}

function convertedBy(change: typeof density.massOfVolume): Adapter {
  return (g) => {
    const { row, spread } = rowAndSpread(g);
    const made = change(dec(g.amount), g.unit, row, spread, g.places);
    return { ...made, amount: written(made.amount), low: w(made.low), high: w(made.high) };
  };
}

const NUMBERS: Record<string, Adapter> = {
  parse_decimal: (g) => written(parseDecimal(g.text)),
  written: (g) => written(dec(g.x)),
  plain: (g) => numbers.plain(dec(g.x)),
  total: (g) => written(numbers.total(ds(g.amounts))),
  difference: (g) => written(numbers.difference(dec(g.a), dec(g.b))),
  product: (g) => written(numbers.product(dec(g.a), dec(g.b))),
  rounded: (g) => written(numbers.rounded(dec(g.x), g.places, g.rule)),
  divided: (g) => written(numbers.divided(dec(g.a), dec(g.b), g.places, g.rule)),
  significant: (g) => significant("double" in g ? Number(g.double) : dec(g.x), g.digits),
  as_double: (g) => double(numbers.asDouble(dec(g.x)), g),
};

const UNITS: Record<string, Adapter> = {
  is_unit: (g) => units.isUnit(g.code),
  dimension_of: (g) => units.dimensionOf(g.code),
  base_unit_of: (g) => units.baseUnitOf(g.code),
  in_base: (g) => written(units.inBase(dec(g.amount), g.code)),
  from_base: (g) => written(units.fromBase(dec(g.amount), g.code, g.places)),
  converted: (g) => written(units.converted(dec(g.amount), g.from_code, g.to_code, g.places)),
  label_metric: (g) => written(units.labelMetric(dec(g.amount))),
};

const TEMPERATURE: Record<string, Adapter> = {
  celsius: (g) => written(temperature.celsius(dec(g.reading), g.code, g.places)),
  celsius_to_half: (g) => written(temperature.celsiusToHalf(dec(g.reading), g.code)),
  celsius_interval: (g) => written(temperature.celsiusInterval(dec(g.change), g.code, g.places)),
  fahrenheit: (g) => written(temperature.fahrenheit(dec(g.degrees_celsius))),
  kelvin: (g) => written(temperature.kelvin(dec(g.degrees_celsius))),
};

const DENSITY: Record<string, Adapter> = {
  best_density: (g) => density.bestDensity(DENSITY_ROWS, g.ingredient, g.packing),
  spread_of: (g) => spreadJson(rowAndSpread(g).spread),
  mass_of_volume: convertedBy(density.massOfVolume),
  volume_of_mass: convertedBy(density.volumeOfMass),
};

const READINGS: Record<string, Adapter> = {
  net: (g) => written(readings.net(dec(g.shown), d(g.tare))),
  mean: (g) => written(readings.mean(ds(g.values), g.places)),
  repeat_sd: (g) => double(readings.repeatSd(ds(g.values)), g),
  rectangular_u: (g) => double(readings.rectangularU(dec(g.tolerance)), g),
  resolution_u: (g) => double(readings.resolutionU(dec(g.division), g.readings), g),
  combined_u: (g) => double(readings.combinedU(g.parts.map(Number)), g),
  doubt_of: (g) => {
    const { u, degrees } = readings.doubtOf({
      division: dec(g.division),
      readings: g.readings,
      repeatability: d(g.repeatability),
      repeats: ds(g.repeats ?? []),
    });
    return { u: double(u, g), degrees };
  },
  coverage_factor: (g) => double(readings.coverageFactor(g.degrees, d(g.level)), g),
  guard_band: (g) => double(readings.guardBand(certainDoubt(g), d(g.level)), g),
  verdict: (g) => {
    const limits = { low: d(g.low), high: d(g.high), level: d(g.level) };
    return readings.verdict(dec(g.value), limits, doubtOf(g));
  },
  is_fine_enough: (g) =>
    readings.isFineEnough(
      dec(g.division),
      { below: d(g.below), above: d(g.above) },
      { readings: g.readings, repeatability: d(g.repeatability) },
    ),
};

const RECIPES: Record<string, Adapter> = {
  scale_factor: (g) => factorJson(recipes.scaleFactor(dec(g.wanted), dec(g.base))),
  packs_factor: (g) =>
    factorJson(
      recipes.packsFactor(dec(g.packs), { pack_net: dec(g.pack_net), makes: dec(g.makes) }),
    ),
  limiting: (g) => {
    const lines = g.lines.map((line: Given) => ({
      line: line.line,
      needed: dec(line.needed),
      available: dec(line.available),
      yield_percent: dec(line.yield_percent ?? "100"),
    }));
    const limit = recipes.limiting(lines);
    return limit && { line: limit.line, factor: factorJson(limit.factor) };
  },
  scaled: (g) => written(recipes.scaled(dec(g.amount), factorOf(g), g.places)),
  factor_shown: (g) => written(recipes.factorShown(factorOf(g), g.places)),
  whole_count: (g) => {
    const { count, factor } = recipes.wholeCount(dec(g.amount), factorOf(g), g.rule);
    return { count: written(count), factor: factorJson(factor) };
  },
  bakers_percents: (g) => ws(recipes.bakersPercents(ds(g.amounts), g.is_flour, g.places)),
  formula_percents: (g) => ws(recipes.formulaPercents(ds(g.amounts), g.places)),
  amounts_from_percents: (g) =>
    ws(recipes.amountsFromPercents(ds(g.percents), dec(g.wanted), g.places)),
  shared_out: (g) => ws(recipes.sharedOut(dec(g.whole), ds(g.weights), g.places)),
  as_purchased: (g) => written(recipes.asPurchased(dec(g.edible), dec(g.yield_percent), g.places)),
  edible_portion: (g) =>
    written(recipes.ediblePortion(dec(g.bought), dec(g.yield_percent), g.places)),
};

const BALANCE: Record<string, Adapter> = {
  percent_of: (g) => w(balance.percentOf(d(g.part), d(g.whole), g.places)),
  edible_yield_percent: (g) => w(balance.edibleYieldPercent(d(g.prepared), d(g.received))),
  spoilage_percent: (g) => w(balance.spoilagePercent(d(g.spoiled), d(g.received))),
  rejects_percent: (g) => w(balance.rejectsPercent(d(g.rejected), d(g.filled))),
  recovery_percent: (g) => w(balance.recoveryPercent(d(g.good_out), d(g.put_in))),
  group_percent: (g) => {
    const group = balance.groupPercent(pairs(g.pairs), g.places);
    return { ...group, percent: w(group.percent) };
  },
  solids_in: (g) =>
    written(
      balance.solidsIn(
        g.lines.map(([amount, percent]: [string, string]) => [dec(amount), dec(percent)]),
      ),
    ),
  theoretical_out: (g) => w(balance.theoreticalOut(dec(g.solids), dec(g.target_percent), g.places)),
  implied_solids_percent: (g) => w(balance.impliedSolidsPercent(dec(g.solids), d(g.out))),
  evaporated: (g) => w(balance.evaporated(d(g.kettle_in), d(g.kettle_out))),
  unaccounted: (g) => w(balance.unaccounted(d(g.put_in), ds(g.came_out))),
  unaccounted_u: (g) =>
    double(
      balance.unaccountedU(
        g.weighings.map(([step, count]: [string, number]) => [dec(step), count]),
      ),
      g,
    ),
  needs_a_look: (g) => balance.needsALook(dec(g.remainder), dec(g.put_in), Number(g.u)),
};

const SHELF_LIFE: Record<string, Adapter> = {
  add_days: (g) => shelfLife.addDays(g.on, g.days),
  add_months: (g) => shelfLife.addMonths(g.on, g.months),
  month_end: (g) => shelfLife.monthEnd(g.month),
  last_day: (g) => shelfLife.lastDay(g.made_on, g),
  earliest: (g) => shelfLife.earliest(g.days),
  composite_last_day: (g) => shelfLife.compositeLastDay(g.assigned, g.inputs, g.carries_through),
  opened_last_day: (g) => shelfLife.openedLastDay(g.opened_on, g.days, g.makers_day),
  thawed_last_day: (g) => shelfLife.thawedLastDay(g.thawed_on, g),
  days_left: (g) => shelfLife.daysLeft(g.last, g.today),
  has_expired: (g) => shelfLife.hasExpired(g.last, g.today),
  life_state: (g) => shelfLife.lifeState(g.last, g.today, g.sort),
  local_day: (g) => shelfLife.localDay(g.at, g.utc_offset_min),
  instant_of: (g) => shelfLife.instantOf(g.wall, g.utc_offset_min),
  later: (g) => shelfLife.later(g.at, g.minutes),
  elapsed_minutes: (g) => shelfLife.elapsedMinutes(g.from_at, g.to_at),
};

const CODES: Record<string, Adapter> = {
  is_lot_code: (g) => codes.isLotCode(g.text),
  lot_code: (g) => codes.lotCode(g.letters, g),
  next_number: (g) => codes.nextNumber(g.codes, g.letters, g),
  letters_of: (g) => codes.lettersOf(g.name),
};

export const ADAPTERS: Adapters = {
  numbers: NUMBERS,
  units: UNITS,
  temperature: TEMPERATURE,
  density: DENSITY,
  readings: READINGS,
  recipes: RECIPES,
  balance: BALANCE,
  shelf_life: SHELF_LIFE,
  codes: CODES,
  ...STATISTICS,
  ...BENCH,
  ...CHECKS,
  ...NET,
  ...INSTRUMENTS,
  ...SKILLS,
  ...HEAT,
  ...COSTS,
  ...RECIPES_WRITTEN,
  ...FOLDS,
  ...INSTRUMENT_FOLDS,
  ...MONEY,
  ...HOLDS,
  batch_lines: { ...FOLDS.batch_lines, ...MORE.batch_lines },
  batch_steps: { ...FOLDS.batch_steps, ...MORE.batch_steps },
};

/** What the function says, in the shape of a vector's `then`. A refusal is a RangeError. */
export function answerTo(file: string, name: string, given: Given): unknown {
  const adapter = ADAPTERS[file]?.[name];
  if (adapter === undefined) throw new Error(`no adapter for ${file}.${name}`);
  try {
    return { [name]: adapter(given) };
  } catch (refused) {
    if (refused instanceof RangeError) return { is_refused: true };
    throw refused;
  }
}

/** The name a TypeScript function has in Python and in the vectors. */
export function snakeCase(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

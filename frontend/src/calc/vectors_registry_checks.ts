/**
 * How each function about checking instruments is called; the twin of
 * tests/calc/registry_checks.py, where the short forms of a vector are told.
 */

import * as checks from "./checks.ts";
import * as limits from "./limits.ts";
import * as minimumWeight from "./minimum_weight.ts";
import { plain, significant, written } from "./numbers.ts";
import * as phChecks from "./ph_checks.ts";
import type { Doubt } from "./readings.ts";
import * as scaleChecks from "./scale_checks.ts";
import * as thermometerChecks from "./thermometer_checks.ts";
import type { Adapters, Given } from "./vectors_registry.ts";
import { citedJson, d, dec, ds, limitJson, p, shown, w } from "./vectors_registry_answers.ts";
import { writtenCheck } from "./vectors_registry_written.ts";
import * as vesselChecks from "./vessel_checks.ts";
import * as water from "./water.ts";

function doubtIn(given: Given): Doubt | null {
  return given === null ? null : { u: Number(given.u), degrees: given.degrees };
}

function doubtJson(doubt: Doubt | null, g: Given) {
  return doubt && { u: significant(doubt.u, g.digits), degrees: doubt.degrees };
}

function citedOf(g: Given): limits.Cited[] {
  return g.bases.map((basis: string) => ({ what: "figure", source: "a book", basis, note: "" }));
}

function lineOf(given: Given): minimumWeight.LineToWeigh {
  return {
    target: dec(given.target),
    below: d(given.below),
    above: d(given.above),
    tare: d(given.tare),
    accuracy_percent: d(given.accuracy_percent),
  };
}

function weigherOf(given: Given): minimumWeight.Weigher {
  return {
    instrument: given.instrument,
    state: given.state ?? "fit",
    division: d(given.division),
    capacity: d(given.capacity),
    repeatability: d(given.repeatability),
  };
}

function pointOf(given: Given): checks.Point {
  const measured = {
    step: given.step ?? 0,
    sort: given.sort ?? "rising",
    value: dec(given.value),
    reference: dec(given.reference),
    doubt: doubtIn(given.doubt),
  };
  const amount = d(given.limit);
  return checks.judged(measured, amount === null ? null : { amount, cited: [] });
}

function scaleOf({ scale }: Given): scaleChecks.Scale {
  return {
    accuracy_class: scale.accuracy_class ?? null,
    rules: scale.rules ?? "r76_in_service",
    division: d(scale.division),
    e: d(scale.e),
    capacity: d(scale.capacity),
    repeatability: d(scale.repeatability),
  };
}

const scaleResult = (g: Given) => scaleChecks.scaleCheck(scaleOf(g), g.steps);

function vesselOf({ vessel }: Given): vesselChecks.Vessel {
  return {
    sort: vessel.sort,
    capacity_mL: dec(vessel.capacity_mL),
    cylinder_class: vessel.cylinder_class ?? null,
  };
}

function boilingJson(point: thermometerChecks.BoilingPoint) {
  const { celsius, tolerance, cited } = point;
  return { celsius: written(celsius), tolerance: written(tolerance), ...citedJson(cited) };
}

function meterOf(given: Given) {
  return {
    division: d(given.division),
    repeatability: d(given.repeatability),
    allowed_error: d(given.allowed_error),
  };
}

const LIMITS: Adapters[string] = {
  leans_on_memory: (g) => limits.leansOnMemory(citedOf(g)),
  is_disputed: (g) => limits.isDisputed(citedOf(g)),
  scale_error_limit: (g) => {
    const scale = { e: dec(g.e), accuracy_class: g.accuracy_class };
    return limitJson(limits.scaleErrorLimit(dec(g.load), scale, g.when));
  },
  division_tolerance: (g) => {
    const scale = { division: dec(g.division), accuracy_class: g.accuracy_class };
    return limitJson(limits.divisionTolerance(dec(g.load), scale));
  },
  scale_class: (g) => {
    const found = limits.scaleClass(dec(g.capacity), dec(g.division));
    if (found === null) return null;
    const { accuracy_class, divisions, cited } = found;
    return { accuracy_class, divisions: written(divisions), ...citedJson(cited) };
  },
  mass_tolerance: (g) => limitJson(limits.massTolerance(dec(g.nominal_g), g.weight_class)),
  measure_limit: (g) => limitJson(limits.measureLimit(dec(g.nominal), g.sort)),
  cylinder_limit: (g) => limitJson(limits.cylinderLimit(dec(g.capacity_mL), g.cylinder_class)),
};

const WATER: Adapters[string] = {
  water_density: (g) => {
    const { kg_per_m3, cited } = water.waterDensity(dec(g.celsius));
    return { kg_per_m3: written(kg_per_m3), ...citedJson(cited) };
  },
  mass_of_water: (g) => written(water.massOfWater(dec(g.volume_mL), dec(g.celsius))),
  millilitres_per_gram: (g) => written(water.millilitresPerGram(dec(g.celsius), g.places)),
  held_volume: (g) => {
    const held = water.heldVolume(
      ds(g.masses),
      { celsius: dec(g.celsius), celsius_u: Number(g.celsius_u) },
      { division: dec(g.division), readings: g.readings, repeatability: d(g.repeatability) },
    );
    return { volume: written(held.volume), ...doubtJson(held.doubt, g) };
  },
  error_percent: (g) => written(water.errorPercent(dec(g.value), dec(g.nominal), g.places)),
};

const MINIMUM_WEIGHT: Adapters[string] = {
  minimum_weight: (g) => {
    const scale = { division: dec(g.division), repeatability: d(g.repeatability) };
    const least = minimumWeight.minimumWeight(scale, dec(g.accuracy_percent));
    return { amount: plain(least.amount), ...citedJson(least.cited) };
  },
  weighs: (g) => {
    const said = minimumWeight.weighs(lineOf(g.line), weigherOf(g.weigher));
    const band = said.guard_band;
    return {
      answer: said.answer,
      guard_band: band === null ? null : significant(band, g.digits),
      minimum_weight: p(said.minimum_weight),
    };
  },
  proposed: (g) => minimumWeight.proposed(lineOf(g.line), g.weighers.map(weigherOf)),
};

const COMMON_CHECKS: Adapters[string] = {
  readings_in: (g) => checks.readingsIn(g.step).map(plain),
  reading_doubt: (g) => {
    const known = {
      division: d(g.division),
      spread: doubtIn(g.spread),
      tolerance: d(g.tolerance),
    };
    return doubtJson(checks.readingDoubt(ds(g.readings), known), g);
  },
  judged: (g) => {
    const { error, verdict } = pointOf(g);
    return { error: written(error), verdict };
  },
  summed_up: (g) => {
    const points = g.points.map((each: Given, step: number) => pointOf({ ...each, step }));
    const result = checks.summedUp(points, { repeatability: null, hysteresis: null });
    return shown(writtenCheck(result, g.digits), g);
  },
  cited_in: (g) => citedJson(checks.citedIn(scaleResult(g))),
};

const SCALE_CHECKS: Adapters[string] = {
  scale_limit: (g) => limitJson(scaleChecks.scaleLimit(scaleOf(g), dec(g.load))),
  scale_check: (g) => shown(writtenCheck(scaleResult(g), g.digits), g),
};

const VESSEL_CHECKS: Adapters[string] = {
  vessel_limit: (g) => limitJson(vesselChecks.vesselLimit(vesselOf(g), dec(g.graduation))),
  vessel_check: (g) => {
    const result = vesselChecks.vesselCheck(vesselOf(g), g.steps);
    return shown(writtenCheck(result, g.digits), g);
  },
};

const THERMOMETER_CHECKS: Adapters[string] = {
  boiling_point_at_altitude: (g) =>
    boilingJson(thermometerChecks.boilingPointAtAltitude(dec(g.altitude_m))),
  boiling_point_at_pressure: (g) =>
    boilingJson(thermometerChecks.boilingPointAtPressure(dec(g.pressure_hPa))),
  thermometer_check: (g) => {
    const result = thermometerChecks.thermometerCheck(meterOf(g.thermometer), g.steps);
    return shown(writtenCheck(result, g.digits), g);
  },
};

const PH_CHECKS: Adapters[string] = {
  ph_check: (g) => {
    const said = phChecks.phCheck(meterOf(g.meter), g.steps);
    const figures = {
      offset: p(said.offset),
      span_percent: p(said.span_percent),
      slope_percent: p(said.slope_percent),
    };
    return shown({ ...writtenCheck(said.result, g.digits), ...figures }, g);
  },
  slope_percent: (g) => w(phChecks.slopePercent(g.steps)),
};

export const CHECKS: Adapters = {
  limits: LIMITS,
  water: WATER,
  minimum_weight: MINIMUM_WEIGHT,
  checks: COMMON_CHECKS,
  scale_checks: SCALE_CHECKS,
  vessel_checks: VESSEL_CHECKS,
  thermometer_checks: THERMOMETER_CHECKS,
  ph_checks: PH_CHECKS,
};

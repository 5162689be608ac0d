/**
 * How the functions about heat and cold are called with what a vector gives; the twin of
 * tests/calc/registry_heat.py, where the forms of a vector are told.
 */

import * as cooling from "./cooling.ts";
import { judgedLog } from "./heat_judged.ts";
import * as heatLogs from "./heat_logs.ts";
import * as holding from "./holding.ts";
import * as lethality from "./lethality.ts";
import type { Cited } from "./limits.ts";
import * as loggerCells from "./logger_cells.ts";
import { loggerLog } from "./logger_files.ts";
import * as loggerTimes from "./logger_times.ts";
import { type Decimal, parseDecimal, significant, written } from "./numbers.ts";
import { processLimit } from "./process_limits.ts";
import type { Adapters, Given } from "./vectors_registry.ts";

const dec = (text: string): Decimal => parseDecimal(text);
const w = (x: Decimal | null): string | null => (x === null ? null : written(x));

function logOf(g: Given): heatLogs.HeatLog {
  return heatLogs.heatLog(
    g.rows.map((row: [number, string]) => row[0]),
    g.rows.map((row: [number, string]) => row[1]),
    g.unit,
  );
}

function picked(made: object, g: Given): object {
  if (!g.show) return made;
  return Object.fromEntries(Object.entries(made).filter(([name]) => g.show.includes(name)));
}

const cited = (each: Cited): string => `${each.what}: ${each.basis}`;
const gapsJson = (found: readonly heatLogs.Gap[]) => found.map((gap) => [gap.from_s, gap.to_s]);

function referenceFor(g: Given): lethality.Reference {
  if ("use" in g) return lethality.referenceOf(g.use);
  const own = { z: dec(g.own.z), unit: g.own.unit };
  return lethality.ownReference(dec(g.own.t_ref), own);
}

function referenceJson(reference: lethality.Reference | null) {
  if (reference === null) return null;
  return {
    t_ref: written(reference.t_ref),
    z: written(reference.z),
    unit: reference.unit,
    base: w(reference.base),
    needed_min: w(reference.needed_min),
    cited: reference.cited.map(cited),
  };
}

function lethalityJson(found: lethality.Lethality, g: Given) {
  return {
    minutes: significant(found.minutes, g.digits),
    bridged_min: significant(found.bridged_min, g.digits),
    gaps: gapsJson(found.gaps),
    contradicted_count: found.contradicted_count,
    reference: referenceJson(found.reference),
  };
}

const lethalityFor = (g: Given) =>
  lethality.lethality(logOf(g), referenceFor(g), g.longest_s ?? heatLogs.GAP_S);

function sterilizing(g: Given) {
  const found = lethality.sterilizingValue(logOf(g));
  return {
    at_121_1: picked(lethalityJson(found.at_121_1, g), g),
    at_250_f: picked(lethalityJson(found.at_250_f, g), g),
  };
}

function fiveLog(g: Given) {
  const found = lethality.fiveLog(logOf(g), dec(g.ph));
  return (
    found && {
      lethality: picked(lethalityJson(found.lethality, g), g),
      log_reduction: significant(found.log_reduction, g.digits),
    }
  );
}

const heldAt = (g: Given): lethality.Held => ({ temperature: dec(g.temperature), unit: g.unit });

function stageJson(stage: cooling.Stage) {
  return {
    ...stage,
    end_celsius: written(stage.end_celsius),
    limit_min: written(stage.limit_min),
    minutes: w(stage.minutes),
    at_least_min: w(stage.at_least_min),
    at_most_min: w(stage.at_most_min),
    cited: cited(stage.cited),
  };
}

function coolingJson(found: cooling.Cooling, g: Given) {
  return { ...found, stages: found.stages.map((stage) => picked(stageJson(stage), g)) };
}

function holdingJson(g: Given) {
  const found = holding.holdingOf(logOf(g), g.sort, g.longest_s ?? holding.HOLD_GAP_S);
  return {
    ...found,
    outside: found.outside.map((each) => [
      each.from_s,
      each.to_s,
      significant(each.worst, g.digits),
    ]),
    outside_min: significant(found.outside_min, g.digits),
    gaps: gapsJson(found.gaps),
    cited: cited(found.cited),
  };
}

function timeControl(g: Given) {
  const found = holding.timeControl(logOf(g), g.sort, g);
  return { ...found, cited: cited(found.cited) };
}

function loggerJson(g: Given) {
  const made = loggerLog(g.text, g.asked);
  return "key" in made ? made : picked(made, g);
}

const momentsOf = (g: Given): loggerTimes.Moment[] =>
  g.texts.map(loggerTimes.momentOf).filter((each: loggerTimes.Moment | null) => each !== null);

function fits(g: Given): boolean {
  const [moment, other] = momentsOf(g);
  if (moment === undefined || other === undefined) throw new Error("two times are given");
  return loggerTimes.fits(moment, other);
}

export const HEAT: Adapters = {
  logger_cells: {
    delimiter_of: (g) => loggerCells.delimiterOf(g.lines),
    cells_of: (g) => loggerCells.cellsOf(g.line, g.delimiter),
    number_of: (g) => loggerCells.numberOf(g.cell),
    heat_of: (g) => loggerCells.heatOf(g.cell),
  },
  logger_times: {
    moment_of: (g) => loggerTimes.momentOf(g.text),
    fits,
    together: (g) => loggerTimes.together(momentsOf(g)),
    is_day_known: (g) => loggerTimes.isDayKnown(momentsOf(g)),
    written_time: (g) => loggerTimes.writtenTime(g.second),
  },
  logger_files: { logger_log: loggerJson },
  heat_logs: {
    heat_log: logOf,
    log_in: (g) => heatLogs.logIn(g.body),
    in_thousandths: (g) => heatLogs.inThousandths(g.text),
    limit_in_thousandths: (g) => heatLogs.limitInThousandths(dec(g.celsius), g.unit),
    gaps: (g) => gapsJson(heatLogs.gaps(logOf(g), g.longest_s)),
    degrees_at: (g) =>
      heatLogs.degreesAt(logOf(g), g.row).map((each) => significant(each, g.digits)),
    outline: (g) => heatLogs.outline(logOf(g), g.columns),
  },
  heat_judged: { judged_log: (g) => picked(judgedLog(g.body), g) },
  process_limits: { process_limit: (g) => processLimit(g.key) },
  lethality: {
    reference_of: (g) => referenceJson(lethality.referenceOf(g.use)),
    own_reference: (g) => referenceJson(referenceFor(g)),
    acidified_reference: (g) => referenceJson(lethality.acidifiedReference(dec(g.ph))),
    lethal_rate: (g) => significant(lethality.lethalRate(heldAt(g), referenceFor(g)), g.digits),
    lethality: (g) => picked(lethalityJson(lethalityFor(g), g), g),
    lethality_so_far: (g) =>
      lethality
        .lethalitySoFar(logOf(g), referenceFor(g), g.longest_s ?? heatLogs.GAP_S)
        .map((each) => significant(each, g.digits)),
    sterilizing_value: sterilizing,
    five_log: fiveLog,
    equivalent_minutes: (g) =>
      significant(
        lethality.equivalentMinutes(dec(g.minutes), heldAt(g), referenceFor(g)),
        g.digits,
      ),
    minutes_at: (g) =>
      significant(lethality.minutesAt(dec(g.reference_min), heldAt(g), referenceFor(g)), g.digits),
    log_reduction: (g) =>
      significant(lethality.logReduction(Number(g.minutes), dec(g.d_min)), g.digits),
    minutes_of_equal_steps: (g) =>
      significant(lethality.minutesOfEqualSteps(dec(g.rate_sum), dec(g.step_min)), g.digits),
    written_lethality: (g) => lethality.writtenLethality(lethalityFor(g), g.digits),
  },
  cooling: {
    two_stage_cooling: (g) => coolingJson(cooling.twoStageCooling(logOf(g)), g),
    one_stage_cooling: (g) => coolingJson(cooling.oneStageCooling(logOf(g), g.rule, g.begin_s), g),
    cooling_row: (g) => cooling.coolingRow(g.rule),
  },
  holding: { holding_of: holdingJson, time_control: timeControl },
};

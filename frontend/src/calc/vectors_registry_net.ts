/** How each function about net content is called; the twin of tests/calc/registry_net.py. */

import * as fillTrust from "./fill_trust.ts";
import * as fills from "./fills.ts";
import * as netBatches from "./net_batches.ts";
import * as netContent from "./net_content.ts";
import * as netLimits from "./net_limits.ts";
import * as netPacks from "./net_packs.ts";
import { plain, significant, written } from "./numbers.ts";
import type { Adapters, Given } from "./vectors_registry.ts";
import { citedJson, d, dec, ds, limitJson, shown, w } from "./vectors_registry_answers.ts";
import { entriesOf, statesOf } from "./vectors_registry_folds.ts";
import { writtenBatchResult, writtenPackResult } from "./vectors_registry_written.ts";

function moistureOf(given: Given): netPacks.Moisture {
  return { percent: dec(given.percent), places: given.places, taken: given.taken };
}

function trustedFill(g: Given): object {
  const { happened_at } = g;
  const instruments = statesOf(g.instruments);
  const { fill, trust } = fillTrust.trustedFill(g.body, { happened_at, instruments });
  return { fill: shown(fill, g), trust };
}

function packResult(g: Given): object {
  const result = netPacks.categoryA({
    label: dec(g.label),
    column: g.column ?? "g",
    tares: ds(g.tares),
    gross: ds(g.gross),
    lot_size: g.lot_size,
    division: d(g.division),
    moisture: g.moisture == null ? null : moistureOf(g.moisture),
  });
  return shown(writtenPackResult(result, g.digits), g);
}

function batchResult(g: Given): object {
  const result = netBatches.batchCheck({
    nominal: dec(g.nominal),
    contents: ds(g.contents),
    batch_size: g.batch_size,
    rules: g.rules ?? "arrete_1978",
    is_destructive: g.is_destructive ?? false,
    division: d(g.division),
  });
  return shown(writtenBatchResult(result, g.digits), g);
}

const NET_LIMITS: Adapters[string] = {
  maximum_allowable_variation: (g) =>
    limitJson(netLimits.maximumAllowableVariation(dec(g.label_g), g.column)),
  pack_division: (g) => limitJson(netLimits.packDivision(dec(g.label_g), g.column)),
  pack_division_eu: (g) => limitJson(netLimits.packDivisionEu(dec(g.nominal))),
  pack_plan: (g) => {
    const { cited, factor, ...plan } = netLimits.packPlan(g.lot_size);
    return { ...plan, factor: w(factor), ...citedJson(cited) };
  },
  tolerable_shortage: (g) => limitJson(netLimits.tolerableShortage(dec(g.nominal))),
  batch_plan: (g) => {
    const plan = netLimits.batchPlan(g.batch_size, g.rules, g.is_destructive);
    return {
      first: [plan.sample_size, plan.accept_at_most, plan.reject_at_least],
      second: [
        plan.second_cumulative_size,
        plan.second_accept_at_most,
        plan.second_reject_at_least,
      ],
      mean: [plan.mean_sample_size, written(plan.mean_factor)],
      ...citedJson(plan.cited),
    };
  },
};

const NET_CONTENT: Adapters[string] = {
  larger_declaration: (g) => {
    const declared = netContent.largerDeclaration(
      g.declarations.map(([amount, unit]: [string, string]) => [dec(amount), unit]),
    );
    return { position: declared.position, in_base: plain(declared.in_base) };
  },
  nominal_gross: (g) => plain(netContent.nominalGross(dec(g.label), ds(g.tares))),
  package_errors: (g) => netContent.packageErrors(ds(g.gross), dec(g.nominal)).map(plain),
  in_measure_units: (g) =>
    written(netContent.inMeasureUnits(dec(g.error), dec(g.unit_of_measure), g.places)),
  net_verdict: (g) => netContent.netVerdict(g.reasons),
};

const NET_PACKS: Adapters[string] = {
  moisture_allowance: (g) =>
    written(netPacks.moistureAllowance(dec(g.label), moistureOf(g.moisture))),
  sample_error_limit: (g) =>
    significant(netPacks.sampleErrorLimit(Number(g.sd), dec(g.factor)), g.digits),
  category_a: packResult,
};

const NET_BATCHES: Adapters[string] = {
  batch_check: batchResult,
};

export const NET: Adapters = {
  net_limits: NET_LIMITS,
  net_content: NET_CONTENT,
  net_packs: NET_PACKS,
  net_batches: NET_BATCHES,
  fills: { fill_of: (g) => shown(fills.fillOf(g.body), g) },
  fill_trust: {
    trusted_fill: trustedFill,
    fill_checks: (g) => fillTrust.fillChecks(entriesOf(g), g.code, statesOf(g.instruments)),
    failed_scales: (g) => fillTrust.failedScales(g.fills),
  },
};

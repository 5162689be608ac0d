/**
 * How the functions about instruments and what leans on them are called; the twin of
 * tests/calc/registry_instruments.py, where the short forms of a vector are told.
 */

import { failedInstruments } from "./batch_doubts.ts";
import type { Correction } from "./calibration.ts";
import type { CheckResult } from "./checks.ts";
import { decidingCheck } from "./deciding.ts";
import { heatResults } from "./heat_results.ts";
import { trustedLog } from "./heat_trust.ts";
import * as instrumentChecks from "./instrument_checks.ts";
import { instrumentState } from "./instruments.ts";
import { significant, written } from "./numbers.ts";
import * as trusted from "./trusted.ts";
import type { Adapters, Given } from "./vectors_registry.ts";
import {
  doubtJson,
  entriesOf,
  fold,
  linesOf,
  logsOf,
  picked,
  statesOf,
  stepsOf,
  weighingJson,
} from "./vectors_registry_folds.ts";
import { writtenCheck } from "./vectors_registry_written.ts";

const U_DIGITS = 4;

const resultOf = (g: Given): CheckResult => instrumentChecks.checkResult(g.sort, g.body, g.fields);

function checkResult(g: Given): object {
  const made = writtenCheck(resultOf(g), U_DIGITS);
  return g.show ? picked({ ...made }, g.show) : made;
}

function trustedLogJson(g: Given): object {
  const { happened_at, instruments } = g;
  const made = trustedLog(g.body, { happened_at, instruments: statesOf(instruments) });
  return g.show ? picked({ ...made }, g.show) : made;
}

function failedFor(g: Given): object {
  const [heat] = heatResults(entriesOf(g), logsOf(g));
  return failedInstruments(linesOf(g), stepsOf(g), heat);
}

function lineJson(found: Correction | null, g: Given): object | null {
  if (found === null) return null;
  const made = instrumentChecks.writtenCorrection(found, g.unit ?? null);
  return g.show ? picked({ ...made }, g.show) : made;
}

const errorFound = (g: Given) => lineJson(instrumentChecks.errorFound(g.body, resultOf(g)), g);

function trustedOf(g: Given): trusted.TrustedReading | null {
  const { happened_at } = g;
  return trusted.trustedReading(g.body, { happened_at, instruments: statesOf(g.instruments) });
}

function trustedJson(g: Given): object | null {
  const made = trustedOf(g);
  if (made === null) return null;
  const { calibration_u, moves } = made;
  return {
    read: weighingJson(made.read),
    value: written(made.value),
    doubt: doubtJson(made.doubt),
    calibration_u: calibration_u === null ? null : significant(calibration_u, U_DIGITS),
    found_by: made.found_by,
    is_extrapolated: made.is_extrapolated,
    failed_by: made.failed_by,
    moves: moves === null ? null : written(moves),
  };
}

function meantJson(g: Given): object | null {
  const made = trustedOf(g);
  return made === null ? null : weighingJson(trusted.meant(made, g.is_moved));
}

/** Sums: the twins are asked them at random, too. */
export const INSTRUMENTS: Adapters = {
  instrument_checks: {
    check_result: checkResult,
    checked_unit: (g) => instrumentChecks.checkedUnit(g.sort, g.body),
    correction_found: (g) => lineJson(instrumentChecks.correctionFound(g.body, resultOf(g)), g),
    error_found: errorFound,
    written_points: (g) => instrumentChecks.writtenPoints(resultOf(g), g.body),
    written_correction: errorFound,
  },
  trusted: {
    trusted_reading: trustedJson,
    meant: meantJson,
    written_trust: (g) => trusted.writtenTrust(trustedOf(g)),
  },
  heat_trust: { trusted_log: trustedLogJson },
};

export const INSTRUMENT_FOLDS: Adapters = {
  instruments: { instrument_state: fold(instrumentState) },
  deciding: { deciding_check: (g) => decidingCheck(g.checks, g.doubts)?.entry ?? null },
  batch_doubts: { failed_instruments: failedFor },
};

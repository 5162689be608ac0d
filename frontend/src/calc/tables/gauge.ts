// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

/** Constants for n trials, people and items. Sources: gauge_study_constants.csv. */
export interface GaugeRow {
  readonly n: number;
  readonly k1: number;
  readonly k2: number;
  readonly k3: number;
}

export const GAUGE_ROWS: readonly GaugeRow[] = [
  {"n": 2, "k1": 0.8862, "k2": 0.7071, "k3": 0.7071},
  {"n": 3, "k1": 0.5908, "k2": 0.5231, "k3": 0.5231},
  {"n": 4, "k1": 0.4857, "k2": 0.4467, "k3": 0.4467},
  {"n": 5, "k1": 0.4299, "k2": 0.403, "k3": 0.403},
  {"n": 6, "k1": 0.3946, "k2": 0.3742, "k3": 0.3742},
  {"n": 7, "k1": 0.3698, "k2": 0.3534, "k3": 0.3534},
  {"n": 8, "k1": 0.3512, "k2": 0.3375, "k3": 0.3375},
  {"n": 9, "k1": 0.3367, "k2": 0.3249, "k3": 0.3249},
  {"n": 10, "k1": 0.3249, "k2": 0.3146, "k3": 0.3146},
];

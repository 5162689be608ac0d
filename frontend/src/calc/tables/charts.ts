// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

/** Constants for subgroups of n readings. Sources: control_chart_constants.csv. */
export interface ChartRow {
  readonly n: number;
  readonly d2: number;
  readonly a2: number;
  readonly d3_low: number;
  readonly d4_high: number;
  readonly e2: number;
}

export const CHART_ROWS: readonly ChartRow[] = [
  {"n": 2, "d2": 1.1284, "a2": 1.88, "d3_low": 0.0, "d4_high": 3.2665, "e2": 2.6587},
  {"n": 3, "d2": 1.6926, "a2": 1.0233, "d3_low": 0.0, "d4_high": 2.5746, "e2": 1.7725},
  {"n": 4, "d2": 2.0588, "a2": 0.7286, "d3_low": 0.0, "d4_high": 2.2821, "e2": 1.4572},
  {"n": 5, "d2": 2.3259, "a2": 0.5768, "d3_low": 0.0, "d4_high": 2.1145, "e2": 1.2898},
  {"n": 6, "d2": 2.5344, "a2": 0.4832, "d3_low": 0.0, "d4_high": 2.0038, "e2": 1.1837},
  {"n": 7, "d2": 2.7044, "a2": 0.4193, "d3_low": 0.0757, "d4_high": 1.9243, "e2": 1.1093},
  {"n": 8, "d2": 2.8472, "a2": 0.3725, "d3_low": 0.1362, "d4_high": 1.8638, "e2": 1.0537},
  {"n": 9, "d2": 2.97, "a2": 0.3367, "d3_low": 0.184, "d4_high": 1.816, "e2": 1.0101},
  {"n": 10, "d2": 3.0775, "a2": 0.3083, "d3_low": 0.223, "d4_high": 1.777, "e2": 0.9748},
];

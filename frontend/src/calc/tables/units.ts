// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

export type Dimension = "mass" | "volume" | "count" | "temperature";

export interface UnitRow {
  readonly code: string;
  readonly dimension: Dimension;
  /** Exact decimal; null for temperatures, which are not factors. Sources: units.csv. */
  readonly in_base: string | null;
}

export const UNIT_ROWS: readonly UnitRow[] = [
  {"code": "mL", "dimension": "volume", "in_base": "1"},
  {"code": "L", "dimension": "volume", "in_base": "1000"},
  {"code": "us_gal", "dimension": "volume", "in_base": "3785.411784"},
  {"code": "us_qt", "dimension": "volume", "in_base": "946.352946"},
  {"code": "us_pt", "dimension": "volume", "in_base": "473.176473"},
  {"code": "us_cup", "dimension": "volume", "in_base": "236.5882365"},
  {"code": "us_floz", "dimension": "volume", "in_base": "29.5735295625"},
  {"code": "us_tbsp", "dimension": "volume", "in_base": "14.78676478125"},
  {"code": "us_tsp", "dimension": "volume", "in_base": "4.92892159375"},
  {"code": "us_gill", "dimension": "volume", "in_base": "118.29411825"},
  {"code": "us_fldr", "dimension": "volume", "in_base": "3.6966911953125"},
  {"code": "us_bu", "dimension": "volume", "in_base": "35239.07016688"},
  {"code": "us_pk", "dimension": "volume", "in_base": "8809.76754172"},
  {"code": "us_dry_qt", "dimension": "volume", "in_base": "1101.220942715"},
  {"code": "us_dry_pt", "dimension": "volume", "in_base": "550.6104713575"},
  {"code": "fda_cup", "dimension": "volume", "in_base": "240"},
  {"code": "fda_floz", "dimension": "volume", "in_base": "30"},
  {"code": "fda_tbsp", "dimension": "volume", "in_base": "15"},
  {"code": "fda_tsp", "dimension": "volume", "in_base": "5"},
  {"code": "metric_cup", "dimension": "volume", "in_base": "250"},
  {"code": "metric_tbsp", "dimension": "volume", "in_base": "15"},
  {"code": "metric_tsp", "dimension": "volume", "in_base": "5"},
  {"code": "au_tbsp", "dimension": "volume", "in_base": "20"},
  {"code": "imp_gal", "dimension": "volume", "in_base": "4546.09"},
  {"code": "imp_qt", "dimension": "volume", "in_base": "1136.5225"},
  {"code": "imp_pt", "dimension": "volume", "in_base": "568.26125"},
  {"code": "imp_floz", "dimension": "volume", "in_base": "28.4130625"},
  {"code": "imp_cup", "dimension": "volume", "in_base": "284.130625"},
  {"code": "mg", "dimension": "mass", "in_base": "0.001"},
  {"code": "g", "dimension": "mass", "in_base": "1"},
  {"code": "kg", "dimension": "mass", "in_base": "1000"},
  {"code": "lb", "dimension": "mass", "in_base": "453.59237"},
  {"code": "oz", "dimension": "mass", "in_base": "28.349523125"},
  {"code": "gr", "dimension": "mass", "in_base": "0.06479891"},
  {"code": "fda_oz", "dimension": "mass", "in_base": "28"},
  {"code": "degF", "dimension": "temperature", "in_base": null},
  {"code": "K", "dimension": "temperature", "in_base": null},
  {"code": "delta_degF", "dimension": "temperature", "in_base": null},
  {"code": "degC", "dimension": "temperature", "in_base": null},
  {"code": "delta_degC", "dimension": "temperature", "in_base": null},
  {"code": "pc", "dimension": "count", "in_base": "1"},
];

// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

export type Dimension = "mass" | "volume" | "count" | "temperature";

export interface UnitRow {
  readonly code: string;
  readonly name: string;
  readonly dimension: Dimension;
  readonly system: string;
  /** Exact decimal; null for temperatures, which are not factors. */
  readonly in_base: string | null;
  readonly source: string;
  readonly basis: string;
}

export const UNIT_ROWS: readonly UnitRow[] = [
  {"code": "mL", "name": "millilitre", "dimension": "volume", "system": "SI-accepted", "in_base": "1", "source": "NIST SP 811 (2008) App. B.8 note; NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "L", "name": "litre", "dimension": "volume", "system": "SI-accepted", "in_base": "1000", "source": "NIST SP 811 (2008) App. B.8; NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "us_gal", "name": "US liquid gallon", "dimension": "volume", "system": "US customary", "in_base": "3785.411784", "source": "NIST HB 44 App. C (2014); NIST SP 811 (2008) App. B.8", "basis": "read"},
  {"code": "us_qt", "name": "US liquid quart", "dimension": "volume", "system": "US customary", "in_base": "946.352946", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "us_pt", "name": "US liquid pint", "dimension": "volume", "system": "US customary", "in_base": "473.176473", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "us_cup", "name": "US measuring cup", "dimension": "volume", "system": "US customary", "in_base": "236.5882365", "source": "NIST HB 44 App. C (2014); NIST SP 1038 (2006) sec. 5 n.19", "basis": "read"},
  {"code": "us_floz", "name": "US fluid ounce", "dimension": "volume", "system": "US customary", "in_base": "29.5735295625", "source": "NIST HB 44 App. C (2014); NIST SP 811 (2008) App. B.8", "basis": "read"},
  {"code": "us_tbsp", "name": "US tablespoon", "dimension": "volume", "system": "US customary", "in_base": "14.78676478125", "source": "NIST HB 44 App. C (2014); NIST SP 811 (2008) App. B.8; NIST SP 1038 (2006) sec. 5 n.19", "basis": "read"},
  {"code": "us_tsp", "name": "US teaspoon", "dimension": "volume", "system": "US customary", "in_base": "4.92892159375", "source": "NIST HB 44 App. C (2014); NIST SP 811 (2008) App. B.8; NIST SP 1038 (2006) sec. 5 n.19", "basis": "read"},
  {"code": "us_gill", "name": "US gill", "dimension": "volume", "system": "US customary", "in_base": "118.29411825", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "us_fldr", "name": "US fluid dram", "dimension": "volume", "system": "US customary", "in_base": "3.6966911953125", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "us_bu", "name": "US bushel (dry)", "dimension": "volume", "system": "US dry", "in_base": "35239.07016688", "source": "NIST HB 44 App. C (2014); 21 CFR 101.7(b)(3)", "basis": "read"},
  {"code": "us_pk", "name": "US peck (dry)", "dimension": "volume", "system": "US dry", "in_base": "8809.76754172", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "us_dry_qt", "name": "US dry quart", "dimension": "volume", "system": "US dry", "in_base": "1101.220942715", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "us_dry_pt", "name": "US dry pint", "dimension": "volume", "system": "US dry", "in_base": "550.6104713575", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "fda_cup", "name": "cup for US nutrition labels", "dimension": "volume", "system": "US FDA label", "in_base": "240", "source": "21 CFR 101.9(b)(5)(viii)", "basis": "read"},
  {"code": "fda_floz", "name": "fluid ounce for US nutrition labels", "dimension": "volume", "system": "US FDA label", "in_base": "30", "source": "21 CFR 101.9(b)(5)(viii)", "basis": "read"},
  {"code": "fda_tbsp", "name": "tablespoon for US nutrition labels", "dimension": "volume", "system": "US FDA label", "in_base": "15", "source": "21 CFR 101.9(b)(5)(viii)", "basis": "read"},
  {"code": "fda_tsp", "name": "teaspoon for US nutrition labels", "dimension": "volume", "system": "US FDA label", "in_base": "5", "source": "21 CFR 101.9(b)(5)(viii)", "basis": "read"},
  {"code": "metric_cup", "name": "metric cup", "dimension": "volume", "system": "metric kitchen", "in_base": "250", "source": "SP 1038 n.19 (practical metric equivalent of the cup)", "basis": "read"},
  {"code": "metric_tbsp", "name": "metric tablespoon", "dimension": "volume", "system": "metric kitchen", "in_base": "15", "source": "SP 1038 n.19", "basis": "read"},
  {"code": "metric_tsp", "name": "metric teaspoon", "dimension": "volume", "system": "metric kitchen", "in_base": "5", "source": "SP 1038 n.19", "basis": "read"},
  {"code": "au_tbsp", "name": "Australian tablespoon", "dimension": "volume", "system": "metric kitchen (AU)", "in_base": "20", "source": "metric-association correspondence 2004 citing Australian practice", "basis": "read-secondary"},
  {"code": "imp_gal", "name": "imperial gallon", "dimension": "volume", "system": "imperial", "in_base": "4546.09", "source": "NIST SP 811 (2008) App. B.8", "basis": "read"},
  {"code": "imp_qt", "name": "imperial quart", "dimension": "volume", "system": "imperial", "in_base": "1136.5225", "source": "NIST HB 44 App. C (2014) (4 quarts = 1 gallon)", "basis": "read"},
  {"code": "imp_pt", "name": "imperial pint", "dimension": "volume", "system": "imperial", "in_base": "568.26125", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "imp_floz", "name": "imperial fluid ounce", "dimension": "volume", "system": "imperial", "in_base": "28.4130625", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "imp_cup", "name": "imperial cup (half imperial pint)", "dimension": "volume", "system": "imperial", "in_base": "284.130625", "source": "half an imperial pint (HB 44 App. C pint read; the cup itself recalled)", "basis": "memory"},
  {"code": "mg", "name": "milligram", "dimension": "mass", "system": "SI", "in_base": "0.001", "source": "SP 811", "basis": "read"},
  {"code": "g", "name": "gram", "dimension": "mass", "system": "SI", "in_base": "1", "source": "SP 811", "basis": "read"},
  {"code": "kg", "name": "kilogram", "dimension": "mass", "system": "SI", "in_base": "1000", "source": "SP 811", "basis": "read"},
  {"code": "lb", "name": "pound, avoirdupois", "dimension": "mass", "system": "US/imperial", "in_base": "453.59237", "source": "NIST HB 44 App. C (2014) (453.59237 g exactly)", "basis": "read"},
  {"code": "oz", "name": "ounce, avoirdupois", "dimension": "mass", "system": "US/imperial", "in_base": "28.349523125", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "gr", "name": "grain", "dimension": "mass", "system": "US/imperial", "in_base": "0.06479891", "source": "NIST HB 44 App. C (2014)", "basis": "read"},
  {"code": "fda_oz", "name": "ounce (weight) for US nutrition labels", "dimension": "mass", "system": "US FDA label", "in_base": "28", "source": "21 CFR 101.9(b)(5)(viii)", "basis": "read"},
  {"code": "degF", "name": "degree Fahrenheit (a temperature)", "dimension": "temperature", "system": "", "in_base": null, "source": "NIST SP 811 (2008) App. B.8", "basis": "read"},
  {"code": "K", "name": "kelvin (a temperature)", "dimension": "temperature", "system": "", "in_base": null, "source": "NIST SP 1038 n.33", "basis": "read"},
  {"code": "delta_degF", "name": "Fahrenheit interval (a difference)", "dimension": "temperature", "system": "", "in_base": null, "source": "NIST SP 811 (2008) App. B.8", "basis": "read"},
  {"code": "degC", "name": "degree Celsius (a temperature)", "dimension": "temperature", "system": "SI", "in_base": null, "source": "NIST SP 811 (2008) App. B.8; NIST SP 1038 (2006) n.33", "basis": "read"},
  {"code": "delta_degC", "name": "Celsius interval (a difference)", "dimension": "temperature", "system": "SI", "in_base": null, "source": "NIST SP 811 (2008) App. B.8", "basis": "read"},
  {"code": "pc", "name": "piece", "dimension": "count", "system": "", "in_base": "1", "source": "own definition, DEVELOPERS.md 4", "basis": "computed"},
];

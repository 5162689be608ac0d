// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

const TEXT_1 =
  "the printed table also has 5-9 C up to 30 %";
const TEXT_2 =
  "interstate standard (GOST) on refractometric dry matter, annex A Table A.1";
const TEXT_3 =
  "a different table from the OIV one (up to 0.04 apart at 10 C): do not mix within one instrument";
const TEXT_4 =
  "reference temperature 20 C: no correction (OIV-MA-AS2-02)";
const TEXT_5 =
  "OIV-MA-AS2-02 Table I, rows above 20 C";
const TEXT_6 =
  "not read; tolerance 0.03 at 25 C, 0.05 at 30 C. A quadratic through the read 10-17 C rows gives the same within 0.011 at 25 C and 0.053 (at 10 %), else 0.014, at 30 C";
const TEXT_7 =
  "quadratic in (t - 20) fitted to the read OIV rows 10-17 C at the same percent";
const TEXT_8 =
  "tolerance 0.03 at 25 C, 0.06 at 30 C; for jam, cool the sample to 20 C instead of trusting this";
const TEXT_9 =
  "chemistry: molar mass / protons";
const TEXT_10 =
  "read in verbatim quotation of the eCFR (2026), not in the rule itself";
const TEXT_11 =
  "comminuted;pumped;immersed;dry_cured";
const TEXT_12 =
  "skin-free green weight of the bellies";
const TEXT_13 =
  "comminuted;pumped;immersed;dry_cured;bacon_pumped;bacon_pumped_alternative;bacon_immersed;bacon_dry_cured";
const TEXT_14 =
  "bacon_pumped;bacon_pumped_alternative;bacon_immersed;bacon_dry_cured";
const TEXT_15 =
  "USDA Complete Guide values as printed in two pressure-canner manuals";
const TEXT_16 =
  "USDA Complete Guide values as printed in a canner booklet";
const TEXT_17 =
  "the USDA guide prints a time per product and band (0-1000, 1001-3000, 3001-6000, above 6000 ft) instead: use the product table when there is one";
const TEXT_18 =
  "Food Protection Trends 2014 p. 137 Table 4";
const TEXT_19 =
  "model = 5.6 x 10^((160 - temp_F)/16.7); agrees within 1.2 % from 141 to 165 F and within 0.06 min above (166 F: 2.45 against 2.5)";

export interface BrixRow {
  readonly scale: string;
  readonly temp_C: string;
  readonly measured_percent: string;
  readonly correction_percent: string;
  readonly tolerance: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const BRIX_ROWS: readonly BrixRow[] = [
  {scale: "oiv", temp_C: "10", measured_percent: "10", correction_percent: "-0.59", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "15", correction_percent: "-0.62", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "20", correction_percent: "-0.65", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "25", correction_percent: "-0.67", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "30", correction_percent: "-0.69", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "35", correction_percent: "-0.71", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "40", correction_percent: "-0.72", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "45", correction_percent: "-0.73", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "50", correction_percent: "-0.74", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "55", correction_percent: "-0.75", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "60", correction_percent: "-0.75", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "65", correction_percent: "-0.75", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "70", correction_percent: "-0.75", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "10", measured_percent: "75", correction_percent: "-0.75", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "10", correction_percent: "-0.54", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "15", correction_percent: "-0.57", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "20", correction_percent: "-0.59", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "25", correction_percent: "-0.61", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "30", correction_percent: "-0.63", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "35", correction_percent: "-0.64", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "40", correction_percent: "-0.65", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "45", correction_percent: "-0.66", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "50", correction_percent: "-0.67", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "55", correction_percent: "-0.68", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "60", correction_percent: "-0.68", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "65", correction_percent: "-0.68", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "70", correction_percent: "-0.68", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "11", measured_percent: "75", correction_percent: "-0.67", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "10", correction_percent: "-0.49", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "15", correction_percent: "-0.51", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "20", correction_percent: "-0.53", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "25", correction_percent: "-0.55", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "30", correction_percent: "-0.56", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "35", correction_percent: "-0.57", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "40", correction_percent: "-0.58", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "45", correction_percent: "-0.59", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "50", correction_percent: "-0.60", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "55", correction_percent: "-0.60", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "60", correction_percent: "-0.61", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "65", correction_percent: "-0.61", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "70", correction_percent: "-0.60", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "12", measured_percent: "75", correction_percent: "-0.60", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "10", correction_percent: "-0.43", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "15", correction_percent: "-0.45", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "20", correction_percent: "-0.47", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "25", correction_percent: "-0.48", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "30", correction_percent: "-0.50", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "35", correction_percent: "-0.51", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "40", correction_percent: "-0.52", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "45", correction_percent: "-0.52", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "50", correction_percent: "-0.53", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "55", correction_percent: "-0.53", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "60", correction_percent: "-0.53", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "65", correction_percent: "-0.53", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "70", correction_percent: "-0.53", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "13", measured_percent: "75", correction_percent: "-0.53", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "10", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "15", correction_percent: "-0.39", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "20", correction_percent: "-0.40", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "25", correction_percent: "-0.42", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "30", correction_percent: "-0.43", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "35", correction_percent: "-0.44", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "40", correction_percent: "-0.44", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "45", correction_percent: "-0.45", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "50", correction_percent: "-0.45", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "55", correction_percent: "-0.46", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "60", correction_percent: "-0.46", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "65", correction_percent: "-0.46", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "70", correction_percent: "-0.46", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "14", measured_percent: "75", correction_percent: "-0.45", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "10", correction_percent: "-0.32", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "15", correction_percent: "-0.33", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "20", correction_percent: "-0.34", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "25", correction_percent: "-0.35", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "30", correction_percent: "-0.36", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "35", correction_percent: "-0.37", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "40", correction_percent: "-0.37", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "45", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "50", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "55", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "60", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "65", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "70", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "15", measured_percent: "75", correction_percent: "-0.38", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "10", correction_percent: "-0.26", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "15", correction_percent: "-0.27", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "20", correction_percent: "-0.28", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "25", correction_percent: "-0.28", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "30", correction_percent: "-0.29", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "35", correction_percent: "-0.30", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "40", correction_percent: "-0.30", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "45", correction_percent: "-0.30", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "50", correction_percent: "-0.31", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "55", correction_percent: "-0.31", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "60", correction_percent: "-0.31", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "65", correction_percent: "-0.31", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "70", correction_percent: "-0.31", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "16", measured_percent: "75", correction_percent: "-0.30", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "10", correction_percent: "-0.20", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "15", correction_percent: "-0.20", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "20", correction_percent: "-0.21", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "25", correction_percent: "-0.21", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "30", correction_percent: "-0.22", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "35", correction_percent: "-0.22", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "40", correction_percent: "-0.23", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "45", correction_percent: "-0.23", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "50", correction_percent: "-0.23", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "55", correction_percent: "-0.23", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "60", correction_percent: "-0.23", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "65", correction_percent: "-0.23", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "oiv", temp_C: "17", measured_percent: "70", correction_percent: "-0.23", tolerance: "0.005", source: "OIV-MA-AS2-02 Table I", basis: "read", note: TEXT_1},
  {scale: "gost", temp_C: "18", measured_percent: "10", correction_percent: "-0.13", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "15", correction_percent: "-0.14", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "20", correction_percent: "-0.14", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "25", correction_percent: "-0.14", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "30", correction_percent: "-0.14", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "35", correction_percent: "-0.15", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "40", correction_percent: "-0.15", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "45", correction_percent: "-0.15", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "50", correction_percent: "-0.15", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "55", correction_percent: "-0.16", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "60", correction_percent: "-0.16", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "65", correction_percent: "-0.16", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "18", measured_percent: "70", correction_percent: "-0.16", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "10", correction_percent: "-0.06", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "15", correction_percent: "-0.07", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "20", correction_percent: "-0.07", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "25", correction_percent: "-0.07", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "30", correction_percent: "-0.07", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "35", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "40", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "45", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "50", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "55", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "60", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "65", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "19", measured_percent: "70", correction_percent: "-0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "all", temp_C: "20", measured_percent: "10", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "15", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "20", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "25", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "30", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "35", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "40", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "45", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "50", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "55", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "60", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "65", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "70", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "all", temp_C: "20", measured_percent: "75", correction_percent: "0.00", tolerance: "0", source: TEXT_4, basis: "read", note: ""},
  {scale: "gost", temp_C: "21", measured_percent: "10", correction_percent: "0.07", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "15", correction_percent: "0.07", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "20", correction_percent: "0.07", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "25", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "30", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "35", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "40", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "45", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "50", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "55", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "60", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "65", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "gost", temp_C: "21", measured_percent: "70", correction_percent: "0.08", tolerance: "0.005", source: TEXT_2, basis: "read", note: TEXT_3},
  {scale: "oiv", temp_C: "25", measured_percent: "10", correction_percent: "0.36", tolerance: "0.03", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "oiv", temp_C: "25", measured_percent: "15", correction_percent: "0.37", tolerance: "0.03", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "oiv", temp_C: "25", measured_percent: "20", correction_percent: "0.38", tolerance: "0.03", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "oiv", temp_C: "25", measured_percent: "30", correction_percent: "0.39", tolerance: "0.03", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "extrapolated", temp_C: "25", measured_percent: "40", correction_percent: "0.40", tolerance: "0.03", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "25", measured_percent: "50", correction_percent: "0.40", tolerance: "0.03", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "25", measured_percent: "60", correction_percent: "0.40", tolerance: "0.03", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "25", measured_percent: "65", correction_percent: "0.40", tolerance: "0.03", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "25", measured_percent: "70", correction_percent: "0.40", tolerance: "0.03", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "oiv", temp_C: "30", measured_percent: "10", correction_percent: "0.74", tolerance: "0.05", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "oiv", temp_C: "30", measured_percent: "15", correction_percent: "0.76", tolerance: "0.05", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "oiv", temp_C: "30", measured_percent: "20", correction_percent: "0.78", tolerance: "0.05", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "oiv", temp_C: "30", measured_percent: "30", correction_percent: "0.80", tolerance: "0.05", source: TEXT_5, basis: "memory", note: TEXT_6},
  {scale: "extrapolated", temp_C: "30", measured_percent: "40", correction_percent: "0.82", tolerance: "0.06", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "30", measured_percent: "50", correction_percent: "0.83", tolerance: "0.06", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "30", measured_percent: "60", correction_percent: "0.81", tolerance: "0.06", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "30", measured_percent: "65", correction_percent: "0.81", tolerance: "0.06", source: TEXT_7, basis: "computed", note: TEXT_8},
  {scale: "extrapolated", temp_C: "30", measured_percent: "70", correction_percent: "0.81", tolerance: "0.06", source: TEXT_7, basis: "computed", note: TEXT_8},
];

export interface SalometerRow {
  readonly scale: string;
  readonly percent_at_100: string;
  readonly temp_C: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const SALOMETER_ROWS: readonly SalometerRow[] = [
  {scale: "standard", percent_at_100: "26.395", temp_C: "15.6", source: "salometer how-to sheet: deg = 100 x % / 26.395 at 60 F (rule read)", basis: "read", note: "a hydrometer maker's page works with the rounded factor 0.264"},
  {scale: "canning", percent_at_100: "25", temp_C: "", source: "salometer how-to sheet, special canning salometer", basis: "read", note: "for canning and grading; no temperature is given"},
];

export interface AcidRow {
  readonly acid: string;
  readonly equivalent_weight_g_per_eq: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const ACID_ROWS: readonly AcidRow[] = [
  {acid: "citric", equivalent_weight_g_per_eq: "64", source: "published worked example", basis: "read", note: "anhydrous, molar mass 192, three protons"},
  {acid: "tartaric", equivalent_weight_g_per_eq: "75", source: "wine-making worked example", basis: "read", note: "molar mass 150, two protons"},
  {acid: "lactic", equivalent_weight_g_per_eq: "90.08", source: TEXT_9, basis: "memory", note: "one proton"},
  {acid: "acetic", equivalent_weight_g_per_eq: "60.05", source: TEXT_9, basis: "memory", note: "one proton"},
  {acid: "malic", equivalent_weight_g_per_eq: "67.05", source: TEXT_9, basis: "memory", note: "molar mass 134.09, two protons"},
];

export interface CureRow {
  readonly rules: string;
  readonly substance: string;
  readonly holds_for: string;
  readonly kind: string;
  readonly limit_ppm: string;
  readonly basis_weight: string;
  readonly product_or_method: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const CURE_ROWS: readonly CureRow[] = [
  {rules: "us", substance: "sodium_nitrite", holds_for: "comminuted", kind: "most_ingoing", limit_ppm: "156.25", basis_weight: "green weight of meat block", product_or_method: "comminuted (sausage, ground)", source: "9 CFR 424.21(c): 1/4 oz per 100 lb", basis: "read-secondary", note: "read in verbatim quotation of the eCFR (2026), not in the rule itself; tables print 156"},
  {rules: "us", substance: "sodium_nitrite", holds_for: "pumped;immersed", kind: "most_ingoing", limit_ppm: "200", basis_weight: "green weight", product_or_method: "immersion or pumped/massaged, not bacon", source: "9 CFR 424.21(c): 2 lb per 100 gal pickle at 10 % pump", basis: "read-secondary", note: "read in verbatim quotation of the eCFR (2026), not in the rule itself; 200 needs the handbook convention 100 gal = 1000 lb"},
  {rules: "us", substance: "sodium_nitrite", holds_for: "dry_cured", kind: "most_ingoing", limit_ppm: "625", basis_weight: "green weight", product_or_method: "dry cured, not bacon", source: "9 CFR 424.21(c): 1 oz per 100 lb", basis: "read-secondary", note: TEXT_10},
  {rules: "us", substance: "sodium_nitrite", holds_for: TEXT_11, kind: "most_in_product", limit_ppm: "200", basis_weight: "finished product", product_or_method: "all cured products except bacon: nitrite left, from nitrite, nitrate or both", source: "9 CFR 424.21(c)", basis: "read-secondary", note: TEXT_10},
  {rules: "us", substance: "sodium_nitrite", holds_for: "bacon_pumped", kind: "required_ingoing", limit_ppm: "120", basis_weight: "green weight", product_or_method: "bacon, pumped (and massaged)", source: "9 CFR 424.22(b)(1)", basis: "read-secondary", note: "read in verbatim quotation of the eCFR (2026), not in the rule itself; or 148 ppm potassium nitrite, with 550 ppm ascorbate or erythorbate; +/-20 % at the injection point"},
  {rules: "us", substance: "sodium_nitrite", holds_for: "bacon_pumped_alternative", kind: "required_ingoing", limit_ppm: "100", basis_weight: "green weight", product_or_method: "bacon, pumped, alternative formula", source: "9 CFR 424.22(b)(1)(ii)(A)", basis: "read-secondary", note: "read in a summary of the rule; or 123 ppm potassium nitrite, with 550 ppm ascorbate or erythorbate"},
  {rules: "us", substance: "sodium_nitrite", holds_for: "bacon_immersed", kind: "most_ingoing", limit_ppm: "120", basis_weight: TEXT_12, product_or_method: "bacon, immersion cured", source: "9 CFR 424.22(b)(2)", basis: "read-secondary", note: "read in a summary of the rule; or 148 ppm potassium nitrite. The handbook's equilibrium method divides by meat + pickle"},
  {rules: "us", substance: "sodium_nitrite", holds_for: "bacon_dry_cured", kind: "most_ingoing", limit_ppm: "200", basis_weight: TEXT_12, product_or_method: "bacon, dry cured", source: "9 CFR 424.22(b)(3)", basis: "read-secondary", note: "read in a summary of the rule; or 246 ppm potassium nitrite"},
  {rules: "us", substance: "sodium_nitrite", holds_for: TEXT_11, kind: "least_ingoing", limit_ppm: "120", basis_weight: "green weight", product_or_method: "minimum for cured \"keep refrigerated\" products", source: "FSIS calculations handbook (1995) policy statement", basis: "memory", note: ""},
  {rules: "us", substance: "sodium_nitrite", holds_for: TEXT_13, kind: "most_in_product", limit_ppm: "200", basis_weight: "finished product", product_or_method: "home meat-curing preparations", source: "21 CFR 172.170(a)(2) and 172.175", basis: "read", note: "text read"},
  {rules: "us", substance: "sodium_nitrate", holds_for: TEXT_13, kind: "most_in_product", limit_ppm: "500", basis_weight: "finished product", product_or_method: "home meat-curing preparations", source: "21 CFR 172.170(a)(2)", basis: "read", note: "text read"},
  {rules: "us", substance: "sodium_nitrate", holds_for: "dry_cured", kind: "most_ingoing", limit_ppm: "2187.5", basis_weight: "green weight", product_or_method: "dry cured, not bacon", source: "9 CFR 424.21(c): 3 1/2 oz per 100 lb", basis: "read-secondary", note: TEXT_10},
  {rules: "us", substance: "sodium_nitrate", holds_for: "comminuted", kind: "most_ingoing", limit_ppm: "1718.75", basis_weight: "green weight", product_or_method: "comminuted", source: "9 CFR 424.21(c): 2 3/4 oz per 100 lb", basis: "read-secondary", note: TEXT_10},
  {rules: "us", substance: "sodium_nitrate", holds_for: TEXT_14, kind: "not_permitted", limit_ppm: "", basis_weight: "", product_or_method: "bacon", source: "9 CFR 424.21(c): cured products other than bacon", basis: "read-secondary", note: TEXT_10},
  {rules: "us", substance: "sodium_ascorbate", holds_for: "bacon_pumped;bacon_pumped_alternative", kind: "required_ingoing", limit_ppm: "550", basis_weight: "green weight", product_or_method: "pumped bacon", source: "9 CFR 424.22(b)(1)", basis: "read-secondary", note: TEXT_10},
  {rules: "us", substance: "ascorbic_acid", holds_for: TEXT_11, kind: "most_ingoing", limit_ppm: "468.75", basis_weight: "green weight", product_or_method: "cured meat", source: "9 CFR 424.21(c): 3/4 oz per 100 lb, or 75 oz per 100 gal pickle at 10 % pump", basis: "memory", note: "tables print 469"},
  {rules: "us", substance: "sodium_ascorbate", holds_for: TEXT_11, kind: "most_ingoing", limit_ppm: "546.875", basis_weight: "green weight", product_or_method: "cured meat", source: "9 CFR 424.21(c): 7/8 oz per 100 lb, or 87.5 oz per 100 gal pickle at 10 % pump", basis: "memory", note: "tables print 547"},
  {rules: "canada", substance: "sodium_nitrite", holds_for: TEXT_11, kind: "most_ingoing", limit_ppm: "200", basis_weight: "meat as weighed in", product_or_method: "Canada: cured products", source: "Canadian guidance as quoted", basis: "read-secondary", note: ""},
  {rules: "canada", substance: "sodium_nitrite", holds_for: TEXT_14, kind: "most_ingoing", limit_ppm: "120", basis_weight: "meat as weighed in", product_or_method: "Canada: bacon", source: "Canadian guidance as quoted", basis: "read-secondary", note: ""},
];

export interface CannerRow {
  readonly canner: string;
  readonly from_ft: string;
  readonly to_ft: string;
  readonly gauge_lb_per_in2: string;
  readonly gauge_kind: string;
  readonly added_min: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const CANNER_ROWS: readonly CannerRow[] = [
  {canner: "dial_low_acid", from_ft: "0", to_ft: "2000", gauge_lb_per_in2: "11", gauge_kind: "dial", added_min: "", source: TEXT_15, basis: "read-secondary", note: ""},
  {canner: "dial_low_acid", from_ft: "2001", to_ft: "4000", gauge_lb_per_in2: "12", gauge_kind: "dial", added_min: "", source: TEXT_15, basis: "read-secondary", note: ""},
  {canner: "dial_low_acid", from_ft: "4001", to_ft: "6000", gauge_lb_per_in2: "13", gauge_kind: "dial", added_min: "", source: TEXT_15, basis: "read-secondary", note: ""},
  {canner: "dial_low_acid", from_ft: "6001", to_ft: "8000", gauge_lb_per_in2: "14", gauge_kind: "dial", added_min: "", source: TEXT_15, basis: "read-secondary", note: ""},
  {canner: "dial_low_acid", from_ft: "8001", to_ft: "10000", gauge_lb_per_in2: "15", gauge_kind: "dial", added_min: "", source: TEXT_15, basis: "read-secondary", note: "maker chart"},
  {canner: "weighted", from_ft: "0", to_ft: "1000", gauge_lb_per_in2: "10", gauge_kind: "weighted", added_min: "", source: TEXT_16, basis: "read-secondary", note: ""},
  {canner: "weighted", from_ft: "1001", to_ft: "10000", gauge_lb_per_in2: "15", gauge_kind: "weighted", added_min: "", source: TEXT_16, basis: "read-secondary", note: ""},
  {canner: "dial_fruit", from_ft: "0", to_ft: "2000", gauge_lb_per_in2: "6", gauge_kind: "dial", added_min: "", source: "USDA Complete Guide (base row)", basis: "memory", note: "added so that the table has no gap"},
  {canner: "dial_fruit", from_ft: "2001", to_ft: "4000", gauge_lb_per_in2: "7", gauge_kind: "dial", added_min: "", source: "pressure-canner manual", basis: "read-secondary", note: ""},
  {canner: "dial_fruit", from_ft: "4001", to_ft: "6000", gauge_lb_per_in2: "8", gauge_kind: "dial", added_min: "", source: "pressure-canner manual", basis: "read-secondary", note: ""},
  {canner: "dial_fruit", from_ft: "6001", to_ft: "8000", gauge_lb_per_in2: "9", gauge_kind: "dial", added_min: "", source: "pressure-canner manual", basis: "read-secondary", note: ""},
  {canner: "boiling_water", from_ft: "0", to_ft: "1000", gauge_lb_per_in2: "", gauge_kind: "", added_min: "0", source: "two canner booklets", basis: "read-secondary", note: TEXT_17},
  {canner: "boiling_water", from_ft: "1001", to_ft: "3000", gauge_lb_per_in2: "", gauge_kind: "", added_min: "5", source: "two canner booklets", basis: "read-secondary", note: TEXT_17},
  {canner: "boiling_water", from_ft: "3001", to_ft: "6000", gauge_lb_per_in2: "", gauge_kind: "", added_min: "10", source: "two canner booklets", basis: "read-secondary", note: TEXT_17},
  {canner: "boiling_water", from_ft: "6001", to_ft: "8000", gauge_lb_per_in2: "", gauge_kind: "", added_min: "15", source: "two canner booklets", basis: "read-secondary", note: TEXT_17},
  {canner: "boiling_water", from_ft: "8001", to_ft: "10000", gauge_lb_per_in2: "", gauge_kind: "", added_min: "20", source: "two canner booklets", basis: "read-secondary", note: "the USDA guide prints a time per product and band (0-1000, 1001-3000, 3001-6000, above 6000 ft) instead: use the product table when there is one; one booklet only"},
];

export interface FiveLogRow {
  readonly temp_F: string;
  readonly temp_C: string;
  readonly published_5log_min: string;
  readonly model_min: string;
  readonly pH_min: string;
  readonly pH_max: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const FIVE_LOG_ROWS: readonly FiveLogRow[] = [
  {temp_F: "141", temp_C: "60.6", published_5log_min: "77.8", model_min: "76.9", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "142", temp_C: "61.1", published_5log_min: "67.7", model_min: "66.99", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "143", temp_C: "61.7", published_5log_min: "59.0", model_min: "58.36", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "144", temp_C: "62.2", published_5log_min: "51.4", model_min: "50.85", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "145", temp_C: "62.8", published_5log_min: "44.8", model_min: "44.3", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "146", temp_C: "63.3", published_5log_min: "39.0", model_min: "38.59", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "147", temp_C: "63.9", published_5log_min: "34.0", model_min: "33.62", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "148", temp_C: "64.4", published_5log_min: "29.6", model_min: "29.29", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "149", temp_C: "65.0", published_5log_min: "25.8", model_min: "25.52", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "150", temp_C: "65.6", published_5log_min: "22.4", model_min: "22.23", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "151", temp_C: "66.1", published_5log_min: "19.5", model_min: "19.37", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "152", temp_C: "66.7", published_5log_min: "17.0", model_min: "16.87", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "153", temp_C: "67.2", published_5log_min: "14.8", model_min: "14.7", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "154", temp_C: "67.8", published_5log_min: "12.9", model_min: "12.81", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "155", temp_C: "68.3", published_5log_min: "11.2", model_min: "11.16", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "156", temp_C: "68.9", published_5log_min: "9.8", model_min: "9.72", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "157", temp_C: "69.4", published_5log_min: "8.5", model_min: "8.47", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "158", temp_C: "70.0", published_5log_min: "7.4", model_min: "7.38", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "159", temp_C: "70.6", published_5log_min: "6.5", model_min: "6.43", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "160", temp_C: "71.1", published_5log_min: "5.6", model_min: "5.6", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "161", temp_C: "71.7", published_5log_min: "4.9", model_min: "4.88", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "162", temp_C: "72.2", published_5log_min: "4.3", model_min: "4.25", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "163", temp_C: "72.8", published_5log_min: "3.7", model_min: "3.7", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "164", temp_C: "73.3", published_5log_min: "3.2", model_min: "3.23", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "165", temp_C: "73.9", published_5log_min: "2.8", model_min: "2.81", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "166", temp_C: "74.4", published_5log_min: "2.5", model_min: "2.45", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "167", temp_C: "75.0", published_5log_min: "2.1", model_min: "2.13", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "168", temp_C: "75.6", published_5log_min: "1.9", model_min: "1.86", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "169", temp_C: "76.1", published_5log_min: "1.6", model_min: "1.62", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "170", temp_C: "76.7", published_5log_min: "1.4", model_min: "1.41", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "171", temp_C: "77.2", published_5log_min: "1.2", model_min: "1.23", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "172", temp_C: "77.8", published_5log_min: "1.1", model_min: "1.07", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "173", temp_C: "78.3", published_5log_min: "0.9", model_min: "0.93", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "174", temp_C: "78.9", published_5log_min: "0.8", model_min: "0.81", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "175", temp_C: "79.4", published_5log_min: "0.7", model_min: "0.71", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "176", temp_C: "80.0", published_5log_min: "0.6", model_min: "0.62", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "177", temp_C: "80.6", published_5log_min: "0.5", model_min: "0.54", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "178", temp_C: "81.1", published_5log_min: "0.5", model_min: "0.47", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "179", temp_C: "81.7", published_5log_min: "0.4", model_min: "0.41", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
  {temp_F: "180", temp_C: "82.2", published_5log_min: "0.4", model_min: "0.36", pH_min: "4.1", pH_max: "4.6", source: TEXT_18, basis: "read", note: TEXT_19},
];

// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

const TEXT_1 =
  "IAPWS-95 at 101.325 kPa (computed with an open library)";
const TEXT_2 =
  "OIML R 76-1:2006 Table 6; same limits in the EU/UK non-automatic weighing instrument rules (SI 1995/1907 Sch. 2 para 4)";
const TEXT_3 =
  "NIST HB 133 (2026) ch. 2 Table 2-2 (acceptance tolerance in divisions)";
const TEXT_4 =
  "HB 133 counts in divisions: 501 to 2 000 etc.";
const TEXT_5 =
  "OIML R 111-1:2004 Table 1 (plus or minus), two instrument-maker reproductions in agreement";
const TEXT_6 =
  "USDA Complete Guide to Home Canning altitude page as reproduced (with the pressure model p = 101300 exp(-0.000116 y) Pa, y in metres)";

export interface WaterRow {
  readonly temp_C: string;
  readonly iapws95_kg_per_m3: string;
  readonly source: string;
  readonly basis: string;
}

export const HOT_WATER_ROWS: readonly WaterRow[] = [
  {temp_C: "50", iapws95_kg_per_m3: "988.0350", source: TEXT_1, basis: "computed"},
  {temp_C: "60", iapws95_kg_per_m3: "983.1958", source: TEXT_1, basis: "computed"},
  {temp_C: "70", iapws95_kg_per_m3: "977.7646", source: TEXT_1, basis: "computed"},
  {temp_C: "80", iapws95_kg_per_m3: "971.7904", source: TEXT_1, basis: "computed"},
  {temp_C: "90", iapws95_kg_per_m3: "965.3096", source: TEXT_1, basis: "computed"},
  {temp_C: "95", iapws95_kg_per_m3: "961.8879", source: TEXT_1, basis: "computed"},
];

export interface ScaleErrorRow {
  readonly accuracy_class: string;
  readonly load_over_e: string;
  readonly load_up_to_e: string;
  readonly mpe_initial_in_e: string;
  readonly mpe_in_service_in_e: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const SCALE_ERROR_ROWS: readonly ScaleErrorRow[] = [
  {accuracy_class: "I", load_over_e: "0", load_up_to_e: "50000", mpe_initial_in_e: "0.5", mpe_in_service_in_e: "1.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "I", load_over_e: "50000", load_up_to_e: "200000", mpe_initial_in_e: "1.0", mpe_in_service_in_e: "2.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "I", load_over_e: "200000", load_up_to_e: "", mpe_initial_in_e: "1.5", mpe_in_service_in_e: "3.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "II", load_over_e: "0", load_up_to_e: "5000", mpe_initial_in_e: "0.5", mpe_in_service_in_e: "1.0", source: TEXT_2, basis: "read-secondary", note: "the cited SI text misprints 20 000 for 5 000 in the first class II band"},
  {accuracy_class: "II", load_over_e: "5000", load_up_to_e: "20000", mpe_initial_in_e: "1.0", mpe_in_service_in_e: "2.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "II", load_over_e: "20000", load_up_to_e: "100000", mpe_initial_in_e: "1.5", mpe_in_service_in_e: "3.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "III", load_over_e: "0", load_up_to_e: "500", mpe_initial_in_e: "0.5", mpe_in_service_in_e: "1.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "III", load_over_e: "500", load_up_to_e: "2000", mpe_initial_in_e: "1.0", mpe_in_service_in_e: "2.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "III", load_over_e: "2000", load_up_to_e: "10000", mpe_initial_in_e: "1.5", mpe_in_service_in_e: "3.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "IIII", load_over_e: "0", load_up_to_e: "50", mpe_initial_in_e: "0.5", mpe_in_service_in_e: "1.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "IIII", load_over_e: "50", load_up_to_e: "200", mpe_initial_in_e: "1.0", mpe_in_service_in_e: "2.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "IIII", load_over_e: "200", load_up_to_e: "1000", mpe_initial_in_e: "1.5", mpe_in_service_in_e: "3.0", source: TEXT_2, basis: "read-secondary", note: ""},
  {accuracy_class: "HB133-II", load_over_e: "0", load_up_to_e: "5000", mpe_initial_in_e: "0.5", mpe_in_service_in_e: "", source: TEXT_3, basis: "read", note: TEXT_4},
  {accuracy_class: "HB133-II", load_over_e: "5000", load_up_to_e: "20000", mpe_initial_in_e: "1.0", mpe_in_service_in_e: "", source: TEXT_3, basis: "read", note: TEXT_4},
  {accuracy_class: "HB133-II", load_over_e: "20000", load_up_to_e: "", mpe_initial_in_e: "1.5", mpe_in_service_in_e: "", source: TEXT_3, basis: "read", note: TEXT_4},
  {accuracy_class: "HB133-III", load_over_e: "0", load_up_to_e: "500", mpe_initial_in_e: "0.5", mpe_in_service_in_e: "", source: TEXT_3, basis: "read", note: TEXT_4},
  {accuracy_class: "HB133-III", load_over_e: "500", load_up_to_e: "2000", mpe_initial_in_e: "1.0", mpe_in_service_in_e: "", source: TEXT_3, basis: "read", note: TEXT_4},
  {accuracy_class: "HB133-III", load_over_e: "2000", load_up_to_e: "4000", mpe_initial_in_e: "1.5", mpe_in_service_in_e: "", source: TEXT_3, basis: "read", note: TEXT_4},
  {accuracy_class: "HB133-III", load_over_e: "4000", load_up_to_e: "", mpe_initial_in_e: "2.5", mpe_in_service_in_e: "", source: "NIST HB 133 (2026) Table 2-2", basis: "read", note: "differs from OIML R 76 above 4 000 divisions"},
];

export interface ScaleClassRow {
  readonly accuracy_class: string;
  readonly e_from_g: string;
  readonly e_to_g: string;
  readonly n_min: string;
  readonly n_max: string;
  readonly source: string;
  readonly basis: string;
}

export const SCALE_CLASS_ROWS: readonly ScaleClassRow[] = [
  {accuracy_class: "I", e_from_g: "0.001", e_to_g: "", n_min: "50000", n_max: "", source: "OIML R 76-1:2006 Table 3", basis: "read-secondary"},
  {accuracy_class: "II", e_from_g: "0.001", e_to_g: "0.05", n_min: "100", n_max: "100000", source: "OIML R 76-1:2006 Table 3", basis: "read-secondary"},
  {accuracy_class: "II", e_from_g: "0.1", e_to_g: "", n_min: "5000", n_max: "100000", source: "OIML R 76-1:2006 Table 3", basis: "read-secondary"},
  {accuracy_class: "III", e_from_g: "0.1", e_to_g: "2", n_min: "100", n_max: "10000", source: "OIML R 76-1:2006 Table 3", basis: "read-secondary"},
  {accuracy_class: "III", e_from_g: "5", e_to_g: "", n_min: "500", n_max: "10000", source: "OIML R 76-1:2006 Table 3", basis: "read-secondary"},
  {accuracy_class: "IIII", e_from_g: "5", e_to_g: "", n_min: "100", n_max: "1000", source: "OIML R 76-1:2006 Table 3", basis: "read-secondary"},
];

export interface WeightRow {
  readonly nominal_g: string;
  readonly F1_mg: string;
  readonly F2_mg: string;
  readonly M1_mg: string;
  readonly M2_mg: string;
  readonly M3_mg: string;
  readonly source: string;
  readonly basis: string;
}

export const WEIGHT_ROWS: readonly WeightRow[] = [
  {nominal_g: "1", F1_mg: "0.1", F2_mg: "0.3", M1_mg: "1.0", M2_mg: "3.0", M3_mg: "10", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "2", F1_mg: "0.12", F2_mg: "0.4", M1_mg: "1.2", M2_mg: "4.0", M3_mg: "12", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "5", F1_mg: "0.16", F2_mg: "0.5", M1_mg: "1.6", M2_mg: "5.0", M3_mg: "16", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "10", F1_mg: "0.2", F2_mg: "0.6", M1_mg: "2.0", M2_mg: "6.0", M3_mg: "20", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "20", F1_mg: "0.25", F2_mg: "0.8", M1_mg: "2.5", M2_mg: "8.0", M3_mg: "25", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "50", F1_mg: "0.3", F2_mg: "1.0", M1_mg: "3.0", M2_mg: "10", M3_mg: "30", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "100", F1_mg: "0.5", F2_mg: "1.6", M1_mg: "5.0", M2_mg: "16", M3_mg: "50", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "200", F1_mg: "1.0", F2_mg: "3.0", M1_mg: "10", M2_mg: "30", M3_mg: "100", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "500", F1_mg: "2.5", F2_mg: "8.0", M1_mg: "25", M2_mg: "80", M3_mg: "250", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "1000", F1_mg: "5", F2_mg: "16", M1_mg: "50", M2_mg: "160", M3_mg: "500", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "2000", F1_mg: "10", F2_mg: "30", M1_mg: "100", M2_mg: "300", M3_mg: "1000", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "5000", F1_mg: "25", F2_mg: "80", M1_mg: "250", M2_mg: "800", M3_mg: "2500", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "10000", F1_mg: "50", F2_mg: "160", M1_mg: "500", M2_mg: "1600", M3_mg: "5000", source: TEXT_5, basis: "read-secondary"},
  {nominal_g: "20000", F1_mg: "100", F2_mg: "300", M1_mg: "1000", M2_mg: "3000", M3_mg: "10000", source: TEXT_5, basis: "read-secondary"},
];

export interface CylinderRow {
  readonly capacity_mL: string;
  readonly class_A_pm_mL: string;
  readonly class_B_pm_mL: string;
  readonly source: string;
  readonly basis: string;
}

export const CYLINDER_ROWS: readonly CylinderRow[] = [
  {capacity_mL: "5", class_A_pm_mL: "0.05", class_B_pm_mL: "0.1", source: "ASTM E1272-02 (2012) Table 1", basis: "read"},
  {capacity_mL: "10", class_A_pm_mL: "0.1", class_B_pm_mL: "0.2", source: "ASTM E1272-02 (2012) Table 1", basis: "read"},
  {capacity_mL: "25", class_A_pm_mL: "0.17", class_B_pm_mL: "0.34", source: "ASTM E1272-02 (2012) Table 1", basis: "read"},
  {capacity_mL: "50", class_A_pm_mL: "0.25", class_B_pm_mL: "0.5", source: "ASTM E1272-02 (2012) Table 1", basis: "read"},
  {capacity_mL: "100", class_A_pm_mL: "0.5", class_B_pm_mL: "1.0", source: "ASTM E1272-02 (2012) Table 1", basis: "read"},
  {capacity_mL: "250", class_A_pm_mL: "1.0", class_B_pm_mL: "2.0", source: "ASTM E1272-02 (2012) Table 1", basis: "read"},
  {capacity_mL: "500", class_A_pm_mL: "2.0", class_B_pm_mL: "4.0", source: "ASTM E1272-02 (2012) Table 1", basis: "read"},
  {capacity_mL: "1000", class_A_pm_mL: "3.0", class_B_pm_mL: "6.0", source: "ASTM E1272-02 (2012) Table 1", basis: "memory"},
];

export interface MeasureRow {
  readonly device: string;
  readonly tolerance_percent_pm: string;
  readonly source: string;
  readonly basis: string;
}

export const MEASURE_ROWS: readonly MeasureRow[] = [
  {device: "household liquid measures and cups, all graduations", tolerance_percent_pm: "5", source: "US household-utensil standard (ANSI Z61.1), as quoted by a utensil terminology page", basis: "read-secondary"},
  {device: "measuring spoons", tolerance_percent_pm: "5", source: "household-utensil standard (ANSI Z61.1), not read", basis: "memory"},
];

export interface BoilingRow {
  readonly altitude_ft: string;
  readonly boiling_point_C: string;
  readonly pressure_hPa: string;
  readonly source: string;
  readonly basis: string;
}

export const BOILING_ROWS: readonly BoilingRow[] = [
  {altitude_ft: "-1000", boiling_point_C: "100.99", pressure_hPa: "1049.46", source: "Antoine equation (8.07131, 1730.63, 233.426, mmHg) from the row at 0 ft, with the same pressure model", basis: "computed"},
  {altitude_ft: "0", boiling_point_C: "100.0", pressure_hPa: "1013.00", source: TEXT_6, basis: "read"},
  {altitude_ft: "1000", boiling_point_C: "99.01", pressure_hPa: "977.81", source: TEXT_6, basis: "read"},
  {altitude_ft: "2000", boiling_point_C: "98.03", pressure_hPa: "943.84", source: TEXT_6, basis: "read"},
  {altitude_ft: "3000", boiling_point_C: "97.05", pressure_hPa: "911.05", source: TEXT_6, basis: "read"},
  {altitude_ft: "4000", boiling_point_C: "96.08", pressure_hPa: "879.40", source: TEXT_6, basis: "read"},
  {altitude_ft: "5000", boiling_point_C: "95.12", pressure_hPa: "848.85", source: TEXT_6, basis: "read"},
  {altitude_ft: "6000", boiling_point_C: "94.16", pressure_hPa: "819.37", source: TEXT_6, basis: "read"},
  {altitude_ft: "7000", boiling_point_C: "93.21", pressure_hPa: "790.90", source: TEXT_6, basis: "read"},
  {altitude_ft: "8000", boiling_point_C: "92.26", pressure_hPa: "763.43", source: TEXT_6, basis: "read"},
  {altitude_ft: "9000", boiling_point_C: "91.32", pressure_hPa: "736.91", source: TEXT_6, basis: "read"},
  {altitude_ft: "10000", boiling_point_C: "90.39", pressure_hPa: "711.31", source: TEXT_6, basis: "read"},
];

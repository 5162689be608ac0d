// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

const TEXT_1 =
  "Food Protection Trends 2018 p. 264";
const TEXT_2 =
  "as tabulated in an industry body's published table; examples only";
const TEXT_3 =
  "Food Code 3-501.16 as in 16 Del. Admin. Code and WAC 246-215-03525";

export interface LethalRow {
  readonly use: string;
  readonly t_ref: string;
  readonly z: string;
  readonly unit: string;
  readonly base: string;
  readonly needed_min: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const LETHAL_ROWS: readonly LethalRow[] = [
  {use: "f0", t_ref: "121.1", z: "10", unit: "degC", base: "", needed_min: "", source: "thermal-process lecture table, for low-acid foods", basis: "read", note: ""},
  {use: "f0_250_f", t_ref: "121.11", z: "10", unit: "degC", base: "", needed_min: "", source: "dairy-science teaching page worked example; 250 F is 121.11 C", basis: "read", note: "moves F0 by 0.2 % against 121.1 C"},
  {use: "acidified_from_4_1", t_ref: "160", z: "16.7", unit: "degF", base: "", needed_min: "5.6", source: "Food Protection Trends 2014 p. 137 Table 4", basis: "read", note: "acidified vegetables, pH 4.1 to 4.6, 5-log; meets the 40 printed times within 1.2 % up to 165 F and 0.06 min above"},
  {use: "acidified_below_4_1", t_ref: "160", z: "19.5", unit: "degF", base: "", needed_min: "1.2", source: TEXT_1, basis: "read", note: "acidified vegetables, pH below 4.1, 5-log"},
  {use: "beer", t_ref: "60", z: "7", unit: "degC", base: "", needed_min: "", source: "units reference page: base 60 C, ten-fold per 7 C", basis: "read", note: ""},
  {use: "beer_1_393", t_ref: "60", z: "6.95", unit: "degC", base: "1.393", needed_min: "", source: "units reference page, Del Vecchio et al. 1951 form 1.393^(T-60)", basis: "read", note: "1.393 is 10^(1/6.95), not 10^(1/7)"},
  {use: "acid_foods", t_ref: "93.3", z: "8.9", unit: "degC", base: "", needed_min: "", source: "dairy-science feed for 93.3 C (200 F); z recalled", basis: "memory", note: "93.3 read-secondary, z 8.9 C (16 F) from memory"},
  {use: "tomato_beverages", t_ref: "80", z: "10", unit: "degC", base: "", needed_min: "", source: "beverage PU note", basis: "read", note: ""},
  {use: "pickle_quality", t_ref: "73.9", z: "22.4", unit: "degC", base: "", needed_min: "15", source: TEXT_1, basis: "read", note: "softening enzymes: 15 min at 73.9 C are 20 min at 71.1 C"},
];

export interface DecimalReductionRow {
  readonly organism: string;
  readonly product: string;
  readonly t_ref_F: string;
  readonly z_F: string;
  readonly D_min: string;
  readonly original_study: string;
  readonly source: string;
  readonly basis: string;
}

export const DECIMAL_REDUCTION_ROWS: readonly DecimalReductionRow[] = [
  {organism: "Salmonella", product: "meat patty", t_ref_F: "150", z_F: "10", D_min: "0.172", original_study: "Scott & Weddig 1998", source: TEXT_2, basis: "read-secondary"},
  {organism: "Salmonella", product: "ground beef 25 % fat", t_ref_F: "140", z_F: "14.5", D_min: "4.72", original_study: "Juneja 2003", source: TEXT_2, basis: "read-secondary"},
  {organism: "E. coli O157:H7", product: "lean ground beef 2 % fat", t_ref_F: "145", z_F: "8.3", D_min: "0.3", original_study: "Line et al. 1991", source: TEXT_2, basis: "read-secondary"},
  {organism: "E. coli O157:H7", product: "ground beef 25 % fat", t_ref_F: "140", z_F: "11.4", D_min: "3.39", original_study: "Juneja 2003", source: TEXT_2, basis: "read-secondary"},
  {organism: "E. coli O157:H7", product: "lean ground turkey", t_ref_F: "149", z_F: "11.7", D_min: "0.29", original_study: "Juneja & Marmer 1999", source: TEXT_2, basis: "read-secondary"},
  {organism: "E. coli O157:H7", product: "lean ground lamb", t_ref_F: "149", z_F: "12.4", D_min: "0.38", original_study: "Juneja & Marmer 1999", source: TEXT_2, basis: "read-secondary"},
  {organism: "E. coli O157:H7", product: "lean ground pork", t_ref_F: "149", z_F: "11.7", D_min: "0.3", original_study: "Juneja & Marmer 1999", source: TEXT_2, basis: "read-secondary"},
  {organism: "L. monocytogenes", product: "lean ground beef 2 % fat", t_ref_F: "145", z_F: "9.3", D_min: "0.6", original_study: "Fain et al. 1991", source: TEXT_2, basis: "read-secondary"},
  {organism: "L. monocytogenes", product: "ground beef 25 % fat", t_ref_F: "140", z_F: "12.0", D_min: "4.1", original_study: "Juneja 2003", source: TEXT_2, basis: "read-secondary"},
  {organism: "L. monocytogenes", product: "hot dog", t_ref_F: "144", z_F: "10.8", D_min: "3.3", original_study: "as given in the instructions page", source: TEXT_2, basis: "read-secondary"},
];

export interface CoolingRow {
  readonly rule: string;
  readonly start: string;
  readonly start_C: string;
  readonly end_C: string;
  readonly limit_h: string;
  readonly clock: string;
  readonly if_missed: string;
  readonly source: string;
  readonly basis: string;
}

export const COOLING_ROWS: readonly CoolingRow[] = [
  {rule: "stage_1", start: "when food passes 57 C", start_C: "57", end_C: "21", limit_h: "2", clock: "from passing 57 C", if_missed: "reheat to 74 C and cool again, or discard; local code decides", source: "FDA Food Code 3-501.14 as adopted word for word in 16 Del. Admin. Code 3-501.14; corrective action wording from industry guidance", basis: "read"},
  {rule: "whole", start: "when food passes 57 C", start_C: "57", end_C: "5", limit_h: "6", clock: "from passing 57 C, NOT a fresh 6 h after stage 1", if_missed: "discard / hold for the coordinator", source: "FDA Food Code 3-501.14 as adopted word for word in 16 Del. Admin. Code 3-501.14", basis: "read"},
  {rule: "ambient", start: "when made", start_C: "21", end_C: "5", limit_h: "4", clock: "from the end of preparation", if_missed: "discard / hold", source: "FDA Food Code 3-501.14 as adopted word for word in 16 Del. Admin. Code 3-501.14 (B)", basis: "read"},
  {rule: "received", start: "on receipt", start_C: "", end_C: "5", limit_h: "4", clock: "from receipt", if_missed: "discard / hold", source: "FDA Food Code 3-501.14 as adopted word for word in 16 Del. Admin. Code 3-501.14 (C)", basis: "read"},
  {rule: "hot", start: "", start_C: "57", end_C: "57", limit_h: "", clock: "must stay at or above", if_missed: "reheat/discard per local code", source: TEXT_3, basis: "read"},
  {rule: "cold", start: "", start_C: "5", end_C: "5", limit_h: "", clock: "must stay at or below", if_missed: "assess/discard per local code", source: TEXT_3, basis: "read"},
  {rule: "time_4_h", start: "taken out at <=5 C or >=57 C", start_C: "", end_C: "", limit_h: "4", clock: "mark the time that is 4 h after removal", if_missed: "discard at 4 h; unmarked = discard", source: "Food Code 3-501.19(B) as in 16 Del. Admin. Code 3-501.19", basis: "read"},
  {rule: "time_6_h", start: "taken out at <=5 C", start_C: "", end_C: "21", limit_h: "6", clock: "must not pass 21 C", if_missed: "discard at 6 h or above 21 C", source: "Food Code 3-501.19(C) as in 16 Del. Admin. Code 3-501.19", basis: "read"},
  {rule: "reheat", start: "", start_C: "5", end_C: "74", limit_h: "2", clock: "5 C to 74 C for 15 s, within 2 h", if_missed: "discard", source: "Food Code 3-403.11 as in 16 Del. Admin. Code 3-403.11", basis: "read"},
];

export interface ProcessLimitRow {
  readonly key: string;
  readonly item: string;
  readonly limit: string;
  readonly unit: string;
  readonly detail: string;
  readonly rule: string;
  readonly note: string;
  readonly source: string;
  readonly basis: string;
}

export const PROCESS_LIMIT_ROWS: readonly ProcessLimitRow[] = [
  {key: "acid_ph", item: "equilibrium pH, acid / acidified vs low acid", limit: "4.6", unit: "pH", detail: "", rule: "acid: natural pH 4.6 or below; acidified: low-acid food with acid added, aw > 0.85, finished equilibrium pH 4.6 or below", note: "tomatoes: below 4.7 not low-acid", source: "21 CFR 114.3", basis: "read"},
  {key: "water_activity", item: "water activity", limit: "0.85", unit: "aw", detail: "", rule: "low-acid / acidified definitions apply only above 0.85", note: "", source: "21 CFR 114.3", basis: "read"},
  {key: "ph_meter_above", item: "pH method", limit: "4.0", unit: "pH", detail: "above 4.0 needs a pH meter (potentiometric)", rule: "4.0 or below: any suitable method", note: "", source: "21 CFR 114.80(a)(2)", basis: "read"},
  {key: "outside_part_114", item: "excluded from Part 114", limit: "", unit: "", detail: "", rule: "carbonated drinks, jams, jellies, preserves, acid foods with small amounts of low-acid food, and foods kept refrigerated throughout", note: "", source: "21 CFR 114.3(b)", basis: "read"},
  {key: "scheduled_process", item: "scheduled process", limit: "", unit: "", detail: "", rule: "set by a competent process authority; record every departure", note: "114.3(e) and 113.83 read, 114.83 not", source: "21 CFR 114.3(e), 114.83, 113.83", basis: "read"},
  {key: "heated_above_ph", item: "acidified vegetables above pH 3.3", limit: "3.3", unit: "pH", detail: "", rule: "must be heat processed", note: "", source: "Food Protection Trends 2010 p.268 abstract", basis: "read"},
  {key: "low_acid_f0", item: "commercial sterility low-acid", limit: "3", unit: "min F0, at least", detail: "F0 at least 3 min (12-D), usually 5-15 min", rule: "", note: "", source: "citation summary", basis: "read-secondary"},
  {key: "juice_log", item: "juice", limit: "5", unit: "log10 reduction", detail: "5-log reduction of the pertinent pathogen", rule: "", note: "", source: "21 CFR 120.24", basis: "memory"},
  {key: "beer_base", item: "beer PU", limit: "60", unit: "degC base", detail: "60 C base, ten-fold per 7 C; 1.393^(T-60)", rule: "", note: "typical 14.8 PU, range 2.4-45.6 in a 1955 US survey", source: "units reference page", basis: "read"},
  {key: "tomato_base", item: "tomato-type beverages PU", limit: "80", unit: "degC base", detail: "80 C base, z 10 C often used", rule: "", note: "", source: "beverage PU note", basis: "read"},
  {key: "acid_foods_base", item: "acid foods F reference", limit: "93.3", unit: "degC", detail: "93.3 C (200 F)", rule: "z 8.9 C (16 F) commonly", note: "93.3 read, z from memory", source: "dairy-science feed", basis: "read-secondary"},
  {key: "eutectic_brine", item: "eutectic brine", limit: "23.3", unit: "% salt by mass", detail: "23.3 % salt, -6 F", rule: "", note: "", source: "Oregon State brine bulletin", basis: "read"},
  {key: "boil_low_acid", item: "botulinum toxin boil rule for home-canned low-acid food", limit: "10", unit: "min at 0-1000 ft", detail: "10 min below 1000 ft, +1 min per further 1000 ft", rule: "sources differ on whether to round part-thousands: always round up", note: "", source: "USDA Complete Guide as quoted", basis: "read-secondary"},
];

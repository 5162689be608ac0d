// Written by `python -m kitchenlog.calc.export_tables`; do not edit.

const TEXT_1 =
  "NIST Handbook 133, App. A Table 2-5 (packages labelled by weight)";
const TEXT_2 =
  "not read: check against the printed table; the printed gram figures are the pound figures cut (not rounded) to three digits, as both read anchors show";
const TEXT_3 =
  "NIST HB 133 App. A Table 2-1 (Category A)";
const TEXT_4 =
  "every package in a lot of 2 to 11 is the sample; factor recomputed as t(0.975, n-1)/sqrt(n), within 0.0007";
const TEXT_5 =
  "lot and sample sizes, allowed number over MAV and tare column are from memory; factor recomputed as t(0.975, n-1)/sqrt(n), within 0.0007; initial tare sample 2, 3 or 5 (HB 133 (2026) 2.3.5 names these; which row has which was not read)";
const TEXT_6 =
  "percent results rounded UP to 0.1 g or mL up to 1000, to 1 g or mL above (rounding rule from memory: R 87; 76/211/EEC sec. 2.5)";
const TEXT_7 =
  "OIML R 87 (beyond the 10 kg scope of 76/211/EEC)";
const TEXT_8 =
  "French arrete of 20 Oct 1978, art. 10 and 11 (implements 76/211/EEC Annex II)";
const TEXT_9 =
  "double sampling for the number below Qn - T";
const TEXT_10 =
  "factor = t(0.995, n-1)/sqrt(n), recomputed";
const TEXT_11 =
  "the 2016 edition changed the plans: read it before using; factor = t(0.995, n-1)/sqrt(n), recomputed";
const TEXT_12 =
  "French arrete of 20 Oct 1978, art. 3.1";

export interface MavRow {
  readonly label_over_g: string;
  readonly label_up_to_g: string;
  readonly label_over_lb: string;
  readonly label_up_to_lb: string;
  readonly percent_of_label: string;
  readonly mav_g: string;
  readonly mav_lb: string;
  readonly mav_oz: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const MAV_ROWS: readonly MavRow[] = [
  {label_over_g: "0", label_up_to_g: "36", label_over_lb: "0", label_up_to_lb: "0.08", percent_of_label: "10", mav_g: "", mav_lb: "", mav_oz: "", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "36", label_up_to_g: "54", label_over_lb: "0.08", label_up_to_lb: "0.12", percent_of_label: "", mav_g: "3.6", mav_lb: "0.008", mav_oz: "0.125", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "54", label_up_to_g: "81", label_over_lb: "0.12", label_up_to_lb: "0.18", percent_of_label: "", mav_g: "5.4", mav_lb: "0.012", mav_oz: "0.1875", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "81", label_up_to_g: "117", label_over_lb: "0.18", label_up_to_lb: "0.26", percent_of_label: "", mav_g: "7.2", mav_lb: "0.016", mav_oz: "0.25", source: TEXT_1, basis: "read", note: "read anchor: 113 g (0.25 lb) has MAV 7.2 g (0.016 lb), NIST HB 133 (2026) sec. 2.2.1 (ch. 2); band edges and other columns memory"},
  {label_over_g: "117", label_up_to_g: "154", label_over_lb: "0.26", label_up_to_lb: "0.34", percent_of_label: "", mav_g: "9.0", mav_lb: "0.02", mav_oz: "0.3125", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "154", label_up_to_g: "208", label_over_lb: "0.34", label_up_to_lb: "0.46", percent_of_label: "", mav_g: "10.8", mav_lb: "0.024", mav_oz: "0.375", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "208", label_up_to_g: "263", label_over_lb: "0.46", label_up_to_lb: "0.58", percent_of_label: "", mav_g: "12.7", mav_lb: "0.028", mav_oz: "0.4375", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "263", label_up_to_g: "317", label_over_lb: "0.58", label_up_to_lb: "0.7", percent_of_label: "", mav_g: "14.5", mav_lb: "0.032", mav_oz: "0.5", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "317", label_up_to_g: "381", label_over_lb: "0.7", label_up_to_lb: "0.84", percent_of_label: "", mav_g: "16.3", mav_lb: "0.036", mav_oz: "0.5625", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "381", label_up_to_g: "426", label_over_lb: "0.84", label_up_to_lb: "0.94", percent_of_label: "", mav_g: "18.1", mav_lb: "0.04", mav_oz: "0.625", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "426", label_up_to_g: "489", label_over_lb: "0.94", label_up_to_lb: "1.08", percent_of_label: "", mav_g: "19.9", mav_lb: "0.044", mav_oz: "0.6875", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "489", label_up_to_g: "571", label_over_lb: "1.08", label_up_to_lb: "1.26", percent_of_label: "", mav_g: "21.7", mav_lb: "0.048", mav_oz: "0.75", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "571", label_up_to_g: "635", label_over_lb: "1.26", label_up_to_lb: "1.4", percent_of_label: "", mav_g: "23.5", mav_lb: "0.052", mav_oz: "0.8125", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "635", label_up_to_g: "698", label_over_lb: "1.4", label_up_to_lb: "1.54", percent_of_label: "", mav_g: "25.4", mav_lb: "0.056", mav_oz: "0.875", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "698", label_up_to_g: "771", label_over_lb: "1.54", label_up_to_lb: "1.7", percent_of_label: "", mav_g: "27.2", mav_lb: "0.06", mav_oz: "0.9375", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "771", label_up_to_g: "852", label_over_lb: "1.7", label_up_to_lb: "1.88", percent_of_label: "", mav_g: "29.0", mav_lb: "0.064", mav_oz: "1", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "852", label_up_to_g: "970", label_over_lb: "1.88", label_up_to_lb: "2.14", percent_of_label: "", mav_g: "31.7", mav_lb: "0.07", mav_oz: "1.125", source: TEXT_1, basis: "read", note: "read anchor: 907 g (2 lb) has MAV 31.7 g (0.07 lb), NIST HB 133 (2026) sec. 2.3.8 (ch. 2); band edges and other columns memory"},
  {label_over_g: "970", label_up_to_g: "1120", label_over_lb: "2.14", label_up_to_lb: "2.48", percent_of_label: "", mav_g: "35.3", mav_lb: "0.078", mav_oz: "1.25", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "1120", label_up_to_g: "1250", label_over_lb: "2.48", label_up_to_lb: "2.76", percent_of_label: "", mav_g: "39.0", mav_lb: "0.086", mav_oz: "1.375", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "1250", label_up_to_g: "1450", label_over_lb: "2.76", label_up_to_lb: "3.2", percent_of_label: "", mav_g: "42.6", mav_lb: "0.094", mav_oz: "1.5", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "1450", label_up_to_g: "1760", label_over_lb: "3.2", label_up_to_lb: "3.9", percent_of_label: "", mav_g: "49.8", mav_lb: "0.11", mav_oz: "1.75", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "1760", label_up_to_g: "2130", label_over_lb: "3.9", label_up_to_lb: "4.7", percent_of_label: "", mav_g: "54.4", mav_lb: "0.12", mav_oz: "2", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "2130", label_up_to_g: "2630", label_over_lb: "4.7", label_up_to_lb: "5.8", percent_of_label: "", mav_g: "63.5", mav_lb: "0.14", mav_oz: "2.25", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "2630", label_up_to_g: "3080", label_over_lb: "5.8", label_up_to_lb: "6.8", percent_of_label: "", mav_g: "68", mav_lb: "0.15", mav_oz: "2.5", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "3080", label_up_to_g: "3580", label_over_lb: "6.8", label_up_to_lb: "7.9", percent_of_label: "", mav_g: "77.1", mav_lb: "0.17", mav_oz: "2.75", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "3580", label_up_to_g: "4260", label_over_lb: "7.9", label_up_to_lb: "9.4", percent_of_label: "", mav_g: "86.1", mav_lb: "0.19", mav_oz: "3", source: TEXT_1, basis: "disputed", note: "an earlier recall had 86.2 (rounded from 0.19 lb = 86.18 g); the cut-off pattern of every other row and a second recall give 86.1: use 86.1 or the pound figure until read"},
  {label_over_g: "4260", label_up_to_g: "5300", label_over_lb: "9.4", label_up_to_lb: "11.7", percent_of_label: "", mav_g: "99.7", mav_lb: "0.22", mav_oz: "3.5", source: TEXT_1, basis: "disputed", note: "an earlier recall had 99.8 (rounded from 0.22 lb = 99.79 g); the cut-off pattern of every other row and a second recall give 99.7: use 99.7 or the pound figure until read"},
  {label_over_g: "5300", label_up_to_g: "6480", label_over_lb: "11.7", label_up_to_lb: "14.3", percent_of_label: "", mav_g: "113", mav_lb: "0.25", mav_oz: "4", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "6480", label_up_to_g: "8020", label_over_lb: "14.3", label_up_to_lb: "17.7", percent_of_label: "", mav_g: "127", mav_lb: "0.28", mav_oz: "4.5", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "8020", label_up_to_g: "10520", label_over_lb: "17.7", label_up_to_lb: "23.2", percent_of_label: "", mav_g: "140", mav_lb: "0.31", mav_oz: "5", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "10520", label_up_to_g: "14330", label_over_lb: "23.2", label_up_to_lb: "31.6", percent_of_label: "", mav_g: "167", mav_lb: "0.37", mav_oz: "6", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "14330", label_up_to_g: "19230", label_over_lb: "31.6", label_up_to_lb: "42.4", percent_of_label: "", mav_g: "199", mav_lb: "0.44", mav_oz: "7", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "19230", label_up_to_g: "24670", label_over_lb: "42.4", label_up_to_lb: "54.4", percent_of_label: "", mav_g: "226", mav_lb: "0.5", mav_oz: "8", source: TEXT_1, basis: "memory", note: TEXT_2},
  {label_over_g: "24670", label_up_to_g: "", label_over_lb: "54.4", label_up_to_lb: "", percent_of_label: "2", mav_g: "", mav_lb: "", mav_oz: "", source: TEXT_1, basis: "memory", note: TEXT_2},
];

export interface CategoryARow {
  readonly lot_from: string;
  readonly lot_to: string;
  readonly sample_size: string;
  readonly sample_correction_factor: string;
  readonly packages_allowed_over_mav: string;
  readonly initial_tare_sample: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const CATEGORY_A_ROWS: readonly CategoryARow[] = [
  {lot_from: "1", lot_to: "1", sample_size: "1", sample_correction_factor: "", packages_allowed_over_mav: "0", initial_tare_sample: "", source: TEXT_3, basis: "memory", note: "one package: apply the MAV requirement only"},
  {lot_from: "2", lot_to: "2", sample_size: "2", sample_correction_factor: "8.984", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "3", lot_to: "3", sample_size: "3", sample_correction_factor: "2.484", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "4", lot_to: "4", sample_size: "4", sample_correction_factor: "1.591", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "5", lot_to: "5", sample_size: "5", sample_correction_factor: "1.241", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "6", lot_to: "6", sample_size: "6", sample_correction_factor: "1.05", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "7", lot_to: "7", sample_size: "7", sample_correction_factor: "0.925", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "8", lot_to: "8", sample_size: "8", sample_correction_factor: "0.836", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "9", lot_to: "9", sample_size: "9", sample_correction_factor: "0.769", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "10", lot_to: "10", sample_size: "10", sample_correction_factor: "0.715", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "11", lot_to: "11", sample_size: "11", sample_correction_factor: "0.672", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: TEXT_4},
  {lot_from: "12", lot_to: "250", sample_size: "12", sample_correction_factor: "0.635", packages_allowed_over_mav: "0", initial_tare_sample: "2", source: TEXT_3, basis: "memory", note: "lot and sample sizes, allowed number over MAV and tare column are from memory; factor recomputed as t(0.975, n-1)/sqrt(n), within 0.0007; tare sample larger for some containers: not read"},
  {lot_from: "251", lot_to: "3200", sample_size: "24", sample_correction_factor: "0.422", packages_allowed_over_mav: "0", initial_tare_sample: "", source: TEXT_3, basis: "memory", note: TEXT_5},
  {lot_from: "3201", lot_to: "", sample_size: "48", sample_correction_factor: "0.291", packages_allowed_over_mav: "1", initial_tare_sample: "", source: TEXT_3, basis: "memory", note: TEXT_5},
];

export interface ShortageRow {
  readonly over_g_or_mL: string;
  readonly up_to_g_or_mL: string;
  readonly percent_of_Qn: string;
  readonly fixed_g_or_mL: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const SHORTAGE_ROWS: readonly ShortageRow[] = [
  {over_g_or_mL: "0", up_to_g_or_mL: "5", percent_of_Qn: "9", fixed_g_or_mL: "", source: "OIML R 87 (0 to 50 g or mL); 76/211/EEC starts at 5", basis: "memory", note: TEXT_6},
  {over_g_or_mL: "5", up_to_g_or_mL: "50", percent_of_Qn: "9", fixed_g_or_mL: "", source: "76/211/EEC Annex I sec. 2.4", basis: "read", note: TEXT_6},
  {over_g_or_mL: "50", up_to_g_or_mL: "100", percent_of_Qn: "", fixed_g_or_mL: "4.5", source: "76/211/EEC Annex I sec. 2.4", basis: "read", note: ""},
  {over_g_or_mL: "100", up_to_g_or_mL: "200", percent_of_Qn: "4.5", fixed_g_or_mL: "", source: "76/211/EEC Annex I sec. 2.4", basis: "read", note: TEXT_6},
  {over_g_or_mL: "200", up_to_g_or_mL: "300", percent_of_Qn: "", fixed_g_or_mL: "9", source: "76/211/EEC Annex I sec. 2.4", basis: "read", note: ""},
  {over_g_or_mL: "300", up_to_g_or_mL: "500", percent_of_Qn: "3", fixed_g_or_mL: "", source: "76/211/EEC Annex I sec. 2.4", basis: "read", note: TEXT_6},
  {over_g_or_mL: "500", up_to_g_or_mL: "1000", percent_of_Qn: "", fixed_g_or_mL: "15", source: "76/211/EEC Annex I sec. 2.4", basis: "read", note: ""},
  {over_g_or_mL: "1000", up_to_g_or_mL: "10000", percent_of_Qn: "1.5", fixed_g_or_mL: "", source: "76/211/EEC Annex I", basis: "read-secondary", note: "percent results rounded UP to 0.1 g or mL up to 1000, to 1 g or mL above (rounding rule from memory: R 87; 76/211/EEC sec. 2.5); same band read in French arrete 10 Jan 2006 Annex III table 5 and UK SI 2006/1258 Sch. 5 (filling instruments, OIML R 61)"},
  {over_g_or_mL: "10000", up_to_g_or_mL: "15000", percent_of_Qn: "", fixed_g_or_mL: "150", source: TEXT_7, basis: "read-secondary", note: "same band read in French arrete 10 Jan 2006 Annex III table 5 and UK SI 2006/1258 Sch. 5 (filling instruments, OIML R 61)"},
  {over_g_or_mL: "15000", up_to_g_or_mL: "50000", percent_of_Qn: "1", fixed_g_or_mL: "", source: TEXT_7, basis: "read-secondary", note: "percent results rounded UP to 0.1 g or mL up to 1000, to 1 g or mL above (rounding rule from memory: R 87; 76/211/EEC sec. 2.5); upper end 50 kg or L from memory (R 87); same band read in French arrete 10 Jan 2006 Annex III table 5 and UK SI 2006/1258 Sch. 5 (filling instruments, OIML R 61)"},
];

export interface BatchPlanRow {
  readonly batch_from: string;
  readonly batch_to: string;
  readonly sample_size: string;
  readonly accept_at_most: string;
  readonly reject_at_least: string;
  readonly second_cumulative_size: string;
  readonly second_accept_at_most: string;
  readonly second_reject_at_least: string;
  readonly mean_factor: string;
  readonly rule: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const BATCH_PLAN_ROWS: readonly BatchPlanRow[] = [
  {batch_from: "2", batch_to: "99", sample_size: "", accept_at_most: "", reject_at_least: "", second_cumulative_size: "", second_accept_at_most: "", second_reject_at_least: "", mean_factor: "0", rule: "mean of the whole batch must be at least Qn (0 s)", source: TEXT_8, basis: "read", note: "batch under 100: 100 % check, non-destructive; sample = every pack in the batch"},
  {batch_from: "100", batch_to: "500", sample_size: "30", accept_at_most: "1", reject_at_least: "3", second_cumulative_size: "60", second_accept_at_most: "4", second_reject_at_least: "5", mean_factor: "", rule: TEXT_9, source: TEXT_8, basis: "read", note: ""},
  {batch_from: "501", batch_to: "3200", sample_size: "50", accept_at_most: "2", reject_at_least: "5", second_cumulative_size: "100", second_accept_at_most: "6", second_reject_at_least: "7", mean_factor: "", rule: TEXT_9, source: TEXT_8, basis: "read", note: ""},
  {batch_from: "3201", batch_to: "", sample_size: "80", accept_at_most: "3", reject_at_least: "7", second_cumulative_size: "160", second_accept_at_most: "8", second_reject_at_least: "9", mean_factor: "", rule: TEXT_9, source: TEXT_8, basis: "read", note: ""},
  {batch_from: "100", batch_to: "500", sample_size: "30", accept_at_most: "", reject_at_least: "", second_cumulative_size: "", second_accept_at_most: "", second_reject_at_least: "", mean_factor: "0.503", rule: "mean test: accept if xbar >= Qn - 0.503 s (t(0.995, n-1)/sqrt(n) = 0.50324)", source: TEXT_8, basis: "read", note: TEXT_10},
  {batch_from: "501", batch_to: "", sample_size: "50", accept_at_most: "", reject_at_least: "", second_cumulative_size: "", second_accept_at_most: "", second_reject_at_least: "", mean_factor: "0.379", rule: "mean test: accept if xbar >= Qn - 0.379 s (t(0.995, n-1)/sqrt(n) = 0.37900)", source: TEXT_8, basis: "read", note: TEXT_10},
  {batch_from: "100", batch_to: "", sample_size: "20", accept_at_most: "1", reject_at_least: "2", second_cumulative_size: "", second_accept_at_most: "", second_reject_at_least: "", mean_factor: "0.640", rule: "destructive: accept if at most 1 defective and xbar >= Qn - 0.640 s (formula 0.63972)", source: TEXT_8, basis: "read", note: "destructive plan only for batches of 100 or more; factor = t(0.995, n-1)/sqrt(n), recomputed"},
  {batch_from: "100", batch_to: "500", sample_size: "50", accept_at_most: "3", reject_at_least: "4", second_cumulative_size: "", second_accept_at_most: "", second_reject_at_least: "", mean_factor: "0.379", rule: "mean test factor 0.379 (formula 0.37900)", source: "OIML R 87:2004 Table 1", basis: "memory", note: TEXT_11},
  {batch_from: "501", batch_to: "3200", sample_size: "80", accept_at_most: "5", reject_at_least: "6", second_cumulative_size: "", second_accept_at_most: "", second_reject_at_least: "", mean_factor: "0.295", rule: "mean test factor 0.295 (formula 0.29511)", source: "OIML R 87:2004 Table 1", basis: "memory", note: TEXT_11},
  {batch_from: "3201", batch_to: "", sample_size: "125", accept_at_most: "7", reject_at_least: "8", second_cumulative_size: "", second_accept_at_most: "", second_reject_at_least: "", mean_factor: "0.234", rule: "mean test factor 0.234 (formula 0.23399)", source: "OIML R 87:2004 Table 1", basis: "memory", note: TEXT_11},
];

export interface PackDivisionRow {
  readonly scale_division_g: string;
  readonly allowed_from_nominal_g: string;
  readonly source: string;
  readonly basis: string;
  readonly note: string;
}

export const PACK_DIVISION_ROWS: readonly PackDivisionRow[] = [
  {scale_division_g: "0.1", allowed_from_nominal_g: "0", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "0.2", allowed_from_nominal_g: "10", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "0.5", allowed_from_nominal_g: "50", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "1", allowed_from_nominal_g: "200", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "2", allowed_from_nominal_g: "2000", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "5", allowed_from_nominal_g: "5000", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "10", allowed_from_nominal_g: "10000", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "20", allowed_from_nominal_g: "20000", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
  {scale_division_g: "50", allowed_from_nominal_g: "50000", source: TEXT_12, basis: "read", note: "class II or III verified scale"},
];

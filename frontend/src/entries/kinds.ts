/** The table of kinds. Written by `make kinds` from kitchenlog/entries/kinds; do not edit. */

export type SubjectType = "cooperative" | "place" | "material" | "source" | "recipient" | "instrument" | "recipe" | "lot" | "price" | "batch" | "day" | "skill" | "cost" | "rates" | "asked";
export type Measure = "mass" | "volume" | "count";
export type UnitCode = "mL" | "L" | "us_gal" | "us_qt" | "us_pt" | "us_cup" | "us_floz" | "us_tbsp" | "us_tsp" | "us_gill" | "us_fldr" | "us_bu" | "us_pk" | "us_dry_qt" | "us_dry_pt" | "fda_cup" | "fda_floz" | "fda_tbsp" | "fda_tsp" | "metric_cup" | "metric_tbsp" | "metric_tsp" | "au_tbsp" | "imp_gal" | "imp_qt" | "imp_pt" | "imp_floz" | "imp_cup" | "mg" | "g" | "kg" | "lb" | "oz" | "gr" | "fda_oz" | "pc";
export type JsonValue =
  | string
  | number
  | boolean
  | null
  | readonly JsonValue[]
  | { readonly [name: string]: JsonValue };

/** An amount as it was read, with its unit. */
export interface Quantity {
  readonly amount: string;
  readonly unit: UnitCode;
}

/** One field of a definition, from what to what; null where it may be missing and is. */
export interface Change {
  readonly from: JsonValue;
  readonly to: JsonValue;
}

export type FieldType = "text" | "letters" | "code" | "id" | "entry" | "subject" | "decimal" | "whole" | "quantity" | "day" | "moment" | "zone" | "choice" | "flag" | "kind" | "group" | "list" | "unit" | "decimals" | "wholes" | "choices" | "changes" | "change" | "body";

export interface Field {
  readonly name: string;
  readonly type: FieldType;
  readonly is_required?: false;
  readonly most_chars?: number;
  readonly most_items?: number;
  readonly least_items?: number;
  readonly digits?: number;
  readonly places?: number;
  readonly least?: string;
  readonly most?: string;
  readonly to?: SubjectType;
  readonly choices?: readonly string[];
  readonly measures?: readonly Measure[];
  readonly fields?: readonly Field[];
  readonly of_kind?: string;
}

export interface Kind {
  readonly name: string;
  readonly fields: readonly Field[];
  readonly subjects: readonly string[];
  readonly mentions?: readonly string[];
  readonly leans_on?: readonly string[];
  readonly version: number;
  readonly written_by?: "coordinator";
  readonly audience?: "own" | "coordinator";
  readonly one_of?: readonly string[];
  readonly together?: readonly (readonly [string, string])[];
}

export const TABLE_NUMBER = 1;

export const SUBJECT_TYPES: readonly SubjectType[] = ["cooperative", "place", "material", "source", "recipient", "instrument", "recipe", "lot", "price", "batch", "day", "skill", "cost", "rates", "asked"];

/** The cooperative is set up. */
export interface CooperativeDefinedBody {
  readonly cooperative: string;
  readonly name: string;
  readonly time_zone: string;
  readonly currency: string;
  readonly currency_places: number;
  readonly language: string;
  readonly unit_habit: "metric" | "us" | "imperial";
  readonly rules: "us" | "eu" | "own";
  readonly prices_shown: boolean;
}

/** The cooperative is edited: each field from what to what. */
export interface CooperativeChangedBody {
  readonly cooperative: string;
  readonly changes: { readonly [Name in "name" | "time_zone" | "currency" | "currency_places" | "language" | "unit_habit" | "rules" | "prices_shown"]?: Change | undefined };
  readonly reason?: string | undefined;
}

/** A kitchen, store, stall or box is set up. */
export interface PlaceDefinedBody {
  readonly place: string;
  readonly name: string;
  readonly sort: "kitchen" | "store" | "stall" | "box";
  readonly altitude_m?: string | undefined;
  readonly note?: string | undefined;
  readonly is_retired?: boolean | undefined;
}

/** A kitchen, store, stall or box is edited: each field from what to what. */
export interface PlaceChangedBody {
  readonly place: string;
  readonly changes: { readonly [Name in "name" | "sort" | "altitude_m" | "note" | "is_retired"]?: Change | undefined };
  readonly reason?: string | undefined;
}

/** An ingredient, packaging or product is set up. */
export interface MaterialDefinedBody {
  readonly material: string;
  readonly name: string;
  readonly sort: "ingredient" | "packaging" | "product";
  readonly measured_by: "mass" | "volume" | "count";
  readonly letters: string;
  readonly density_of?: string | undefined;
  readonly pack_net?: Quantity | undefined;
  readonly pack_word?: string | undefined;
  readonly price?: string | undefined;
  readonly loses_moisture?: boolean | undefined;
  readonly life?: {
    readonly sort: "use_by" | "best_before" | "expires_on";
    readonly length: number;
    readonly unit: "days" | "months";
  } | undefined;
  readonly allergens?: readonly ("celery" | "cereals_with_gluten" | "crustaceans" | "eggs" | "fish" | "lupin" | "milk" | "molluscs" | "mustard" | "peanuts" | "sesame" | "soybeans" | "sulphites" | "tree_nuts" | "wheat")[] | undefined;
  readonly note?: string | undefined;
  readonly is_retired?: boolean | undefined;
}

/** An ingredient, packaging or product is edited: each field from what to what. */
export interface MaterialChangedBody {
  readonly material: string;
  readonly changes: { readonly [Name in "name" | "sort" | "measured_by" | "letters" | "density_of" | "pack_net" | "pack_word" | "price" | "loses_moisture" | "life" | "allergens" | "note" | "is_retired"]?: Change | undefined };
  readonly reason?: string | undefined;
}

/** An immediate previous source is set up. */
export interface SourceDefinedBody {
  readonly source: string;
  readonly name: string;
  readonly contact?: string | undefined;
  readonly address?: string | undefined;
  readonly note?: string | undefined;
  readonly is_retired?: boolean | undefined;
}

/** An immediate previous source is edited: each field from what to what. */
export interface SourceChangedBody {
  readonly source: string;
  readonly changes: { readonly [Name in "name" | "contact" | "address" | "note" | "is_retired"]?: Change | undefined };
  readonly reason?: string | undefined;
}

/** An immediate subsequent recipient is set up. */
export interface RecipientDefinedBody {
  readonly recipient: string;
  readonly name: string;
  readonly contact?: string | undefined;
  readonly address?: string | undefined;
  readonly note?: string | undefined;
  readonly is_retired?: boolean | undefined;
}

/** An immediate subsequent recipient is edited: each field from what to what. */
export interface RecipientChangedBody {
  readonly recipient: string;
  readonly changes: { readonly [Name in "name" | "contact" | "address" | "note" | "is_retired"]?: Change | undefined };
  readonly reason?: string | undefined;
}

/** What measures is set up. */
export interface InstrumentDefinedBody {
  readonly instrument: string;
  readonly name: string;
  readonly sort: "scale" | "thermometer" | "ph_meter" | "refractometer" | "salometer" | "cylinder" | "cup" | "spoon" | "timer";
  readonly place?: string | undefined;
  readonly unit: string;
  readonly division?: string | undefined;
  readonly capacity?: string | undefined;
  readonly repeatability?: string | undefined;
  readonly bowl_tare?: string | undefined;
  readonly interval?: string | undefined;
  readonly accuracy_class?: "I" | "II" | "III" | "IIII" | "A" | "B" | undefined;
  readonly judged_by?: "r76_in_service" | "r76_initial" | "hb133" | "household" | "cylinder" | "own" | undefined;
  readonly most_error?: string | undefined;
  readonly holds?: Quantity | undefined;
  readonly good_for?: string | undefined;
  readonly check_days?: number | undefined;
  readonly check_uses?: number | undefined;
  readonly note?: string | undefined;
  readonly is_retired?: boolean | undefined;
}

/** What measures is edited: each field from what to what. */
export interface InstrumentChangedBody {
  readonly instrument: string;
  readonly changes: { readonly [Name in "name" | "sort" | "place" | "unit" | "division" | "capacity" | "repeatability" | "bowl_tare" | "interval" | "accuracy_class" | "judged_by" | "most_error" | "holds" | "good_for" | "check_days" | "check_uses" | "note" | "is_retired"]?: Change | undefined };
  readonly reason?: string | undefined;
}

/** A version of a recipe that never changes afterwards. */
export interface RecipePublishedBody {
  readonly recipe: string;
  readonly number: number;
  readonly name: string;
  readonly product: string;
  readonly makes: Quantity;
  readonly packs?: number | undefined;
  readonly lines: readonly {
    readonly line: string;
    readonly material: string;
    readonly amount: Quantity;
    readonly percent?: string | undefined;
    readonly percent_of?: "base" | "whole" | undefined;
    readonly is_base?: boolean | undefined;
    readonly state?: "as_bought" | "prepared" | undefined;
    readonly yields?: {
      readonly percent: string;
      readonly by: "table" | "own" | "typed";
      readonly source?: string | undefined;
      readonly prepared_as?: string | undefined;
    } | undefined;
    readonly below?: string | undefined;
    readonly above?: string | undefined;
    readonly level?: string | undefined;
    readonly soluble_percent?: string | undefined;
    readonly note?: string | undefined;
  }[];
  readonly steps: readonly {
    readonly step: string;
    readonly says: string;
    readonly measures?: "prepared_mass" | "kettle_mass" | "mass" | "temperature" | "ph" | "brix" | "water_activity" | "salt" | "salometer" | "salt_weighed" | "sugar_weighed" | "acidity" | "minutes" | undefined;
    readonly line?: string | undefined;
    readonly acid?: "citric" | "tartaric" | "lactic" | "acetic" | "malic" | undefined;
    readonly counts?: readonly {
      readonly line: string;
      readonly percent: string;
    }[] | undefined;
    readonly minutes?: string | undefined;
    readonly unit?: string | undefined;
    readonly low?: string | undefined;
    readonly high?: string | undefined;
    readonly level?: string | undefined;
    readonly set_by?: string | undefined;
    readonly caution?: string | undefined;
  }[];
  readonly target_solids_percent?: string | undefined;
  readonly loss_percent?: string | undefined;
  readonly pack_sizes?: readonly {
    readonly size: string;
    readonly net: Quantity;
    readonly word?: string | undefined;
    readonly packaging?: string | undefined;
  }[] | undefined;
  readonly life?: {
    readonly sort: "use_by" | "best_before" | "expires_on";
    readonly length: number;
    readonly unit: "days" | "months";
  } | undefined;
  readonly does_not_scale?: string | undefined;
  readonly note?: string | undefined;
}

/** Goods came from a source and became a lot, or were refused. */
export interface ReceiptBody {
  readonly lot: string;
  readonly material: string;
  readonly source: string;
  readonly their_lot?: string | undefined;
  readonly amount: Quantity;
  readonly place: string;
  readonly condition: "fit" | "refused";
  readonly refused_why?: string | undefined;
  readonly life?: {
    readonly sort: "use_by" | "best_before" | "expires_on";
    readonly on: string;
  } | undefined;
  readonly note?: string | undefined;
}

/** What a received lot cost; kept apart because not everybody sees it. */
export interface PricePaidBody {
  readonly lot: string;
  readonly price: string;
  readonly currency: string;
}

/** What was left in a bin and what was added become a new lot. */
export interface ToppedUpBody {
  readonly lot: string;
  readonly material: string;
  readonly place: string;
  readonly from: readonly {
    readonly lot: string;
    readonly amount: Quantity;
  }[];
  readonly life?: {
    readonly sort: "use_by" | "best_before" | "expires_on";
    readonly on: string;
  } | undefined;
  readonly despite?: {
    readonly what: readonly ("held" | "recalled" | "expired")[];
    readonly reason: string;
  } | undefined;
}

/** One run of one recipe version begins, with its planned lines and steps. */
export interface BatchStartedBody {
  readonly batch: string;
  readonly code: string;
  readonly recipe: string;
  readonly recipe_version: string;
  readonly product: string;
  readonly place: string;
  readonly makes: Quantity;
  readonly scaled_by: "as_written" | "mass" | "packs" | "limiting";
  readonly lines: readonly {
    readonly line: string;
    readonly material: string;
    readonly amount: Quantity;
    readonly percent?: string | undefined;
    readonly percent_of?: "base" | "whole" | undefined;
    readonly is_base?: boolean | undefined;
    readonly state?: "as_bought" | "prepared" | undefined;
    readonly yields?: {
      readonly percent: string;
      readonly by: "table" | "own" | "typed";
      readonly source?: string | undefined;
      readonly prepared_as?: string | undefined;
    } | undefined;
    readonly below?: string | undefined;
    readonly above?: string | undefined;
    readonly level?: string | undefined;
    readonly soluble_percent?: string | undefined;
    readonly note?: string | undefined;
  }[];
  readonly steps: readonly {
    readonly step: string;
    readonly says: string;
    readonly measures?: "prepared_mass" | "kettle_mass" | "mass" | "temperature" | "ph" | "brix" | "water_activity" | "salt" | "salometer" | "salt_weighed" | "sugar_weighed" | "acidity" | "minutes" | undefined;
    readonly line?: string | undefined;
    readonly acid?: "citric" | "tartaric" | "lactic" | "acetic" | "malic" | undefined;
    readonly counts?: readonly {
      readonly line: string;
      readonly percent: string;
    }[] | undefined;
    readonly minutes?: string | undefined;
    readonly unit?: string | undefined;
    readonly low?: string | undefined;
    readonly high?: string | undefined;
    readonly level?: string | undefined;
    readonly set_by?: string | undefined;
    readonly caution?: string | undefined;
  }[];
  readonly target_solids_percent?: string | undefined;
  readonly pack_net?: Quantity | undefined;
}

/** One line stands on the bench before anything is combined. */
export interface LaidOutBody {
  readonly batch: string;
  readonly line: string;
  readonly lots: readonly {
    readonly lot: string;
    readonly amount?: Quantity | undefined;
  }[];
  readonly despite?: {
    readonly what: readonly ("held" | "recalled" | "expired")[];
    readonly reason: string;
  } | undefined;
}

/** An amount of a lot was weighed or counted into a batch. */
export interface WeighInBody {
  readonly batch: string;
  readonly line: string;
  readonly material: string;
  readonly lot: string;
  readonly place: string;
  readonly reading?: {
    readonly instrument?: string | undefined;
    readonly unit: string;
    readonly shown: string;
    readonly tare?: string | undefined;
    readonly division?: string | undefined;
    readonly repeatability?: string | undefined;
    readonly repeats?: readonly string[] | undefined;
  } | undefined;
  readonly counted?: Quantity | undefined;
  readonly despite?: {
    readonly what: readonly ("held" | "recalled" | "expired")[];
    readonly reason: string;
  } | undefined;
}

/** A step was carried out, with its reading where it has a check. */
export interface StepDoneBody {
  readonly batch: string;
  readonly step: string;
  readonly reading?: {
    readonly instrument?: string | undefined;
    readonly unit: string;
    readonly shown: string;
    readonly tare?: string | undefined;
    readonly division?: string | undefined;
    readonly repeatability?: string | undefined;
    readonly repeats?: readonly string[] | undefined;
  } | undefined;
  readonly celsius?: string | undefined;
  readonly scale?: "standard" | "canning" | undefined;
  readonly titration?: {
    readonly acid: "citric" | "tartaric" | "lactic" | "acetic" | "malic";
    readonly normality: string;
    readonly titre: string;
    readonly blank?: string | undefined;
    readonly sample: Quantity;
    readonly division?: string | undefined;
  } | undefined;
  readonly action?: string | undefined;
}

/** Good packs, or a good mass, came out of a batch and became a lot. */
export interface OutputBody {
  readonly batch: string;
  readonly lot: string;
  readonly material: string;
  readonly place: string;
  readonly amount: Quantity;
  readonly pack_net?: Quantity | undefined;
  readonly rejected?: Quantity | undefined;
  readonly rejected_why?: string | undefined;
  readonly life?: {
    readonly sort: "use_by" | "best_before" | "expires_on";
    readonly on: string;
  } | undefined;
}

/** Something was lost, from a batch or from a lot in stock, for a reason. */
export interface LossBody {
  readonly batch?: string | undefined;
  readonly lot?: string | undefined;
  readonly place?: string | undefined;
  readonly amount: Quantity;
  readonly reason: "spoiled" | "trim" | "residue" | "spilled" | "breakage" | "sample" | "expired" | "waste" | "other";
  readonly stage?: "preparation" | "cooking" | "filling" | "store" | "stall" | undefined;
  readonly line?: string | undefined;
  readonly note?: string | undefined;
  readonly despite?: {
    readonly what: readonly ("held" | "recalled" | "expired")[];
    readonly reason: string;
  } | undefined;
}

/** Nothing more is expected of a batch. */
export interface BatchFinishedBody {
  readonly batch: string;
  readonly note?: string | undefined;
}

/** Stock went from one place to another; one entry, both legs. */
export interface TransferBody {
  readonly lot: string;
  readonly amount: Quantity;
  readonly from_place: string;
  readonly to_place: string;
  readonly despite?: {
    readonly what: readonly ("held" | "recalled" | "expired")[];
    readonly reason: string;
  } | undefined;
}

/** Stock went to a business, by name. */
export interface DispatchBody {
  readonly lot: string;
  readonly amount: Quantity;
  readonly place: string;
  readonly recipient: string;
  readonly price_each?: string | undefined;
  readonly document?: string | undefined;
  readonly despite?: {
    readonly what: readonly ("held" | "recalled" | "expired")[];
    readonly reason: string;
  } | undefined;
}

/** Stock was sold to a private buyer, who is not recorded. */
export interface SaleBody {
  readonly lot: string;
  readonly amount: Quantity;
  readonly place: string;
  readonly on: string;
  readonly price_each?: string | undefined;
  readonly discount?: string | undefined;
  readonly despite?: {
    readonly what: readonly ("held" | "recalled" | "expired")[];
    readonly reason: string;
  } | undefined;
}

/** Stock came back from a recipient or a stall. */
export interface ReturnBody {
  readonly lot: string;
  readonly amount: Quantity;
  readonly place: string;
  readonly on: string;
  readonly recipient?: string | undefined;
  readonly condition: "fit" | "unfit";
  readonly reason: string;
}

/** What was seen at a place: an observation, not a movement. */
export interface CountBody {
  readonly lot: string;
  readonly amount: Quantity;
  readonly place: string;
}

/** An instrument was compared with known values; its sheet says what that means. */
export interface InstrumentCheckedBody {
  readonly instrument: string;
  readonly place?: string | undefined;
  readonly unit: string;
  readonly division?: string | undefined;
  readonly steps: readonly {
    readonly sort: "zero" | "tare" | "rising" | "falling" | "off_centre" | "return_to_zero" | "repeats" | "water" | "ice" | "boiling" | "buffer" | "comparison";
    readonly readings: readonly string[];
    readonly reference?: string | undefined;
    readonly tolerance?: string | undefined;
    readonly where?: string | undefined;
    readonly celsius?: string | undefined;
    readonly celsius_tolerance?: string | undefined;
    readonly tare?: string | undefined;
    readonly division?: string | undefined;
    readonly repeatability?: string | undefined;
    readonly altitude_m?: string | undefined;
    readonly pressure_hpa?: string | undefined;
    readonly millivolts?: string | undefined;
  }[];
  readonly judged_by?: "r76_in_service" | "r76_initial" | "hb133" | "household" | "cylinder" | "own" | undefined;
  readonly accuracy_class?: "I" | "II" | "III" | "IIII" | "A" | "B" | undefined;
  readonly interval?: string | undefined;
  readonly most_error?: string | undefined;
  readonly holds?: Quantity | undefined;
  readonly line?: "none" | "offset" | "two_point" | "least_squares" | undefined;
  readonly is_adjusted?: boolean | undefined;
  readonly check_scale?: string | undefined;
  readonly note?: string | undefined;
}

/** A member read what the app drew, then weighed one thing several times. */
export interface DrillDoneBody {
  readonly member: string;
  readonly seed: number;
  readonly drawn_by: number;
  readonly questions: readonly {
    readonly sort: "dial" | "surface" | "spoon";
    readonly truth: string;
    readonly division: string;
    readonly read: string;
  }[];
  readonly weighing?: {
    readonly instrument?: string | undefined;
    readonly unit: string;
    readonly division?: string | undefined;
    readonly shown: readonly string[];
  } | undefined;
  readonly techniques?: readonly ("level_surface" | "eye_level" | "lowest_point" | "needle_on_zero" | "waited_until_steady" | "tared_the_bowl" | "levelled_with_a_straight_edge" | "spooned_not_scooped" | "wrote_it_at_once")[] | undefined;
  readonly note?: string | undefined;
}

/** Packs of a lot were weighed against what their label says is in them. */
export interface FillCheckedBody {
  readonly lot: string;
  readonly on: string;
  readonly label: readonly {
    readonly amount: Quantity;
  }[];
  readonly rules: "us" | "eu";
  readonly unit: string;
  readonly tares: readonly string[];
  readonly gross: readonly string[];
  readonly instrument?: string | undefined;
  readonly division?: string | undefined;
  readonly lot_size?: number | undefined;
  readonly density?: string | undefined;
  readonly loses_moisture?: boolean | undefined;
  readonly note?: string | undefined;
}

/** Somebody worked so many minutes on a batch. */
export interface LabourBody {
  readonly batch: string;
  readonly member?: string | undefined;
  readonly name?: string | undefined;
  readonly minutes: string;
  readonly is_paid?: boolean | undefined;
  readonly pay_per_hour?: string | undefined;
  readonly note?: string | undefined;
}

/** A batch cost something that is neither a lot nor labour. */
export interface ExpenseBody {
  readonly batch: string;
  readonly part: "fuel" | "overhead" | "other";
  readonly says?: string | undefined;
  readonly amount: string;
  readonly currency: string;
}

/** How the products of a batch share its cost, and what its by-products are worth. */
export interface CostSharedBody {
  readonly batch: string;
  readonly by: "mass" | "sales_value";
  readonly currency: string;
  readonly products: readonly {
    readonly lot: string;
    readonly sort: "main" | "by_product";
    readonly value_each?: string | undefined;
  }[];
}

/** What the cooperative reckons costs and prices with, from a day on. */
export interface RatesSetBody {
  readonly cooperative: string;
  readonly since: string;
  readonly pay_per_hour?: string | undefined;
  readonly overhead?: {
    readonly by: "batch" | "labour_hour" | "kg" | "percent";
    readonly rate: string;
    readonly percent_of?: "materials" | "labour" | "materials_and_labour" | undefined;
  } | undefined;
  readonly proposal?: {
    readonly of: "cost" | "price";
    readonly percent: string;
    readonly commission_percent?: string | undefined;
    readonly coin: string;
    readonly rule: "up" | "nearest" | "down";
  } | undefined;
}

/** What a stall or a business is asked for a pack of a product, from a day on. */
export interface PriceAskedBody {
  readonly material: string;
  readonly for_whom: "stall" | "business";
  readonly pack_net?: Quantity | undefined;
  readonly since: string;
  readonly price: string;
  readonly currency: string;
}

/** Temperatures of a batch over time, and what they are judged by. */
export interface HeatLogBody {
  readonly batch: string;
  readonly step?: string | undefined;
  readonly instrument?: string | undefined;
  readonly division?: string | undefined;
  readonly repeatability?: string | undefined;
  readonly came_by: "typed" | "pasted" | "file" | "timer";
  readonly unit: "degC" | "degF";
  readonly began_at: string;
  readonly at_s: readonly number[];
  readonly temperatures: readonly string[];
  readonly left_out?: number | undefined;
  readonly judged?: {
    readonly by: "lethality" | "two_stage_cooling" | "ambient_cooling" | "received_cooling" | "hot_hold" | "cold_hold" | "time_4_h" | "time_6_h";
    readonly set_by: string;
    readonly reference?: "f0" | "f0_250_f" | "acidified_from_4_1" | "acidified_below_4_1" | "beer" | "beer_1_393" | "acid_foods" | "tomato_beverages" | "pickle_quality" | "own" | undefined;
    readonly t_ref?: string | undefined;
    readonly z?: string | undefined;
    readonly reference_unit?: "degC" | "degF" | undefined;
    readonly wanted_min?: string | undefined;
    readonly from_s?: number | undefined;
    readonly to_s?: number | undefined;
  } | undefined;
  readonly action?: string | undefined;
}

/** A batch or a lot is kept back until a coordinator decides. */
export interface HeldBody {
  readonly batch?: string | undefined;
  readonly lot?: string | undefined;
  readonly because: "check" | "complaint" | "recalled" | "other";
  readonly reason: string;
}

/** A coordinator decided what becomes of a batch or lot on hold, naming each cause. */
export interface HoldDecidedBody {
  readonly batch?: string | undefined;
  readonly lot?: string | undefined;
  readonly decision: "release" | "hold";
  readonly decides: readonly {
    readonly entry: string;
  }[];
  readonly reason: string;
}

/** The whole new body of an earlier entry, and why. The old one stays readable. */
export interface CorrectionBody {
  readonly corrects: string;
  readonly of_kind: KindName;
  readonly reason: string;
  readonly body: Bodies[KindName];
  readonly of_version?: number | undefined;
  readonly instead_of?: readonly {
    readonly entry: string;
  }[] | undefined;
}

/** An earlier entry did not happen, and why. It stays readable. */
export interface VoidBody {
  readonly corrects: string;
  readonly of_kind: KindName;
  readonly reason: string;
  readonly instead_of?: readonly {
    readonly entry: string;
  }[] | undefined;
}

/** Somebody looked at a finding and decided. */
export interface FindingSettledBody {
  readonly subject: string;
  readonly finding: string;
  readonly decision: "explained" | "put_right" | "accepted";
  readonly reason: string;
}

/** Words about a subject. */
export interface NoteBody {
  readonly subject: string;
  readonly says: string;
}

export interface Bodies {
  readonly cooperative_defined: CooperativeDefinedBody;
  readonly cooperative_changed: CooperativeChangedBody;
  readonly place_defined: PlaceDefinedBody;
  readonly place_changed: PlaceChangedBody;
  readonly material_defined: MaterialDefinedBody;
  readonly material_changed: MaterialChangedBody;
  readonly source_defined: SourceDefinedBody;
  readonly source_changed: SourceChangedBody;
  readonly recipient_defined: RecipientDefinedBody;
  readonly recipient_changed: RecipientChangedBody;
  readonly instrument_defined: InstrumentDefinedBody;
  readonly instrument_changed: InstrumentChangedBody;
  readonly recipe_published: RecipePublishedBody;
  readonly receipt: ReceiptBody;
  readonly price_paid: PricePaidBody;
  readonly topped_up: ToppedUpBody;
  readonly batch_started: BatchStartedBody;
  readonly laid_out: LaidOutBody;
  readonly weigh_in: WeighInBody;
  readonly step_done: StepDoneBody;
  readonly output: OutputBody;
  readonly loss: LossBody;
  readonly batch_finished: BatchFinishedBody;
  readonly transfer: TransferBody;
  readonly dispatch: DispatchBody;
  readonly sale: SaleBody;
  readonly return: ReturnBody;
  readonly count: CountBody;
  readonly instrument_checked: InstrumentCheckedBody;
  readonly drill_done: DrillDoneBody;
  readonly fill_checked: FillCheckedBody;
  readonly labour: LabourBody;
  readonly expense: ExpenseBody;
  readonly cost_shared: CostSharedBody;
  readonly rates_set: RatesSetBody;
  readonly price_asked: PriceAskedBody;
  readonly heat_log: HeatLogBody;
  readonly held: HeldBody;
  readonly hold_decided: HoldDecidedBody;
  readonly correction: CorrectionBody;
  readonly void: VoidBody;
  readonly finding_settled: FindingSettledBody;
  readonly note: NoteBody;
}

export type KindName = keyof Bodies;

/** Exactly the fields an entry's fingerprint is taken of, without its kind and body. */
export interface Envelope {
  readonly id: string;
  readonly version: number;
  readonly subjects: readonly string[];
  readonly cooperative: string;
  readonly author: string;
  readonly device: string;
  readonly device_seq: number;
  readonly recorded_at: string;
  readonly tz: string;
  readonly utc_offset_min: number;
  readonly local_date: string;
  readonly seen: string;
  readonly happened_at: string;
  readonly app_version: string;
}

/** A kind with its body: what a screen hands over to be recorded. */
export type Content<K extends KindName = KindName> = {
  [Name in K]: { readonly kind: Name; readonly body: Bodies[Name] };
}[K];

export type Entry<K extends KindName = KindName> = Envelope & Content<K>;

export const KINDS: Readonly<Record<KindName, Kind>> = {
  cooperative_defined: { name: "cooperative_defined", fields: [{ name: "cooperative", type: "id", to: "cooperative" }, { name: "name", type: "text", most_chars: 120 }, { name: "time_zone", type: "zone" }, { name: "currency", type: "letters", most_chars: 3 }, { name: "currency_places", type: "whole", least: "0", most: "3" }, { name: "language", type: "text", most_chars: 12 }, { name: "unit_habit", type: "choice", choices: ["metric", "us", "imperial"] }, { name: "rules", type: "choice", choices: ["us", "eu", "own"] }, { name: "prices_shown", type: "flag" }], subjects: ["cooperative:{cooperative}"], version: 1, written_by: "coordinator" },
  cooperative_changed: { name: "cooperative_changed", fields: [{ name: "cooperative", type: "id", to: "cooperative" }, { name: "changes", type: "changes", of_kind: "cooperative_defined" }, { name: "reason", type: "text", is_required: false, most_chars: 600 }], subjects: ["cooperative:{cooperative}"], version: 1, written_by: "coordinator" },
  place_defined: { name: "place_defined", fields: [{ name: "place", type: "id", to: "place" }, { name: "name", type: "text", most_chars: 120 }, { name: "sort", type: "choice", choices: ["kitchen", "store", "stall", "box"] }, { name: "altitude_m", type: "decimal", is_required: false, digits: 14, places: 6, least: "-500", most: "6000" }, { name: "note", type: "text", is_required: false, most_chars: 600 }, { name: "is_retired", type: "flag", is_required: false }], subjects: ["place:{place}"], version: 1, written_by: "coordinator" },
  place_changed: { name: "place_changed", fields: [{ name: "place", type: "id", to: "place" }, { name: "changes", type: "changes", of_kind: "place_defined" }, { name: "reason", type: "text", is_required: false, most_chars: 600 }], subjects: ["place:{place}"], version: 1, written_by: "coordinator" },
  material_defined: { name: "material_defined", fields: [{ name: "material", type: "id", to: "material" }, { name: "name", type: "text", most_chars: 120 }, { name: "sort", type: "choice", choices: ["ingredient", "packaging", "product"] }, { name: "measured_by", type: "choice", choices: ["mass", "volume", "count"] }, { name: "letters", type: "letters", most_chars: 3 }, { name: "density_of", type: "text", is_required: false, most_chars: 120 }, { name: "pack_net", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume"] }, { name: "pack_word", type: "text", is_required: false, most_chars: 20 }, { name: "price", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "loses_moisture", type: "flag", is_required: false }, { name: "life", type: "group", is_required: false, fields: [{ name: "sort", type: "choice", choices: ["use_by", "best_before", "expires_on"] }, { name: "length", type: "whole", least: "1", most: "3650" }, { name: "unit", type: "choice", choices: ["days", "months"] }] }, { name: "allergens", type: "choices", is_required: false, most_items: 20, choices: ["celery", "cereals_with_gluten", "crustaceans", "eggs", "fish", "lupin", "milk", "molluscs", "mustard", "peanuts", "sesame", "soybeans", "sulphites", "tree_nuts", "wheat"] }, { name: "note", type: "text", is_required: false, most_chars: 600 }, { name: "is_retired", type: "flag", is_required: false }], subjects: ["material:{material}"], version: 1, written_by: "coordinator" },
  material_changed: { name: "material_changed", fields: [{ name: "material", type: "id", to: "material" }, { name: "changes", type: "changes", of_kind: "material_defined" }, { name: "reason", type: "text", is_required: false, most_chars: 600 }], subjects: ["material:{material}"], version: 1, written_by: "coordinator" },
  source_defined: { name: "source_defined", fields: [{ name: "source", type: "id", to: "source" }, { name: "name", type: "text", most_chars: 120 }, { name: "contact", type: "text", is_required: false, most_chars: 600 }, { name: "address", type: "text", is_required: false, most_chars: 600 }, { name: "note", type: "text", is_required: false, most_chars: 600 }, { name: "is_retired", type: "flag", is_required: false }], subjects: ["source:{source}"], version: 1 },
  source_changed: { name: "source_changed", fields: [{ name: "source", type: "id", to: "source" }, { name: "changes", type: "changes", of_kind: "source_defined" }, { name: "reason", type: "text", is_required: false, most_chars: 600 }], subjects: ["source:{source}"], version: 1 },
  recipient_defined: { name: "recipient_defined", fields: [{ name: "recipient", type: "id", to: "recipient" }, { name: "name", type: "text", most_chars: 120 }, { name: "contact", type: "text", is_required: false, most_chars: 600 }, { name: "address", type: "text", is_required: false, most_chars: 600 }, { name: "note", type: "text", is_required: false, most_chars: 600 }, { name: "is_retired", type: "flag", is_required: false }], subjects: ["recipient:{recipient}"], version: 1 },
  recipient_changed: { name: "recipient_changed", fields: [{ name: "recipient", type: "id", to: "recipient" }, { name: "changes", type: "changes", of_kind: "recipient_defined" }, { name: "reason", type: "text", is_required: false, most_chars: 600 }], subjects: ["recipient:{recipient}"], version: 1 },
  instrument_defined: { name: "instrument_defined", fields: [{ name: "instrument", type: "id", to: "instrument" }, { name: "name", type: "text", most_chars: 120 }, { name: "sort", type: "choice", choices: ["scale", "thermometer", "ph_meter", "refractometer", "salometer", "cylinder", "cup", "spoon", "timer"] }, { name: "place", type: "id", is_required: false, to: "place" }, { name: "unit", type: "text", most_chars: 12 }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "capacity", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "repeatability", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "bowl_tare", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "interval", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "accuracy_class", type: "choice", is_required: false, choices: ["I", "II", "III", "IIII", "A", "B"] }, { name: "judged_by", type: "choice", is_required: false, choices: ["r76_in_service", "r76_initial", "hb133", "household", "cylinder", "own"] }, { name: "most_error", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "holds", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["volume"] }, { name: "good_for", type: "text", is_required: false, most_chars: 600 }, { name: "check_days", type: "whole", is_required: false, least: "1", most: "3650" }, { name: "check_uses", type: "whole", is_required: false, least: "1", most: "1000000" }, { name: "note", type: "text", is_required: false, most_chars: 600 }, { name: "is_retired", type: "flag", is_required: false }], subjects: ["instrument:{instrument}"], version: 1, written_by: "coordinator" },
  instrument_changed: { name: "instrument_changed", fields: [{ name: "instrument", type: "id", to: "instrument" }, { name: "changes", type: "changes", of_kind: "instrument_defined" }, { name: "reason", type: "text", is_required: false, most_chars: 600 }], subjects: ["instrument:{instrument}"], version: 1, written_by: "coordinator" },
  recipe_published: { name: "recipe_published", fields: [{ name: "recipe", type: "id", to: "recipe" }, { name: "number", type: "whole", least: "1", most: "9999" }, { name: "name", type: "text", most_chars: 120 }, { name: "product", type: "id", to: "material" }, { name: "makes", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "packs", type: "whole", is_required: false, least: "1", most: "100000" }, { name: "lines", type: "list", most_items: 60, least_items: 1, fields: [{ name: "line", type: "text", most_chars: 20 }, { name: "material", type: "id", to: "material" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "10000" }, { name: "percent_of", type: "choice", is_required: false, choices: ["base", "whole"] }, { name: "is_base", type: "flag", is_required: false }, { name: "state", type: "choice", is_required: false, choices: ["as_bought", "prepared"] }, { name: "yields", type: "group", is_required: false, fields: [{ name: "percent", type: "decimal", digits: 14, places: 6, least: "0.01", most: "10000" }, { name: "by", type: "choice", choices: ["table", "own", "typed"] }, { name: "source", type: "text", is_required: false, most_chars: 600 }, { name: "prepared_as", type: "text", is_required: false, most_chars: 120 }] }, { name: "below", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "above", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "level", type: "decimal", is_required: false, digits: 14, places: 6, least: "80", most: "99.9" }, { name: "soluble_percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100" }, { name: "note", type: "text", is_required: false, most_chars: 600 }] }, { name: "steps", type: "list", most_items: 60, fields: [{ name: "step", type: "text", most_chars: 20 }, { name: "says", type: "text", most_chars: 600 }, { name: "measures", type: "choice", is_required: false, choices: ["prepared_mass", "kettle_mass", "mass", "temperature", "ph", "brix", "water_activity", "salt", "salometer", "salt_weighed", "sugar_weighed", "acidity", "minutes"] }, { name: "line", type: "text", is_required: false, most_chars: 20 }, { name: "acid", type: "choice", is_required: false, choices: ["citric", "tartaric", "lactic", "acetic", "malic"] }, { name: "counts", type: "list", is_required: false, most_items: 60, fields: [{ name: "line", type: "text", most_chars: 20 }, { name: "percent", type: "decimal", digits: 14, places: 6, least: "0", most: "100" }] }, { name: "minutes", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "unit", type: "text", is_required: false, most_chars: 12 }, { name: "low", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "high", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "level", type: "decimal", is_required: false, digits: 14, places: 6, least: "80", most: "99.9" }, { name: "set_by", type: "text", is_required: false, most_chars: 120 }, { name: "caution", type: "text", is_required: false, most_chars: 600 }] }, { name: "target_solids_percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100" }, { name: "loss_percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "99.9" }, { name: "pack_sizes", type: "list", is_required: false, most_items: 12, fields: [{ name: "size", type: "text", most_chars: 20 }, { name: "net", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume"] }, { name: "word", type: "text", is_required: false, most_chars: 20 }, { name: "packaging", type: "id", is_required: false, to: "material" }] }, { name: "life", type: "group", is_required: false, fields: [{ name: "sort", type: "choice", choices: ["use_by", "best_before", "expires_on"] }, { name: "length", type: "whole", least: "1", most: "3650" }, { name: "unit", type: "choice", choices: ["days", "months"] }] }, { name: "does_not_scale", type: "text", is_required: false, most_chars: 4000 }, { name: "note", type: "text", is_required: false, most_chars: 4000 }], subjects: ["recipe:{recipe}"], mentions: ["material:{product}", "material:{lines[].material}", "material:{pack_sizes[].packaging}"], version: 1, written_by: "coordinator" },
  receipt: { name: "receipt", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "material", type: "id", to: "material" }, { name: "source", type: "id", to: "source" }, { name: "their_lot", type: "text", is_required: false, most_chars: 120 }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "place", type: "id", to: "place" }, { name: "condition", type: "choice", choices: ["fit", "refused"] }, { name: "refused_why", type: "text", is_required: false, most_chars: 600 }, { name: "life", type: "group", is_required: false, fields: [{ name: "sort", type: "choice", choices: ["use_by", "best_before", "expires_on"] }, { name: "on", type: "day" }] }, { name: "note", type: "text", is_required: false, most_chars: 600 }], subjects: ["lot:{lot}"], mentions: ["material:{material}", "source:{source}", "place:{place}"], version: 1 },
  price_paid: { name: "price_paid", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "price", type: "decimal", digits: 14, places: 6, least: "0", most: "100000000" }, { name: "currency", type: "letters", most_chars: 3 }], subjects: ["price:{lot}"], mentions: ["lot:{lot}"], version: 1, audience: "coordinator" },
  topped_up: { name: "topped_up", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "material", type: "id", to: "material" }, { name: "place", type: "id", to: "place" }, { name: "from", type: "list", most_items: 20, least_items: 1, fields: [{ name: "lot", type: "code", to: "lot" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }] }, { name: "life", type: "group", is_required: false, fields: [{ name: "sort", type: "choice", choices: ["use_by", "best_before", "expires_on"] }, { name: "on", type: "day" }] }, { name: "despite", type: "group", is_required: false, fields: [{ name: "what", type: "choices", most_items: 3, choices: ["held", "recalled", "expired"] }, { name: "reason", type: "text", most_chars: 600 }] }], subjects: ["lot:{lot}", "lot:{from[].lot}"], mentions: ["material:{material}", "place:{place}"], version: 1 },
  batch_started: { name: "batch_started", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "code", type: "code", to: "lot" }, { name: "recipe", type: "id", to: "recipe" }, { name: "recipe_version", type: "entry" }, { name: "product", type: "id", to: "material" }, { name: "place", type: "id", to: "place" }, { name: "makes", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "scaled_by", type: "choice", choices: ["as_written", "mass", "packs", "limiting"] }, { name: "lines", type: "list", most_items: 60, least_items: 1, fields: [{ name: "line", type: "text", most_chars: 20 }, { name: "material", type: "id", to: "material" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "10000" }, { name: "percent_of", type: "choice", is_required: false, choices: ["base", "whole"] }, { name: "is_base", type: "flag", is_required: false }, { name: "state", type: "choice", is_required: false, choices: ["as_bought", "prepared"] }, { name: "yields", type: "group", is_required: false, fields: [{ name: "percent", type: "decimal", digits: 14, places: 6, least: "0.01", most: "10000" }, { name: "by", type: "choice", choices: ["table", "own", "typed"] }, { name: "source", type: "text", is_required: false, most_chars: 600 }, { name: "prepared_as", type: "text", is_required: false, most_chars: 120 }] }, { name: "below", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "above", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "level", type: "decimal", is_required: false, digits: 14, places: 6, least: "80", most: "99.9" }, { name: "soluble_percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100" }, { name: "note", type: "text", is_required: false, most_chars: 600 }] }, { name: "steps", type: "list", most_items: 60, fields: [{ name: "step", type: "text", most_chars: 20 }, { name: "says", type: "text", most_chars: 600 }, { name: "measures", type: "choice", is_required: false, choices: ["prepared_mass", "kettle_mass", "mass", "temperature", "ph", "brix", "water_activity", "salt", "salometer", "salt_weighed", "sugar_weighed", "acidity", "minutes"] }, { name: "line", type: "text", is_required: false, most_chars: 20 }, { name: "acid", type: "choice", is_required: false, choices: ["citric", "tartaric", "lactic", "acetic", "malic"] }, { name: "counts", type: "list", is_required: false, most_items: 60, fields: [{ name: "line", type: "text", most_chars: 20 }, { name: "percent", type: "decimal", digits: 14, places: 6, least: "0", most: "100" }] }, { name: "minutes", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "unit", type: "text", is_required: false, most_chars: 12 }, { name: "low", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "high", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "level", type: "decimal", is_required: false, digits: 14, places: 6, least: "80", most: "99.9" }, { name: "set_by", type: "text", is_required: false, most_chars: 120 }, { name: "caution", type: "text", is_required: false, most_chars: 600 }] }, { name: "target_solids_percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100" }, { name: "pack_net", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume"] }], subjects: ["batch:{batch}"], mentions: ["recipe:{recipe}", "place:{place}", "material:{product}"], version: 1 },
  laid_out: { name: "laid_out", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "line", type: "text", most_chars: 20 }, { name: "lots", type: "list", most_items: 10, least_items: 1, fields: [{ name: "lot", type: "code", to: "lot" }, { name: "amount", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }] }, { name: "despite", type: "group", is_required: false, fields: [{ name: "what", type: "choices", most_items: 3, choices: ["held", "recalled", "expired"] }, { name: "reason", type: "text", most_chars: 600 }] }], subjects: ["batch:{batch}"], mentions: ["lot:{lots[].lot}"], version: 1 },
  weigh_in: { name: "weigh_in", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "line", type: "text", most_chars: 20 }, { name: "material", type: "id", to: "material" }, { name: "lot", type: "code", to: "lot" }, { name: "place", type: "id", to: "place" }, { name: "reading", type: "group", is_required: false, fields: [{ name: "instrument", type: "id", is_required: false, to: "instrument" }, { name: "unit", type: "text", most_chars: 12 }, { name: "shown", type: "decimal", digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "tare", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "repeatability", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "repeats", type: "decimals", is_required: false, most_items: 30, least_items: 1, digits: 14, places: 6, least: "-100000000", most: "100000000" }] }, { name: "counted", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["count"] }, { name: "despite", type: "group", is_required: false, fields: [{ name: "what", type: "choices", most_items: 3, choices: ["held", "recalled", "expired"] }, { name: "reason", type: "text", most_chars: 600 }] }], subjects: ["batch:{batch}", "lot:{lot}"], mentions: ["material:{material}", "place:{place}", "instrument:{reading.instrument}"], leans_on: ["instrument:{reading.instrument}"], version: 1, one_of: ["reading", "counted"] },
  step_done: { name: "step_done", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "step", type: "text", most_chars: 20 }, { name: "reading", type: "group", is_required: false, fields: [{ name: "instrument", type: "id", is_required: false, to: "instrument" }, { name: "unit", type: "text", most_chars: 12 }, { name: "shown", type: "decimal", digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "tare", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "repeatability", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "repeats", type: "decimals", is_required: false, most_items: 30, least_items: 1, digits: 14, places: 6, least: "-100000000", most: "100000000" }] }, { name: "celsius", type: "decimal", is_required: false, digits: 14, places: 6, least: "-20", most: "120" }, { name: "scale", type: "choice", is_required: false, choices: ["standard", "canning"] }, { name: "titration", type: "group", is_required: false, fields: [{ name: "acid", type: "choice", choices: ["citric", "tartaric", "lactic", "acetic", "malic"] }, { name: "normality", type: "decimal", digits: 14, places: 6, least: "0", most: "100000000" }, { name: "titre", type: "decimal", digits: 14, places: 6, least: "0", most: "100000000" }, { name: "blank", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "sample", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume"] }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }] }, { name: "action", type: "text", is_required: false, most_chars: 600 }], subjects: ["batch:{batch}"], mentions: ["instrument:{reading.instrument}"], leans_on: ["instrument:{reading.instrument}"], version: 1 },
  output: { name: "output", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "lot", type: "code", to: "lot" }, { name: "material", type: "id", to: "material" }, { name: "place", type: "id", to: "place" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "pack_net", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume"] }, { name: "rejected", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "rejected_why", type: "text", is_required: false, most_chars: 600 }, { name: "life", type: "group", is_required: false, fields: [{ name: "sort", type: "choice", choices: ["use_by", "best_before", "expires_on"] }, { name: "on", type: "day" }] }], subjects: ["batch:{batch}", "lot:{lot}"], mentions: ["material:{material}", "place:{place}"], version: 1 },
  loss: { name: "loss", fields: [{ name: "batch", type: "id", is_required: false, to: "batch" }, { name: "lot", type: "code", is_required: false, to: "lot" }, { name: "place", type: "id", is_required: false, to: "place" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "reason", type: "choice", choices: ["spoiled", "trim", "residue", "spilled", "breakage", "sample", "expired", "waste", "other"] }, { name: "stage", type: "choice", is_required: false, choices: ["preparation", "cooking", "filling", "store", "stall"] }, { name: "line", type: "text", is_required: false, most_chars: 20 }, { name: "note", type: "text", is_required: false, most_chars: 600 }, { name: "despite", type: "group", is_required: false, fields: [{ name: "what", type: "choices", most_items: 3, choices: ["held", "recalled", "expired"] }, { name: "reason", type: "text", most_chars: 600 }] }], subjects: ["batch:{batch}", "lot:{lot}"], mentions: ["place:{place}"], version: 1, one_of: ["batch", "lot"], together: [["lot", "place"]] },
  batch_finished: { name: "batch_finished", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "note", type: "text", is_required: false, most_chars: 600 }], subjects: ["batch:{batch}"], version: 1 },
  transfer: { name: "transfer", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "from_place", type: "id", to: "place" }, { name: "to_place", type: "id", to: "place" }, { name: "despite", type: "group", is_required: false, fields: [{ name: "what", type: "choices", most_items: 3, choices: ["held", "recalled", "expired"] }, { name: "reason", type: "text", most_chars: 600 }] }], subjects: ["lot:{lot}"], mentions: ["place:{from_place}", "place:{to_place}"], version: 1 },
  dispatch: { name: "dispatch", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "place", type: "id", to: "place" }, { name: "recipient", type: "id", to: "recipient" }, { name: "price_each", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "document", type: "text", is_required: false, most_chars: 120 }, { name: "despite", type: "group", is_required: false, fields: [{ name: "what", type: "choices", most_items: 3, choices: ["held", "recalled", "expired"] }, { name: "reason", type: "text", most_chars: 600 }] }], subjects: ["lot:{lot}"], mentions: ["place:{place}", "recipient:{recipient}"], version: 1 },
  sale: { name: "sale", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "place", type: "id", to: "place" }, { name: "on", type: "day" }, { name: "price_each", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "discount", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "despite", type: "group", is_required: false, fields: [{ name: "what", type: "choices", most_items: 3, choices: ["held", "recalled", "expired"] }, { name: "reason", type: "text", most_chars: 600 }] }], subjects: ["lot:{lot}", "day:{place}:{on}"], mentions: ["place:{place}"], version: 1 },
  return: { name: "return", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "place", type: "id", to: "place" }, { name: "on", type: "day" }, { name: "recipient", type: "id", is_required: false, to: "recipient" }, { name: "condition", type: "choice", choices: ["fit", "unfit"] }, { name: "reason", type: "text", most_chars: 600 }], subjects: ["lot:{lot}", "day:{place}:{on}"], mentions: ["place:{place}", "recipient:{recipient}"], version: 1 },
  count: { name: "count", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume", "count"] }, { name: "place", type: "id", to: "place" }], subjects: ["lot:{lot}"], mentions: ["place:{place}"], version: 1 },
  instrument_checked: { name: "instrument_checked", fields: [{ name: "instrument", type: "id", to: "instrument" }, { name: "place", type: "id", is_required: false, to: "place" }, { name: "unit", type: "text", most_chars: 12 }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "steps", type: "list", most_items: 40, least_items: 1, fields: [{ name: "sort", type: "choice", choices: ["zero", "tare", "rising", "falling", "off_centre", "return_to_zero", "repeats", "water", "ice", "boiling", "buffer", "comparison"] }, { name: "readings", type: "decimals", most_items: 30, least_items: 1, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "reference", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "tolerance", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "where", type: "text", is_required: false, most_chars: 40 }, { name: "celsius", type: "decimal", is_required: false, digits: 14, places: 6, least: "-20", most: "120" }, { name: "celsius_tolerance", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "tare", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "repeatability", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "altitude_m", type: "decimal", is_required: false, digits: 14, places: 6, least: "-500", most: "6000" }, { name: "pressure_hpa", type: "decimal", is_required: false, digits: 14, places: 6, least: "300", most: "1100" }, { name: "millivolts", type: "decimal", is_required: false, digits: 14, places: 6, least: "-100000000", most: "100000000" }] }, { name: "judged_by", type: "choice", is_required: false, choices: ["r76_in_service", "r76_initial", "hb133", "household", "cylinder", "own"] }, { name: "accuracy_class", type: "choice", is_required: false, choices: ["I", "II", "III", "IIII", "A", "B"] }, { name: "interval", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "most_error", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "holds", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["volume"] }, { name: "line", type: "choice", is_required: false, choices: ["none", "offset", "two_point", "least_squares"] }, { name: "is_adjusted", type: "flag", is_required: false }, { name: "check_scale", type: "id", is_required: false, to: "instrument" }, { name: "note", type: "text", is_required: false, most_chars: 600 }], subjects: ["instrument:{instrument}"], mentions: ["place:{place}", "instrument:{check_scale}"], version: 1 },
  drill_done: { name: "drill_done", fields: [{ name: "member", type: "id", to: "skill" }, { name: "seed", type: "whole", least: "0", most: "2147483647" }, { name: "drawn_by", type: "whole", least: "1", most: "9999" }, { name: "questions", type: "list", most_items: 40, least_items: 1, fields: [{ name: "sort", type: "choice", choices: ["dial", "surface", "spoon"] }, { name: "truth", type: "decimal", digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "division", type: "decimal", digits: 14, places: 6, least: "0", most: "100000000" }, { name: "read", type: "decimal", digits: 14, places: 6, least: "-100000000", most: "100000000" }] }, { name: "weighing", type: "group", is_required: false, fields: [{ name: "instrument", type: "id", is_required: false, to: "instrument" }, { name: "unit", type: "text", most_chars: 12 }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "shown", type: "decimals", most_items: 30, least_items: 1, digits: 14, places: 6, least: "-100000000", most: "100000000" }] }, { name: "techniques", type: "choices", is_required: false, most_items: 20, choices: ["level_surface", "eye_level", "lowest_point", "needle_on_zero", "waited_until_steady", "tared_the_bowl", "levelled_with_a_straight_edge", "spooned_not_scooped", "wrote_it_at_once"] }, { name: "note", type: "text", is_required: false, most_chars: 600 }], subjects: ["skill:{member}"], mentions: ["instrument:{weighing.instrument}"], version: 1, audience: "own" },
  fill_checked: { name: "fill_checked", fields: [{ name: "lot", type: "code", to: "lot" }, { name: "on", type: "day" }, { name: "label", type: "list", most_items: 2, least_items: 1, fields: [{ name: "amount", type: "quantity", digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume"] }] }, { name: "rules", type: "choice", choices: ["us", "eu"] }, { name: "unit", type: "text", most_chars: 12 }, { name: "tares", type: "decimals", most_items: 60, least_items: 1, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "gross", type: "decimals", most_items: 250, least_items: 1, digits: 14, places: 6, least: "-100000000", most: "100000000" }, { name: "instrument", type: "id", is_required: false, to: "instrument" }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "lot_size", type: "whole", is_required: false, least: "1", most: "1000000" }, { name: "density", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "loses_moisture", type: "flag", is_required: false }, { name: "note", type: "text", is_required: false, most_chars: 600 }], subjects: ["lot:{lot}"], mentions: ["instrument:{instrument}"], leans_on: ["instrument:{instrument}"], version: 1 },
  labour: { name: "labour", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "member", type: "id", is_required: false, to: "skill" }, { name: "name", type: "text", is_required: false, most_chars: 120 }, { name: "minutes", type: "decimal", digits: 14, places: 2, least: "0", most: "44640" }, { name: "is_paid", type: "flag", is_required: false }, { name: "pay_per_hour", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "note", type: "text", is_required: false, most_chars: 600 }], subjects: ["cost:{batch}"], mentions: ["batch:{batch}"], version: 1, audience: "coordinator", one_of: ["member", "name"] },
  expense: { name: "expense", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "part", type: "choice", choices: ["fuel", "overhead", "other"] }, { name: "says", type: "text", is_required: false, most_chars: 120 }, { name: "amount", type: "decimal", digits: 14, places: 6, least: "0", most: "100000000" }, { name: "currency", type: "letters", most_chars: 3 }], subjects: ["cost:{batch}"], mentions: ["batch:{batch}"], version: 1, audience: "coordinator" },
  cost_shared: { name: "cost_shared", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "by", type: "choice", choices: ["mass", "sales_value"] }, { name: "currency", type: "letters", most_chars: 3 }, { name: "products", type: "list", most_items: 20, least_items: 1, fields: [{ name: "lot", type: "code", to: "lot" }, { name: "sort", type: "choice", choices: ["main", "by_product"] }, { name: "value_each", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }] }], subjects: ["cost:{batch}"], mentions: ["batch:{batch}", "lot:{products[].lot}"], version: 1, written_by: "coordinator", audience: "coordinator" },
  rates_set: { name: "rates_set", fields: [{ name: "cooperative", type: "id", to: "cooperative" }, { name: "since", type: "day" }, { name: "pay_per_hour", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "overhead", type: "group", is_required: false, fields: [{ name: "by", type: "choice", choices: ["batch", "labour_hour", "kg", "percent"] }, { name: "rate", type: "decimal", digits: 14, places: 6, least: "0", most: "100000000" }, { name: "percent_of", type: "choice", is_required: false, choices: ["materials", "labour", "materials_and_labour"] }] }, { name: "proposal", type: "group", is_required: false, fields: [{ name: "of", type: "choice", choices: ["cost", "price"] }, { name: "percent", type: "decimal", digits: 14, places: 6, least: "0", most: "100000" }, { name: "commission_percent", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100" }, { name: "coin", type: "decimal", digits: 14, places: 6, least: "0.001", most: "100000000" }, { name: "rule", type: "choice", choices: ["up", "nearest", "down"] }] }], subjects: ["rates:{cooperative}"], version: 1, written_by: "coordinator", audience: "coordinator" },
  price_asked: { name: "price_asked", fields: [{ name: "material", type: "id", to: "material" }, { name: "for_whom", type: "choice", choices: ["stall", "business"] }, { name: "pack_net", type: "quantity", is_required: false, digits: 14, places: 6, least: "0", most: "100000000", measures: ["mass", "volume"] }, { name: "since", type: "day" }, { name: "price", type: "decimal", digits: 14, places: 6, least: "0", most: "100000000" }, { name: "currency", type: "letters", most_chars: 3 }], subjects: ["asked:{material}"], mentions: ["material:{material}"], version: 1, written_by: "coordinator" },
  heat_log: { name: "heat_log", fields: [{ name: "batch", type: "id", to: "batch" }, { name: "step", type: "text", is_required: false, most_chars: 20 }, { name: "instrument", type: "id", is_required: false, to: "instrument" }, { name: "division", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "repeatability", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000000" }, { name: "came_by", type: "choice", choices: ["typed", "pasted", "file", "timer"] }, { name: "unit", type: "choice", choices: ["degC", "degF"] }, { name: "began_at", type: "moment" }, { name: "at_s", type: "wholes", most_items: 10000, least_items: 1, least: "0", most: "31622400" }, { name: "temperatures", type: "decimals", most_items: 10000, least_items: 1, digits: 6, places: 3, least: "-100", most: "999.999" }, { name: "left_out", type: "whole", is_required: false, least: "0", most: "1000000" }, { name: "judged", type: "group", is_required: false, fields: [{ name: "by", type: "choice", choices: ["lethality", "two_stage_cooling", "ambient_cooling", "received_cooling", "hot_hold", "cold_hold", "time_4_h", "time_6_h"] }, { name: "set_by", type: "text", most_chars: 120 }, { name: "reference", type: "choice", is_required: false, choices: ["f0", "f0_250_f", "acidified_from_4_1", "acidified_below_4_1", "beer", "beer_1_393", "acid_foods", "tomato_beverages", "pickle_quality", "own"] }, { name: "t_ref", type: "decimal", is_required: false, digits: 14, places: 3, least: "-100", most: "1000" }, { name: "z", type: "decimal", is_required: false, digits: 14, places: 3, least: "0", most: "1000" }, { name: "reference_unit", type: "choice", is_required: false, choices: ["degC", "degF"] }, { name: "wanted_min", type: "decimal", is_required: false, digits: 14, places: 6, least: "0", most: "100000" }, { name: "from_s", type: "whole", is_required: false, least: "0", most: "31622400" }, { name: "to_s", type: "whole", is_required: false, least: "0", most: "31622400" }] }, { name: "action", type: "text", is_required: false, most_chars: 600 }], subjects: ["batch:{batch}"], mentions: ["instrument:{instrument}"], leans_on: ["instrument:{instrument}"], version: 1 },
  held: { name: "held", fields: [{ name: "batch", type: "id", is_required: false, to: "batch" }, { name: "lot", type: "code", is_required: false, to: "lot" }, { name: "because", type: "choice", choices: ["check", "complaint", "recalled", "other"] }, { name: "reason", type: "text", most_chars: 600 }], subjects: ["batch:{batch}", "lot:{lot}"], version: 1, one_of: ["batch", "lot"] },
  hold_decided: { name: "hold_decided", fields: [{ name: "batch", type: "id", is_required: false, to: "batch" }, { name: "lot", type: "code", is_required: false, to: "lot" }, { name: "decision", type: "choice", choices: ["release", "hold"] }, { name: "decides", type: "list", most_items: 60, least_items: 1, fields: [{ name: "entry", type: "entry" }] }, { name: "reason", type: "text", most_chars: 600 }], subjects: ["batch:{batch}", "lot:{lot}"], version: 1, written_by: "coordinator", one_of: ["batch", "lot"] },
  correction: { name: "correction", fields: [{ name: "corrects", type: "entry" }, { name: "of_kind", type: "kind" }, { name: "reason", type: "text", most_chars: 600 }, { name: "body", type: "body" }, { name: "of_version", type: "whole", is_required: false, least: "1", most: "9999" }, { name: "instead_of", type: "list", is_required: false, most_items: 20, fields: [{ name: "entry", type: "entry" }] }], subjects: [], version: 1 },
  void: { name: "void", fields: [{ name: "corrects", type: "entry" }, { name: "of_kind", type: "kind" }, { name: "reason", type: "text", most_chars: 600 }, { name: "instead_of", type: "list", is_required: false, most_items: 20, fields: [{ name: "entry", type: "entry" }] }], subjects: [], version: 1 },
  finding_settled: { name: "finding_settled", fields: [{ name: "subject", type: "subject" }, { name: "finding", type: "text", most_chars: 200 }, { name: "decision", type: "choice", choices: ["explained", "put_right", "accepted"] }, { name: "reason", type: "text", most_chars: 600 }], subjects: ["{subject}"], version: 1, written_by: "coordinator" },
  note: { name: "note", fields: [{ name: "subject", type: "subject" }, { name: "says", type: "text", most_chars: 4000 }], subjects: ["{subject}"], version: 1 },
};

export const EARLIER_KINDS: readonly Kind[] = [];

export const SENTENCES = {
  "entry.too_deep": "{field} holds groups nested deeper than {most}; nest fewer.",
  "entry.text_too_long": "{field} holds a text longer than {most} characters; shorten it.",
  "entry.not_exact": "{field} holds a number with a point or an exponent; write it as text.",
  "kind.unknown": "{field} is not a kind of entry known here; update the app.",
  "kind.about_entries": "{field} is a correction or void; name the kind of the first entry.",
  "version.wrong": "{field} is not a version of this kind; write a whole number from 1.",
  "group.wrong": "{field} is not a group of fields; fill in its fields.",
  "list.wrong": "{field} is not a list; write one.",
  "list.too_short": "{field} has too few items; give at least {least}.",
  "list.too_long": "{field} has too many items; give at most {most}.",
  "field.missing": "{field} is missing; fill it in.",
  "field.unknown": "{field} is not a field of this kind of entry; leave it out.",
  "field.one_of": "{field}: exactly one of {fields} is needed; fill in one.",
  "field.together": "{field} is missing; it is needed together with {partner}.",
  "text.wrong": "{field} is not a text; write words.",
  "text.blank": "{field} is empty; write something or leave it out.",
  "text.too_long": "{field} is too long; use at most {most} characters.",
  "text.unstorable": "{field} holds a character that cannot be stored; type it again.",
  "letters.wrong": "{field} is not a short name; write 1 to {most} capital letters, A to Z.",
  "code.wrong": "{field} is not a lot code; write capitals, digits and hyphens, at most 40.",
  "id.wrong": "{field} does not name anything set up; choose it from the list.",
  "uuid.wrong": "{field} is not an id; write a UUID in lower case.",
  "subject.wrong": "{field} is not a subject; write its type and its id, such as lot:MJ-1.",
  "decimal.wrong": "{field} is not a number; write digits with one point at most, as 12.50.",
  "decimal.too_many_digits": "{field} has too many digits; write at most {most}.",
  "decimal.too_many_places": "{field} is too fine; round it to {most} places.",
  "number.too_small": "{field} is too small; write {least} or more.",
  "number.too_large": "{field} is too large; write {most} or less.",
  "whole.wrong": "{field} is not a whole number; write one without a point.",
  "unit.unknown": "{field} is not a unit known here; choose one from the list.",
  "unit.wrong_measure": "{field} is a unit of something else; choose a unit of {measures}.",
  "day.wrong": "{field} is not a day; write year, month and day, as in 2026-11-10.",
  "day.out_of_range": "{field} lies outside the years 2000 to 2100; correct the year.",
  "moment.wrong": "{field} is not a time; write it as in 2026-11-10T08:15:00.000Z.",
  "zone.unknown": "{field} is not a time zone; choose one such as Europe/Lisbon.",
  "choice.unknown": "{field} is not one of the choices; choose {choices}.",
  "choice.twice": "{field} names the same choice twice; name it once.",
  "flag.wrong": "{field} is neither yes nor no; choose one.",
  "changes.none": "{field} changes nothing; change at least one field."
} as const;

export type RefusalKey = keyof typeof SENTENCES;

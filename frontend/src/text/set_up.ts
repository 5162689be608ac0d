/** Words of setting up: areas, forms, who may write, what two people changed. */
import { amountWords, countWords, dayWords, figure } from "./numbers.ts";

/** What one area is called: the list, one of it, what to do when there is none. */
interface AreaWords {
  title: string;
  new_one: string;
  new_title: string;
  none: string;
  why: string;
}

export const AREAS: Record<string, AreaWords> = {
  cooperative: {
    title: "Cooperative",
    new_one: "Set up the cooperative",
    new_title: "How you measure",
    none: "Not set up yet. Say which units, money and day you work by.",
    why: "units, money, time zone",
  },
  places: {
    title: "Places",
    new_one: "Add a place",
    new_title: "New place",
    none: "No place yet. Add the kitchen you cook in.",
    why: "kitchens, stores, stalls, boxes",
  },
  instruments: {
    title: "Instruments",
    new_one: "Add an instrument",
    new_title: "New instrument",
    none: "No instrument yet. Add the scale you use most.",
    why: "scales, thermometers, cups",
  },
  materials: {
    title: "Materials",
    new_one: "Add a material",
    new_title: "New material",
    none: "No material yet. Add what you cook most.",
    why: "ingredients, packaging, products",
  },
  sources: {
    title: "Sources",
    new_one: "Add a source",
    new_title: "New source",
    none: "No source yet. Add whom you buy from.",
    why: "who brings goods to you",
  },
  recipients: {
    title: "Recipients",
    new_one: "Add a recipient",
    new_title: "New recipient",
    none: "No recipient yet. Add the shop that takes your goods.",
    why: "businesses that take goods from you",
  },
  recipes: {
    title: "Recipes",
    new_one: "Write a recipe",
    new_title: "New recipe",
    none: "No recipe yet. Write the one you make most.",
    why: "in numbered versions",
  },
  people: {
    title: "People",
    new_one: "Let somebody join",
    new_title: "Let somebody join",
    none: "Nobody else is here yet. Make a code for the next one.",
    why: "members and their roles",
  },
};

export const SET_UP = {
  where: "Set up",
  title: "What you work with",
  bench: "Set up",
  done_of: (done: string, all: string) => `${done} of ${all} set up`,
  all_done: "Everything a batch needs is set up.",
  today: "Go to today",
  count: (count: number) => figure(String(count)),
  retired: (count: number) => `Retired: ${figure(String(count))}`,
  retired_one: "retired",
  hide_retired: "Hide the retired",
  conflict: "two disagree",
  loading: "Still loading what the others set up.",
  not_here: "This is not on this phone. Find signal, then open it again.",
  keep_new: (name: string) => `Keep ${name}`,
  keep_count: (count: number) => `Keep ${countWords(count, "change")}`,
  nothing_changed: "Nothing is changed yet",
  rub_out: "Rub out what I typed",
  retire: "Retire it",
  use_again: "Use it again",
  retire_says: "Retired things leave the lists to choose from. What was recorded stays.",
  kept_new: "set up",
  kept_changed: "changed",
  only: (names: string) => `Changed by coordinators: ${names}`,
  only_nobody: "Only a coordinator can change this",
  yes: "yes",
  no: "no",
  none: "none",
  fit_or_due: "Which are fit, which are due?",
  its_checks: "Its checks and its state",
  not_marked: "not marked",
};

/** Codes of the wire as words. */
export const VALUES: Record<string, string> = {
  kitchen: "kitchen",
  store: "store",
  stall: "stall",
  box: "own box",
  ingredient: "ingredient",
  packaging: "packaging",
  product: "product",
  mass: "weighed",
  volume: "by volume",
  count: "counted",
  use_by: "use by",
  best_before: "best before",
  expires_on: "expires on",
  days: "days",
  months: "months",
  metric: "metric",
  us: "US",
  imperial: "imperial",
  eu: "EU",
  own: "own",
  scale: "scale",
  thermometer: "thermometer",
  ph_meter: "pH meter",
  refractometer: "refractometer",
  cylinder: "cylinder",
  cup: "cup",
  spoon: "spoon",
  timer: "timer",
  r76_in_service: "R 76, in use",
  r76_initial: "R 76, new",
  hb133: "US, HB 44",
  household: "household, 5 %",
  processor: "processor",
  seller: "seller",
  coordinator: "coordinator",
  celery: "celery",
  cereals_with_gluten: "cereals with gluten",
  crustaceans: "crustaceans",
  eggs: "eggs",
  fish: "fish",
  lupin: "lupin",
  milk: "milk",
  molluscs: "molluscs",
  mustard: "mustard",
  peanuts: "peanuts",
  sesame: "sesame",
  soybeans: "soybeans",
  sulphites: "sulphites",
  tree_nuts: "tree nuts",
  wheat: "wheat",
};

/** Fields by the words a person knows. */
export const FIELDS: Record<string, string> = {
  name: "Name",
  time_zone: "Time zone",
  currency: "Currency",
  currency_places: "Digits after the point in a price",
  language: "Language of labels",
  unit_habit: "Units you are used to",
  rules: "Label rules",
  prices_shown: "Prices may be shown to all members",
  sort: "What it is",
  altitude_m: "Height above the sea",
  note: "Note",
  measured_by: "How it is measured",
  letters: "Letters in lot codes",
  density_of: "Density",
  pack_net: "In one pack",
  pack_word: "A pack is called",
  price: "Price of one pack",
  life: "How long it keeps",
  life_sort: "Shelf life, kind of date",
  life_length: "It keeps for",
  life_unit: "Days or months",
  allergens: "Allergens",
  is_retired: "Retired",
  contact: "Contact",
  address: "Address",
  place: "Where it stands",
  unit: "Unit it shows",
  division: "Smallest step it shows",
  capacity: "Most it takes",
  repeatability: "Spread of repeated readings",
  bowl_tare: "Usual bowl, empty",
  checks: "How it is checked",
  interval: "Verification interval e",
  accuracy_class: "Class marked on it",
  judged_by: "Limits",
  most_error: "May be off by",
  holds: "Holds, filled to the mark",
  good_for: "Good for",
  check_days: "Check it after so many days",
  check_uses: "Or after so many uses",
};

export const HINTS = {
  altitude_m: "Water boils cooler higher up. Leave it empty if you do not know.",
  currency: "Three capital letters, as EUR.",
  language: "Two letters, as en.",
  letters: "Proposed from the name. One to three capital letters.",
  division: "On a scale that shows 0.1 g it is 0.1.",
  repeatability: "Standard deviation of about ten weighings of one thing. Empty if not known.",
  bowl_tare: "Offered as the bowl when one weighs in.",
  interval: "The e beside the class, if it is marked.",
  most_error: "Your own limit, as your recipes need it.",
  good_for: "Such as spices and pectin.",
  check_days: "Proposed from common practice. Your own rule counts.",
  pack_word: "One word, as jar or bag.",
  allergens: "Tick what is in it. When in doubt, tick it and ask the source.",
  life: "As your tested recipe or process authority says.",
  contact: "A person, a telephone number.",
  name_place: "As people say it, such as Hill kitchen.",
};

export const MISSING = {
  name: "Write the name first",
  letters: "Write one to three letters first",
  currency: "Write the currency in three letters",
  unit: "Choose the unit first",
  life_length: "Say how long it keeps, without a point",
};

/** What an instrument is good for. */
export const GOOD_FOR = {
  title: "What it is good for",
  unknown: "Type its smallest step, and this says what it can tell.",
  reading: (reach: string) => `One reading is good to \u00b1\u00a0${reach}.`,
  net: (reach: string) => `A weighing with a bowl is good to \u00b1\u00a0${reach}.`,
  tolerance: (least: string) =>
    `It can say within or outside from a tolerance of \u00b1\u00a0${least} on.`,
  drawn: (reach: string, least: string) =>
    `A reading as a whisker of \u00b1\u00a0${reach} inside a tolerance of \u00b1\u00a0${least}.`,
  coverage:
    "95 % sure on the side of a limit. Check it with a known mass or weighed water before you rely on it.",
};

/** Where a density comes from. */
export const DENSITY = {
  title: "Density",
  why: "Turns cups and spoons into grams. From published tables; yours may lie otherwise.",
  loading: "Reading the table.",
  none_alike: "Nothing in the table is called alike. Search it, or weigh a cup of it yourself.",
  proposed: "Called alike in the table",
  search: "Search the whole table",
  all: "The whole table",
  take_away: "Use no density",
  value: "One millilitre weighs",
  portion: "Weighed",
  spread: "Published figures lie between",
  one_figure: "only one figure is published",
  source: "From",
  basis: { read: "read in the source", "read-secondary": "quoted by a third party" } as Record<
    string,
    string
  >,
  range: (low: string, high: string) => `${low} and ${amountWords(high, "g/mL")}`,
};

/** Two people changed one field and neither saw the other. */
export const CONFLICT = {
  title: "Two people disagree",
  in_force: "In force",
  wanted: (by: string, day: string) => `Wanted by ${by}, ${dayWords(day)}`,
  somebody: "Somebody",
  keep: (value: string) => `Keep ${value}`,
  take: (value: string) => `Take ${value}`,
  why: "Why",
  kept_reason: "The value in force is right.",
  taken_reason: "The wanted value is right.",
  only: "A coordinator decides. Until then the value in force counts.",
  allergens: "Until somebody decides, what either of them named counts.",
};

/** Members and codes to join. */
export const MEMBERS = {
  role: "What they do here",
  left: "has left",
  you: "you",
  make: "Make a code",
  make_another: "Make another code",
  make_for: (name: string) => `Make a code for ${name}`,
  making: "Asking the server",
  choose_role: "Choose at least one role",
  signal: "Making a code needs signal. The code itself can be used on any phone with signal.",
  no_signal: "No signal reaches the server. Find signal and press again.",
  refused: "The server makes codes only for coordinators who are signed in. Sign in again.",
  trouble: "The server made no code. Press again.",
  for_new: "For a new member",
  forgotten: "A forgotten passphrase is replaced by a new one. The name and the record stay.",
  code: "Code",
  good_until: (clock: string) => `Good until ${clock}, once.`,
  over: "This code is over. Make a new one.",
  qr: "A code that opens the page for joining",
  show: "Show it, or read it out. On the other phone: Join by code.",
  passphrase: "New passphrase",
};

/** Words of cost and price: what a batch cost, who worked, what to ask for a pack. */

import { packWords } from "./lots.ts";
import { amountWords, figure } from "./numbers.ts";

export const MONEY = {
  where: "Cost",
  bench: "What to do with this cost",
  what_it_cost: "What it cost",
  incomplete: "Cost incomplete",
  incomplete_why: "The sum below is only what is known. It is never the whole cost.",
  where_it_went: "Where the money went",
  all_of_it: "All of it",
  known_so_far: "Known so far",
  total: "All of it",
  not_in_coins: "All of it, before it is rounded to coins,",
  each_good: (pack: string) => `For each good ${pack}`,
  not_paid: "not paid",
  per_filled: (pack: string) => `For each ${pack} filled`,
  per_paid: (pack: string) => `For each good ${pack}, paid work only`,
  unpaid: "Work nobody was paid for, in the sum",
  good: "Good ones",
  part_by_part: "Part by part",
  nothing_yet: "Nothing is known of its cost yet.",
  no_work: "No work recorded.",
  rule: "The rule is what was paid for the very lots in it.",
  price: "Price and margin",
  work: "Add work",
  spent: "Add a cost",
  to_batch: "To the batch",
  see_cost: "See what it cost",
  hidden: "What things cost is shown to coordinators only. Your work can still be written down.",
  not_here: "This phone does not hold this batch.",
  add_price: "Add its price",
  not_here_lot: "This phone does not hold this lot.",
  to_rates: "Set the rates",
  take_back: "Take back",
  taken_back: "Taken back.",
  add_more: "Add more",
};

export const SHARED = {
  title: "Products and by-products",
  where: "How the cost is shared",
  bench: "What each product carries of the cost",
  why: "A by-product lowers the cost of the others by its value. Main products share what is left.",
  sorts: [
    { value: "main", word: "Main product" },
    { value: "by_product", word: "By-product" },
  ] as const,
  by: "Main products share the cost",
  by_words: [
    { value: "mass", word: "By mass" },
    { value: "sales_value", word: "By sales value" },
  ] as const,
  value: (per: string) => `Worth, each ${per}`,
  sales_value: (per: string) => `Sells for, each ${per}`,
  save: "Save how it is shared",
  saved: "Kept on this phone. Costs that rest on it move.",
  one_main: "One product at least carries the cost",
  choose_value: "Type what it is worth",
  nothing: "Nothing came out of this batch yet.",
  only_coordinators: "A coordinator says how a cost is shared",
  each: (cost: string, pack: string) => `${cost} each ${pack}`,
  worth: (cost: string, pack: string) => `By-product, worth ${cost} each ${pack}`,
  unknown: "cannot be told yet",
  ways: {
    mass: "Shared by mass. This rule is from memory of cost-accounting texts.",
    sales_value:
      "Shared by what each sells for. This rule is from memory of cost-accounting texts.",
  } as Readonly<Record<string, string>>,
  add_value: "Say its value",
};

/** Parts of a cost, in the order they are shown. */
export const PART_WORDS: Record<string, string> = {
  materials: "Ingredients",
  packs: "Packaging",
  labour: "Work",
  fuel: "Fuel",
  overhead: "Overhead",
  other: "Other",
  by_products: "By-products",
};

/** An overhead by what it is reckoned. */
export const OVERHEAD_WORDS: Record<string, string> = {
  batch: "for each batch",
  labour_hour: "for each hour of work",
  kg: "for each kg of good product",
  materials: "in percent of ingredients and packaging",
  labour: "in percent of work",
  materials_and_labour: "in percent of ingredients, packaging and work",
};

export const WORK = {
  title: "Who worked, how long",
  bench: "Who worked and for how many minutes",
  who: "Who",
  somebody_else: "Somebody who is no member",
  none: "No member yet.",
  minutes: "Minutes",
  paid: "Paid",
  unpaid_hint: "Unpaid time counts in the cost and is told apart.",
  choose_who: "Say who worked",
  choose_minutes: "Type the minutes",
  save: (minutes: string) => `Save ${amountWords(minutes, "min")}`,
  done: (name: string, minutes: string) =>
    `Kept on this phone: ${name}, ${amountWords(minutes, "min")}.`,
};

export const SPENT = {
  title: "What else it cost",
  bench: "What else it cost, and how much",
  part: "What",
  parts: [
    { value: "fuel", word: "Fuel" },
    { value: "overhead", word: "Overhead" },
    { value: "other", word: "Other" },
  ] as const,
  amount: "Amount",
  says: "Words for it, if you like",
  choose_amount: "Type the amount",
  no_currency: "Set the currency of the cooperative first",
  save: (amount: string) => `Save ${amount}`,
  done: (part: string, amount: string) => `Kept on this phone: ${part}, ${amount}.`,
};

export const PAID = {
  title: "What was paid for it",
  bench: "What was paid for the whole lot",
  price: "For the whole lot",
  now: "So far",
  came: "Came in",
  reason: "Why it was wrong",
  choose_price: "Type what was paid",
  choose_reason: "Say why it was wrong",
  save: (amount: string) => `Save ${amount}`,
  done: (amount: string) => `Kept on this phone: ${amount}. Costs that rest on it move.`,
  not_received: "It was not bought: its cost is that of what went into it.",
};

export const ROW = {
  where: "Correct a cost",
  title: "Correct a cost",
  bench: "What it should be, and why",
  so_far: "Written so far",
  rather: "It was rather",
  reason: "Why",
  save: "Save the correction",
  void: "It did not happen",
  choose_number: "Type what it was",
  choose_reason: "Say why",
  gone: "Nothing stands here any more.",
  correct: (name: string) => `Correct ${name}`,
  word: "Correct",
};

export const PRICE = {
  title: "What to ask for it",
  bench: "How the price is reckoned",
  earn: "To earn",
  of: [
    { value: "cost", word: "Markup, of cost" },
    { value: "price", word: "Margin, of price" },
  ] as const,
  percent: "Percent",
  commission: "A stall keeps, of price",
  coin: "In whole coins of",
  rule: "Rounded",
  rules: [
    { value: "up", word: "Up" },
    { value: "nearest", word: "To the nearest" },
    { value: "down", word: "Down" },
  ] as const,
  proposed: "Ask",
  exact: "Before coins",
  earned: "Earned on each",
  markup: "Markup, of cost",
  margin: "Margin, of price",
  stall_keeps: "The stall keeps",
  cost_each: (pack: string) => `Each good ${pack} costs`,
  now: "Price now",
  set: (price: string) => `Set the price to ${price}`,
  set_done: (price: string) => `Kept on this phone: the price is ${price}.`,
  is_price: "This is the price now",
  incomplete: "The cost is incomplete, so no price is proposed.",
  below_nothing: "Its by-products are worth more than everything cost. Look at their values.",
  impossible: "Margin and what the stall keeps leave nothing of the price.",
  coin_wrong: "A coin is worth more than nothing.",
  only_coordinators: "A coordinator sets the price",
  which: "Which product",
  even: "To cover a fixed cost",
  fixed: "Fixed cost",
  even_says: (packs: string, exact: string) => `${packs} to sell (about ${exact}).`,
  never: "Never at this price: each one costs more than it brings.",
  same_period: "Cost and sales of the same time.",
  views: "Seen otherwise",
  views_why: "Views only. The cost above is what was paid for the lots in it.",
  view_parts: (parts: { here: string; elsewhere: string; lost: string; left: string }) =>
    `Of all paid for these materials: here ${parts.here}, elsewhere ${parts.elsewhere}, lost ${parts.lost}, left ${parts.left}`,
  fifo: "First in, first out",
  moving_average: "Moving average",
};

export const ASKED = {
  title: "Prices of this product",
  where: "What is asked for it",
  bench: "A price from a day on",
  for_whom: "For whom",
  whom: [
    { value: "stall", word: "At the stall" },
    { value: "business", word: "A business" },
  ] as const,
  price: "Price of one pack",
  since: "Counts from",
  pack: "Size of pack",
  every: "Every size",
  save: (price: string) => `Set ${price}`,
  saved: "Kept on this phone. It is proposed from that day on.",
  choose: "Type the price",
  history: "So far",
  none: "No price was set from a day on.",
  row: (day: string, size: string) => `From ${day}, ${size}`,
  not_here: "This phone does not hold this product.",
};

export const RATES = {
  title: "Rates for costs and prices",
  why: "Pay, overhead and how a price is proposed.",
  bench: "What costs are reckoned with",
  since: "Counts from",
  pay: "Pay for an hour",
  by: "Overhead is reckoned",
  by_words: [
    { value: "none", word: "Not at all" },
    { value: "batch", word: "By batch" },
    { value: "labour_hour", word: "By hour" },
    { value: "kg", word: "By kg" },
    { value: "percent", word: "In percent" },
  ] as const,
  rate: {
    batch: "Overhead for each batch",
    labour_hour: "Overhead for each hour of work",
    kg: "Overhead for each kg",
  } as Readonly<Record<string, string>>,
  percent: "Overhead in percent",
  percent_of: "Percent of",
  bases: [
    { value: "materials", word: "Ingredients and packaging" },
    { value: "labour", word: "Work, also unpaid" },
    { value: "materials_and_labour", word: "All of these" },
  ] as const,
  proposal: "Price proposal",
  save: "Save the rates",
  saved: "Kept on this phone. They count from that day on.",
  who: "Who may see costs is set with the cooperative.",
};

/** A figure of money with its currency; a dash where nobody knows. */
export function moneyWords(amount: string | null, currency: string | null): string {
  return amount === null ? figure(null) : `${amount}\u00a0${currency ?? ""}`.trim();
}

/** "jar", "kg": one of what a cost is divided by. */
export function packWord(per: string | null, pack: string | null): string {
  if (per !== null && per !== "pc") return per;
  return packWords("1", pack) || "one";
}

/** What is missing of a cost, in one sentence; names come from the sheets. */
export function lackingWords(what: string, name: string, through: string | null): string {
  const words: Record<string, string> = {
    price: `Nobody wrote what was paid for ${name}`,
    currency: `The price of ${name} is in another currency`,
    lot: `This phone does not know where ${name} came from`,
    unit: `${name} is measured otherwise than it was received`,
    circle: `${name} was made from itself, by a slip`,
    rate: `Nobody set what an hour of ${name} costs`,
    amount: `Overhead cannot be reckoned ${name} yet`,
    value: `Nobody said what ${name} is worth`,
    share: `The cost of its batch cannot be shared out to ${name}`,
  };
  const sentence = words[what] ?? `Something is not known of ${name}`;
  return through === null ? `${sentence}.` : `${sentence}, which is in ${through}.`;
}

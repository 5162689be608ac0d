/** Words of a recipe's lines: shares, what is as bought, yields; and of sizes of pack. */
import { figure } from "./numbers.ts";

export const SHARE = {
  as: "Written as",
  amount: "an amount",
  base: "% of the base",
  whole: "% of the whole",
  percent: { base: "Percent of the base", whole: "Percent of the whole" } as Record<string, string>,
  hint: {
    base: "The base is every line marked so, together: the flours of a dough, the fruit of a jam.",
    whole: "Of all that is weighed, prepared. Pieces and volumes do not count.",
  } as Record<string, string>,
  is_base: "Counts as the base, 100 %",
  makes: (amount: string) => `That is ${amount}.`,
  of: {
    base: (percent: string) => `${percent} of the base`,
    whole: (percent: string) => `${percent} of the whole`,
  } as Record<string, (percent: string) => string>,
};

export const YIELD = {
  state: "The amount is",
  none: "not said",
  as_bought: "as bought",
  prepared: "prepared",
  percent: "Of 100 as bought is left",
  percent_hint: "Below 100 for what is peeled or stoned, above it for what swells.",
  prepared_as: "Prepared as",
  prepared_as_hint: "As: pulp, diced. A yield belongs to it.",
  find: "Look it up in the table",
  close: "Close the table",
  table: "Published yields",
  table_hint: "Sources for one thing lie far apart. Choose the one with the same state.",
  no_row: "The table has nothing by these words.",
  by: {
    table: (source: string) => `From the table: ${source}`,
    own: (source: string) => `Measured here: ${source}`,
    typed: () => "As typed",
  } as Record<string, (source: string) => string>,
  is_left: (percent: string) => `${percent} is left`,
  to_buy: (bought: string) => `Lay out ${bought} as bought.`,
  left: (prepared: string) => `That leaves ${prepared} prepared.`,
  measured: (percent: string, own: { count: number; lowest: string; highest: string }) =>
    `Measured here: ${percent} over ${figure(String(own.count))} preparations, single ones from ${own.lowest} to ${own.highest}.`,
  own_source: (own: { count: number; lowest: string; highest: string }) =>
    `${own.count} preparations, ${own.lowest} to ${own.highest}`,
  take_own: (percent: string) => `Take ${percent} into the next version`,
  in_use: {
    none: "No yield is in use.",
    table: (percent: string) => `The table says ${percent}.`,
    own: (percent: string) => `In use is ${percent}, measured here before.`,
    typed: (percent: string) => `The recipe says ${percent}.`,
  },
};

export const SUB_RECIPE = {
  made_by: (recipe: string) => `Made by ${recipe}`,
};

export const PACK = {
  title: "Sizes of pack",
  none: "No size yet: it is filled as the product says.",
  add: "Add a size",
  where: (recipe: string) => `Size of pack, ${recipe}`,
  new_title: "New size",
  net: "What is in one",
  word: "What one is called",
  word_hint: "As: jar, tub. Empty: pack.",
  packaging: "Filled into",
  packaging_hint:
    "A line with this packaging goes into a batch only where the batch is filled into this size.",
  packaging_none: "No packaging yet. Add one under Materials.",
  done: "Keep the size",
  remove: "Take this size out",
  named: (net: string, word: string) => (word === "" ? net : `${word} of ${net}`),
};

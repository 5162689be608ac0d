/** Words on a label and about it. */
import { dayWords, figure } from "./numbers.ts";

const ALLERGENS: Record<string, string> = {
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

export const LABEL = {
  where: "Label",
  bench: "Next",
  print: (count: string) => `Print ${count}`,
  contains: (allergens: string) => `Contains: ${allergens}`,
  ingredients: "Ingredients",
  by_weight: "Most first, as weighed in.",
  net: "Net",
  lot: "Lot",
  made: (on: string, place: string) => `Made ${dayWords(on, true)}, ${place}`,
  code_says: (lot: string) => `Code with the lot ${lot}`,
  copies: "How many?",
  eye: "I checked the allergens by eye",
  eye_first: "Check allergens by eye first",
  eye_why: "The list comes from what was set up for each ingredient. Read the packs themselves.",
  none_listed: "No allergen is set up for these ingredients.",
  not_here: "This lot is not on this phone.",
  stock: "Stock",
  no_life: "no date",
  allergen: (name: string) => ALLERGENS[name] ?? name.replaceAll("_", " "),
  copy: (count: number) => figure(String(count)),
  checks: "Before printing",
};

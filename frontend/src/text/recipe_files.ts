/** Words of comparing versions, and of recipes as files: export, import, what is wrong in a row. */
import { countWords, figure } from "./numbers.ts";

export const COMPARE = {
  where: "Two versions compared",
  calm: "What was added, taken out or changed, line by line.",
  bench: "Back",
  back: "Back to the recipe",
  from: "From version",
  to: "To version",
  only_one: "There is only one version yet. Publish another one, then the two stand here.",
  recipe: "The recipe",
  is: {
    added: "added",
    removed: "taken out",
    changed: "changed",
    same: "as before",
  },
  /** A shape beside the word, for eyes that run down the list. */
  mark: { added: "+", removed: "\u2212", changed: "\u2192", same: "=" },
  sum: (lines: number, steps: number, rest: number) =>
    `${countWords(lines, "line")}, ${countWords(steps, "step")} and ${countWords(rest, "other thing")} differ.`,
};

export const FILES = {
  export_where: "Export",
  export_title: "All recipes",
  export_all: "Export all as a file",
  export_calm: "Made on this phone, also without signal. The columns are the same in both.",
  csv: "Keep as CSV",
  json: "Keep as JSON",
  copy: "Copy as text",
  preview: "What the file holds",
  rows: (count: number) => countWords(count, "row"),
  import_where: "Recipes",
  import_title: "Bring recipes in",
  import_calm: "From our own columns, as CSV or JSON. Nothing is published by this.",
  drafts: "Half written on this phone",
  no_name: "without a name",
  draft_first: "a new recipe, not published",
  draft_next: "the next version, not published",
  pasted: "pasted text",
  which: "Which text?",
  take_away: (name: string) => `Take ${name} away`,
  not_utf8: (name: string) =>
    `${name} is not written in UTF-8. Save it again as CSV in UTF-8, then choose it.`,
  paste: "The text of the file",
  paste_hint: "Paste it here, or choose files below. Each stays as you typed it.",
  file: "Choose files",
  too_large: (name: string) => `${name} is larger than 2 MB. Choose a file of recipes.`,
  empty: (name: string) => `${name} is empty. Choose a file of recipes.`,
  wrong: "What is wrong",
  wrong_more: (count: number) => `${countWords(count, "more", "more")} below these.`,
  show_more: (count: number) => `Show ${countWords(count, "more", "more")}`,
  ready: "Recipes in it",
  none: "No recipe in it yet.",
  no_rows: "Paste the text, or choose a file first",
  draft: (name: string) => `Open ${name} as a draft`,
  next_of: "becomes the next version of the recipe of this name",
  new_one: "a new recipe",
  has_wrong: (count: number) =>
    `${countWords(count, "row")} to put right; what can be read stands in the draft`,
  missing: "Not set up here",
  missing_calm: "They are matched by name. Set one up, then come back: the text waits here.",
  make: (name: string) => `Set up ${name}`,
  draft_taken: (name: string) =>
    `There is a draft of ${name} on this phone already. Publish it or rub it out first.`,
};

/** Why a row cannot be read: the row, the column, what would be right. */
export const ROW = {
  at: (row: number, column: string, sentence: string) =>
    `Row ${figure(String(row))}, ${column}: ${sentence}`,
  at_in: (file: string, row: number, column: string, sentence: string) =>
    `${file}, row ${figure(String(row))}, ${column}: ${sentence}`,
  not_csv: "The first row must name the columns: recipe, part, what, amount, unit ...",
  not_json: "This is not the JSON of an export: it must be a list of rows.",
  column_twice: "this column stands there twice; take one out",
  too_many_cells: (got: string) =>
    `"${got}" stands behind the last column; put quotes around a cell with a comma in it`,
  not_text: "it holds a list or an object; write one text or number",
  unknown_column: "there is no such column; take it out or correct its name",
  no_recipe: "the name of the recipe is missing; write it in every row",
  wrong_part: (got: string) => `write recipe, line, step or pack, not "${got}"`,
  two_heads: "this recipe has a row of the part recipe already; take one out",
  no_head: "this recipe has no row of the part recipe; add one that says what it makes",
  missing: "it is empty; write it",
  not_number: (got: string) => `"${got}" is no number; write it with a point, as 12.5`,
  below_zero: (got: string) => `"${got}" is below zero; write it without the minus`,
  nothing: "it is zero; write how much",
  too_many: (most: number) =>
    `a recipe has at most ${figure(String(most))} rows of this part; take the others out`,
  not_whole: (got: string) => `"${got}" is no whole number; write it as 12`,
  not_unit: (got: string) => `"${got}" is no unit here; write g, kg, lb, oz, mL, L, pc or a cup`,
  not_choice: (got: string, choices: string) => `"${got}" is none of ${choices}`,
  no_material: (got: string) => `"${got}" is not set up here; set it up, or correct the name`,
  two_materials: (got: string) => `two materials are called "${got}"; give one another name first`,
  no_line: (got: string) => `no line has the id "${got}"; write the id of a line`,
  not_counted: (got: string) =>
    `"${got}" is no line with its percent; write the id of a line and a percent, as 3:100`,
  twice: (got: string) => `the id "${got}" stands there twice; write another`,
  too_long: (most: number) => `it is longer than ${figure(String(most))} signs; shorten it`,
};

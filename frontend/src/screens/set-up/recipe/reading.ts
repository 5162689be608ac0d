/** From the rows of a file to recipes as they are typed; each bad cell is told in one sentence. */
import { parseDecimal, ZERO } from "../../../calc/numbers.ts";
import { isUnit } from "../../../calc/units.ts";
import { KINDS } from "../../../entries/kinds.ts";
import { folded } from "../../../parts/Choices.tsx";
import { ROW } from "../../../text/recipe_files.ts";
import type { NumberedRow, Wrong } from "./file_text.ts";
import { BLANK_LINE, BLANK_PACK, BLANK_STEP } from "./items.ts";
import {
  type Column,
  HEAD_COLUMNS,
  LINE_COLUMNS,
  PARTS,
  type Part,
  type Row,
  STEP_COLUMNS,
} from "./rows.ts";
import { blankRecipe, nextId, type RecipeTyped } from "./typed.ts";

/** A material by what it is called; the ids of all that are called so. */
export type MaterialsByName = (name: string) => readonly string[];

/** One recipe of a file, as far as it can be read, and the rows its parts stand in. */
export interface ReadRecipe {
  name: string;
  typed: RecipeTyped;
  rows: Record<Part, number[]>;
}

export interface ReadFile {
  recipes: ReadRecipe[];
  wrong: Wrong[];
  /** Names of materials that are not set up here, with the part they are missing in. */
  missing: { name: string; part: Part }[];
}

const NUMBERS: readonly Column[] = [
  "amount",
  "percent",
  "yield_percent",
  "below",
  "above",
  "level",
  "soluble_percent",
  "minutes",
  "low",
  "high",
  "loss_percent",
  "target_solids_percent",
];
/** Of a check: the only ones that may be below zero. */
const SIGNED: readonly Column[] = ["low", "high"];
const WHOLES: readonly Column[] = ["packs", "life_length"];
const CHOICES: Partial<Record<Column, readonly string[]>> = {
  percent_of: ["base", "whole"],
  is_base: ["yes"],
  state: ["as_bought", "prepared"],
  yield_by: ["table", "own", "typed"],
  acid: ["citric", "tartaric", "lactic", "acetic", "malic"],
  life_sort: ["use_by", "best_before", "expires_on"],
  life_unit: ["days", "months"],
};
const MOST: Readonly<Record<Part, number>> = {
  recipe: mostOf("recipes"),
  pack: mostOf("pack_sizes"),
  line: mostOf("lines"),
  step: mostOf("steps"),
};
const NUMBER = /^-?\d+(\.\d+)?$/;
/** The id of a line and how much of it counts, in percent. */
const COUNTED = /^(.+):\d+(?:\.\d+)?$/;
const WHOLE = /^[1-9]\d*$/;

/** Rows of one name are one recipe, wherever they stand. */
export function recipesIn(rows: readonly NumberedRow[], materialsBy: MaterialsByName): ReadFile {
  const found: ReadFile = { recipes: [], wrong: [], missing: [] };
  const named = new Map<string, NumberedRow[]>();
  for (const each of rows) {
    const name = (each.row.recipe ?? "").trim();
    if (name === "") found.wrong.push(wrongCell(each, "recipe", ROW.no_recipe));
    else if (partOf(each.row) === null) {
      found.wrong.push(wrongCell(each, "part", ROW.wrong_part(each.row.part ?? "")));
    } else {
      const own = named.get(name);
      if (own === undefined) named.set(name, [each]);
      else own.push(each);
    }
  }
  for (const [name, own] of named) {
    found.recipes.push(new Reader(found, materialsBy).recipe(name, own));
  }
  found.wrong.sort((a, b) => a.number - b.number);
  return found;
}

/** Reads the rows of one recipe and tells what is wrong on the way. */
class Reader {
  readonly #found: ReadFile;
  readonly #materialsBy: MaterialsByName;

  constructor(found: ReadFile, materialsBy: MaterialsByName) {
    this.#found = found;
    this.#materialsBy = materialsBy;
  }

  recipe(name: string, own: readonly NumberedRow[]): ReadRecipe {
    const all = (part: Part) => own.filter(({ row }) => partOf(row) === part);
    const of = (part: Part) => this.#atMost(MOST[part], all(part));
    const [head, ...more] = of("recipe");
    for (const each of more) this.#tell(each, "part", ROW.two_heads);
    const first = own[0];
    if (head === undefined && first !== undefined) this.#tell(first, "part", ROW.no_head);
    const lines = this.#identified(of("line"));
    const typed = {
      ...blankRecipe(""),
      name,
      ...(head === undefined ? {} : this.#head(head)),
      pack_sizes: this.#identified(of("pack")).map(([id, each]) => this.#pack(id, each)),
      lines: lines.map(([id, each]) => this.#line(id, each)),
      steps: this.#identified(of("step")).map(([id, each]) => this.#step(id, each, lines)),
    };
    const numbers = (part: Part) => all(part).map(({ number }) => number);
    return {
      name,
      typed,
      rows: {
        recipe: numbers("recipe"),
        pack: numbers("pack"),
        line: numbers("line"),
        step: numbers("step"),
      },
    };
  }

  /** As many as a recipe may have; the first one over is told. */
  #atMost(most: number, rows: readonly NumberedRow[]): readonly NumberedRow[] {
    const over = rows[most];
    if (over !== undefined) this.#tell(over, "part", ROW.too_many(most));
    return rows.slice(0, most);
  }

  #head(each: NumberedRow): Partial<RecipeTyped> {
    return {
      product: this.#material(each, "recipe"),
      makes: this.#needed(each, "amount"),
      makes_unit: this.#unit(each) || "kg",
      ...this.#cells(each, HEAD_COLUMNS),
      life_unit: this.#cell(each, "life_unit") || "months",
    };
  }

  #pack(size: string, each: NumberedRow) {
    const packaging = each.row.what === undefined ? "" : this.#material(each, "pack");
    return {
      ...BLANK_PACK,
      size,
      net: this.#needed(each, "amount"),
      net_unit: this.#unit(each) || "g",
      word: each.row.word ?? "",
      packaging,
    };
  }

  #line(line: string, each: NumberedRow) {
    const material = this.#material(each, "line");
    const isShare = each.row.percent !== undefined;
    const cells = this.#cells(each, LINE_COLUMNS);
    return {
      ...BLANK_LINE,
      line,
      material,
      amount: isShare ? "" : this.#needed(each, "amount"),
      amount_unit: isShare ? "g" : this.#unit(each),
      ...cells,
      percent_of: isShare ? cells.percent_of || "whole" : "",
    };
  }

  #step(step: string, each: NumberedRow, lines: readonly (readonly [string, NumberedRow])[]) {
    const line = (each.row.line ?? "").trim();
    const isLine = (named: string) => lines.some(([id]) => id === named);
    if (line !== "" && !isLine(line)) this.#tell(each, "line", ROW.no_line(line));
    const counted = (each.row.counted ?? "").trim().split(/\s+/).filter(Boolean);
    const odd = counted.find((one) => !isLine(COUNTED.exec(one)?.[1] ?? ""));
    if (odd !== undefined) this.#tell(each, "counted", ROW.not_counted(odd));
    return {
      ...BLANK_STEP,
      step,
      says: this.#needed(each, "what"),
      unit: each.row.limit_unit ?? "",
      ...this.#cells(each, STEP_COLUMNS),
      counted: odd === undefined ? counted.join(" ") : "",
    };
  }

  /** Each row with its id; one without takes the next number, one that stands there is told. */
  #identified(rows: readonly NumberedRow[]): [string, NumberedRow][] {
    const taken: string[] = rows.map(({ row }) => (row.id ?? "").trim()).filter((id) => id !== "");
    const seen = new Set<string>();
    return rows.map((each) => {
      let id = (each.row.id ?? "").trim();
      if (id === "" || seen.has(id)) {
        if (id !== "") this.#tell(each, "id", ROW.twice(id));
        id = nextId([...taken, ...seen]);
      }
      seen.add(id);
      return [id, each];
    });
  }

  #material(each: NumberedRow, part: Part): string {
    const name = this.#needed(each, "what").trim();
    if (name === "") return "";
    const ids = this.#materialsBy(name);
    const [only] = ids;
    if (ids.length === 1 && only !== undefined) return only;
    const isMissing = ids.length === 0;
    this.#tell(each, "what", isMissing ? ROW.no_material(name) : ROW.two_materials(name));
    const isKnown = this.#found.missing.some((one) => folded(one.name) === folded(name));
    if (isMissing && !isKnown) this.#found.missing.push({ name, part });
    return "";
  }

  #unit(each: NumberedRow): string {
    const unit = this.#needed(each, "unit").trim();
    if (unit === "" || isUnit(unit)) return unit;
    this.#tell(each, "unit", ROW.not_unit(unit));
    return "";
  }

  #needed(each: NumberedRow, column: Column): string {
    const cell = this.#cell(each, column);
    if (cell === "" && each.row[column] === undefined) this.#tell(each, column, ROW.missing);
    return cell;
  }

  #cells<Names extends Column>(each: NumberedRow, columns: readonly Names[]) {
    const cells: Partial<Record<Names, string>> = {};
    for (const column of columns) cells[column] = this.#cell(each, column);
    return cells;
  }

  /** A cell as typed; "" for one that cannot be right. */
  #cell(each: NumberedRow, column: Column): string {
    const cell = each.row[column] ?? "";
    const sentence = cell === "" ? null : cellTrouble(column, cell.trim());
    if (sentence === null) return isWords(column) ? cell : cell.trim();
    this.#tell(each, column, sentence);
    return "";
  }

  #tell(each: NumberedRow, column: Column, sentence: string): void {
    this.#found.wrong.push(wrongCell(each, column, sentence));
  }
}

function cellTrouble(column: Column, cell: string): string | null {
  if (NUMBERS.includes(column)) return numberTrouble(column, cell);
  if (WHOLES.includes(column) && !WHOLE.test(cell)) return ROW.not_whole(cell);
  const choices = CHOICES[column];
  if (choices === undefined || choices.includes(cell)) return null;
  return ROW.not_choice(cell, choices.join(", "));
}

function numberTrouble(column: Column, cell: string): string | null {
  if (!NUMBER.test(cell)) return ROW.not_number(cell);
  const number = parseDecimal(cell);
  if (number.compare(ZERO) < 0 && !SIGNED.includes(column)) return ROW.below_zero(cell);
  return column === "amount" && number.isZero() ? ROW.nothing : null;
}

/** How many items a list of a recipe may have; any number of what is no list there. */
function mostOf(list: string): number {
  const field = KINDS.recipe_published.fields.find(({ name }) => name === list);
  return field?.most_items ?? Number.POSITIVE_INFINITY;
}

function isWords(column: Column): boolean {
  return !NUMBERS.includes(column) && !WHOLES.includes(column) && CHOICES[column] === undefined;
}

function partOf(row: Row): Part | null {
  return PARTS.find((part) => part === (row.part ?? "").trim()) ?? null;
}

function wrongCell({ number }: NumberedRow, column: Column, sentence: string): Wrong {
  return { number, column, sentence };
}

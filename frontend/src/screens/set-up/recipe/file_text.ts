/** Rows as the text of a file, CSV or JSON, and back. */
import { ROW } from "../../../text/recipe_files.ts";
import { jsonObjects } from "./json_cells.ts";
import { COLUMNS, type Column, type Row } from "./rows.ts";

/** A row as it stands in a file, under its number there; the first row of CSV names the columns. */
export interface NumberedRow {
  number: number;
  row: Row;
}

/** One sentence about one cell. */
export interface Wrong {
  number: number;
  column: string;
  sentence: string;
}

/** What can be read of a text; `wrong` names what cannot. */
export interface ReadText {
  rows: NumberedRow[];
  wrong: Wrong[];
}

const NUMBER = /^-?\d+(\.\d+)?$/;
// A spreadsheet takes a cell that begins so for a formula; the apostrophe says that it is words.
const FORMULA = /^['=+\-@\t\r]/;
const NEEDS_QUOTES = /[",;\t\r\n]/;
const DELIMITERS = [",", ";", "\t"];

/** With a comma, a first row of all columns, and quotes only where they are needed. */
export function csvOf(rows: readonly Row[]): string {
  const lines = rows.map((row) => COLUMNS.map((column) => cellText(row[column] ?? "")));
  return [[...COLUMNS], ...lines].map((cells) => `${cells.join(",")}\r\n`).join("");
}

function cellText(cell: string): string {
  const safe = FORMULA.test(cell) && !NUMBER.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** A list of rows, each with only the columns that say something. */
export function jsonOf(rows: readonly Row[]): string {
  return `${JSON.stringify(rows, null, 1)}\n`;
}

/** Either form; a text that begins with a bracket is JSON. */
export function rowsIn(text: string): ReadText {
  const plain = text.replace(/^\uFEFF/, "");
  const begin = plain.trimStart();
  return begin.startsWith("[") || begin.startsWith("{") ? rowsInJson(plain) : rowsInCsv(plain);
}

function rowsInJson(text: string): ReadText {
  const objects = jsonObjects(text);
  if (objects === null) return refused(ROW.not_json);
  const wrong: Wrong[] = [];
  const rows = objects.flatMap(({ cells, twice }, at): NumberedRow[] => {
    const number = at + 1;
    const tell = (column: string, sentence: string) => wrong.push({ number, column, sentence });
    if (cells === null) {
      tell("recipe", ROW.not_json);
      return [];
    }
    for (const name of twice) tell(name, ROW.column_twice);
    for (const [name, cell] of cells) {
      if (!isColumn(name)) tell(name, ROW.unknown_column);
      else if (typeof cell === "object" && cell !== null) tell(name, ROW.not_text);
    }
    return [{ number, row: rowFrom(cells.map(([name, cell]) => [name, textOfJson(cell)])) }];
  });
  return { rows, wrong };
}

function textOfJson(cell: unknown): string {
  return typeof cell === "string" || typeof cell === "number" || typeof cell === "boolean"
    ? String(cell)
    : "";
}

function rowsInCsv(text: string): ReadText {
  const tables = DELIMITERS.map((delimiter) => cellsIn(text, delimiter));
  const known = (table: readonly string[][]) =>
    (table[0] ?? []).filter((cell) => isColumn(cell.trim())).length;
  const table = tables.reduce((best, each) => (known(each) > known(best) ? each : best));
  const [head = [], ...lines] = table;
  const names = head.map((cell) => cell.trim());
  if (!names.includes("recipe") || !names.includes("part")) return refused(ROW.not_csv);
  const wrong: Wrong[] = names.flatMap((name, place) => {
    const sentence = headTrouble(names, place);
    return sentence === null ? [] : [{ number: 1, column: name, sentence }];
  });
  const rows = lines.map((cells, at): NumberedRow => {
    const number = at + 2;
    const over = cells.slice(names.length).find((cell) => cell.trim() !== "");
    if (over !== undefined) {
      wrong.push({ number, column: names.at(-1) ?? "", sentence: ROW.too_many_cells(over.trim()) });
    }
    const written = names.map((name, place) => [name, unquoted(cells[place] ?? "")] as const);
    return { number, row: rowFrom(written) };
  });
  return { rows: rows.filter(({ row }) => Object.keys(row).length > 0), wrong };
}

/** What is wrong with a name of the first row; a column without a name is read over. */
function headTrouble(names: readonly string[], place: number): string | null {
  const name = names[place] ?? "";
  if (name === "") return null;
  if (!isColumn(name)) return ROW.unknown_column;
  return names.indexOf(name) < place ? ROW.column_twice : null;
}

/** The cells of every record; in quotes a delimiter or a new line is a letter, two quotes are one. */
function cellsIn(text: string, delimiter: string): string[][] {
  const cell = new RegExp(
    `("(?:[^"]|"")*"|[^${delimiter}\\r\\n]*)(${delimiter}|\\r?\\n|\\r|$)`,
    "y",
  );
  const records: string[][] = [];
  let cells: string[] = [];
  while (cell.lastIndex < text.length) {
    const [, written = "", end = ""] = cell.exec(text) ?? [];
    cells.push(written.startsWith('"') ? inQuotes(written) : written);
    if (end === delimiter) continue;
    records.push(cells);
    cells = [];
  }
  return cells.length === 0 ? records : [...records, cells];
}

/** A cell that only begins with a quote is as it stands. */
function inQuotes(written: string): string {
  const isClosed = written.length > 1 && written.endsWith('"');
  return isClosed ? written.slice(1, -1).replaceAll('""', '"') : written;
}

function unquoted(cell: string): string {
  return cell.startsWith("'") && FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell;
}

function rowFrom(cells: readonly (readonly [string, string])[]): Row {
  return Object.fromEntries(cells.filter(([name, cell]) => isColumn(name) && cell.trim() !== ""));
}

function isColumn(name: string): name is Column {
  return COLUMNS.some((column) => column === name);
}

function refused(sentence: string): ReadText {
  return { rows: [], wrong: [{ number: 1, column: "recipe", sentence }] };
}

/** Text as people paste it and files as loggers write them, made ready for reading as columns. */
import { cellsOf, delimiterOf, numberOf } from "../../calc/logger_cells.ts";
import { momentOf } from "../../calc/logger_times.ts";

/** A time, blanks, a temperature with or without its unit: as one writes it by hand. */
const BY_HAND = /^(\S.*?)[ \u00a0]+([+\u2212-]?\d{1,4}(?:[.,]\d+)?(?: ?[°º]? ?[cf])?)$/i;
const COLUMN_SIGNS = /[\t;|]/;

/**
 * Rows written by hand have blanks between time and temperature, where files have a sign of their
 * own: each last blank becomes a tabulator. Text with columns already stays as it is.
 */
export function withColumns(text: string): string {
  if (COLUMN_SIGNS.test(text)) return text;
  const lines = text.split(/\r\n|\n|\r/);
  const filled = lines.filter((line) => line.trim() !== "");
  const rows = filled.map(rowOf);
  // The first line may be a heading; any other line that is no row means columns of another sort.
  if (rows.length === 0 || rows.slice(1).includes(null) || rows.at(-1) === null) return text;
  const [head, ...rest] = rows;
  const heading =
    head === null ? (filled[0] ?? "").trim().replace(/[ \u00a0]+(?=\S+$)/, "\t") : null;
  return [heading ?? head, ...rest].join("\n");
}

function rowOf(line: string): string | null {
  const [, time = "", degrees = ""] = BY_HAND.exec(line.trim()) ?? [];
  const isTime = momentOf(time) !== null || numberOf(time) !== null;
  return isTime ? `${time}\t${degrees}` : null;
}

/** A column to choose: its place, its heading, and what stands in its first row. */
export interface Column {
  place: number;
  label: string;
  first: string;
}

const LOOKED_AT_LINES = 200; // settings above the rows are fewer

/** The columns of a text; none where no two lines that follow one another are alike. */
export function columnsIn(text: string): Column[] {
  const lines = text
    .replace(/^\ufeff/, "")
    .split(/\r\n|\n|\r/, LOOKED_AT_LINES)
    .filter((line) => line.trim() !== "");
  const sign = delimiterOf(lines);
  if (sign === null) return [];
  const table = lines.map((line) => cellsOf(line, sign));
  const begun = table.findIndex((cells, at) => {
    const values = cells.filter((cell) => numberOf(cell) !== null || momentOf(cell) !== null);
    return values.length >= 2 && (table[at + 1]?.length ?? cells.length) === cells.length;
  });
  const cells = table[begun] ?? [];
  const above = table[begun - 1] ?? [];
  return cells.map((first, place) => ({
    place,
    label: above.length === cells.length ? (above[place] ?? "") : "",
    first,
  }));
}

/** The text of a file, whichever way its program wrote letters such as the degree sign. */
export function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes); // takes every byte
  }
}

/** Cells of a logger's CSV text: what parts them, and the numbers in them. */

import { parseDecimal, rounded, written } from "./numbers.ts";

/** Of a temperature; more are an artefact of the software and are rounded. */
export const PLACES_MAX = 3;
const NUMBER = /^([+\u2212-]?)([0-9]{1,9})(?:([.,])([0-9]{1,15}))? *[°º]? *([cf])?$/i;

/** A temperature as plain text with a point, and its unit where the cell says one. */
export interface Heat {
  readonly text: string;
  readonly unit: string | null;
}

/** Tabulator, semicolon, bar or comma: the first that half of the lines have. */
export function delimiterOf(lines: readonly string[]): string | null {
  const isCommon = (sign: string) =>
    2 * lines.filter((line) => line.includes(sign)).length >= lines.length;
  return ["\t", ";", "|", ","].find(isCommon) ?? null;
}

/** The cells of a line; in quotes a delimiter is a letter and two quotes are one. */
export function cellsOf(line: string, delimiter: string): string[] {
  // Most loggers quote nothing, and this is four times as quick.
  if (!line.includes('"')) return line.split(delimiter).map(trimmed);
  const cells: string[] = [];
  let [cell, isQuoted, wasClosed] = ["", false, false];
  for (const sign of line) {
    if (sign === '"') {
      cell += wasClosed ? '"' : "";
      wasClosed = isQuoted;
      isQuoted = !isQuoted;
      continue;
    }
    wasClosed = false;
    if (sign === delimiter && !isQuoted) {
      cells.push(cell);
      cell = "";
    } else cell += sign;
  }
  return [...cells, cell].map(trimmed);
}

/**
 * A number with a decimal point or comma, with or without a unit of temperature, as plain text;
 * null for what is none.
 */
export function numberOf(cell: string): string | null {
  const found = NUMBER.exec(cell);
  if (found === null) return null;
  const [, sign = "", whole = "", , places = ""] = found;
  return plainNumber(sign, whole, places);
}

/** A temperature of up to four digits, with at most three places; null for what is none. */
export function heatOf(cell: string): Heat | null {
  const found = NUMBER.exec(cell);
  if (found === null) return null;
  const [, sign = "", whole = "", , places = "", letter = ""] = found;
  if (whole.length > 4) return null;
  const text = plainNumber(sign, whole, places);
  const hasMore = places.length > PLACES_MAX;
  const exact = hasMore ? written(rounded(parseDecimal(text), PLACES_MAX)) : withoutZeros(text);
  return { text: exact, unit: letter === "" ? null : unitOf(letter) };
}

function plainNumber(sign: string, whole: string, places: string): string {
  const minus = sign === "-" || sign === "\u2212" ? "-" : "";
  return places ? `${minus}${whole}.${places}` : `${minus}${whole}`;
}

/** As a decimal is written: no zeros in front, no minus before nothing. */
function withoutZeros(text: string): string {
  const short = text.replace(/^(-?)0+(?=[0-9])/, "$1");
  return /[1-9]/.test(short) ? short : short.replace("-", "");
}

function unitOf(letter: string): string {
  return letter.toLowerCase() === "f" ? "degF" : "degC";
}

function trimmed(cell: string): string {
  return cell.replace(/^[ \t]+|[ \t]+$/g, "");
}

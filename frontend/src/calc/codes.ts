/** Lot codes that phones can make without asking anyone: letters, day, device mark, number. */

export const LETTERS_MAX = 3;

const LOT_CODE = /^[A-Z0-9][A-Z0-9-]{0,39}$/;
const LETTERS = /^[A-Z]{1,3}$/;
const MARK = /^[A-Z0-9]{2}$/;
const DAY = /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/;
const NO_LETTERS = "L"; // a name in another script still needs a code: L for lot

/** What a code says beside its number. */
export interface CodeStem {
  readonly on: string;
  readonly mark: string;
}

/** Whether a text may be a lot's code: capital letters, digits and hyphens, at most 40. */
export function isLotCode(text: string): boolean {
  return LOT_CODE.test(text);
}

/**
 * MJ-261110-K7-1: letters of the material, day, mark of the device, number of that day.
 * Two devices of a cooperative never share a mark, so codes made offline cannot meet.
 * Throws for anything that would not make such a code.
 */
export function lotCode(letters: string, given: CodeStem & { readonly number: number }): string {
  const { on, mark, number } = given;
  const isWhole = Number.isSafeInteger(number) && number >= 1;
  if (!(DAY.test(on) && LETTERS.test(letters) && MARK.test(mark) && isWhole)) {
    throw new RangeError(`no lot code of ${letters}, ${on}, ${mark}, ${number}`);
  }
  return `${letters}-${on.slice(2).replaceAll("-", "")}-${mark}-${number}`;
}

/** The number after the highest this device has given to these letters on this day. */
export function nextNumber(codes: Iterable<string>, letters: string, stem: CodeStem): number {
  const start = lotCode(letters, { ...stem, number: 1 }).slice(0, -1);
  let highest = 0;
  for (const code of codes) {
    const number = code.startsWith(start) ? code.slice(start.length) : "";
    if (/^[0-9]{1,9}$/.test(number)) highest = Math.max(highest, Number(number));
  }
  return highest + 1;
}

/**
 * Letters for a code from a name: the first of up to three words, or the first two of a single
 * word. Accents are dropped; without a Latin letter it is L.
 */
export function lettersOf(name: string): string {
  const bare = name.normalize("NFD").toUpperCase();
  const words = bare.replace(/[\u0300-\u036f']/g, "").match(/[A-Z]+/g) ?? [];
  const [first] = words;
  if (first === undefined) return NO_LETTERS;
  if (words.length === 1) return first.slice(0, 2);
  return words
    .slice(0, LETTERS_MAX)
    .map((word) => word.charAt(0))
    .join("");
}

/** What a check says, in figures no finer than the check is good for. */
import { parseDecimal, plain, rounded, significant } from "../../calc/numbers.ts";
import { placeWords, saidWords } from "../../text/instruments.ts";

type Values = Readonly<Record<string, string>>;

const GOOD_DIGITS = 2; // of the guard band, or of the limit where there is none
const PLACES_MOST = 6;
const TEMPERATURES = ["degC", "degF"];

/** The sentence of a check. */
export function saidOf(check: { says: string; values: Values; unit: string | null }): string {
  const { values, unit } = check;
  const { error, limit, guard_band, reference } = values;
  if (error === undefined) return saidWords(check);
  return saidWords({
    ...check,
    values: {
      ...values,
      error: errorShown(error, { limit, guard_band }),
      ...(reference === undefined ? {} : { reference: referenceShown(reference, unit) }),
      ...(guard_band === undefined ? {} : { guard_band: short(guard_band) }),
    },
  });
}

/** Where a step was read; a boiling point is worked out finer than anybody reads. */
export function readAt(sort: string, reference: string, unit: string | null): string {
  return placeWords(sort, referenceShown(reference, unit), unit);
}

/** A computed temperature to a tenth; anything else stands on the weight or bottle. */
export function referenceShown(reference: string, unit: string | null): string {
  if (!TEMPERATURES.includes(unit ?? "")) return reference;
  return plain(rounded(parseDecimal(reference), 1));
}

/** An error to the places of its guard band, and to more where it would look like its limit. */
export function errorShown(
  error: string,
  by: { limit?: string | null | undefined; guard_band?: string | null | undefined },
): string {
  const scale = by.guard_band ?? by.limit;
  if (scale === undefined || scale === null || Number(scale) === 0) return error;
  const exact = parseDecimal(error);
  const looksLikeLimit = (text: string) =>
    text !== error && Number(by.limit) === Math.abs(Number(text));
  let places = short(scale).split(".")[1]?.length ?? 0;
  while (places < PLACES_MOST && looksLikeLimit(plain(rounded(exact, places)))) places += 1;
  return plain(rounded(exact, places));
}

function short(text: string): string {
  return significant(parseDecimal(text), GOOD_DIGITS);
}

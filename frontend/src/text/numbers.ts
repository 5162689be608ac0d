/** How figures, units, times and days are written on a screen. Text only, no arithmetic. */

const THIN_SPACE = "\u202f"; // narrow and unbreakable: a figure stays in one line
const MINUS = "\u2212";
/** Not recorded; never 0. */
export const NOT_RECORDED = "\u2014";

const UNIT_WORDS: Record<string, string> = {
  pc: "",
  degC: "\u00b0C",
  degF: "\u00b0F",
  C: "\u00b0C",
  F: "\u00b0F",
  us_cup: "US cup",
  metric_cup: "metric cup",
  imp_cup: "imperial cup",
  us_tbsp: "US tbsp",
  us_tsp: "US tsp",
  us_floz: "US fl oz",
  imp_floz: "imperial fl oz",
  au_tbsp: "AU tbsp",
  min: "min",
  Brix: "\u00b0Bx",
  ph: "pH",
  salometer: "\u00b0SAL",
};

/** `-10004.50` as `−10 004.50`; a missing figure as a dash. */
export function figure(amount: string | null | undefined): string {
  if (amount === null || amount === undefined || amount === "") return NOT_RECORDED;
  const [whole = "", decimals] = amount.replace(/^-/, "").split(".");
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE);
  const sign = amount.startsWith("-") ? MINUS : "";
  return sign + spaced + (decimals === undefined ? "" : `.${decimals}`);
}

/** The word of a unit code: `degC` is `°C`, a piece has none. */
export function unitWord(unit: string | null | undefined): string {
  if (unit === null || unit === undefined) return "";
  return UNIT_WORDS[unit] ?? unit.replace(/^(us|imp|uk|metric|au)_/, "").replaceAll("_", " ");
}

/** A figure with its unit in one line: `60.2 g`, `66`. */
export function amountWords(amount: string | null | undefined, unit?: string | null): string {
  const word = amount === null || amount === undefined ? "" : unitWord(unit);
  return word === "" ? figure(amount) : `${figure(amount)}\u00a0${word}`;
}

/** `+ 0.3 g`, `- 0.3 g`: an error with its sign. */
export function signedWords(amount: string, unit?: string | null): string {
  const sign = amount.startsWith("-") ? MINUS : Number(amount) === 0 ? "" : "+";
  return `${sign}${amountWords(amount.replace(/^-/, ""), unit)}`;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** `2026-11-10` as `10 Nov`, with the year when asked. */
export function dayWords(day: string | null | undefined, withYear = false): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(day ?? "");
  if (found === null) return NOT_RECORDED;
  const [, year, month, date] = found;
  const words = `${Number(date)} ${MONTHS[Number(month) - 1] ?? month}`;
  return withYear ? `${words} ${year}` : words;
}

/** The clock of a moment where it happened: UTC text and minutes of offset to `9:40`. */
export function clockWords(at: string, zone: string): string {
  if (clock?.zone !== zone) {
    const minutes = { hour: "numeric", minute: "2-digit", hourCycle: "h23" } as const;
    clock = { zone, hands: new Intl.DateTimeFormat("en-GB", { ...minutes, timeZone: zone }) };
  }
  return clock.hands.format(new Date(at)).replace(/^0(\d)/, "$1");
}

/** Kept, because making one costs more than a whole list of times read from it. */
let clock: { zone: string; hands: Intl.DateTimeFormat } | null = null;

/** `Tuesday 10 November` of a day. */
export function longDayWords(day: string): string {
  const parts = new Intl.DateTimeFormat("en-GB", {
    weekday: "long",
    day: "numeric",
    month: "long",
    timeZone: "UTC",
  });
  return parts.format(new Date(`${day}T00:00:00Z`)).replace(",", "");
}

/** `1 jar`, `3 jars`, where the plural is not simply an s it is given. */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${figure(String(count))} ${count === 1 ? one : many}`;
}

const ORDINALS = ["1st", "2nd", "3rd"];

/** `1st`, `2nd`, `3rd`, `4th`. */
export function ordinal(count: number): string {
  return ORDINALS[count - 1] ?? `${count}th`;
}

/** Geometry of the drawings. Doubles are enough here: nothing drawn is ever recorded. */

/** A decimal text as a place to draw at; what cannot be drawn is null. */
export function drawn(text: string | null | undefined): number | null {
  if (text === null || text === undefined || text.trim() === "") return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}

/** `value` kept between two borders. */
export function between(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** A share 0..1 as a percentage for the drawing, kept inside. */
export function percent(part: number, whole: number): number {
  return whole > 0 ? between((part / whole) * 100, 0, 100) : 0;
}

/** A surface between two walls: it climbs at both and is lowest in the middle, at `lowest`. */
export function surface(
  walls: { left: number; right: number },
  lowest: number,
  climb: number,
): string {
  const { left, right } = walls;
  const middle = (left + right) / 2;
  const reach = (right - left) * 0.22;
  const high = lowest - climb;
  const bend = lowest - climb * 0.12;
  return [
    `M${left} ${high}`,
    `C${left + 1} ${bend} ${left + reach} ${lowest} ${middle} ${lowest}`,
    `S${right - 1} ${bend} ${right} ${high}`,
  ].join("");
}

/** The largest of 1, 2, 5 times a power of ten that gives at least `least` steps in `span`. */
export function evenStep(span: number, least: number): number {
  const power = 10 ** Math.floor(Math.log10(span / least));
  const factor = [5, 2, 1].find((each) => span / (each * power) >= least) ?? 1;
  return factor * power;
}

/** The least of 1, 2, 3, 4, 5 times a power of ten of which `count` reach as far as `most`. */
export function stepReaching(most: number, count: number): number {
  const power = 10 ** Math.floor(Math.log10(most / count));
  const factor = [1, 2, 3, 4, 5].find((each) => each * power * count >= most) ?? 10;
  return factor * power;
}

/** How many decimals the numerals of a scale with this step need. */
export function numeralPlaces(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}

/** One tick of a scale; `rank` 2 is longest and carries a numeral, 0 shortest. */
export interface Tick {
  at: number;
  rank: 0 | 1 | 2;
}

const FINEST_PX = 7; // ticks closer than this run together at arm's length

/** Ticks from `from` to `to`: numerals about every `height / 60` px, up to ten parts between. */
export function ticksOf(from: number, to: number, height: number): { ticks: Tick[]; step: number } {
  const step = evenStep(to - from, Math.max(2, Math.floor(height / 70)));
  const partPx = (step / (to - from)) * height;
  const parts = partings(step).find((each) => partPx / each >= FINEST_PX) ?? 1;
  const fine = step / parts;
  const ticks: Tick[] = [];
  for (let n = Math.ceil(from / fine - 1e-6); n * fine <= to + fine * 1e-6; n += 1) {
    const isHalf = parts % 2 === 0 && n % (parts / 2) === 0;
    ticks.push({ at: n * fine, rank: n % parts === 0 ? 2 : isHalf ? 1 : 0 });
  }
  return { ticks, step };
}

/** Into how many parts a step may be cut so that each is 1, 2 or 5 of something. */
function partings(step: number): readonly number[] {
  const leading = Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9));
  return leading === 2 ? [10, 4, 2] : leading === 5 ? [10, 5] : [10, 5, 2];
}

/** What part of a quantity a glass shows. */
export interface GlassWindow {
  from: number;
  to: number;
  /** The window does not begin at 0: the wall is cut. */
  isCut: boolean;
}

/** A window in which the limits take the middle third, or one from 0 to a fifth above the target. */
export function glassWindow(given: {
  target: number | null;
  low: number | null;
  high: number | null;
  level: number | null;
}): GlassWindow {
  const { target, low, high, level } = given;
  if (low !== null && high !== null && high > low) {
    const around = (high - low) * 0.95;
    const from = low - around;
    return from <= 0 && low >= 0
      ? { from: 0, to: high + around, isCut: false }
      : { from, to: high + around, isCut: true };
  }
  const known = [target, low, high, level].filter((each) => each !== null);
  const least = Math.min(0, ...known);
  const most = Math.max(...known, least);
  if (target === null && (low !== null || high !== null)) return oneSided(low ?? high ?? 0, level);
  return {
    from: least < 0 ? least * 1.2 : 0,
    to: most > least ? most * 1.2 : least + 1,
    isCut: false,
  };
}

function oneSided(limit: number, level: number | null): GlassWindow {
  const reach = Math.max(
    Math.abs(limit) * 0.08,
    level === null ? 0 : Math.abs(level - limit) * 1.2,
    0.5,
  );
  const from = limit - reach;
  return from <= 0 && limit >= 0
    ? { from: 0, to: limit + reach, isCut: false }
    : { from, to: limit + reach, isCut: true };
}

const THIN_SHARE = 0.25;

/** How long the whisker under a number is, by relative uncertainty: look and meaning of the rule. */
export function whiskerShare(amount: string, uncertainty: string | null | undefined): number {
  const value = drawn(amount);
  const u = drawn(uncertainty);
  if (value === null || u === null || value === 0) return u === null ? 0.5 : 1;
  const relative = Math.abs(u / value);
  if (relative <= 0.001) return THIN_SHARE;
  if (relative <= 0.01) return 0.5;
  return relative <= 0.05 ? 0.75 : 1;
}

const THINNEST_PX = 2;

/** Widths of streams, as wide as they are much, at least 2 px, together about `full` px. */
export function streamWidths(amounts: readonly (string | null)[], full: number): number[] {
  const values = amounts.map((each) => Math.abs(drawn(each) ?? 0));
  const sum = values.reduce((left, right) => left + right, 0);
  return values.map((each) => Math.max(THINNEST_PX, sum > 0 ? (each / sum) * full : 0));
}

/** A stream's place: its row at the wall of words, and its stretch of the line between. */
export interface Band {
  rowStart: number;
  rowEnd: number;
  lineStart: number;
  lineEnd: number;
}

/** Streams stacked: at the words each has room for its words, at the line they lie close. */
export function bands(
  amounts: readonly (string | null)[],
  sizes: { full: number; leastRows: readonly number[] },
): Band[] {
  let row = 0;
  let line = 0;
  return streamWidths(amounts, sizes.full).map((width, index) => {
    const band = {
      rowStart: row,
      rowEnd: row + Math.max(sizes.leastRows[index] ?? 0, width + 6),
      lineStart: line,
      lineEnd: line + width,
    };
    row = band.rowEnd;
    line = band.lineEnd;
    return band;
  });
}

/** One stream as a closed shape, as wide at the wall as at the line. */
export function ribbon(band: Band, at: { wall: number; line: number; drop: number }): string {
  const width = band.lineEnd - band.lineStart;
  const middle = (band.rowStart + band.rowEnd) / 2;
  const [outerTop, outerEnd] = [middle - width / 2, middle + width / 2];
  const [innerTop, innerEnd] = [band.lineStart + at.drop, band.lineEnd + at.drop];
  const bend = (at.wall + at.line) / 2;
  return [
    `M${at.wall} ${outerTop}C${bend} ${outerTop} ${bend} ${innerTop} ${at.line} ${innerTop}`,
    `V${innerEnd}C${bend} ${innerEnd} ${bend} ${outerEnd} ${at.wall} ${outerEnd}Z`,
  ].join("");
}

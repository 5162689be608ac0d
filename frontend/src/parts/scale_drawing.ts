/** Geometry of what is drawn to be read: marks of a scale, a window of it, how full a bowl stands. */

/** What can be drawn from a question or from an instrument: a scale in decimal text. */
export interface ScaleDrawn {
  readonly low: string;
  readonly high: string;
  readonly division: string;
  readonly numbered: string;
}

/** One mark; `rank` 2 is longest and carries a numeral, 1 stands half way between two of those. */
export interface Mark {
  readonly at: number;
  readonly rank: 0 | 1 | 2;
}

/** Every mark from `from` to `to`, counted in whole divisions so that none drifts. */
export function marksOf(scale: ScaleDrawn, from: number, to: number): Mark[] {
  const division = Number(scale.division);
  const each = Math.round(Number(scale.numbered) / division);
  const first = Math.round(from / division);
  const last = Math.round(to / division);
  const marks: Mark[] = [];
  for (let n = first; n <= last; n += 1) {
    const isHalf = each % 2 === 0 && n % (each / 2) === 0;
    marks.push({ at: n * division, rank: n % each === 0 ? 2 : isHalf ? 1 : 0 });
  }
  return marks;
}

/** How many decimals the numerals of a scale have. */
export function numeralDecimals(scale: ScaleDrawn): number {
  return scale.numbered.split(".")[1]?.length ?? 0;
}

const WINDOW_NUMERALS = 3;

/**
 * The part of a long scale that is drawn: three numbered steps, always beginning at a numeral, the
 * reading in any of them. So the window does not tell where in it the reading lies.
 */
export function windowOn(scale: ScaleDrawn, truth: number): { from: number; to: number } {
  const [low, high, step] = [scale.low, scale.high, scale.numbered].map(Number) as [
    number,
    number,
    number,
  ]; // three in, three out
  const steps = Math.round((high - low) / step);
  const holds = Math.min(Math.floor((truth - low) / step), steps - 1);
  const lowest = Math.max(0, Math.min(holds - (holds % WINDOW_NUMERALS), steps - WINDOW_NUMERALS));
  const from = low + lowest * step;
  return { from, to: Math.min(high, from + WINDOW_NUMERALS * step) };
}

const HALVINGS = 40; // a share to 1e-12: far below a pixel

/** The x from 0 to `most` at which a growing function reaches `wanted`. */
function reachedAt(wanted: number, most: number, grown: (x: number) => number): number {
  let [least, end] = [0, most];
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (least + end) / 2;
    if (grown(middle) < wanted) least = middle;
    else end = middle;
  }
  return (least + end) / 2;
}

/** A bowl seen from the side: rim radius and depth in px; a round bowl is half an ellipsoid. */
export interface Bowl {
  readonly radius: number;
  readonly depth: number;
  readonly isRound: boolean;
}

/** How high the content stands and how high a mound rises over the rim, in px. */
export interface Filled {
  readonly height: number;
  readonly mound: number;
}

/**
 * What a share of the level measure looks like, true in volume: straight walls fill evenly; half an
 * ellipsoid filled to h of its depth b holds (h/b)^2 (3 - h/b) / 2 of it; what lies over the rim is
 * a spherical cap, k (3 r^2 + k^2) pi / 6 (solid geometry, memory).
 */
export function filledTo(share: number, { radius, depth, isRound }: Bowl): Filled {
  if (share <= 1) {
    const part = isRound ? reachedAt(share, 1, (h) => (h * h * (3 - h)) / 2) : share;
    return { height: part * depth, mound: 0 };
  }
  const level = (isRound ? 2 / 3 : 1) * radius * radius * depth;
  const mound = reachedAt((share - 1) * level, radius, (k) => (k * (3 * radius ** 2 + k * k)) / 6);
  return { height: depth, mound };
}

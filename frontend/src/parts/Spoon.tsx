/** A spoon or a cup cut through the middle: heaped, level or short, true in volume. */
import { type Bowl, filledTo } from "./scale_drawing.ts";

/** How full it is, in percent of level. `says` tells what is to be judged, not the answer. */
export interface SpoonProps {
  shape: "spoon" | "cup";
  percent: string;
  says: string;
  /** Height of the drawing in px. */
  height: number;
}

const WIDTH = 320;
const RIM_SHARE = 0.36; // of the height: room for a mound above, for the bowl below
const RADIUS_MOST = 104; // leaves room for the handle
const FOOT = 12;

function bowlOf(shape: SpoonProps["shape"], height: number): Bowl {
  const depth = height * (1 - RIM_SHARE) - FOOT;
  return shape === "spoon"
    ? { radius: Math.min(RADIUS_MOST, depth * 0.86), depth: depth * 0.8, isRound: true }
    : { radius: Math.min(RADIUS_MOST, depth * 0.62), depth, isRound: false };
}

/** The rim is a level line that goes on beside the bowl, as a straight edge would lie. */
export function Spoon({ shape, percent, says, height }: SpoonProps) {
  const bowl = bowlOf(shape, height);
  const rim = height * RIM_SHARE;
  const x = shape === "spoon" ? WIDTH * 0.4 : WIDTH * 0.42;
  const filled = filledTo(Number(percent) / 100, bowl);
  return (
    <svg
      class="spoon"
      width={WIDTH}
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={says}
    >
      <path class="liquid" d={contentPath(bowl, filled, { x, rim })} />
      <path class="level-edge" d={`M${x - bowl.radius - 34} ${rim}H${WIDTH - 8}`} />
      <path class="wall" d={wallPath(bowl, { x, rim })} />
      <path class="wall" d={handlePath(shape, bowl, { x, rim })} />
    </svg>
  );
}

interface Placed {
  x: number;
  rim: number;
}

function wallPath({ radius, depth, isRound }: Bowl, { x, rim }: Placed): string {
  const [left, right] = [x - radius, x + radius];
  if (isRound) return `M${left} ${rim}A${radius} ${depth} 0 0 0 ${right} ${rim}`;
  return `M${left} ${rim}V${rim + depth}H${right}V${rim}`;
}

/** What lies in the bowl up to its height, with its mound on top. */
function contentPath(bowl: Bowl, { height, mound }: { height: number; mound: number }, at: Placed) {
  const { radius, depth, isRound } = bowl;
  const top = at.rim + depth - height;
  const half = isRound ? radius * Math.sqrt(1 - (1 - height / depth) ** 2) : radius;
  const [left, right] = [at.x - half, at.x + half];
  const under = isRound
    ? `A${radius} ${depth} 0 0 0 ${right} ${top}`
    : `V${at.rim + depth}H${right}V${top}`;
  if (mound === 0) return `M${left} ${top}${under}Z`;
  const round = (radius * radius + mound * mound) / (2 * mound); // of the sphere the cap is cut from
  return `M${left} ${top}${under}A${round} ${round} 0 0 0 ${left} ${top}Z`;
}

function handlePath(shape: SpoonProps["shape"], { radius, depth }: Bowl, { x, rim }: Placed) {
  const right = x + radius;
  if (shape === "spoon") return `M${right} ${rim}q30 1 62 -22l34 -24`;
  return `M${right} ${rim + depth * 0.16}h16q20 0 20 20v${depth * 0.24}q0 20 -20 20h-16`;
}

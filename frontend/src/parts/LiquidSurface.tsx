/** A liquid in a cylinder, its curved surface to be read where it is lowest; drawn straight on. */
import { useId } from "preact/hooks";
import { figure } from "../text/numbers.ts";
import { surface } from "./drawing.ts";
import { marksOf, numeralDecimals, type ScaleDrawn, windowOn } from "./scale_drawing.ts";

/** How high it stands, on which scale. `says` tells what is to be read, not the answer. */
export interface LiquidSurfaceProps {
  scale: ScaleDrawn;
  unit: string;
  at: string;
  says: string;
  /** Height of the drawing in px. */
  height: number;
}

const WALLS = { left: 58, right: 198 };
const WIDTH = 258;
const MARGIN = 18; // walls go on above and below the part of the scale that is drawn
const CLIMB_PX = 13; // how far the liquid climbs at the walls: more than a division, on purpose
const MARK_PX = [26, 40, 56] as const;

/** The part of the cylinder around the surface, cut off above and below. */
export function LiquidSurface({ scale, unit, at, says, height }: LiquidSurfaceProps) {
  const clip = useId();
  const { from, to } = windowOn(scale, Number(at));
  const y = (value: number) =>
    height - MARGIN - ((value - from) / (to - from)) * (height - 2 * MARGIN);
  const lowest = y(Number(at));
  const { left, right } = WALLS;
  return (
    <svg class="liquid-surface" width={WIDTH} height={height} role="img" aria-label={says}>
      <clipPath id={clip}>
        <path d={`${surface(WALLS, lowest, CLIMB_PX)}V${height}H${left}Z`} />
      </clipPath>
      <path class="liquid" d={`${surface(WALLS, lowest, CLIMB_PX)}V${height}H${left}Z`} />
      <Marks y={y} scale={scale} from={from} to={to} />
      <g clip-path={`url(#${clip})`}>
        <Marks y={y} scale={scale} from={from} to={to} isUnder />
      </g>
      {marksOf(scale, from, to)
        .filter((mark) => mark.rank === 2)
        .map((mark) => (
          <text key={mark.at} class="numeral" x={left - 8} y={y(mark.at) + 5.5} text-anchor="end">
            {figure(mark.at.toFixed(numeralDecimals(scale)))}
          </text>
        ))}
      <text class="numeral" x={right + 10} y={y(to) + 5.5}>
        {unit}
      </text>
      <path class="wall" d={`M${left} 0V${height}M${right} 0V${height}`} />
    </svg>
  );
}

interface MarksProps {
  y: (value: number) => number;
  scale: ScaleDrawn;
  from: number;
  to: number;
  isUnder?: boolean;
}

/** Drawn twice: in ink, and in the colour of what lies on liquid where there is some. */
function Marks({ y, scale, from, to, isUnder }: MarksProps) {
  const path = marksOf(scale, from, to)
    .map(({ at, rank }) => `M${WALLS.left} ${y(at).toFixed(2)}h${MARK_PX[rank]}`)
    .join("");
  return <path class={isUnder ? "mark under" : "mark"} d={path} />;
}

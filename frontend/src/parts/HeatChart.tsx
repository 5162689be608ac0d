/** A course of temperature over time between its limits; gaps are dashed, nobody saw them. */
import { figure } from "../text/numbers.ts";
import { evenStep, numeralPlaces, ticksOf } from "./drawing.ts";

/** A reading to be drawn, in seconds and degrees; a gap lies before it where `isAfterGap`. */
export interface HeatPoint {
  at_s: number;
  low: number;
  high: number;
  isAfterGap: boolean;
}

/** A temperature that decides something, and its name. */
export interface HeatLine {
  degrees: number;
  words: string;
}

/** A second at which a time is over, and its name. */
export interface HeatEnd {
  at_s: number;
  words: string;
}

/** `says` is the whole chart in words; `band` is where held food may be, an open end is null. */
export interface HeatChartProps {
  points: readonly HeatPoint[];
  unit: string;
  lines: readonly HeatLine[];
  ends: readonly HeatEnd[];
  band?: { from: number | null; to: number | null } | null | undefined;
  says: string;
}

const WIDTH = 336;
const HEIGHT = 236;
const LEFT = 56;
const RIGHT = 322;
const TOP = 14;
const FLOOR = 188;
const ROOM = 0.08; // of the span, above and below what is drawn
const HOURS_FROM_S = 4 * 3600; // longer logs are numbered in hours
const STEPS_LEAST = 3;

interface Plan {
  x: (second: number) => number;
  y: (degrees: number) => number;
  from: number;
  to: number;
  first: number;
  last: number;
}

/** The first reading at the left. */
export function HeatChart(props: HeatChartProps) {
  const { points, lines, ends, says } = props;
  if (points.length === 0) return null;
  const plan = planOf(props);
  const { x, y } = plan;
  return (
    <svg
      class="heat-chart"
      width="100%"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={says}
    >
      <Band {...props} plan={plan} />
      <Degrees plan={plan} />
      <Times plan={plan} />
      {ends.map(({ at_s, words }) => (
        <g key={words}>
          <path class="time-end" d={`M${x(at_s)} ${TOP}V${FLOOR}`} />
          <text class="point-words" x={Math.min(x(at_s), RIGHT - 8)} y={TOP + 2} text-anchor="end">
            {words}
          </text>
        </g>
      ))}
      {lines.map(({ degrees, words }) => (
        <g key={words}>
          <path class="heat-limit" d={`M${LEFT} ${y(degrees)}H${RIGHT}`} />
          <text class="point-words" x={RIGHT} y={y(degrees) - 5} text-anchor="end">
            {words}
          </text>
        </g>
      ))}
      <path class="unseen-course" d={courseOf(points, plan, true)} />
      <path class="heat-course" d={courseOf(points, plan, false)} />
      {points.length === 1 && points[0] && (
        <circle class="dot" cx={x(points[0].at_s)} cy={y(points[0].low)} r="4" />
      )}
    </svg>
  );
}

function planOf({ points, lines, ends }: HeatChartProps): Plan {
  let [low, high] = [Infinity, -Infinity];
  let [first, last] = [Infinity, -Infinity];
  for (const point of points) {
    low = Math.min(low, point.low);
    high = Math.max(high, point.high);
    first = Math.min(first, point.at_s);
    last = Math.max(last, point.at_s);
  }
  for (const { degrees } of lines) {
    low = Math.min(low, degrees);
    high = Math.max(high, degrees);
  }
  for (const { at_s } of ends) last = Math.max(last, at_s);
  const span = high - low || 1;
  const [from, to] = [low - ROOM * span, high + ROOM * span];
  const long = last - first || 1;
  return {
    x: (second) => round(LEFT + ((second - first) / long) * (RIGHT - LEFT)),
    y: (degrees) => round(TOP + ((to - degrees) / (to - from)) * (FLOOR - TOP)),
    from,
    to,
    first,
    last: first + long,
  };
}

/** A tenth of a pixel is finer than any screen, and a long path stays short. */
function round(px: number): number {
  return Math.round(px * 10) / 10;
}

/** The course with every step, or only the gaps in it. */
function courseOf(points: readonly HeatPoint[], { x, y }: Plan, ofGaps: boolean): string {
  const parts: string[] = [];
  let before: HeatPoint | null = null;
  for (const point of points) {
    const at = `${x(point.at_s)} ${y(point.low)}`;
    if (before === null) parts.push(`M${at}`);
    else if (!ofGaps) parts.push(`${point.isAfterGap ? "M" : "L"}${at}`);
    else if (point.isAfterGap) parts.push(`M${x(before.at_s)} ${y(before.high)}L${at}`);
    // Where one second has two readings both are drawn.
    if (!ofGaps && point.high !== point.low) parts.push(`V${y(point.high)}`);
    before = point;
  }
  return parts.join("");
}

function Band({ band, plan }: HeatChartProps & { plan: Plan }) {
  if (!band) return null;
  const top = band.to === null ? TOP : plan.y(band.to);
  const floor = band.from === null ? FLOOR : plan.y(band.from);
  return (
    <rect class="allowed" x={LEFT} y={top} width={RIGHT - LEFT} height={Math.max(floor - top, 0)} />
  );
}

function Degrees({ plan: { y, from, to } }: { plan: Plan }) {
  const { ticks, step } = ticksOf(from, to, FLOOR - TOP);
  const places = numeralPlaces(step);
  return (
    <>
      <path class="wall" d={`M${LEFT} ${TOP - 4}V${FLOOR}`} />
      {ticks.map(({ at, rank }) => (
        <path key={at} class="tick" d={`M${LEFT} ${y(at)}h${[5, 8, 12][rank] ?? 5}`} />
      ))}
      {ticks
        .filter(({ rank }) => rank === 2)
        .map(({ at }) => (
          <text key={at} class="numeral" x={LEFT - 6} y={y(at) + 5} text-anchor="end">
            {figure(at.toFixed(places)).replace(/^\u2212(0(\.0+)?)$/, "$1")}
          </text>
        ))}
    </>
  );
}

function Times({ plan: { x, first, last } }: { plan: Plan }) {
  const isLong = last - first >= HOURS_FROM_S;
  const part = isLong ? 3600 : 60;
  const long = (last - first) / part;
  const step = evenStep(long, STEPS_LEAST);
  const places = numeralPlaces(step);
  const numbers: number[] = [];
  for (let n = 0; n * step <= long * 1.000001; n += 1) numbers.push(n * step);
  return (
    <>
      <path class="wall" d={`M${LEFT} ${FLOOR}H${RIGHT}`} />
      {numbers.map((each, place) => {
        const at = x(first + each * part);
        const isEnd = place === numbers.length - 1;
        const words = figure(each.toFixed(places));
        return (
          <g key={each}>
            <path class="tick" d={`M${at} ${FLOOR}v6`} />
            <text class="numeral" x={at} y={FLOOR + 22} text-anchor={isEnd ? "end" : "middle"}>
              {words}
            </text>
          </g>
        );
      })}
      <text class="numeral" x={RIGHT} y={HEIGHT - 6} text-anchor="end">
        {isLong ? "hours" : "minutes"}
      </text>
    </>
  );
}

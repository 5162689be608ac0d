/** Points in their order with centre, limits held by a clamp, and whiskers where they are known. */
import { figure } from "../text/numbers.ts";
import { numeralPlaces, ticksOf } from "./drawing.ts";

/** A point; `reach` is the length of its whisker to each side. */
export interface ChartPoint {
  id: string;
  value: number;
  reach?: number | null | undefined;
  /** A rule fired on it. */
  isMarked?: boolean | undefined;
}

/** All in one unit; what is null is not drawn. `says` is the whole chart in words. */
export interface ControlChartProps {
  points: readonly ChartPoint[];
  centre: number | null;
  low: number | null;
  high: number | null;
  says: string;
}

const WIDTH = 336;
const HEIGHT = 196;
const LEFT = 56;
const RIGHT = 312;
const TOP = 12;
const FLOOR = 164;
const ROOM = 0.12; // of the span, above and below what is drawn
const MARK_MOST = 7;
const MARK_LEAST = 3;

/** The first point at the left; below it stand its number and that of the last. */
export function ControlChart({ points, centre, low, high, says }: ControlChartProps) {
  const drawn = points.flatMap(({ value, reach }) => [value - (reach ?? 0), value + (reach ?? 0)]);
  const all = [...drawn, ...[centre, low, high].filter((each) => each !== null)];
  const span = Math.max(...all) - Math.min(...all) || 1;
  const [from, to] = [Math.min(...all) - ROOM * span, Math.max(...all) + ROOM * span];
  const y = (value: number) => TOP + ((to - value) / (to - from)) * (FLOOR - TOP);
  const wide = (RIGHT - LEFT) / points.length;
  const x = (place: number) => LEFT + wide * (place + 0.5);
  const radius = Math.min(MARK_MOST, Math.max(MARK_LEAST, wide * 0.3));
  const path = points.map(({ value }, place) => `${x(place)} ${y(value)}`).join("L");
  return (
    <svg
      class="control-chart"
      width="100%"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={says}
    >
      {low !== null && high !== null && <Allowed upper={y(high)} lower={y(low)} />}
      <Scale from={from} to={to} y={y} />
      {centre !== null && <path class="centre-line" d={`M${LEFT} ${y(centre)}H${RIGHT}`} />}
      <path class="course" d={`M${path}`} />
      {points.map((each, place) => (
        <g key={each.id}>
          {each.reach ? (
            <path
              class="whisker-line"
              d={`M${x(place)} ${y(each.value + each.reach)}V${y(each.value - each.reach)}`}
            />
          ) : null}
          <circle
            class={each.isMarked ? "point-outside" : "dot"}
            cx={x(place)}
            cy={y(each.value)}
            r={each.isMarked ? radius + 2 : radius}
          />
        </g>
      ))}
      <text class="numeral" x={x(0)} y={HEIGHT - 8} text-anchor="middle">
        1
      </text>
      <text class="numeral" x={x(points.length - 1)} y={HEIGHT - 8} text-anchor="middle">
        {points.length}
      </text>
    </svg>
  );
}

function Allowed({ upper, lower }: { upper: number; lower: number }) {
  return (
    <>
      <rect class="allowed" x={LEFT} y={upper} width={RIGHT - LEFT} height={lower - upper} />
      <path class="clamp" d={`M${LEFT} ${upper}H${RIGHT + 10}V${lower}H${LEFT}`} />
    </>
  );
}

function Scale({ from, to, y }: { from: number; to: number; y: (value: number) => number }) {
  const { ticks, step } = ticksOf(from, to, FLOOR - TOP);
  const places = numeralPlaces(step);
  return (
    <>
      <path class="wall" d={`M${LEFT} ${TOP - 4}V${FLOOR + 4}`} />
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

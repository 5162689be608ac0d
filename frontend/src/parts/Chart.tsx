/** Points in their order between their limits: whiskers for doubt, a clamp for limits all share. */
import { figure } from "../text/numbers.ts";
import { numeralPlaces, ticksOf } from "./drawing.ts";

/** A point in the unit of the chart; what is null is not drawn. */
export interface ChartPoint {
  id: string;
  /** What stands below it where there is room. */
  name: string;
  value: number;
  /** How long its whisker is to each side. */
  reach?: number | null | undefined;
  low: number | null;
  high: number | null;
  isMarked?: boolean | undefined;
  /** A few words beside it: the rule that fired there. */
  words?: string | undefined;
}

/** `says` is the whole chart in words; `isJoined` draws the course from point to point. */
export interface ChartProps {
  points: readonly ChartPoint[];
  centre: number | null;
  isJoined?: boolean;
  says: string;
}

const WIDTH = 336;
const HEIGHT = 196;
const LEFT = 56;
const RIGHT = 316;
const TOP = 12;
const FLOOR = 164;
const ROOM = 0.16; // of the span, above and below what is drawn
const MARK_MOST = 6;
const MARK_LEAST = 3;
const NAMED_MOST = 4; // more names run together on a phone
const LETTER_PX = 7.5; // of the words beside a point
const LINE_PX = 16;
const BESIDE_PX = 18; // from a point to the middle of its words

/** Where things are drawn. */
interface Plan {
  x: (place: number) => number;
  y: (value: number) => number;
  half: number;
  from: number;
  to: number;
}

/** The first point at the left. */
export function Chart({ points, centre, isJoined, says }: ChartProps) {
  if (points.length === 0) return null;
  const plan = planOf(points, centre);
  const { x, y } = plan;
  const course = points.map(({ value }, place) => `${x(place)} ${y(value)}`).join("L");
  return (
    <svg
      class="control-chart"
      width="100%"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={says}
    >
      <Limits points={points} plan={plan} />
      <Scale plan={plan} />
      {centre !== null && <path class="centre-line" d={`M${LEFT} ${y(centre)}H${RIGHT}`} />}
      {isJoined && <path class="course" d={`M${course}`} />}
      {points.map((point, place) => (
        <Point key={point.id} point={point} at={x(place)} plan={plan} />
      ))}
      <Names points={points} x={x} />
      <Words points={points} plan={plan} centre={centre} />
    </svg>
  );
}

function planOf(points: readonly ChartPoint[], centre: number | null): Plan {
  const all = points
    .flatMap(({ value, reach, low, high }) => [
      value - (reach ?? 0),
      value + (reach ?? 0),
      low,
      high,
    ])
    .concat(centre)
    .filter((each) => each !== null);
  const span = Math.max(...all) - Math.min(...all) || 1;
  const [from, to] = [Math.min(...all) - ROOM * span, Math.max(...all) + ROOM * span];
  const wide = (RIGHT - LEFT) / points.length;
  return {
    x: (place) => LEFT + wide * (place + 0.5),
    y: (value) => TOP + ((to - value) / (to - from)) * (FLOOR - TOP),
    half: wide / 2,
    from,
    to,
  };
}

/** One clamp where all points have the same limits, else a step for each. */
function Limits({ points, plan }: { points: readonly ChartPoint[]; plan: Plan }) {
  const { x, y, half } = plan;
  const [first] = points;
  const areAlike = points.every((each) => each.low === first?.low && each.high === first.high);
  if (areAlike && points.length > 1 && first?.low != null && first.high !== null) {
    const [upper, lower] = [y(first.high), y(first.low)];
    return (
      <>
        <rect class="allowed" x={LEFT} y={upper} width={RIGHT - LEFT} height={lower - upper} />
        <path class="clamp" d={`M${LEFT} ${upper}H${RIGHT + 8}V${lower}H${LEFT}`} />
      </>
    );
  }
  return (
    <>
      {points.map(({ id, low, high }, place) => {
        if (low === null || high === null) return null;
        const [left, upper, lower] = [x(place) - half, y(high), y(low)];
        const line = `M${left} ${upper}h${2 * half}M${left} ${lower}h${2 * half}`;
        return (
          <g key={id}>
            <rect class="allowed" x={left} y={upper} width={2 * half} height={lower - upper} />
            <path class="limit-line" d={line} />
          </g>
        );
      })}
    </>
  );
}

function Scale({ plan: { y, from, to } }: { plan: Plan }) {
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

function Point({ point, at, plan }: { point: ChartPoint; at: number; plan: Plan }) {
  const { value, reach, isMarked } = point;
  const [top, end] = [plan.y(value + (reach ?? 0)), plan.y(value - (reach ?? 0))];
  const radius = Math.min(MARK_MOST, Math.max(MARK_LEAST, plan.half * 0.6));
  return (
    <>
      {reach ? (
        <path
          class="whisker-line"
          d={`M${at} ${top}V${end}M${at - 5} ${top}h10M${at - 5} ${end}h10`}
        />
      ) : null}
      <circle
        class={isMarked ? "point-outside" : "dot"}
        cx={at}
        cy={plan.y(value)}
        r={isMarked ? radius + 2 : radius}
      />
    </>
  );
}

/** Names under the points; where they would run together only the first and the last. */
function Names({ points, x }: { points: readonly ChartPoint[]; x: Plan["x"] }) {
  const last = points.length - 1;
  const isFew = points.length <= NAMED_MOST;
  return (
    <>
      {points.map(({ id, name }, place) => {
        if (!isFew && place !== 0 && place !== last) return null;
        const [at, anchor] = isFew
          ? ([x(place), "middle"] as const)
          : place === 0
            ? ([LEFT, "start"] as const)
            : ([RIGHT + 8, "end"] as const);
        return (
          <text key={id} class="numeral" x={at} y={HEIGHT - 8} text-anchor={anchor}>
            {name}
          </text>
        );
      })}
    </>
  );
}

/** A box of words or of a point, by its middle. */
interface Box {
  x: number;
  y: number;
  wide: number;
  high: number;
}

function meet(one: Box, other: Box): boolean {
  return (
    Math.abs(one.x - other.x) * 2 < one.wide + other.wide &&
    Math.abs(one.y - other.y) * 2 < one.high + other.high
  );
}

/** Where the words of a point may stand: on its own side of the centre first, then opposite. */
function boxesOf(words: string, at: { x: number; y: number; isLow: boolean }): Box[] {
  const wide = words.length * LETTER_PX;
  const x = Math.min(Math.max(at.x, LEFT + 14 + wide / 2), RIGHT + 8 - wide / 2);
  const sides = at.isLow ? [1, -1] : [-1, 1];
  return sides
    .map((side) => ({ x, y: at.y + side * BESIDE_PX, wide, high: LINE_PX }))
    .filter(({ y }) => y > LINE_PX / 2 && y < FLOOR + LINE_PX / 2);
}

/** Words beside their points, the last ones first; what finds no room stands in the list alone. */
function Words({ points, plan, centre }: { plan: Plan } & Pick<ChartProps, "points" | "centre">) {
  const dots = points.map(({ value }, place) => {
    return { x: plan.x(place), y: plan.y(value), wide: 2 * MARK_MOST, high: 2 * MARK_MOST };
  });
  const placed: (Box & { id: string; words: string })[] = [];
  for (const [back, { id, words, value }] of [...points].reverse().entries()) {
    if (words === undefined) continue;
    const at = { x: plan.x(points.length - 1 - back), y: plan.y(value) };
    const taken = [...dots, ...placed];
    const boxes = boxesOf(words, { ...at, isLow: value < (centre ?? 0) });
    const free = boxes.find((box) => !taken.some((each) => meet(box, each)));
    if (free !== undefined) placed.push({ ...free, id, words });
  }
  return (
    <>
      {placed.map(({ id, words, x, y }) => (
        <text key={id} class="point-words" x={x} y={y + 5} text-anchor="middle">
          {words}
        </text>
      ))}
    </>
  );
}

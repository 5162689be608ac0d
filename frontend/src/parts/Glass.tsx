/** The standing graduated glass: one quantity against its limits, read at the lowest point. */
import { useId } from "preact/hooks";
import { figure } from "../text/numbers.ts";
import { between, numeralPlaces, surface, ticksOf } from "./drawing.ts";
import { type GlassPlan, type GlassProps, glassPlan, limitFigure } from "./glass_plan.ts";
import { LyingGlass } from "./LyingGlass.tsx";

const TUBE = { top: 12, foot: 8, cut: 24 };
const CHAR_PX = 9.5; // the widest fallback typeface, bold, at the size of a numeral
const FEW_CHARS = 4;

/** Where the walls and the clamp stand: numerals of more than four signs take from the tube. */
interface Gauge {
  left: number;
  right: number;
  clamp: number;
  width: number;
}

function gaugeFor(plan: GlassPlan, numerals: readonly string[]): Gauge {
  const longest = Math.max(FEW_CHARS, ...numerals.map((each) => each.length));
  const limits = [plan.low, plan.high].filter((each) => each !== null);
  const alone = limits.length === 0 && plan.target !== null ? [plan.target] : limits;
  const atClamp = Math.max(FEW_CHARS, ...alone.map((each) => limitFigure(each).length));
  const left = 12 + longest * CHAR_PX;
  const right = left + 54 - (longest - FEW_CHARS) * 5;
  return { left, right, clamp: right + 26, width: right + 32 + atClamp * CHAR_PX };
}
const LEAST_WHISKER_PX = 3.5; // half of the least drawn length of 7 px
const RIM_GAP = 10;

/** A standing glass; on phones under 740 px high it lies down by itself. */
export function Glass(props: GlassProps) {
  const plan = glassPlan(props);
  return (
    <figure class="glass">
      <StandingGlass plan={plan} says={props.says} height={props.height ?? 304} />
      <LyingGlass plan={plan} says={props.says} />
    </figure>
  );
}

function StandingGlass({ plan, says, height }: { plan: GlassPlan; says: string; height: number }) {
  const clip = useId();
  const { from, to, isCut } = plan.window;
  const floor = height - TUBE.foot;
  const bottom = floor - (isCut ? TUBE.cut + 8 : 0);
  const y = (value: number) => bottom - ((value - from) / (to - from)) * (bottom - TUBE.top);
  const level = plan.level === null ? null : between(y(plan.level), TUBE.top - 2, bottom + 6);
  const { ticks, step } = ticksOf(from, to, bottom - TUBE.top);
  const places = numeralPlaces(step);
  const numerals = ticks
    .filter((tick) => tick.rank === 2)
    .map(({ at }) => ({ at, words: figure(at.toFixed(places)) }));
  const gauge = gaugeFor(
    plan,
    numerals.map(({ words }) => words),
  );
  const { left, right } = gauge;
  return (
    <svg class="standing" width={gauge.width} height={height} role="img" aria-label={says}>
      <clipPath id={clip}>
        <rect x={left} y="0" width={right - left} height={floor} />
      </clipPath>
      <Allowed plan={plan} gauge={gauge} y={y} top={TUBE.top - 6} bottom={bottom} />
      <g clip-path={`url(#${clip})`}>
        <path
          class="liquid moves"
          style={{ transform: `translateY(${level ?? height}px)` }}
          d={`${surface(gauge, 0, 9)}V${height * 2}H${left}Z`}
        />
      </g>
      {ticks.map(({ at, rank }) => (
        <path
          key={at}
          class={level !== null && y(at) > level + 2 ? "tick under" : "tick"}
          d={`M${left} ${y(at)}h${[9, 15, 23][rank]}`}
        />
      ))}
      {numerals.map(({ at, words }) => (
        <text
          key={at}
          class="numeral"
          x={left - 8}
          y={Math.min(y(at) + 5.5, floor - 3)}
          text-anchor="end"
        >
          {words}
        </text>
      ))}
      <Walls gauge={gauge} isCut={isCut} floor={floor} />
      <Clamp plan={plan} gauge={gauge} y={y} level={level} top={TUBE.top} bottom={bottom} />
      {level !== null && plan.level !== null && (
        <Reading
          plan={plan}
          gauge={gauge}
          level={level}
          pxPerUnit={(bottom - TUBE.top) / (to - from)}
        />
      )}
    </svg>
  );
}

interface Placed {
  plan: GlassPlan;
  gauge: Gauge;
  y: (value: number) => number;
  top: number;
  bottom: number;
}

function Allowed({ plan, gauge, y, top, bottom }: Placed) {
  if (plan.low === null && plan.high === null) return null;
  const high = plan.high === null ? top : y(plan.high);
  const low = plan.low === null ? bottom : y(plan.low);
  const { left, right } = gauge;
  return (
    <rect class="allowed" x={left} y={high} width={right - left} height={Math.max(0, low - high)} />
  );
}

function Walls({ gauge, isCut, floor }: { gauge: Gauge; isCut: boolean; floor: number }) {
  const { left, right } = gauge;
  const cut = floor - TUBE.cut;
  const swing = (right - left + 16) / 5;
  const wave = `q${swing / 2}-5 ${swing} 0t${`${swing} 0 `.repeat(4)}`;
  const wavesBack = `q${-swing / 2} 5${-swing} 0t${`${-swing} 0 `.repeat(4)}`;
  return (
    <>
      <path class="wall" d={`M${left} 3V${floor}M${right} 3V${floor}`} />
      {isCut && (
        <>
          <path class="gap" d={`M${left - 8} ${cut}${wave}v7${wavesBack}z`} />
          <path class="wave" d={`M${left - 8} ${cut}${wave}M${left - 8} ${cut + 7}${wave}`} />
          <text class="numeral" x={left - 12} y={floor - 1} text-anchor="end">
            0
          </text>
        </>
      )}
      <path class="floor" d={`M${left - 13} ${floor + 2}H${right + 13}`} />
    </>
  );
}

/** The bracket around the glass with both figures, and the notch at the target. */
function Clamp({ plan, gauge, y, level, top, bottom }: Placed & { level: number | null }) {
  const { left, right, clamp } = gauge;
  const { low, high, target } = plan;
  const lines = [low, high].filter((each) => each !== null);
  const upper = high === null ? top - 6 : y(high);
  const lower = low === null ? bottom : y(low);
  return (
    <>
      {lines.map((limit) => (
        <path
          key={limit}
          class={level !== null && y(limit) > level ? "limit-line under" : "limit-line"}
          d={`M${left} ${y(limit)}H${right}`}
        />
      ))}
      {lines.length > 0 && (
        <path
          class="clamp"
          d={`M${high === null ? clamp : right + 5} ${upper}H${clamp}V${lower}H${low === null ? clamp : right + 5}`}
        />
      )}
      {lines.map((limit) => (
        <text key={limit} class="numeral bold" x={clamp + 6} y={y(limit) + 5.5}>
          {limitFigure(limit)}
        </text>
      ))}
      {target !== null && (
        <Target
          gauge={gauge}
          at={y(target)}
          waits={level === null}
          figure={lines.length === 0 ? target : null}
        />
      )}
    </>
  );
}

/** Dashed through the glass while it waits to be filled, then a notch; alone it has its figure. */
function Target(props: { gauge: Gauge; at: number; waits: boolean; figure: number | null }) {
  const { left, right, clamp } = props.gauge;
  const notch =
    props.figure === null ? `M${clamp} ${props.at}h-7` : `M${right + 5} ${props.at}H${clamp}`;
  return (
    <>
      <path
        class={props.waits ? "target waits" : "target"}
        d={props.waits ? `M${left + 2} ${props.at}H${clamp}` : notch}
      />
      {props.figure !== null && (
        <text class="numeral bold" x={clamp + 6} y={props.at + 5.5}>
          {limitFigure(props.figure)}
        </text>
      )}
    </>
  );
}

/** Level line from the lowest point to the whisker; an arrow where the reading lies beyond the rim. */
function Reading({
  plan,
  gauge,
  level,
  pxPerUnit,
}: {
  plan: GlassPlan;
  gauge: Gauge;
  level: number;
  pxPerUnit: number;
}) {
  const { left, right } = gauge;
  const middle = (left + right) / 2;
  const x = right + 13;
  const value = plan.level ?? 0;
  const beyond = value > plan.window.to ? -1 : value < plan.window.from ? 1 : 0;
  if (beyond !== 0) {
    const tip = beyond < 0 ? 4 : level + RIM_GAP;
    return (
      <path
        class="beyond"
        d={`M${x} ${tip - beyond * 16}V${tip}m-6 ${-beyond * 7}l6 ${beyond * 7} 6 ${-beyond * 7}`}
      />
    );
  }
  // What is counted has none.
  const hasWhisker = plan.uncertainty !== null && plan.uncertainty > 0;
  const half = Math.max((plan.uncertainty ?? 0) * pxPerUnit, LEAST_WHISKER_PX);
  return (
    <g class="moves" style={{ transform: `translateY(${level}px)` }}>
      <path class="level-line" d={`M${middle} 0H${x}`} />
      {hasWhisker && (
        <path
          class="whisker-line"
          d={`M${x} ${-half}V${half}M${x - 6} ${-half}h12M${x - 6} ${half}h12`}
        />
      )}
      <circle class="dot" cx={x} cy="0" r={hasWhisker && half < 8 ? 2.6 : 5} />
    </g>
  );
}

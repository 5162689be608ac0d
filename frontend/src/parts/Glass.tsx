/** The standing graduated glass: one quantity against its limits, read at the lowest point. */
import { useId } from "preact/hooks";
import { figure } from "../text/numbers.ts";
import { between, numeralPlaces, surface, ticksOf } from "./drawing.ts";
import { type GlassPlan, type GlassProps, glassPlan, limitFigure } from "./glass_plan.ts";
import { LyingGlass } from "./LyingGlass.tsx";

const GAUGE = { left: 50, right: 104, clamp: 130, width: 176, top: 12, foot: 8, cut: 24 };
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
  const floor = height - GAUGE.foot;
  const bottom = floor - (isCut ? GAUGE.cut + 8 : 0);
  const y = (value: number) => bottom - ((value - from) / (to - from)) * (bottom - GAUGE.top);
  const level = plan.level === null ? null : between(y(plan.level), GAUGE.top - 2, bottom + 6);
  const { ticks, step } = ticksOf(from, to, bottom - GAUGE.top);
  const places = numeralPlaces(step);
  const { left, right } = GAUGE;
  return (
    <svg class="standing" width={GAUGE.width} height={height} role="img" aria-label={says}>
      <clipPath id={clip}>
        <rect x={left} y="0" width={right - left} height={floor} />
      </clipPath>
      <Allowed plan={plan} y={y} top={GAUGE.top - 6} bottom={bottom} />
      <g clip-path={`url(#${clip})`}>
        <path
          class="liquid moves"
          style={{ transform: `translateY(${level ?? height}px)` }}
          d={`${surface(GAUGE, 0, 9)}V${height * 2}H${left}Z`}
        />
      </g>
      {ticks.map(({ at, rank }) => (
        <path
          key={at}
          class={level !== null && y(at) > level + 2 ? "tick under" : "tick"}
          d={`M${left} ${y(at)}h${[9, 15, 23][rank]}`}
        />
      ))}
      {ticks
        .filter((tick) => tick.rank === 2)
        .map(({ at }) => (
          <text key={at} class="numeral" x={left - 8} y={y(at) + 5.5} text-anchor="end">
            {figure(at.toFixed(places))}
          </text>
        ))}
      <Walls isCut={isCut} floor={floor} />
      <Clamp plan={plan} y={y} level={level} top={GAUGE.top} bottom={bottom} />
      {level !== null && plan.level !== null && (
        <Reading plan={plan} level={level} pxPerUnit={(bottom - GAUGE.top) / (to - from)} />
      )}
    </svg>
  );
}

interface Placed {
  plan: GlassPlan;
  y: (value: number) => number;
  top: number;
  bottom: number;
}

function Allowed({ plan, y, top, bottom }: Placed) {
  if (plan.low === null && plan.high === null) return null;
  const high = plan.high === null ? top : y(plan.high);
  const low = plan.low === null ? bottom : y(plan.low);
  const { left, right } = GAUGE;
  return (
    <rect class="allowed" x={left} y={high} width={right - left} height={Math.max(0, low - high)} />
  );
}

function Walls({ isCut, floor }: { isCut: boolean; floor: number }) {
  const { left, right } = GAUGE;
  const cut = floor - GAUGE.cut;
  const wave = `q7-5 14 0t14 0 14 0 14 0 14 0`;
  return (
    <>
      <path class="wall" d={`M${left} 3V${floor}M${right} 3V${floor}`} />
      {isCut && (
        <>
          <path class="gap" d={`M${left - 8} ${cut}${wave}v7q-7 5-14 0t-14 0-14 0-14 0-14 0z`} />
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
function Clamp({ plan, y, level, top, bottom }: Placed & { level: number | null }) {
  const { left, right, clamp } = GAUGE;
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
        <Target at={y(target)} waits={level === null} figure={lines.length === 0 ? target : null} />
      )}
    </>
  );
}

/** Dashed through the glass while it waits to be filled, then a notch; alone it has its figure. */
function Target(props: { at: number; waits: boolean; figure: number | null }) {
  const { left, right, clamp } = GAUGE;
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
  level,
  pxPerUnit,
}: {
  plan: GlassPlan;
  level: number;
  pxPerUnit: number;
}) {
  const { left, right } = GAUGE;
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
  const half = Math.max((plan.uncertainty ?? 0) * pxPerUnit, LEAST_WHISKER_PX);
  return (
    <g class="moves" style={{ transform: `translateY(${level}px)` }}>
      <path class="level-line" d={`M${middle} 0H${x}`} />
      <path
        class="whisker-line"
        d={`M${x} ${-half}V${half}M${x - 6} ${-half}h12M${x - 6} ${half}h12`}
      />
      <circle class="dot" cx={x} cy="0" r={half < 8 ? 2.6 : 5} />
    </g>
  );
}

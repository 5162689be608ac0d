/** The same glass lying down, for short phones: open at the right, read where it reaches least far. */
import { figure } from "../text/numbers.ts";
import { between, numeralPlaces, percent, ticksOf } from "./drawing.ts";
import { type GlassPlan, limitFigure } from "./glass_plan.ts";

const ABOUT_PX = 300; // the ticks are chosen for this width; the drawing itself stretches

/** Numerals over the tube, limits as a clamp under it, the whisker at the surface. */
export function LyingGlass({ plan, says }: { plan: GlassPlan; says: string }) {
  const { from, to } = plan.window;
  const x = (value: number) => percent(value - from, to - from);
  const { ticks, step } = ticksOf(from, to, ABOUT_PX);
  const places = numeralPlaces(step);
  const level = plan.level === null ? null : x(plan.level);
  const low = plan.low === null ? 0 : x(plan.low);
  const high = plan.high === null ? 100 : x(plan.high);
  const hasLimits = plan.low !== null || plan.high !== null;
  return (
    <svg class="lying" width="100%" height={hasLimits ? 92 : 62} role="img" aria-label={says}>
      {hasLimits && (
        <rect
          class="allowed"
          x={`${low}%`}
          y="24"
          width={`${Math.max(0, high - low)}%`}
          height="30"
        />
      )}
      {level !== null && <rect class="liquid" x="0" y="24" width={`${level}%`} height="30" />}
      {level !== null && (
        <g class="placed" style={{ transform: `translate(${level}%, 24px)` }}>
          <path class="liquid" d="M-1 0H9Q-7 15 9 30H-1Z" />
        </g>
      )}
      {ticks.map(({ at, rank }) => (
        <line
          key={at}
          class={level !== null && x(at) < level ? "tick under" : "tick"}
          x1={`${x(at)}%`}
          x2={`${x(at)}%`}
          y1="54"
          y2={54 - ([7, 11, 17][rank] ?? 7)}
        />
      ))}
      {ticks
        .filter(({ at, rank }) => rank === 2 && between(x(at), 4, 94) === x(at))
        .map(({ at }) => (
          <text key={at} class="numeral" x={`${x(at)}%`} y="17" text-anchor="middle">
            {figure(at.toFixed(places))}
          </text>
        ))}
      <line class="wall" x1="0" x2="100%" y1="24" y2="24" />
      <line class="wall" x1="0" x2="100%" y1="54" y2="54" />
      <line class="floor" x1="1" x2="1" y1="17" y2="61" />
      {hasLimits && <LyingClamp plan={plan} low={low} high={high} />}
      {level !== null && (
        <LyingWhisker at={level} half={percent(plan.uncertainty ?? 0, to - from)} />
      )}
    </svg>
  );
}

function LyingClamp({ plan, low, high }: { plan: GlassPlan; low: number; high: number }) {
  const ends = [
    { value: plan.low, at: low },
    { value: plan.high, at: high },
  ];
  return (
    <>
      <line class="clamp" x1={`${low}%`} x2={`${high}%`} y1="70" y2="70" />
      {ends.map(({ value, at }) =>
        value === null ? null : (
          <g key={at}>
            <line class="clamp" x1={`${at}%`} x2={`${at}%`} y1="58" y2="70" />
            <text class="numeral bold" x={`${between(at, 6, 92)}%`} y="89" text-anchor="middle">
              {limitFigure(value)}
            </text>
          </g>
        ),
      )}
      {plan.target !== null && (
        <g
          class="placed"
          style={{
            transform: `translate(${percent(plan.target - plan.window.from, plan.window.to - plan.window.from)}%, 70px)`,
          }}
        >
          <path class="target" d="M0 0v-7" />
        </g>
      )}
    </>
  );
}

function LyingWhisker({ at, half }: { at: number; half: number }) {
  return (
    <>
      <line class="whisker-line" x1={`${at - half}%`} x2={`${at + half}%`} y1="39" y2="39" />
      <g class="placed" style={{ transform: `translate(${at - half}%, 39px)` }}>
        <path class="whisker-line" d="M0-6v12" />
      </g>
      <g class="placed" style={{ transform: `translate(${at + half}%, 39px)` }}>
        <path class="whisker-line" d="M0-6v12" />
      </g>
      <g class="placed" style={{ transform: `translate(${at}%, 39px)` }}>
        <circle class="dot" r="3" />
      </g>
    </>
  );
}

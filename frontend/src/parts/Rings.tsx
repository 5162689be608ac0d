/** Accuracy and precision: a drop in still water, cut at the surface. */
import { figure } from "../text/numbers.ts";
import { numeralPlaces, stepReaching } from "./drawing.ts";

/** Errors of single readings in one unit; `bias` and `spread` in the same. */
export interface RingsProps {
  errors: readonly number[];
  bias: number | null;
  spread: number | null;
  says: string;
}

const WIDTH = 320;
const HALF = 138; // px from the true value to the outermost ring
const LEVEL = 92; // y of the surface
const RINGS = 3;
const DROP = 5;

/** Rings at one, two and three steps around the true value, wide enough for every drop. */
function stepFor(errors: readonly number[]): number {
  const most = Math.max(...errors.map(Math.abs), 0.5);
  return stepReaching(most, RINGS);
}

/** Readings lie on the level, those that meet stand on each other. */
export function Rings({ errors, bias, spread, says }: RingsProps) {
  const step = stepFor(errors);
  const middle = WIDTH / 2;
  const x = (error: number) => middle + (error / (step * RINGS)) * HALF;
  const numerals = [-3, -2, -1, 0, 1, 2, 3].map((ring) => ring * step);
  return (
    <svg class="rings" width={WIDTH} viewBox={`0 0 ${WIDTH} 164`} role="img" aria-label={says}>
      {[3, 2, 1].map((ring) => {
        const reach = (HALF / RINGS) * ring;
        return (
          <path
            key={ring}
            class={ring === 1 ? "ring inner" : "ring"}
            d={`M${middle - reach} ${LEVEL}A${reach} ${reach * 0.56} 0 0 1 ${middle + reach} ${LEVEL}`}
          />
        );
      })}
      <path class="true-line" d={`M${middle} ${LEVEL - 84}V${LEVEL + 8}`} />
      {numerals.map((at) => (
        <path key={at} class="tick" d={`M${x(at)} ${LEVEL}v7`} />
      ))}
      <path class="wall" d={`M8 ${LEVEL}H${WIDTH - 8}`} />
      {numerals.map((at) => (
        <text key={at} class="numeral" x={x(at)} y={LEVEL + 24} text-anchor="middle">
          {signed(at, numeralPlaces(step))}
        </text>
      ))}
      {piled(errors.map(x)).map((drop, index) => (
        <circle
          key={`${index}`} // readings that are alike have nothing else
          class="drop"
          cx={drop.x}
          cy={LEVEL - DROP - 1 - drop.layer * 2 * DROP}
          r={DROP}
        />
      ))}
      {bias !== null && <Whisker middle={middle} at={x(bias)} half={halfOf(spread, x, middle)} />}
    </svg>
  );
}

function halfOf(spread: number | null, x: (error: number) => number, middle: number): number {
  return spread === null ? 0 : x(spread) - middle;
}

function signed(at: number, places: number): string {
  const text = figure(at.toFixed(places));
  return at > 0 ? `+${text}` : text;
}

/** Drops from left to right, each on the first layer where it touches none. */
function piled(places: readonly number[]): { x: number; layer: number }[] {
  const ends: number[] = [];
  return [...places]
    .sort((a, b) => a - b)
    .map((place) => {
      const free = ends.findIndex((end) => place - end >= 2 * DROP);
      const layer = free === -1 ? ends.length : free;
      ends[layer] = place;
      return { x: place, layer };
    });
}

const BELOW = LEVEL + 48;

/** An arrow from the true value to the mean, and the spread of single readings around it. */
function Whisker({ middle, at, half }: { middle: number; at: number; half: number }) {
  const isFar = Math.abs(at - middle) > 14;
  const back = at > middle ? -8 : 8;
  const arrow = isFar ? `M${middle} ${BELOW}H${at}m${back} -6l${-back} 6 ${back} 6` : "";
  return (
    <>
      <path class="level-line" d={`M${middle} ${BELOW - 9}v18`} />
      <path class="level-line" d={arrow} />
      <path
        class="whisker-line"
        d={`M${at - half} ${BELOW}H${at + half}M${at - half} ${BELOW - 7}v14M${at + half} ${BELOW - 7}v14`}
      />
      <circle class="dot" cx={at} cy={BELOW} r="4.5" />
    </>
  );
}

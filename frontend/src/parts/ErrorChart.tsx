/** Errors between their limits: one column each, a whisker for the doubt, a clamp for what is allowed. */
import { useSignal } from "@preact/signals";
import { INSTRUMENTS } from "../text/instruments.ts";
import { figure } from "../text/numbers.ts";
import { Cup } from "./Cup.tsx";
import { numeralPlaces, ticksOf } from "./drawing.ts";
import { Facts } from "./Plain.tsx";

/** One error in the unit of the chart; `reach` is what a verdict allows for, `words` the same in text. */
export interface ErrorShown {
  id: string;
  name: string;
  error: number;
  reach: number | null;
  limit: number | null;
  isOutside: boolean;
  words: string;
}

const WIDTH = 336;
const HEIGHT = 196;
const LEFT = 58; // room for a sign and four digits
const TOP = 10;
const FLOOR = 164;
const MOST = 12; // more columns run together on a phone; the list has all of them
const NAMED_MOST = 4;
const HEADROOM = 1.15;

/** The last ones, the newest at the right and largest. */
export function ErrorChart({ errors, says }: { errors: readonly ErrorShown[]; says: string }) {
  const isListed = useSignal(false);
  const shown = errors.slice(-MOST);
  if (shown.length === 0) return null;
  return (
    <>
      <Drawn errors={shown} says={says} />
      <p class="key-row">
        <Cup
          isOpen={isListed.value}
          onPress={() => {
            isListed.value = !isListed.value;
          }}
        >
          {INSTRUMENTS.as_list}
        </Cup>
      </p>
      {isListed.value && (
        <Facts
          rows={errors.map(({ name, words }, at) => ({ name: `${at + 1}. ${name}`, value: words }))}
        />
      )}
    </>
  );
}

function Drawn({ errors, says }: { errors: readonly ErrorShown[]; says: string }) {
  const most = Math.max(
    ...errors.map(({ error, reach, limit }) =>
      Math.max(Math.abs(error) + (reach ?? 0), limit ?? 0),
    ),
  );
  const end = (most > 0 ? most : 1) * HEADROOM;
  const y = (value: number) => TOP + ((end - value) / (2 * end)) * (FLOOR - TOP);
  const { ticks, step } = ticksOf(-end, end, FLOOR - TOP);
  const places = numeralPlaces(step);
  const wide = (WIDTH - LEFT - 8) / errors.length;
  return (
    <svg
      class="error-chart"
      width="100%"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={says}
    >
      {errors.map((each, index) => (
        <Allowed
          key={each.id}
          each={each}
          x={LEFT + wide * (index + 0.5)}
          half={wide * 0.42}
          y={y}
        />
      ))}
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
      <path class="centre-line" d={`M${LEFT} ${y(0)}H${WIDTH - 6}`} />
      {errors.map((each, index) => (
        <Point
          key={each.id}
          each={each}
          x={LEFT + wide * (index + 0.5)}
          y={y}
          isLast={index === errors.length - 1}
        />
      ))}
      <Names errors={errors} x={(index) => LEFT + wide * (index + 0.5)} />
    </svg>
  );
}

interface Placed {
  each: ErrorShown;
  x: number;
  y: (value: number) => number;
}

function Allowed({ each, x, half, y }: Placed & { half: number }) {
  if (each.limit === null) return null;
  const [high, low] = [y(each.limit), y(-each.limit)];
  return (
    <>
      <rect class="allowed" x={x - half} y={high} width={2 * half} height={low - high} />
      <path
        class="limit-line"
        d={`M${x - half} ${high}h${2 * half}M${x - half} ${low}h${2 * half}`}
      />
    </>
  );
}

function Point({ each, x, y, isLast }: Placed & { isLast: boolean }) {
  const at = y(each.error);
  const radius = isLast ? 7 : 5;
  const reach = each.reach ?? 0;
  return (
    <>
      {reach > 0 && (
        <path
          class="whisker-line"
          d={`M${x} ${y(each.error + reach)}V${y(each.error - reach)}M${x - 5} ${y(each.error + reach)}h10M${x - 5} ${y(each.error - reach)}h10`}
        />
      )}
      <circle class={each.isOutside ? "point-outside" : "dot"} cx={x} cy={at} r={radius} />
    </>
  );
}

/** Names under the columns; where they would run together only the first and the last. */
function Names({ errors, x }: { errors: readonly ErrorShown[]; x: (index: number) => number }) {
  const [first] = errors;
  const last = errors.at(-1);
  const named: [ErrorShown | undefined, number, string][] =
    errors.length <= NAMED_MOST
      ? errors.map((each, index) => [each, x(index), "middle"])
      : [
          [first, LEFT, "start"],
          [last, WIDTH - 4, "end"],
        ];
  return (
    <>
      {named.map(([each, at, anchor]) => (
        <text key={each?.id} class="numeral" x={at} y={HEIGHT - 8} text-anchor={anchor}>
          {each?.name}
        </text>
      ))}
    </>
  );
}

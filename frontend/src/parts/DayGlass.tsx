/** The day as a burette: above the surface is done, what is liquid is still ahead. */

import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { surface } from "./drawing.ts";

/** One thing of the day on its thread. `hour` null stands at the floor: no time of its own. */
export interface DayThing {
  id: string;
  hour: number | null;
  /** The batch in hand hangs at the surface. */
  isNow?: boolean | undefined;
  shown: ComponentChildren;
}

/** Hours as doubles (10.4 is 10:24), in the cooperative's day. */
export interface DayGlassProps {
  says: string;
  opens: number;
  closes: number;
  now: number;
  things: readonly DayThing[];
}

const WALLS = { left: 40, right: 74 };
const TOP = 10;
const WIDTH = 112;

/** Draws the glass as high as the things beside it and a thread from each to its time. */
export function DayGlass(props: DayGlassProps) {
  const box = useRef<HTMLDivElement>(null);
  const middles = useSignal<readonly number[]>([]);
  const height = useSignal(420);
  useLayoutEffect(() => {
    // The rows are as high as their words; only the laid-out page knows where each stands.
    const place = () => {
      const list = box.current?.querySelector("ol");
      if (!box.current || !list) return;
      const { top, height: boxHeight } = box.current.getBoundingClientRect();
      height.value = boxHeight;
      middles.value = [...list.children].map((row) => {
        const { top: rowTop, height: rowHeight } = row.getBoundingClientRect();
        return rowTop + rowHeight / 2 - top;
      });
    };
    place();
    const watcher = new ResizeObserver(place);
    if (box.current) watcher.observe(box.current);
    return () => watcher.disconnect();
  }, [props.things]);
  return (
    <div class="day-glass" ref={box}>
      <Burette {...props} height={height.value} middles={middles.value} />
      <ol>
        {props.things.map((thing) => (
          <li key={thing.id} class={thing.isNow ? "at-level" : ""}>
            {thing.shown}
          </li>
        ))}
      </ol>
    </div>
  );
}

function Burette(props: DayGlassProps & { height: number; middles: readonly number[] }) {
  const { opens, closes, height } = props;
  const floor = height - 8;
  const y = (hour: number) => TOP + ((hour - opens) / (closes - opens)) * (floor - TOP);
  const level = y(Math.min(Math.max(props.now, opens), closes));
  const halves = Array.from({ length: (closes - opens) * 2 }, (_, index) => opens + index / 2);
  const { left, right } = WALLS;
  return (
    <svg class="burette" width={WIDTH} height={height} role="img" aria-label={props.says}>
      {level < floor - 4 && (
        <path class="liquid" d={`${surface(WALLS, level, 7)}V${floor}H${left}Z`} />
      )}
      {halves.map((hour) => (
        <path
          key={hour}
          class={y(hour) > level + 2 ? "tick under" : "tick"}
          d={`M${left} ${y(hour)}h${hour % 2 === 0 ? 19 : hour % 1 === 0 ? 13 : 7}`}
        />
      ))}
      {[...halves.filter((hour) => hour % 2 === 0), closes].map((hour) => (
        <text
          key={hour}
          class="numeral"
          x={left - 7}
          y={(hour === closes ? floor - 8 : y(hour)) + 5.5}
          text-anchor="end"
        >
          {hour}
        </text>
      ))}
      <path class="wall" d={`M${left} 4V${floor}M${right} 4V${floor}`} />
      <path class="floor" d={`M${left - 10} ${floor + 2}H${right + 10}`} />
      {props.things.map((thing, index) => (
        <Thread
          key={thing.id}
          from={
            thing.isNow
              ? level
              : thing.hour === null
                ? floor - 4
                : Math.min(y(thing.hour), floor - 4)
          }
          to={props.middles[index]}
          isNow={thing.isNow ?? false}
        />
      ))}
    </svg>
  );
}

function Thread({ from, to, isNow }: { from: number; to: number | undefined; isNow: boolean }) {
  if (to === undefined) return null;
  const start = isNow ? (WALLS.left + WALLS.right) / 2 : WALLS.right;
  return (
    <>
      <path
        class={isNow ? "thread now" : "thread"}
        d={`M${start} ${from}H${WALLS.right + 9}L${WIDTH - 10} ${to}H${WIDTH}`}
      />
      {!isNow && <circle class="dot" cx={WALLS.right} cy={from} r="3.5" />}
    </>
  );
}

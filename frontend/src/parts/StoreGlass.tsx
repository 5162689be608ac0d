/** A store as a small glass: how much of what came is still there, and what a receipt will add. */
import { between, drawn, surface } from "./drawing.ts";

/** Decimal texts in one unit. `whole` is a full glass; `before` draws the level there was. */
export interface StoreGlassProps {
  level: string;
  whole: string;
  before?: string | null;
  /** Null hides the drawing where the words beside it say the same. */
  says: string | null;
  height?: number;
}

const WIDTH = 62;
const WALLS = { left: 9, right: 53 };
const RIM = 4;
const FOOT = 7;
const PARTS_COUNT = 10;

/** Open at the top, ticks on the left wall. Below zero the glass is empty and an arrow leaves it. */
export function StoreGlass({ level, whole, before, says, height = 74 }: StoreGlassProps) {
  const floor = height - FOOT;
  const most = Math.max(drawn(whole) ?? 0, drawn(level) ?? 0, drawn(before) ?? 0);
  const y = (value: number) =>
    most > 0 ? floor - between(value / most, 0, 1) * (floor - RIM - 8) : floor;
  const value = drawn(level) ?? 0;
  const had = drawn(before);
  const top = value > 0 ? y(value) : height;
  return (
    <svg
      class="store-glass"
      width={WIDTH}
      height={height}
      viewBox={`0 0 ${WIDTH} ${height}`}
      role={says === null ? undefined : "img"}
      aria-label={says ?? undefined}
      aria-hidden={says === null}
    >
      {value > 0 && <path class="liquid" d={`${surface(WALLS, top, 5)}V${floor}H${WALLS.left}Z`} />}
      <Ticks floor={floor} top={top} />
      <path class="wall" d={`M${WALLS.left} ${RIM}V${floor}M${WALLS.right} ${RIM}V${floor}`} />
      <path class="floor" d={`M${WALLS.left - 7} ${floor + 2}H${WALLS.right + 7}`} />
      {had !== null && (
        <path
          class={y(had) > top + 2 ? "target waits under" : "target waits"}
          d={`M${WALLS.left} ${y(had)}H${WALLS.right}`}
        />
      )}
      {value < 0 && <path class="beyond" d={`M31 ${floor - 34}V${floor - 8}m-7-8l7 8 7-8`} />}
    </svg>
  );
}

function Ticks({ floor, top }: { floor: number; top: number }) {
  const step = (floor - RIM - 8) / PARTS_COUNT;
  return (
    <>
      {Array.from({ length: PARTS_COUNT }, (_, index) => {
        const at = floor - (index + 1) * step;
        const length = index === PARTS_COUNT - 1 ? 16 : index === 4 ? 12 : 7;
        return (
          <path
            key={at}
            class={at > top + 1 ? "tick under" : "tick"}
            d={`M${WALLS.left} ${at}h${length}`}
          />
        );
      })}
    </>
  );
}

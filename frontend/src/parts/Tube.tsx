/** The lying tube: how many of how many, or how much of a life is left. Open at the right. */
import { percent } from "./drawing.ts";

/** `full` of `whole`; `says` null hides the drawing where the words beside it say the same. */
export interface TubeProps {
  full: number;
  whole: number;
  says: string | null;
  /** Ticks: one a piece up to 40 pieces, then every 5; a number fixes how many parts. */
  parts?: number | undefined;
  isThin?: boolean | undefined;
}

const ONE_TICK_A_PIECE = 40;

function parted(whole: number): number {
  return whole <= ONE_TICK_A_PIECE ? Math.max(1, Math.round(whole)) : Math.round(whole / 5);
}

/** A tube as wide as its place, 20 px high (12 thin). */
export function Tube({ full, whole, says, parts, isThin }: TubeProps) {
  const count = parts ?? parted(whole);
  const level = percent(full, whole);
  const height = isThin ? 12 : 22;
  const half = height / 2;
  const long = isThin ? 4 : 8;
  return (
    <svg
      class="tube"
      width="100%"
      height={height}
      role={says === null ? undefined : "img"}
      aria-label={says ?? undefined}
      aria-hidden={says === null}
    >
      <rect class="liquid moves" x="0" y="1" height={height - 2} style={{ width: `${level}%` }} />
      {level > 0 && level < 100 && (
        <g class="placed" style={{ transform: `translate(${level}%, 1px)` }}>
          <path
            class="liquid"
            d={`M-1 0H${half * 0.7}Q${-half * 0.6} ${half - 1} ${half * 0.7} ${height - 2}H-1Z`}
          />
        </g>
      )}
      {Array.from({ length: count - 1 }, (_, index) => {
        const at = percent(index + 1, count);
        const isLong = count > 10 && (index + 1) % 5 === 0;
        return (
          <line
            key={at}
            class={at < level ? "tick under" : "tick"}
            x1={`${at}%`}
            x2={`${at}%`}
            y1={height - 1}
            y2={height - 1 - (isLong ? long * 1.6 : long)}
          />
        );
      })}
      <line class="wall" x1="0" x2="100%" y1="1" y2="1" />
      <line class="wall" x1="0" x2="100%" y1={height - 1} y2={height - 1} />
      <line class="wall" x1="1" x2="1" y1="0" y2={height} />
    </svg>
  );
}

/** A vessel: the tick of a line. Empty is still to do, full is done; the words beside it say which. */
export function Vessel({ isFull }: { isFull: boolean }) {
  return (
    <svg class="vessel" width="40" height="44" viewBox="0 0 40 44" aria-hidden="true">
      {isFull && <path class="liquid" d="M4 10q2 4 16 4t16-4v22a8 8 0 0 1-8 8H12a8 8 0 0 1-8-8z" />}
      <path class="wall" d="M4 2v30a8 8 0 0 0 8 8h16a8 8 0 0 0 8-8V2" />
      <path class={isFull ? "tick under" : "tick"} d="M5 19h8M5 25h5M5 31h8" />
    </svg>
  );
}

/** Things that stand on the bench in the drawings of a check; each is a piece of one drawing. */
import type { ComponentChildren } from "preact";
import { surface } from "./drawing.ts";

/** An eye whose line of sight ends at a point. */
export function Eye({ x, y, to }: { x: number; y: number; to: number }) {
  const turn = to > x ? 1 : -1;
  return (
    <>
      <path class="sight" d={`M${x + 18 * turn} ${y}H${to}`} />
      <path class="wall thin" d={`M${x - 14} ${y}q14 -13 28 0q-14 13 -28 0z`} />
      <circle class="dot" cx={x} cy={y} r="4" />
    </>
  );
}

export function Scale({ children }: { children?: ComponentChildren }) {
  return (
    <>
      <path class="wall" d="M88 92H232M160 92v12" />
      <path class="wall body" d="M102 104H218L234 152H86z" />
      <rect class="display" x="126" y="115" width="68" height="25" />
      <path class="floor" d="M92 156h26M202 156h26" />
      {children}
    </>
  );
}

export function Zeros() {
  return (
    <text class="numeral bold" x="160" y="134" text-anchor="middle">
      0
    </text>
  );
}

/** A check weight with its knob, its foot at a point. */
export function Mass({ x, foot }: { x: number; foot: number }) {
  return (
    <>
      <path class="liquid" d={`M${x - 17} ${foot}v-32q0 -5 5 -5h24q5 0 5 5v32z`} />
      <circle class="liquid" cx={x} cy={foot - 45} r="8" />
    </>
  );
}

/** The pan from above: where the load stands now is full, the other places are rings. */
export function FromAbove({ at }: { at?: string | undefined }) {
  const places = { front: [160, 104], right: [212, 70], back: [160, 36], left: [108, 70] } as const;
  return (
    <>
      <rect class="wall body" x="76" y="6" width="168" height="126" rx="14" />
      <path class="sight" d="M160 6V132M76 70H244" />
      {Object.entries(places).map(([name, [x, y]]) => (
        <circle
          key={name}
          class={name === at ? "liquid-ring" : "wall thin"}
          cx={x}
          cy={y}
          r={name === at ? 19 : 15}
        />
      ))}
      <rect class="display" x="118" y="138" width="84" height="24" />
    </>
  );
}

export function Thermometer({ x, bulb }: { x: number; bulb: number }) {
  return (
    <>
      <path class="gap" d={`M${x - 6} ${bulb}V18h12v${bulb - 18}z`} />
      <path class="wall thin" d={`M${x - 6} ${bulb - 6}V20a6 6 0 0 1 12 0V${bulb - 6}`} />
      <path class="liquid-line" d={`M${x} ${bulb}V${bulb - 58}`} />
      <circle class="liquid-ring" cx={x} cy={bulb} r="8" />
    </>
  );
}

/** A vessel with a curved surface at a height. */
export function Filled({
  walls,
  lowest,
  floor,
}: {
  walls: { left: number; right: number };
  lowest: number;
  floor: number;
}) {
  return <path class="allowed" d={`${surface(walls, lowest, 10)}V${floor}H${walls.left}Z`} />;
}

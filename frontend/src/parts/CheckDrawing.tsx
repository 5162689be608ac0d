/** What hands do in a check and where eyes look, drawn like the rest: ink, glass, one liquid. */
import type { ComponentChildren } from "preact";
import { surface } from "./drawing.ts";

export type DrawingName =
  | "level"
  | "empty"
  | "middle"
  | "off_centre"
  | "repeat"
  | "empty_vessel"
  | "fill"
  | "spoon"
  | "ice"
  | "boiling"
  | "buffer"
  | "compare";

const WIDTH = 320;
const HEIGHT = 168;

/** `at` is the place of an off-centre load that is meant now: front, right, back or left. */
export function CheckDrawing(props: { name: DrawingName; says: string; at?: string | undefined }) {
  return (
    <svg
      class="check-drawing"
      width="100%"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={props.says}
    >
      {props.name === "off_centre" ? <FromAbove at={props.at} /> : DRAWN[props.name]}
    </svg>
  );
}

/** An eye whose line of sight ends at a point. */
function Eye({ x, y, to }: { x: number; y: number; to: number }) {
  const turn = to > x ? 1 : -1;
  return (
    <>
      <path class="sight" d={`M${x + 18 * turn} ${y}H${to}`} />
      <path class="wall thin" d={`M${x - 14} ${y}q14 -13 28 0q-14 13 -28 0z`} />
      <circle class="dot" cx={x} cy={y} r="4" />
    </>
  );
}

function Scale({ children }: { children?: ComponentChildren }) {
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

function Zeros() {
  return (
    <text class="numeral bold" x="160" y="134" text-anchor="middle">
      0
    </text>
  );
}

/** A check weight with its knob, its foot at a point. */
function Mass({ x, foot }: { x: number; foot: number }) {
  return (
    <>
      <path class="liquid" d={`M${x - 17} ${foot}v-32q0 -5 5 -5h24q5 0 5 5v32z`} />
      <circle class="liquid" cx={x} cy={foot - 45} r="8" />
    </>
  );
}

/** The pan from above: where the load stands now is full, the other places are rings. */
function FromAbove({ at }: { at?: string | undefined }) {
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

function Thermometer({ x, bulb }: { x: number; bulb: number }) {
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
function Filled({
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

const ICE = [
  [104, 92, 8],
  [146, 88, -12],
  [186, 96, 6],
  [116, 122, -8],
  [190, 126, 14],
] as const;

const DRAWN: Record<Exclude<DrawingName, "off_centre">, ComponentChildren> = {
  level: (
    <Scale>
      <Zeros />
      <circle class="wall body" cx="278" cy="60" r="30" />
      <circle class="wall thin" cx="278" cy="60" r="13" />
      <circle class="liquid" cx="278" cy="60" r="8" />
      <path class="sight" d="M254 80L222 108" />
      <path class="tick" d="M40 158H300" />
    </Scale>
  ),
  empty: (
    <Scale>
      <Zeros />
      <path class="sight" d="M106 30V84M160 20V84M214 30V84" />
      <Eye x={34} y={127} to={122} />
    </Scale>
  ),
  middle: (
    <Scale>
      <Mass x={160} foot={92} />
      <path class="sight" d="M160 6V32M112 92v-12M208 92v-12" />
      <Eye x={34} y={127} to={122} />
    </Scale>
  ),
  repeat: (
    <Scale>
      <Mass x={160} foot={76} />
      <path class="wall thin" d="M206 74V34m-8 9 8-10 8 10M114 34v40m-8-9 8 10 8-10" />
      <Eye x={34} y={127} to={122} />
    </Scale>
  ),
  empty_vessel: (
    <Scale>
      <path class="wall" d="M132 38v44a8 8 0 0 0 8 8h40a8 8 0 0 0 8-8V38" />
      <Eye x={34} y={127} to={122} />
    </Scale>
  ),
  fill: (
    <>
      <Filled walls={{ left: 150, right: 250 }} lowest={78} floor={152} />
      <path class="wall" d="M150 24V152H250V24" />
      <path class="floor" d="M136 154H264" />
      <path class="tick" d="M150 44h14M150 61h14M150 78h30M150 95h14M150 112h22M150 129h14" />
      <Eye x={40} y={78} to={198} />
    </>
  ),
  spoon: (
    <>
      <path class="allowed" d="M96 88H206a55 46 0 0 1-110 0z" />
      <path class="wall" d="M84 88H206a55 46 0 0 1-110 0M206 88L300 54" />
      <path class="wall body" d="M70 66H236v14H70z" />
      <path class="sight" d="M236 62h40m-9-7 9 7-9 7" />
      <Eye x={34} y={88} to={84} />
    </>
  ),
  ice: (
    <>
      <Filled walls={{ left: 84, right: 236 }} lowest={82} floor={150} />
      {ICE.map(([x, y, turn]) => (
        <rect
          key={`${x} ${y}`}
          class="ice"
          x={x}
          y={y}
          width="26"
          height="22"
          rx="3"
          transform={`rotate(${turn} ${x + 13} ${y + 11})`}
        />
      ))}
      <path class="wall" d="M84 52V150H236V52" />
      <path class="floor" d="M72 152H248" />
      <Thermometer x={160} bulb={122} />
      <path class="sight" d="M160 134v14" />
    </>
  ),
  boiling: (
    <>
      <Filled walls={{ left: 84, right: 236 }} lowest={86} floor={146} />
      {[110, 134, 190, 214].map((x, index) => (
        <circle key={x} class="bubble" cx={x} cy={132 - (index % 2) * 22} r={5 + (index % 3)} />
      ))}
      <path class="wall" d="M84 62V138q0 10 10 10H226q10 0 10-10V62M84 84H62M236 84h22" />
      <path class="steam" d="M112 52q-8 -9 0 -18t0 -18M206 52q-8 -9 0 -18t0 -18" />
      <Thermometer x={160} bulb={116} />
      <path class="sight" d="M160 128v16" />
    </>
  ),
  buffer: (
    <>
      <path class="wall body" d="M52 62h12V46h24v16h12v90H52z" />
      <path class="tick" d="M60 92h32M60 102h32M60 112h20" />
      <Filled walls={{ left: 170, right: 262 }} lowest={92} floor={150} />
      <path class="wall" d="M170 66V142q0 10 10 10h72q10 0 10-10V66" />
      <path class="gap" d="M206 14h20v98h-20z" />
      <path class="wall thin" d="M206 108V14h20v94" />
      <circle class="liquid-ring" cx="216" cy="114" r="10" />
      <path class="sight" d="M108 92H162m-9-7 9 7-9 7" />
    </>
  ),
  compare: (
    <>
      <rect class="wall body" x="40" y="52" width="96" height="60" />
      <rect class="wall body" x="184" y="52" width="96" height="60" />
      <path class="wall thin" d="M64 82h48M208 82h48" />
      <path class="sight" d="M142 82h36" />
      <path class="floor" d="M40 130H136M184 130h96" />
    </>
  ),
};

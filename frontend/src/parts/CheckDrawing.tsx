/** What hands do in a check and where eyes look, drawn like the rest: ink, glass, one liquid. */
import type { ComponentChildren } from "preact";
import { Eye, Filled, FromAbove, Mass, Scale, Thermometer, Zeros } from "./BenchThings.tsx";

export type DrawingName =
  | "level"
  | "empty"
  | "middle"
  | "lighter"
  | "taken_off"
  | "off_centre"
  | "repeat"
  | "empty_vessel"
  | "fill"
  | "cup"
  | "spoon"
  | "ice"
  | "boiling"
  | "buffer"
  | "prism"
  | "float"
  | "clocks"
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

/** A dial whose needle stands on its zero, at the top. */
function DialAtZero({ x, y }: { x: number; y: number }) {
  return (
    <>
      <circle class="wall body" cx={x} cy={y} r="34" />
      <path
        class="tick"
        d={`M${x} ${y - 34}v8M${x + 24} ${y - 24}l-5 5M${x - 24} ${y - 24}l5 5M${x + 34} ${y}h-7M${x - 34} ${y}h7`}
      />
      <path class="liquid-line" d={`M${x} ${y}V${y - 26}`} />
      <circle class="dot" cx={x} cy={y} r="4" />
      <text class="numeral bold" x={x} y={y + 22} text-anchor="middle">
        0
      </text>
    </>
  );
}

function Clock({ x }: { x: number }) {
  return (
    <>
      <path class="wall body" d={`M${x - 8} 26h16v14h-16z`} />
      <circle class="wall body" cx={x} cy="92" r="50" />
      <path class="tick" d={`M${x} 42v10M${x + 50} 92h-10M${x} 142v-10M${x - 50} 92h10`} />
      <path class="liquid-line" d={`M${x} 92V58M${x} 92l22 12`} />
      <circle class="dot" cx={x} cy="92" r="4" />
    </>
  );
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
      <DialAtZero x={278} y={60} />
    </Scale>
  ),
  middle: (
    <Scale>
      <Mass x={160} foot={92} />
      <path class="sight" d="M160 6V32M112 92v-12M208 92v-12" />
      <Eye x={34} y={127} to={122} />
    </Scale>
  ),
  lighter: (
    <Scale>
      <Mass x={160} foot={92} />
      <Mass x={262} foot={62} />
      <path class="wall thin" d="M298 62V22m-8 9 8-10 8 10" />
      <Eye x={34} y={127} to={122} />
    </Scale>
  ),
  taken_off: (
    <Scale>
      <Mass x={160} foot={64} />
      <path class="wall thin" d="M206 64V24m-8 9 8-10 8 10" />
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
  cup: (
    <>
      <Filled walls={{ left: 124, right: 236 }} lowest={78} floor={150} />
      <path class="wall" d="M124 46V142q0 10 10 10h92q10 0 10-10V46" />
      <path class="wall" d="M236 66q46 -4 46 30t-46 32" />
      <path class="floor" d="M96 154H300" />
      <path class="tick" d="M124 78h26M124 96h12M124 114h18M124 132h12" />
      <Eye x={40} y={78} to={178} />
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
      <Eye x={34} y={64} to={150} />
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
      <Eye x={34} y={58} to={150} />
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
  prism: (
    <>
      <path class="wall body" d="M52 128L112 104V134H52z" />
      <path class="wall body" d="M112 100H232V138H112z" />
      <path class="wall body" d="M232 106h22v26h-22z" />
      <circle class="liquid" cx="76" cy="108" r="6" />
      <circle class="liquid" cx="94" cy="100" r="6" />
      <path class="wall thin" d="M56 100L104 72" />
      <Eye x={294} y={119} to={258} />
      <circle class="wall body" cx="196" cy="48" r="36" />
      <path class="allowed" d="M161 56a36 36 0 0 0 70 0z" />
      <path class="wall thin" d="M161 56H231" />
      <path class="tick" d="M196 22h14M196 33h8M196 44h8M196 56h14M196 67h8" />
      <path class="sight" d="M236 104L216 84" />
    </>
  ),
  float: (
    <>
      <Filled walls={{ left: 138, right: 206 }} lowest={70} floor={154} />
      <path class="wall" d="M138 44V146q0 10 10 10h48q10 0 10-10V44" />
      <path class="gap" d="M166 10h12v84h10v40h-32V94h10z" />
      <path
        class="wall thin"
        d="M166 94V10h12v84q10 4 10 16v12q0 12-16 12t-16-12v-12q0-12 10-16z"
      />
      <path class="tick" d="M166 24h7M166 36h7M166 48h7M166 60h7M166 72h12" />
      <circle class="dot" cx="172" cy="124" r="6" />
      <Eye x={34} y={72} to={132} />
    </>
  ),
  clocks: (
    <>
      <Clock x={84} />
      <Clock x={236} />
      <path class="sight" d="M134 92H186" />
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

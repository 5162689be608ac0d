/** A round scale with a needle, drawn from its figures: to be read to half a division. */
import { figure } from "../text/numbers.ts";
import { type Mark, marksOf, numeralDecimals, type ScaleDrawn } from "./scale_drawing.ts";

/** Where the needle stands, on which scale. `says` tells what is to be read, not the answer. */
export interface DialProps {
  scale: ScaleDrawn;
  unit: string;
  at: string;
  says: string;
  /** Height of the drawing in px; the marks are spread over what there is. */
  height: number;
}

const SWEEP_DEGREES = 300; // the gap lies below, where a tray would hide it
const ACROSS = 1 + Math.cos(((360 - SWEEP_DEGREES) / 2) * (Math.PI / 180)); // in radii, downwards
const NUMERAL_ROOM = { beside: 46, above: 22, below: 20 };
const MARK_PX = [9, 14, 20] as const;
const RADIUS_LEAST = 74;

/** The height at which a dial just fits between two sides so many px apart. */
export function heightWithin(width: number): number {
  const { above, below, beside } = NUMERAL_ROOM;
  return (width / 2 - beside) * ACROSS + above + below;
}

interface Face {
  x: number;
  y: number;
  radius: number;
  low: number;
  perUnit: number;
}

function faceOf({ scale, height }: DialProps): Face {
  const { above, below, beside } = NUMERAL_ROOM;
  const radius = Math.max(RADIUS_LEAST, (height - above - below) / ACROSS);
  const low = Number(scale.low);
  const perUnit = SWEEP_DEGREES / (Number(scale.high) - low);
  return { x: radius + beside, y: radius + above, radius, low, perUnit };
}

/** A place on the face; straight up is the middle of the scale. */
function placeOn(face: Face, value: number, radius: number): { x: number; y: number } {
  const degrees = (value - face.low) * face.perUnit - SWEEP_DEGREES / 2;
  const angle = (degrees * Math.PI) / 180;
  return { x: face.x + radius * Math.sin(angle), y: face.y - radius * Math.cos(angle) };
}

function line(face: Face, value: number, from: number, to: number): string {
  const [a, b] = [placeOn(face, value, from), placeOn(face, value, to)];
  return `M${a.x.toFixed(2)} ${a.y.toFixed(2)}L${b.x.toFixed(2)} ${b.y.toFixed(2)}`;
}

/** Numerals outside, marks inwards, the needle ends at the shortest mark. */
export function Dial(props: DialProps) {
  const { scale, unit, at, says } = props;
  const face = faceOf(props);
  const marks = marksOf(scale, Number(scale.low), Number(scale.high));
  const width = (face.radius + NUMERAL_ROOM.beside) * 2;
  const height = NUMERAL_ROOM.above + face.radius * ACROSS + NUMERAL_ROOM.below;
  return (
    <svg class="dial" width={width} height={height} role="img" aria-label={says}>
      <circle class="wall" cx={face.x} cy={face.y} r={face.radius} />
      {[0, 1, 2].map((rank) => (
        <path
          key={rank}
          class={rank === 2 ? "mark numbered" : "mark"}
          d={marks
            .filter((mark) => mark.rank === rank)
            .map((mark) => markLine(face, mark))
            .join("")}
        />
      ))}
      {marks
        .filter((mark) => mark.rank === 2)
        .map((mark) => (
          <Numeral key={mark.at} face={face} mark={mark} places={numeralDecimals(scale)} />
        ))}
      <text class="numeral" x={face.x} y={face.y + face.radius * 0.5} text-anchor="middle">
        {unit}
      </text>
      <Needle face={face} at={Number(at)} />
    </svg>
  );
}

function markLine(face: Face, { at, rank }: Mark): string {
  return line(face, at, face.radius, face.radius - MARK_PX[rank]);
}

const NUMERAL_OFF = { beside: 15, above: 12 };

function Numeral({ face, mark, places }: { face: Face; mark: Mark; places: number }) {
  const rim = placeOn(face, mark.at, face.radius);
  const [right, down] = [(rim.x - face.x) / face.radius, (rim.y - face.y) / face.radius];
  const anchor = right > 0.25 ? "start" : right < -0.25 ? "end" : "middle";
  const x = rim.x + right * (anchor === "middle" ? NUMERAL_OFF.beside : 8);
  return (
    <text class="numeral" x={x} y={rim.y + 5.5 + down * NUMERAL_OFF.above} text-anchor={anchor}>
      {figure(mark.at.toFixed(places))}
    </text>
  );
}

function Needle({ face, at }: { face: Face; at: number }) {
  return (
    <>
      <path class="needle" d={line(face, at, -face.radius * 0.18, face.radius - MARK_PX[0] + 2)} />
      <circle class="hub" cx={face.x} cy={face.y} r="7" />
    </>
  );
}

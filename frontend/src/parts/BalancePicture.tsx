/** Where it went: streams in from the left, out to the right, one ink line between. */
import { amountWords, figure } from "../text/numbers.ts";
import { type Band, bands, drawn, ribbon } from "./drawing.ts";

/** One stream. `computed` is only worked out (steam), `unaccounted` is what nothing explains. */
export interface BalanceStream {
  id: string;
  name: string;
  amount: string | null;
  sort: "recorded" | "computed" | "unaccounted";
  /** For unaccounted: what the scales explain, as ± in the same unit. */
  uncertainty?: string | null | undefined;
}

/** All amounts in `unit`; null is not recorded and draws no stream. */
export interface BalancePictureProps {
  says: string;
  unit: string;
  ins: readonly BalanceStream[];
  outs: readonly BalanceStream[];
  /** Said instead of the name when the remainder lies below zero. */
  moreOutWords?: string | undefined;
}

const ROW = 46;
const LINE = 17; // each further line of words
const LINE_CHARS = 11; // what a phone has room for beside the streams
const FULL = 108; // px of all that came in
const MIDDLE = 62;
const WIDTH = 124;

interface Side {
  streams: readonly BalanceStream[];
  bands: readonly Band[];
}

/** Below zero the remainder comes in from the left: more out than in. */
function isBelow(stream: BalanceStream): boolean {
  return stream.sort === "unaccounted" && (drawn(stream.amount) ?? 0) < 0;
}

/** Both sides on one scale: where a part is not recorded, its side is narrower at the line. */
function banded(streams: readonly BalanceStream[], whole: number): Side {
  const amounts = streams.map((stream) => stream.amount);
  const full = whole > 0 ? (FULL * drawnSum(streams)) / whole : 0;
  return { streams, bands: bands(amounts, { full, leastRows: streams.map(rowOf) }) };
}

function drawnSum(streams: readonly BalanceStream[]): number {
  return streams.reduce((sum, { amount }) => sum + Math.abs(drawn(amount) ?? 0), 0);
}

/** Room for the words: a long name takes further lines, a reach one more. */
function rowOf({ name, uncertainty }: BalanceStream): number {
  const lines = Math.ceil(name.length / LINE_CHARS) - 1 + (uncertainty ? 1 : 0);
  return ROW + lines * LINE;
}

/** Words at both walls, the streams between; the words are the text alternative. */
export function BalancePicture(props: BalancePictureProps) {
  const ins = [...props.ins, ...props.outs.filter(isBelow)];
  const outs = props.outs.filter((stream) => !isBelow(stream));
  const whole = Math.max(drawnSum(ins), drawnSum(outs));
  const [left, right] = [banded(ins, whole), banded(outs, whole)];
  const height = Math.max(...[left, right].map((side) => side.bands.at(-1)?.rowEnd ?? ROW));
  return (
    <figure class="balance">
      <Names side={left} unit={props.unit} moreOut={props.moreOutWords} />
      <svg width={WIDTH} height={height} role="img" aria-label={props.says}>
        <Flow side={left} height={height} wall={0} />
        <Flow side={right} height={height} wall={WIDTH} />
        <path class="wall" d={`M${MIDDLE} 0V${height}`} />
      </svg>
      <Names side={right} unit={props.unit} />
    </figure>
  );
}

function Names({
  side,
  unit,
  moreOut,
}: {
  side: Side;
  unit: string;
  moreOut?: string | undefined;
}) {
  return (
    <ul>
      {side.streams.map((stream, index) => {
        const band = side.bands[index];
        return (
          <li key={stream.id} style={{ height: `${band ? band.rowEnd - band.rowStart : ROW}px` }}>
            <span>{isBelow(stream) ? (moreOut ?? stream.name) : stream.name}</span>
            <b class={stream.sort === "computed" ? "ruled computed" : ""}>
              {amountWords(stream.amount, unit)}
            </b>
            {stream.uncertainty && <small>± {figure(stream.uncertainty)}</small>}
          </li>
        );
      })}
    </ul>
  );
}

function Flow({ side, height, wall }: { side: Side; height: number; wall: number }) {
  const drop = (height - (side.bands.at(-1)?.lineEnd ?? 0)) / 2;
  return (
    <>
      {side.streams.map((stream, index) => {
        const band = side.bands[index];
        if (stream.amount === null || band === undefined) return null;
        const shape = ribbon(band, { wall, line: MIDDLE, drop });
        return <path key={stream.id} class={`flow ${stream.sort}`} d={shape} />;
      })}
    </>
  );
}

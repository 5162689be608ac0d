/** Where a lot came from and where it went: streams as wide as they are much, every step a cup. */
import { useSignal } from "@preact/signals";
import { figure } from "../text/numbers.ts";
import { PARTS } from "../text/parts.ts";
import { Cup } from "./Cup.tsx";
import { streamWidths } from "./drawing.ts";

/** One step beside the lot. Texts are ready to show; `weight` is the amount as a decimal text. */
export interface TraceStep {
  id: string;
  name: string;
  sub?: string | undefined;
  code?: string | undefined;
  amount: string;
  weight: string | null;
  /** "9 Jul", "now". */
  when: string;
  /** The link is not known: hatched, in words. */
  isUnknown?: boolean | undefined;
  /** Only to be read, as what is still here. */
  isStill?: boolean | undefined;
}

/** The lot in the middle, what came from above, what went to below. */
export interface TracePictureProps {
  middle: { code: string; count: string; countWord: string; lines: readonly string[] };
  from: readonly TraceStep[];
  to: readonly TraceStep[];
  fromSum?: string | undefined;
  toSum?: string | undefined;
  /** That one moves to the middle. */
  onChoose: (id: string) => void;
}

const ROW_PX = 60;
const HEAD_PX = 31; // the heading between the lot and where it went
const LANE_PX = 34; // all streams together
const LANE_LEFT = 66;
const EDGE = 104;
const BEND = 13;
const MOST_DRAWN = 8;
const SHOWN_OF_MORE = 7;

/** The largest seven and "12 more", when there are more than eight. */
function largestFirst(steps: readonly TraceStep[]): {
  shown: readonly TraceStep[];
  more: number;
} {
  if (steps.length <= MOST_DRAWN) return { shown: steps, more: 0 };
  const largest = [...steps].sort((a, b) => Number(b.weight ?? 0) - Number(a.weight ?? 0));
  const kept = new Set(largest.slice(0, SHOWN_OF_MORE));
  return { shown: steps.filter((step) => kept.has(step)), more: steps.length - SHOWN_OF_MORE };
}

/** The picture; every step is a cup, so hand and keyboard reach all of it. "As a list" is one tap. */
export function TracePicture(props: TracePictureProps) {
  const isList = useSignal(false);
  const { middle } = props;
  return (
    <div class={isList.value ? "trace listed" : "trace"}>
      <Cup
        class="slim trace-turn"
        onPress={() => {
          isList.value = !isList.value;
        }}
      >
        {isList.value ? PARTS.as_a_picture : PARTS.as_a_list}
      </Cup>
      <Streams {...props} side="from" isWhole={isList.value} />
      <div class="trace-lot">
        <p class="trace-held">
          <b>{middle.count}</b>
          {middle.countWord}
        </p>
        <p class="trace-what">
          <b>{middle.code}</b>
          {middle.lines.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </p>
      </div>
      <Streams {...props} side="to" isWhole={isList.value} />
    </div>
  );
}

function Streams(props: TracePictureProps & { side: "from" | "to"; isWhole: boolean }) {
  const { side, onChoose, isWhole } = props;
  const isFrom = side === "from";
  const { shown, more } = isWhole ? { shown: props[side], more: 0 } : largestFirst(props[side]);
  if (shown.length === 0) return null;
  return (
    <section class={`trace-side ${side}`}>
      <h2>
        {isFrom ? PARTS.came_from : PARTS.went_to}
        <span>{isFrom ? props.fromSum : props.toSum}</span>
      </h2>
      <div class="trace-steps">
        {!isWhole && <Lanes steps={shown} isFrom={isFrom} />}
        <ol>
          {shown.map((step) => (
            <li key={step.id}>
              <span class="trace-when">{step.when}</span>
              <Step step={step} onChoose={onChoose} />
            </li>
          ))}
        </ol>
      </div>
      {more > 0 && <p class="second trace-more">{PARTS.more_steps(figure(String(more)))}</p>}
    </section>
  );
}

function Step({ step, onChoose }: { step: TraceStep; onChoose: (id: string) => void }) {
  const inside = (
    <>
      <span class="trace-line">
        <span class={step.isUnknown ? "" : "rec"}>
          {step.isUnknown ? PARTS.not_known : step.name}
        </span>
        <b>{step.amount}</b>
      </span>
      {(step.sub || step.code) && (
        <span class="trace-line">
          <span class="second">{step.sub}</span>
          <span class="trace-code">{step.code}</span>
        </span>
      )}
    </>
  );
  if (step.isStill || step.isUnknown) {
    return <p class={step.isUnknown ? "trace-step unknown" : "trace-step"}>{inside}</p>;
  }
  return (
    <Cup class="trace-step" onPress={() => onChoose(step.id)}>
      {inside}
    </Cup>
  );
}

/** The streams themselves: ornament beside the cups, which carry the same in words. */
function Lanes({ steps, isFrom }: { steps: readonly TraceStep[]; isFrom: boolean }) {
  const widths = streamWidths(
    steps.map((step) => step.weight),
    LANE_PX,
  );
  const height = steps.length * ROW_PX;
  const total = widths.reduce((left, right) => left + right, 0);
  let taken = 0;
  return (
    <svg class="lanes" width={EDGE} height={height} aria-hidden="true">
      {steps.map((step, index) => {
        const width = widths[index] ?? 0;
        const x = isFrom ? LANE_LEFT + taken + width / 2 : LANE_LEFT + total - taken - width / 2;
        taken += width;
        const y = index * ROW_PX + ROW_PX / 2;
        const end = isFrom ? height : -HEAD_PX;
        const turn = isFrom ? y + BEND : y - BEND;
        return (
          <path
            key={step.id}
            class={step.isUnknown ? "stream unknown" : "stream"}
            stroke-width={width}
            d={`M${EDGE} ${y}H${x + BEND}Q${x} ${y} ${x} ${turn}V${end}`}
          />
        );
      })}
    </svg>
  );
}

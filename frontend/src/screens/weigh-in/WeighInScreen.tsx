/** Weigh in: this line, right. The reading against its tolerance, while the hands are busy. */
import { useSignal } from "@preact/signals";
import { Frame } from "../../parts/Frame.tsx";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { type BatchLine, batchOf, lineName } from "../common/batches.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { LineEntries } from "./LineEntries.tsx";
import { Plate, Reading } from "./Reading.tsx";
import { useWeighing } from "./use_weighing.ts";
import { type Asking, WeighBench } from "./WeighBench.tsx";
import "./weigh_in.css";

type Batch = NonNullable<ReturnType<typeof batchOf>>["state"];

/** `#/weigh-in/:batch/:line`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const batch = batchOf(params.batch ?? "")?.state ?? null;
  const line = batch?.lines.find((each) => each.line === params.line);
  if (batch === null || line === undefined) {
    return (
      <Instead
        where={WEIGH_IN.all_lines}
        title={batch === null ? WEIGH_IN.loading : WEIGH_IN.no_line}
        benchName={WEIGH_IN.bench}
        back="#/"
        on={{ words: WEIGH_IN.all_lines, href: `#/batch/${params.batch ?? ""}` }}
        says={batch === null ? WEIGH_IN.loading : WEIGH_IN.no_line}
      />
    );
  }
  return <WeighLine key={`${batch.batch}:${line.line}`} batch={batch} line={line} />;
}

function WeighLine({ batch, line }: { batch: Batch; line: BatchLine }) {
  const weighing = useWeighing({ batch: batch.batch, place: batch.place, line });
  const asking = useSignal<Asking>("keys");
  const at = batch.lines.indexOf(line) + 1;
  return (
    <Frame
      where={<BatchNamed batch={batch} />}
      title={lineName(line)}
      isRecorded
      aside={WEIGH_IN.line_of(String(at), String(batch.lines.length))}
      gauge={<HeadGauge />}
      hasKeypad
      benchName={WEIGH_IN.bench}
      bench={
        <WeighBench
          weighing={weighing}
          line={line}
          asking={asking.value}
          onAsk={(next) => {
            asking.value = next;
          }}
          back={`#/batch/${batch.batch}`}
        />
      }
      plate={<Plate batch={batch} line={line} weighing={weighing} />}
      side={<LineEntries batch={batch} here={line.line} onTakeBack={weighing.undo} />}
    >
      <Reading
        line={line}
        weighing={weighing}
        onAsk={(next) => {
          asking.value = next;
        }}
      />
    </Frame>
  );
}

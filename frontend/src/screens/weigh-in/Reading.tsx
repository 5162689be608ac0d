/** What the eyes see: the glass, the figures, the instrument; and the plate with the verdict. */
import { useRef } from "preact/hooks";
import type { BatchState } from "../../calc/batches.ts";
import { Cup } from "../../parts/Cup.tsx";
import { Glass } from "../../parts/Glass.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { useRoom } from "../../parts/room.ts";
import { Verdict } from "../../parts/Verdict.tsx";
import { nameOf } from "../../state/stock.ts";
import { amountWords } from "../../text/numbers.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import type { BatchLine } from "../common/batches.ts";
import { Figures } from "./Figures.tsx";
import { InstrumentCup } from "./InstrumentCup.tsx";
import { LastEntry } from "./LineEntries.tsx";
import { readingRefusal } from "./reading.ts";
import { glassSays, plateSays } from "./says.ts";
import type { Weighing } from "./use_weighing.ts";
import type { Asking } from "./WeighBench.tsx";

const GLASS_PX = { least: 150, most: 420 };

/** What the sheet needs; `onAsk` opens a question in the bench. */
export interface ReadingProps {
  line: BatchLine;
  weighing: Weighing;
  onAsk: (asking: Asking) => void;
}

/** Glass at the left, figures at the right, what they rest on under both. */
export function Reading({ line, weighing, onAsk }: ReadingProps) {
  const { weighed } = weighing;
  const part = useRef<HTMLDivElement>(null);
  const height = useRoom(part, GLASS_PX);
  const unit = line.planned?.unit ?? weighing.typed.unit;
  return (
    <div class="weigh" ref={part}>
      {weighed !== null && (
        <Glass
          says={glassSays(weighed, unit)}
          level={weighed.level}
          target={weighed.target}
          low={weighed.low}
          high={weighed.high}
          uncertainty={weighed.reach}
          height={height}
        />
      )}
      <div class="weigh-read">
        <Figures line={line} weighing={weighing} />
      </div>
      <div class="weigh-cups">
        <LotCup weighing={weighing} onPress={() => onAsk("lot")} />
        {!weighing.isCounted && (
          <InstrumentCup instrument={weighing.instrument} onPress={() => onAsk("instrument")} />
        )}
      </div>
    </div>
  );
}

interface PlateProps {
  batch: BatchState;
  line: BatchLine;
  weighing: Weighing;
}

/** The verdict, or what stands in the way of one; while nothing is typed the last entry. */
export function Plate({ batch, line, weighing }: PlateProps) {
  const { weighed, instrument, typed, isCounted, better, body } = weighing;
  const hindered = weighing.hindrance.value;
  if (hindered !== null) return <Refusal sentence={hindered.sentence} />;
  const refusal = readingRefusal(body, instrument);
  if (refusal === "over_capacity" && instrument !== null) {
    const capacity = amountWords(instrument.capacity, instrument.unit);
    return <Refusal sentence={WEIGH_IN.over_capacity(instrument.name, capacity)} />;
  }
  if (refusal === "below_bowl") return <Refusal sentence={WEIGH_IN.below_bowl} />;
  if (weighed === null || weighed.net === null) {
    return (
      <LastEntry batch={batch} onTakeBack={weighing.undo}>
        {isCounted ? WEIGH_IN.type_count : WEIGH_IN.type_first}
      </LastEntry>
    );
  }
  const says = plateSays(weighed, { line, unit: typed.unit, instrument, better, isCounted });
  return <Verdict {...says} isLive />;
}

function LotCup({ weighing, onPress }: { weighing: Weighing; onPress: () => void }) {
  return (
    <Cup class="tool" onPress={onPress}>
      <span>
        <span>{WEIGH_IN.from_lot(weighing.from && nameOf("place", weighing.from))}</span>
        <b class="code">{weighing.lot ?? WEIGH_IN.which_lot}</b>
      </span>
    </Cup>
  );
}

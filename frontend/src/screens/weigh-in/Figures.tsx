/** The figures beside the glass: what is shown, less the bowl, in the bowl, give or take. */
import { NumberShown } from "../../parts/NumberShown.tsx";
import { amountWords, figure } from "../../text/numbers.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import type { BatchLine } from "../common/batches.ts";
import { readingBudget } from "../common/budget.ts";
import { nowMs } from "../common/edge.ts";
import type { Weighing } from "./use_weighing.ts";

/** Before typing: where to stop. After: the sum as one would write it by hand. */
export function Figures({ line, weighing }: { line: BatchLine; weighing: Weighing }) {
  const { typed, weighed, isCounted } = weighing;
  const isRead = weighed !== null && weighed.net !== null;
  const isEnough = line.verdict === "within";
  return (
    <div class="figures">
      <p class="asks">{asked(weighing, isRead, isEnough)}</p>
      <p class="sum">
        <NumberShown
          amount={large(weighing, isRead, isEnough)}
          unit={typed.unit}
          basis="plain"
          size="reading"
        />
      </p>
      {!isCounted && (
        <p class="less">
          <span>{WEIGH_IN.bowl}</span>
          <span>{typed.tare === "" ? WEIGH_IN.no_bowl : WEIGH_IN.less(figure(typed.tare))}</span>
        </p>
      )}
      {weighed !== null && weighed.corrected !== null && (
        <p class="less read">
          <span>{WEIGH_IN.read}</span>
          <span>{amountWords(weighed.net, typed.unit)}</span>
        </p>
      )}
      {!isCounted && (
        <p class="sum">
          <Net line={line} weighing={weighing} />
        </p>
      )}
      {isRead ? (
        <p class="give">
          <span>{weighed.corrected === null ? wherein(weighing) : WEIGH_IN.corrected}</span>
          <span>
            {isCounted || weighed.reach_read === null
              ? ""
              : WEIGH_IN.give_or_take(weighed.reach_read)}
          </span>
        </p>
      ) : (
        <Allowed line={line} />
      )}
    </div>
  );
}

/** What is typed; before that where to stop, unless the line has enough already. */
function large({ typed, weighed }: Weighing, isRead: boolean, isEnough: boolean): string | null {
  if (typed.into === "tare") return typed.tare;
  if (typed.shown !== "") return typed.shown;
  return isRead || isEnough ? null : (weighed?.stop_at ?? null);
}

function asked({ typed, isCounted }: Weighing, isRead: boolean, isEnough: boolean): string {
  if (typed.into === "tare") return WEIGH_IN.bowl_shows;
  if (isEnough && !isRead && typed.shown === "") return WEIGH_IN.enough;
  if (isCounted) return WEIGH_IN.count_them;
  return isRead || typed.shown !== "" ? WEIGH_IN.display_shows : WEIGH_IN.stop_when;
}

function wherein({ typed, isCounted }: Weighing): string {
  if (isCounted) return WEIGH_IN.counted_exact;
  const count = typed.repeats.length + (typed.shown === "" ? 0 : 1);
  return count > 1 ? WEIGH_IN.mean_of(count) : WEIGH_IN.in_the_bowl;
}

/** The tolerance of the line; unlike limits are named each. */
function Allowed({ line }: { line: BatchLine }) {
  const { above, below } = line;
  if (above === null && below === null) {
    return (
      <p class="give">
        <span>{WEIGH_IN.any_amount}</span>
      </p>
    );
  }
  if (Number(above) === 0 && Number(below) === 0) {
    return (
      <p class="give">
        <span>{WEIGH_IN.exactly}</span>
      </p>
    );
  }
  const words =
    above === below
      ? WEIGH_IN.give_or_take(above ?? "")
      : [above && WEIGH_IN.plus(above), below && WEIGH_IN.minus(below)].filter(Boolean).join(" ");
  return (
    <p class="give">
      <span>{WEIGH_IN.allowed}</span>
      <span>{words}</span>
    </p>
  );
}

/** The net with its whisker and its budget; before a reading the amount that is wanted. */
function Net({ line, weighing }: { line: BatchLine; weighing: Weighing }) {
  const { weighed, typed, measured: body } = weighing;
  if (weighed === null) return null;
  if (weighed.net === null) {
    const unit = line.planned?.unit ?? null;
    return <NumberShown amount={weighed.target} unit={unit} basis="plain" size="net" />;
  }
  const budget = readingBudget(body, new Date(nowMs()).toISOString()) ?? undefined;
  return (
    <NumberShown
      amount={weighed.corrected ?? weighed.net}
      unit={typed.unit}
      basis="measured"
      uncertainty={weighed.reach_read}
      budget={budget}
      size="net"
    />
  );
}

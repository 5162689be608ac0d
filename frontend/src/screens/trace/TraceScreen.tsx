/** Trace: where a lot came from and where it went, as a picture one can tap and as a list. */
import type { LotState } from "../../calc/stock.ts";
import { idIn, typeIn } from "../../calc/subjects.ts";
import { Caution } from "../../parts/Caution.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { TracePicture } from "../../parts/TracePicture.tsx";
import { goTo } from "../../state/route.ts";
import { againstLot } from "../../state/stock.ts";
import { againstWords } from "../../text/holds.ts";
import { dayWords } from "../../text/numbers.ts";
import { TRACE } from "../../text/trace.ts";
import { today } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { amountText, lifeShown, materialOf, textField } from "../common/lots.ts";
import { memberName } from "../common/people.ts";
import { EveryStep } from "./EveryStep.tsx";
import { lotSheet, stepsFrom, stepsTo, sumOf } from "./steps.ts";
import { type Traced, useTrace } from "./use_trace.ts";
import "./trace.css";

/** `params.lot` is the code in the middle; a tapped lot moves there, back returns. */
export function Screen({ params }: { params: Record<string, string> }) {
  const lot = params.lot ?? "";
  const traced = useTrace(lot);
  const state = lotSheet(lot);
  const isKnown = state !== null || traced.isAsked;
  const name = materialOf(state?.material ?? null)?.name ?? lot;
  return (
    <Frame
      where={TRACE.where}
      title={isKnown ? name : lot}
      isRecorded={isKnown}
      gauge={<HeadGauge />}
      calm={isKnown ? traced.says : undefined}
      benchName={TRACE.bench}
      bench={<TraceBench lot={lot} traced={traced} isKnown={isKnown} />}
    >
      <Refusal sentence={traced.trouble} />
      {isKnown ? (
        <>
          <Picture lot={lot} state={state} traced={traced} />
          {state?.life && <Caution about="shelf_life" />}
          <EveryStep ways={traced.ways} />
        </>
      ) : (
        <Notice>{TRACE.not_held}</Notice>
      )}
    </Frame>
  );
}

function Picture(props: { lot: string; state: LotState | null; traced: Traced }) {
  const { lot, state } = props;
  const { ways } = props.traced;
  const material = materialOf(state?.material ?? null);
  const unit = state?.unit ?? "pc";
  const made = amountText(state?.made ?? "0", unit, material);
  const into = ways.back.edges.filter((edge) => edge.to === `lot:${lot}`);
  const batches = into.filter((edge) => edge.from.startsWith("batch:")).map((edge) => edge.from);
  const counted =
    batches.length > 0 ? ways.back.edges.filter((edge) => batches.includes(edge.to)) : into;
  const sum = sumOf(counted);
  const [count = "", ...rest] = made.split("\u00a0");
  return (
    <TracePicture
      middle={{
        code: lot,
        count,
        countWord: rest.join(" ") || (textField(material, "pack_word") ?? ""),
        lines: state === null ? [] : linesOf(state),
      }}
      from={stepsFrom(lot, ways)}
      to={stepsTo(lot, ways)}
      {...(sum === null ? {} : { fromSum: TRACE.sum_in(sum) })}
      toSum={TRACE.sum_of(made)}
      onChoose={(subject) => goTo(pathOf(subject))}
    />
  );
}

/** Lots move to the middle; a source, business or stall day opens what else went that way. */
function pathOf(subject: string): string {
  const type = typeIn(subject);
  const id = idIn(subject);
  if (type === "lot") return `/trace/${encodeURIComponent(id)}`;
  if (type === "batch") return `/batch/${id}`;
  return `/trace-end/${type}/${encodeURIComponent(id)}`;
}

function linesOf(state: LotState): string[] {
  const day = dayWords(state.made_on);
  const by = memberName(state.author);
  const life = lifeShown(state.life, state.made_on, today()).words;
  const origin =
    state.condition === "refused"
      ? TRACE.refused
      : state.made_by === "receipt"
        ? TRACE.received(day, by)
        : state.made_by === "topped_up"
          ? TRACE.poured(day)
          : TRACE.made(day, by);
  const [held] = againstLot(state, today()).filter((each) => each !== "expired");
  const lines = held === undefined ? [origin] : [origin, TRACE.on_hold(againstWords([held]))];
  return life === null ? lines : [...lines, life];
}

function TraceBench(props: { lot: string; traced: Traced; isKnown: boolean }) {
  const { lot, traced, isKnown } = props;
  return (
    <>
      {isKnown && !traced.isAsked && (
        <Cup onPress={traced.ask}>{traced.isAsking ? TRACE.asking : TRACE.ask}</Cup>
      )}
      <Foot>
        <BackKey onPress={() => history.back()} />
        {isKnown ? (
          <MainKey words={TRACE.call} href={`#/trace/${lot}/call`} />
        ) : (
          <MainKey
            words={TRACE.ask}
            notReady={traced.isAsking ? TRACE.asking : null}
            onPress={traced.ask}
          />
        )}
      </Foot>
    </>
  );
}

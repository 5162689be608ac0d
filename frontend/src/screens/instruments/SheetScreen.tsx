/** The sheet of an instrument: what it is, whether it is fit, its checks, what its readings stand for. */
import type { Check, InstrumentState } from "../../calc/instruments.ts";
import { writtenTrust } from "../../calc/trusted.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { ErrorChart } from "../../parts/ErrorChart.tsx";
import { FitMark } from "../../parts/FitMark.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { FITNESS } from "../../text/fitness.ts";
import { INSTRUMENTS, VERDICT_WORDS } from "../../text/instruments.ts";
import { isDrawn } from "../charts/series.ts";
import { type Standing, undecided } from "../common/fitness.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { History } from "../common/History.tsx";
import { InQuestion } from "../common/InQuestion.tsx";
import { instrumentSheet, mayKnowMore, standingOf } from "../common/instruments.ts";
import { trusted } from "../common/trust.ts";
import { Correction } from "./Correction.tsx";
import { checkWords } from "./check_history.ts";
import { checkSeries } from "./check_series.ts";
import { overTime, stepByStep } from "./errors.ts";
import { factsOf } from "./facts.ts";
import { Limits } from "./Limits.tsx";
import { saidOf } from "./said.ts";
import "../common/rows.css";
import "./instruments.css";

const CHECKS = ["instrument_checked"];

/** `#/instruments/:id`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const id = params.id ?? "";
  const state = instrumentSheet(id);
  const name = nameOf("instrument", id);
  return (
    <Frame
      where={INSTRUMENTS.where}
      title={state === null ? INSTRUMENTS.title : name}
      isRecorded={state !== null}
      gauge={<HeadGauge />}
      benchName={INSTRUMENTS.bench}
      bench={
        <Foot>
          <BackKey href="#/instruments" />
          <Cup class="second-key" href={`#/set-up/instruments/${id}`}>
            {INSTRUMENTS.set_up}
          </Cup>
          <MainKey words={INSTRUMENTS.check} href={`#/instruments/${id}/check`} />
        </Foot>
      }
      side={
        state !== null && (
          <>
            <Limits state={state} />
            <Part title={INSTRUMENTS.what}>
              <Facts rows={factsOf(state)} />
            </Part>
          </>
        )
      }
    >
      {state === null ? <Notice>{INSTRUMENTS.not_here}</Notice> : <Sheet id={id} state={state} />}
    </Frame>
  );
}

function Sheet({ id, state }: { id: string; state: InstrumentState }) {
  const standing = standingOf(id);
  const { checks = [] } = state;
  const last = checks.at(-1);
  return (
    <>
      <State standing={standing} id={id} last={last} />
      <Undecided check={undecided(standing, checks)} />
      {last === undefined ? null : (
        <>
          <Part title={INSTRUMENTS.over_time}>
            <ErrorChart
              errors={overTime(checks)}
              says={INSTRUMENTS.chart(checks.length, saidOf(last))}
            />
            {isDrawn(checkSeries(checks)) && (
              <p class="key-row">
                <Cup href={`#/instruments/${id}/chart`}>{INSTRUMENTS.control_chart}</Cup>
              </p>
            )}
          </Part>
          {last.points.length > 1 && (
            <Part title={INSTRUMENTS.along}>
              <ErrorChart
                errors={stepByStep(last.points, last.unit)}
                says={`${INSTRUMENTS.along}: ${saidOf(last)}`}
              />
            </Part>
          )}
        </>
      )}
      <Correction state={state} />
      <History
        subject={`instrument:${id}`}
        wordsOf={checkWords(state.fields)}
        correctAt={(row) => `#/instruments/${id}/correct/${row.id}`}
        kinds={CHECKS}
      />
    </>
  );
}

/** A check after the one that counts, of which nobody can tell what it means. */
function Undecided({ check }: { check: Check | null }) {
  if (check === null) return null;
  return (
    <Notice>
      {INSTRUMENTS.undecided(check.on)} {saidOf(check)}
    </Notice>
  );
}

/** A vessel is as good as the scale its water was weighed on. */
function WeighedOn({ check }: { check: NonNullable<Standing["check"]> }) {
  const { check_scale, happened_at } = check;
  if (!check_scale) return null;
  // What the scale showed stands in the entry; here only whether it is in question counts.
  const reading = { instrument: check_scale, shown: "0", unit: "g" };
  const trust = trusted({ reading }, happened_at);
  return (
    <p class="second">
      {FITNESS.weighed_on(nameOf("instrument", check_scale))}{" "}
      <InQuestion
        trust={trust === null ? undefined : { ...writtenTrust(trust), moves: null }}
        instrument={check_scale}
        unit={null}
        happened_at={happened_at}
      />
    </p>
  );
}

/** The word, the drawing of it, when it was checked and when it is next due. */
function State(props: { standing: Standing; id: string; last: Check | undefined }) {
  const { standing, id, last } = props;
  const { is, check, due_on, uses } = standing;
  return (
    <div class={`fit-plate ${is}`}>
      <p class="fit-state">
        <FitMark is={is} /> <b>{FITNESS[is]}</b>
      </p>
      {check === null ? (
        <p>
          {last === undefined
            ? INSTRUMENTS.never
            : `${VERDICT_WORDS[last.verdict]}. ${saidOf(last)}`}
        </p>
      ) : (
        <>
          <p>
            {VERDICT_WORDS[check.verdict]}. {saidOf(check)}{" "}
            {check.verdict === "failed" && is !== "failed" && INSTRUMENTS.put_right}
          </p>
          <WeighedOn check={check} />
          <p class="second">
            {[
              INSTRUMENTS.last(check.on),
              due_on === null || is === "failed" ? "" : INSTRUMENTS.due_on(due_on),
              INSTRUMENTS.uses(uses, mayKnowMore()),
            ]
              .filter(Boolean)
              .join(", ")}
          </p>
          {is === "failed" && (
            <p class="key-row">
              <Cup href={`#/instruments/${id}/leaned/${check.entry}`}>{INSTRUMENTS.see_leaned}</Cup>
            </p>
          )}
        </>
      )}
    </div>
  );
}

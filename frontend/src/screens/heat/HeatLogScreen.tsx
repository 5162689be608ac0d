/** A log that was kept: its result, its plot, and who kept it. */
import { useMemo } from "preact/hooks";
import type { BatchState } from "../../calc/batches.ts";
import { textIn } from "../../calc/bodies.ts";
import type { HeatResult } from "../../calc/heat_results.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { HEAT, howWord } from "../../text/heat.ts";
import { clockWords, dayWords } from "../../text/numbers.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { batchOf } from "../common/batches.ts";
import { dayOf, zone } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { WasDue } from "../common/InQuestion.tsx";
import { beganOf } from "../common/instruments.ts";
import { inForce } from "../common/standing.ts";
import { useHeld } from "../common/use_held.ts";
import { HeatPlate, HeatShown } from "./HeatShown.tsx";
import { judgedSoFar } from "./heat.ts";
import { plotOf } from "./plot.ts";
import "./heat.css";

/** `#/heat-log/:batch/:entry`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { batch = "", entry = "" } = params;
  const state = batchOf(batch)?.state ?? null;
  return (
    <Frame
      where={state === null ? HEAT.where : <BatchNamed batch={state} />}
      title={HEAT.title}
      gauge={<HeadGauge />}
      benchName={HEAT.bench}
      bench={
        <Foot>
          <BackKey href={`#/batch/${batch}`} />
          <MainKey words={HEAT.batch} href={`#/batch/${batch}`} />
        </Foot>
      }
    >
      {state === null ? (
        <Notice>{HEAT.not_here}</Notice>
      ) : (
        <Kept key={entry} state={state} entry={entry} />
      )}
    </Frame>
  );
}

/** The result stands on the sheet; the rows are drawn once this phone holds the entry. */
function Kept({ state, entry }: { state: BatchState; entry: string }) {
  const held = useHeld(`batch:${state.batch}`, state);
  const body = inForce(held.value, entry);
  const result = state.heat?.find((each) => each.entry === entry) ?? null;
  const judged = useMemo(
    () => result ?? judgedSoFar(body, body && textIn(body, "began_at")),
    [result, body],
  );
  const plot = useMemo(() => (body && judged ? plotOf(body, judged) : null), [body, judged]);
  if (judged === null) return <Notice>{HEAT.no_log}</Notice>;
  const unit = result?.unit ?? (body && textIn(body, "unit"));
  return (
    <>
      <HeatPlate judged={judged} unit={unit} />
      <HeatShown
        judged={judged}
        plot={plot}
        unit={unit}
        setBy={result?.set_by ?? null}
        due={result !== null && <Due log={result} />}
      />
      {result !== null && (
        <Part title={HEAT.kept}>
          <Facts
            rows={[
              {
                name: HEAT.began,
                value: `${dayWords(dayOf(beganOf(result)))}, ${clockWords(beganOf(result), zone())}`,
              },
              { name: HEAT.rows, value: howWord(result.came_by) },
              {
                name: HEAT.thermometer,
                value: <span class="rec">{nameOf("instrument", result.instrument)}</span>,
              },
              { name: HEAT.by, value: <span class="rec">{nameOf("member", result.author)}</span> },
              ...(result.action === null
                ? []
                : [{ name: HEAT.done, value: <span class="rec">{result.action}</span> }]),
            ]}
          />
          <p class="key-row">
            <Cup href={`#/heat-log/${state.batch}/${entry}/correct`}>{HEAT.correct}</Cup>
            <Cup href={`#/correct/${state.batch}/${entry}`}>{HEAT.void_it}</Cup>
          </p>
        </Part>
      )}
    </>
  );
}

/** That a check failed is said with what the log leans on, and counts for more. */
function Due({ log }: { log: HeatResult }) {
  if (log.instrument === null || log.trust?.failed_by) return null;
  return (
    <p>
      <WasDue instrument={log.instrument} happened_at={beganOf(log)} />
    </p>
  );
}

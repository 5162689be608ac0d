/** Temperatures of a batch over time: what is asked, the rows, what they came to. */
import { useMemo } from "preact/hooks";
import type { BatchState } from "../../calc/batches.ts";
import { textIn } from "../../calc/bodies.ts";
import { Frame } from "../../parts/Frame.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { FITNESS } from "../../text/fitness.ts";
import { HEAT } from "../../text/heat.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { batchOf } from "../common/batches.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { standingAt } from "../common/instruments.ts";
import { besideNone } from "../common/sentences.ts";
import { inForce } from "../common/standing.ts";
import { useHeld } from "../common/use_held.ts";
import { AskedPage } from "./AskedPage.tsx";
import { HeatBench, hasKeys } from "./HeatBench.tsx";
import { HeatPlate, HeatShown } from "./HeatShown.tsx";
import { RowsPage } from "./RowsPage.tsx";
import { type HeatAbout, type Heating, useHeat } from "./use_heat.ts";
import "./heat.css";

const SHOWN = ["began_at", "judged"];

/** `#/heat/:batch`, `#/heat/:batch/:step`, and `#/heat-log/:batch/:entry/correct`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { batch = "", step = "", entry } = params;
  const state = batchOf(batch)?.state ?? null;
  if (state !== null && entry !== undefined) return <Correcting state={state} entry={entry} />;
  if (state !== null) return <Logging key={`${batch}/${step}`} state={state} step={step} />;
  return <NotHere batch={batch} says={HEAT.not_here} />;
}

function NotHere({ batch, says }: { batch: string; says: string }) {
  return (
    <Instead
      where={HEAT.where}
      title={HEAT.title}
      benchName={HEAT.bench}
      back="#/batches"
      on={{ words: HEAT.batch, href: `#/batch/${batch}` }}
      says={says}
    />
  );
}

/** The old log stays readable; its rows are taken up once this phone holds them. */
function Correcting({ state, entry }: { state: BatchState; entry: string }) {
  const held = useHeld(`batch:${state.batch}`, state);
  const body = useMemo(() => inForce(held.value, entry), [held.value, entry]);
  const corrects = useMemo(() => (body === null ? null : { entry, body }), [entry, body]);
  if (corrects === null) return <NotHere batch={state.batch} says={HEAT.no_log} />;
  const step = textIn(corrects.body, "step") ?? "";
  return <Logging key={entry} state={state} step={step} corrects={corrects} />;
}

function Logging(props: { state: BatchState; step: string; corrects?: HeatAbout["corrects"] }) {
  const { state, step, corrects = null } = props;
  const { batch, place } = state;
  const heating = useHeat({ batch, step, place, corrects });
  const { typed, judged, plot, body, found } = heating;
  const unit = heating.rows.unit;
  const keys = hasKeys(heating);
  const hasResult = typed.is_asked && judged !== null;
  return (
    <Frame
      where={<BatchNamed batch={state} />}
      title={HEAT.title}
      gauge={<HeadGauge />}
      hasKeypad={keys}
      benchName={HEAT.bench}
      plate={hasResult && !keys ? <HeatPlate judged={judged} unit={unit} isLive /> : undefined}
      bench={<HeatBench heating={heating} back={backFrom(batch, step, corrects?.entry)} />}
    >
      <Refusal sentence={besideNone(found.value, SHOWN)} />
      {typed.is_asked ? <RowsPage heating={heating} /> : <AskedPage heating={heating} />}
      {/* Beside keys there is no room for a plate: rows come first, then what they came to. */}
      {hasResult && keys && <HeatPlate judged={judged} unit={unit} isSoFar />}
      {hasResult && body !== null && (
        <HeatShown
          judged={judged}
          plot={plot}
          unit={unit}
          setBy={typed.by === "none" ? null : typed.set_by}
          due={<Thermometer heating={heating} />}
        />
      )}
    </Frame>
  );
}

/** Named where it had failed a check, or was due for one, when the log began. */
function Thermometer({ heating: { typed, instruments, began_at } }: { heating: Heating }) {
  const thermometer = instruments.find(({ id }) => id === typed.instrument);
  if (thermometer === undefined || began_at === null) return null;
  const { is } = standingAt(thermometer.id, began_at);
  if (is !== "failed" && is !== "due") return null;
  return (
    <p>
      <span class="in-question">{HEAT.thermometer_is(thermometer.name, FITNESS[is])}</span>
    </p>
  );
}

function backFrom(batch: string, step: string, entry: string | undefined): string {
  if (entry !== undefined) return `#/heat-log/${batch}/${entry}`;
  return step === "" ? `#/batch/${batch}` : `#/step/${batch}/${step}`;
}

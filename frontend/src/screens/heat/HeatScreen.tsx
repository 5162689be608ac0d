/** Temperatures of a batch over time: what is asked, the rows, what they came to. */
import type { BatchState } from "../../calc/batches.ts";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { HEAT } from "../../text/heat.ts";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { batchOf } from "../common/batches.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { besideNone } from "../common/sentences.ts";
import { AskedPage } from "./AskedPage.tsx";
import { HeatBench, hasKeys } from "./HeatBench.tsx";
import { HeatPlate, HeatShown } from "./HeatShown.tsx";
import { RowsPage } from "./RowsPage.tsx";
import { useHeat } from "./use_heat.ts";
import "./heat.css";

const SHOWN = ["began_at", "judged"];

/** `#/heat/:batch` and `#/heat/:batch/:step`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { batch = "", step = "" } = params;
  const state = batchOf(batch)?.state ?? null;
  if (state !== null) return <Logging key={`${batch}/${step}`} state={state} step={step} />;
  return (
    <Frame
      where={HEAT.where}
      title={HEAT.title}
      gauge={<HeadGauge />}
      benchName={HEAT.bench}
      bench={
        <Foot>
          <BackKey href="#/batches" />
          <MainKey words={HEAT.batch} href={`#/batch/${batch}`} />
        </Foot>
      }
    >
      <Notice>{HEAT.not_here}</Notice>
    </Frame>
  );
}

function Logging({ state, step }: { state: BatchState; step: string }) {
  const { batch, place } = state;
  const heating = useHeat({ batch, step, place });
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
      bench={
        <HeatBench
          heating={heating}
          back={`#/${step === "" ? "batch" : "step"}/${batch}${step === "" ? "" : `/${step}`}`}
        />
      }
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
        />
      )}
    </Frame>
  );
}

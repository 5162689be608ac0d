/** Fill check: packs of a lot weighed one by one against what their label says. */

import type { LotState } from "../../calc/stock.ts";
import { Caution } from "../../parts/Caution.tsx";
import { CupChoice } from "../../parts/Choices.tsx";
import { FieldGroup, NumberField, SelectField, TickField } from "../../parts/Fields.tsx";
import { FitMark } from "../../parts/FitMark.tsx";
import { Frame } from "../../parts/Frame.tsx";
import { Part, Refusal } from "../../parts/Plain.tsx";
import { sheet } from "../../state/sheets.ts";
import { FILL } from "../../text/fill.ts";
import { FITNESS } from "../../text/fitness.ts";
import { figure } from "../../text/numbers.ts";
import { ACTS } from "../../text/stock.ts";
import { nowMs } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { later } from "../common/later.tsx";
import { materialOf } from "../common/lots.ts";
import { Recalled } from "../common/Recalled.tsx";
import { beside, besideNone } from "../common/sentences.ts";
import { FillBench } from "./FillBench.tsx";
import { FillInQuestion, FillPlate } from "./FillSays.tsx";
import { isByVolume, mayHaveDried, planned } from "./fill.ts";
import { type Filling, useFill } from "./use_fill.ts";

// Weighing goes on without the chart.
const PacksLater = later(async () => (await import("../charts/PacksSoFar.tsx")).PacksSoFar);
const SHOWN = ["label", "rules", "lot_size", "density"];

/** `params.lot` is the code. */
export function Screen({ params }: { params: Record<string, string> }) {
  const lot = params.lot ?? "";
  const state = sheet<LotState>(`lot:${lot}`).value?.state ?? null;
  if (state !== null) return <Check state={state} />;
  return (
    <Instead
      where={FILL.where(lot)}
      title={lot}
      benchName={FILL.bench}
      back="#/stock"
      says={ACTS.not_held}
    />
  );
}

function Check({ state }: { state: LotState }) {
  const filling = useFill(state);
  const { fill } = filling;
  return (
    <Frame
      where={FILL.where(state.lot)}
      title={materialOf(state.material)?.name ?? state.lot}
      isRecorded
      gauge={<HeadGauge />}
      benchName={FILL.bench}
      hasKeypad
      plate={fill === null ? undefined : <FillPlate fill={fill} isLive />}
      bench={<FillBench filling={filling} lot={state.lot} />}
    >
      <Refusal sentence={besideNone(filling.found.value, SHOWN)} />
      <Weighed filling={filling} />
      {fill !== null && (
        <FillInQuestion
          fill={{
            ...fill,
            trust: filling.trust,
            instrument: filling.scale?.id ?? null,
            happened_at: new Date(nowMs()).toISOString(),
          }}
        />
      )}
      {fill !== null && <Recalled cited={fill.cited} names={FILL} />}
      {fill !== null && <PacksLater fill={fill} />}
      <Label filling={filling} />
      <Caution about="net_content" />
    </Frame>
  );
}

function Label({ filling }: { filling: Filling }) {
  const { typed, type, open, found } = filling;
  const isOpen = (field: typeof open.value) => ({
    isOpen: open.value === field,
    onOpen: () => {
      open.value = field;
    },
  });
  return (
    <Part title={FILL.label} id="field-amount">
      <NumberField
        label={FILL.declared}
        typed={typed.amount}
        unit={typed.unit}
        {...isOpen("amount")}
        refusal={beside(found.value, "label")}
      />
      <NumberField
        label={FILL.other}
        typed={typed.other}
        unit={typed.other_unit}
        {...isOpen("other")}
      />
      {isByVolume(typed) && (
        <NumberField
          label={FILL.density}
          typed={typed.density}
          unit="g"
          {...isOpen("density")}
          refusal={beside(found.value, "density")}
        />
      )}
      <NumberField
        label={FILL.lot_size}
        typed={typed.lot_size}
        {...isOpen("lot_size")}
        refusal={beside(found.value, "lot_size")}
      />
      <div id="field-rules">
        <FieldGroup label={FILL.rules} refusal={beside(found.value, "rules")}>
          <CupChoice
            name={FILL.rules}
            options={[
              { value: "us", word: FILL.us },
              { value: "eu", word: FILL.eu },
            ]}
            chosen={typed.rules}
            onChoose={(rules) => type({ rules })}
          />
        </FieldGroup>
      </div>
      {mayHaveDried(typed) && (
        <TickField
          label={FILL.dries}
          hint={typed.loses_moisture ? FILL.dries_why : undefined}
          isTicked={typed.loses_moisture}
          onTicked={(loses_moisture) => type({ loses_moisture })}
        />
      )}
      <SelectField
        label={FILL.scale}
        value={filling.scale?.id ?? "none"}
        onValue={(instrument) => type({ instrument })}
        options={[
          ...filling.scales.map((each) => ({ value: each.id, word: each.name })),
          { value: "none", word: FILL.no_scale },
        ]}
      />
    </Part>
  );
}

function Weighed({ filling }: { filling: Filling }) {
  const { typed, open } = filling;
  const of = planned(typed);
  const rows = [
    {
      field: "empty" as const,
      name: FILL.empty,
      masses: typed.tares,
      of: null,
      none: FILL.weigh_empty,
    },
    { field: "full" as const, name: FILL.full, masses: typed.gross, of, none: FILL.none_yet },
  ];
  return (
    <Part title={FILL.packs}>
      <p>{of === null ? FILL.no_plan : FILL.plan(of, figure(typed.lot_size))}</p>
      {filling.is !== null && (
        <p>
          {filling.scale?.name}, <FitMark is={filling.is} />{" "}
          <span class={filling.is === "failed" ? "shout" : ""}>{FITNESS[filling.is]}</span>
        </p>
      )}
      {rows.map(({ field, name, masses, of, none }) => (
        <NumberField
          key={field}
          label={`${name}: ${masses.length}${of === null ? "" : ` / ${of}`}`}
          typed={open.value === field ? typed.shown : ""}
          unit={filling.scale?.unit ?? "g"}
          isOpen={open.value === field}
          onOpen={() => {
            open.value = field;
          }}
          hint={masses.length === 0 ? none : lastOf(masses)}
        />
      ))}
    </Part>
  );
}

const LAST_MOST = 5; // of the packs weighed; a lot may have hundreds

function lastOf(masses: readonly string[]): string {
  const last = masses.slice(-LAST_MOST).map(figure).join(" \u00b7 ");
  return masses.length > LAST_MOST ? `\u2026 ${last}` : last;
}

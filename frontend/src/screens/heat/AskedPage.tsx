/** First of all: what a log is judged by, who set that, and how its rows come. */
import { CupChoice } from "../../parts/Choices.tsx";
import { FieldGroup, NumberField, SelectField, TextField } from "../../parts/Fields.tsx";
import { Part } from "../../parts/Plain.tsx";
import { FITNESS } from "../../text/fitness.ts";
import { HEAT, HOW_OPTIONS, MOMENTS, REFERENCE_OPTIONS, RULE_OPTIONS } from "../../text/heat.ts";
import type { InstrumentShown } from "../common/batches.ts";
import { standingOf } from "../common/instruments.ts";
import { beside } from "../common/sentences.ts";
import { isRead } from "./heat.ts";
import type { Heating, HeatOpen } from "./use_heat.ts";

const UNITS = [
  { value: "degC", word: "\u00b0C" },
  { value: "degF", word: "\u00b0F" },
];

/** The fields, in the order one thinks of them. */
export function AskedPage({ heating }: { heating: Heating }) {
  const { typed, type, found } = heating;
  return (
    <>
      <Part title={HEAT.asked}>
        <div id="field-by">
          <SelectField
            label={HEAT.asked}
            value={typed.by}
            onValue={(by) => type({ by })}
            options={RULE_OPTIONS}
          />
        </div>
        {typed.by !== "" && typed.by !== "none" && (
          <div id="field-set_by">
            <TextField
              label={HEAT.set_by}
              hint={HEAT.set_by_hint}
              value={typed.set_by}
              onValue={(set_by) => type({ set_by })}
              mostChars={120}
              refusal={beside(found.value, "judged.set_by")}
            />
          </div>
        )}
        {typed.by === "lethality" && <Lethal heating={heating} />}
        <Moments heating={heating} />
      </Part>
      <Part title={HEAT.how}>
        <div id="field-how">
          <CupChoice
            name={HEAT.how}
            options={HOW_OPTIONS}
            chosen={HOW_OPTIONS.find(({ value }) => value === typed.how)?.value ?? null}
            onChoose={(how) => type({ how, text: "", at_s: [], temperatures: [] })}
          />
        </div>
        {typed.how === "timer" && <Numbered heating={heating} field="every_min" unit="min" />}
        {!isRead(typed.how) && typed.how !== "" && <UnitChoice heating={heating} />}
        <SelectField
          label={HEAT.thermometer}
          value={typed.instrument || "none"}
          onValue={(instrument) => type({ instrument })}
          options={[
            ...heating.instruments.map((each) => ({ value: each.id, word: thermometerWord(each) })),
            { value: "none", word: HEAT.no_thermometer },
          ]}
        />
      </Part>
    </>
  );
}

/** Its name; with it that it failed a check or is due for one. */
function thermometerWord({ id, name }: InstrumentShown): string {
  const { is } = standingOf(id);
  return is === "failed" || is === "due" ? HEAT.thermometer_is(name, FITNESS[is]) : name;
}

/** Degrees of which scale. */
export function UnitChoice({ heating: { typed, type } }: { heating: Heating }) {
  return (
    <div id="field-unit">
      <FieldGroup label={HEAT.unit}>
        <CupChoice
          name={HEAT.unit}
          options={UNITS}
          chosen={typed.unit}
          onChoose={(unit) => type({ unit })}
        />
      </FieldGroup>
    </div>
  );
}

function Lethal({ heating }: { heating: Heating }) {
  const { typed, type } = heating;
  return (
    <>
      <div id="field-reference">
        <SelectField
          label={HEAT.reference}
          value={typed.reference}
          onValue={(reference) => type({ reference })}
          options={REFERENCE_OPTIONS}
        />
      </div>
      {typed.reference === "own" && (
        <>
          <CupChoice
            name={HEAT.reference}
            options={UNITS}
            chosen={typed.reference_unit}
            onChoose={(reference_unit) => type({ reference_unit })}
          />
          <Numbered heating={heating} field="t_ref" unit={typed.reference_unit} />
          <Numbered heating={heating} field="z" unit={typed.reference_unit} />
        </>
      )}
      <Numbered heating={heating} field="wanted_min" unit="min" hint={HEAT.wanted_hint} />
    </>
  );
}

function Moments({ heating }: { heating: Heating }) {
  const moments = MOMENTS[heating.typed.by];
  if (moments === undefined) return null;
  return (
    <>
      <Numbered heating={heating} field="from_min" unit="min" label={moments[0]} />
      {moments[1] !== null && (
        <Numbered heating={heating} field="to_min" unit="min" label={moments[1]} />
      )}
    </>
  );
}

const LABELS: Readonly<Partial<Record<HeatOpen, string>>> = {
  t_ref: HEAT.t_ref,
  z: HEAT.z,
  wanted_min: HEAT.wanted,
  every_min: HEAT.every,
};

/** One number of the page, typed on the keypad once it is open. */
function Numbered(props: {
  heating: Heating;
  field: Exclude<HeatOpen, "minutes" | "degrees">;
  unit: string;
  label?: string;
  hint?: string;
}) {
  const { heating, field, unit, label, hint } = props;
  const { typed, open, found } = heating;
  return (
    <div id={`field-${field}`}>
      <NumberField
        label={label ?? LABELS[field] ?? field}
        hint={hint}
        typed={typed[field]}
        unit={unit}
        isOpen={open.value === field}
        onOpen={() => {
          open.value = field;
        }}
        refusal={beside(found.value, `judged.${field}`)}
      />
    </div>
  );
}

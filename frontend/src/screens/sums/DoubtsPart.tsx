/** How far each number of a sum may be off: on which scale, and limits that somebody types. */
import { CupChoice } from "../../parts/Choices.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { FieldGroup, NumberField } from "../../parts/Fields.tsx";
import { Part } from "../../parts/Plain.tsx";
import { amountWords } from "../../text/numbers.ts";
import { DOUBT } from "../../text/sums.ts";
import { doubtKey } from "./doubts.ts";
import { unitOf } from "./plan.ts";
import type { Sum } from "./use_sum.ts";

/** Closed until somebody asks; what stands in it counts, open or closed. */
export function DoubtsPart({ sum }: { sum: Sum }) {
  const { typed, type, measured } = sum;
  if (measured.length === 0) return null;
  const isOpen = typed.doubts === "open";
  return (
    <>
      <p class="key-row">
        <Cup isOpen={isOpen} onPress={() => type({ doubts: isOpen ? "" : "open" })}>
          {isOpen ? DOUBT.close : DOUBT.say}
        </Cup>
      </p>
      {isOpen && (
        <Part title={DOUBT.title}>
          <p class="second">{DOUBT.hint}</p>
          <WeighedOn sum={sum} />
          <div class="doubt-fields">
            {measured.map(({ asked, label }) => (
              <Limits key={asked.key} sum={sum} name={doubtKey(asked.key)} label={label}>
                {unitOf(typed, asked)}
              </Limits>
            ))}
          </div>
        </Part>
      )}
    </>
  );
}

function WeighedOn({ sum }: { sum: Sum }) {
  const { scales, typed, type } = sum;
  if (scales.length === 0) return null;
  return (
    <FieldGroup label={DOUBT.weighed_on}>
      <CupChoice
        name={DOUBT.weighed_on}
        options={[
          ...scales.map(({ id, name, division, unit }) => ({
            value: id,
            word: DOUBT.scale(name, amountWords(division, unit)),
          })),
          { value: "", word: DOUBT.no_scale },
        ]}
        chosen={typed.scale ?? ""}
        onChoose={(scale) => type({ scale })}
      />
    </FieldGroup>
  );
}

function Limits(props: { sum: Sum; name: string; label: string; children: string }) {
  const { sum, name, label } = props;
  return (
    <div id={`field-${name}`}>
      <NumberField
        label={DOUBT.off(label)}
        typed={sum.typed[name] ?? ""}
        unit={props.children}
        isOpen={sum.open.value === name}
        onOpen={() => {
          sum.open.value = sum.open.value === name ? null : name;
        }}
      />
    </div>
  );
}

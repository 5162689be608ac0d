/** What a sum asks, as fields: cups to choose, numbers for the keypad, ticks. */
import { CupChoice } from "../../parts/Choices.tsx";
import { FieldGroup, NumberField, TickField } from "../../parts/Fields.tsx";
import type { Asked, OneAsked } from "./plan.ts";
import { unitOf } from "./plan.ts";
import type { Sum } from "./use_sum.ts";

/** In their order; a group stands under its name. */
export function AskedFields({ sum }: { sum: Sum }) {
  return (
    <>
      {sum.asked.map((asked) => (
        <OneField key={asked.is === "group" ? asked.label : asked.key} asked={asked} sum={sum} />
      ))}
    </>
  );
}

function OneField({ asked, sum }: { asked: Asked; sum: Sum }) {
  if (asked.is !== "group") return <Single asked={asked} sum={sum} />;
  return (
    <FieldGroup label={asked.label}>
      <div class="sum-line">
        {asked.asked.map((each) => (
          <Single key={each.key} asked={each} sum={sum} />
        ))}
      </div>
    </FieldGroup>
  );
}

function Single({ asked, sum }: { asked: OneAsked; sum: Sum }) {
  const { typed, type, open } = sum;
  if (asked.is === "choice") {
    return (
      <FieldGroup label={asked.label} hint={asked.hint}>
        <CupChoice
          name={asked.label}
          options={asked.options}
          chosen={typed[asked.key] ?? asked.options[0]?.value ?? null}
          onChoose={(value) => type({ [asked.key]: value })}
        />
      </FieldGroup>
    );
  }
  if (asked.is === "tick") {
    const isTicked = typed[asked.key] !== "no";
    return (
      <TickField
        label={asked.label}
        hint={asked.hint}
        isTicked={isTicked}
        onTicked={(isNow) => type({ [asked.key]: isNow ? "yes" : "no" })}
      />
    );
  }
  return (
    <div id={`field-${asked.key}`}>
      <NumberField
        label={asked.label}
        hint={asked.hint}
        typed={typed[asked.key] ?? ""}
        unit={unitOf(typed, asked)}
        isOpen={open.value === asked.key}
        onOpen={() => {
          open.value = open.value === asked.key ? null : asked.key;
        }}
      />
    </div>
  );
}

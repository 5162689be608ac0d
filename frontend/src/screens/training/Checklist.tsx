/** What was done: ticked by the member, for today. */
import { KINDS } from "../../entries/kinds.ts";
import { TickField } from "../../parts/Fields.tsx";
import { DRILL, TECHNIQUE_WORDS } from "../../text/skills.ts";
import type { Drilling } from "./use_drill.ts";

/** Every technique the record knows, in its order. */
export function techniques(): readonly string[] {
  const field = KINDS.drill_done.fields.find((each) => each.name === "techniques");
  return field?.choices ?? [];
}

/** One tick a technique. */
export function Checklist({ drilling }: { drilling: Drilling }) {
  const { typed, type } = drilling;
  return (
    <div class="checklist">
      <h2>{DRILL.ticks}</h2>
      <p class="second">{DRILL.ticks_why}</p>
      {techniques().map((each) => (
        <TickField
          key={each}
          label={TECHNIQUE_WORDS[each] ?? each}
          isTicked={typed.techniques.includes(each)}
          onTicked={(isTicked) => {
            const others = typed.techniques.filter((one) => one !== each);
            type({ techniques: isTicked ? [...others, each] : others });
          }}
        />
      ))}
    </div>
  );
}

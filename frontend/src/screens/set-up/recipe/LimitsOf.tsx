/** Published limits for what a step checks: proposed with who set them, put in only when pressed. */
import { processLimit } from "../../../calc/process_limits.ts";
import { Caution } from "../../../parts/Caution.tsx";
import { Cup } from "../../../parts/Cup.tsx";
import { Part } from "../../../parts/Plain.tsx";
import { figure } from "../../../text/numbers.ts";
import { BASES, LIMITS } from "../../../text/set_up_recipe.ts";

/** Which row of the table is a limit of which check, and on which side. */
const OF: Readonly<Record<string, readonly { key: string; side: "low" | "high" }[]>> = {
  ph: [{ key: "acid_ph", side: "high" }],
  water_activity: [{ key: "water_activity", side: "high" }],
  minutes: [{ key: "boil_low_acid", side: "low" }],
};

/** What pressing one puts into the step. */
export interface LimitPut {
  low?: string;
  high?: string;
  set_by: string;
}

export function LimitsOf(props: { measures: string; onPut: (put: LimitPut) => void }) {
  const limits = OF[props.measures] ?? [];
  if (limits.length === 0) return null;
  return (
    <Part title={LIMITS.title}>
      {limits.map(({ key, side }) => {
        const row = processLimit(key);
        const says = [row.item, row.detail, row.rule, row.note].filter(Boolean).join(". ");
        return (
          <div key={key}>
            <p>
              <b>
                {LIMITS[side]} {figure(row.limit)}
              </b>{" "}
              {says}
            </p>
            <p class="second">
              {LIMITS.set_by(row.source)} {BASES[row.basis] ?? row.basis}
            </p>
            <p class="key-row">
              <Cup onPress={() => props.onPut({ [side]: row.limit, set_by: row.source })}>
                {LIMITS.put(figure(row.limit))}
              </Cup>
            </p>
          </div>
        );
      })}
      <Caution about="process_limit" />
    </Part>
  );
}

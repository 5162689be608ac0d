/** Which lines are the salt or sugar that is worked out from what was weighed in. */
import { Cup } from "../../../parts/Cup.tsx";
import { FieldGroup } from "../../../parts/Fields.tsx";
import { nameOf } from "../../../state/stock.ts";
import { STEP } from "../../../text/set_up_recipe.ts";
import { type LineTyped, type StepTyped, toggledCount } from "./items.ts";

export function CountsOf(props: {
  step: StepTyped;
  lines: readonly LineTyped[];
  onCounted: (counted: string) => void;
}) {
  const { step, lines, onCounted } = props;
  const counted = new Set(step.counted.split(" ").map((each) => each.split(":")[0]));
  return (
    <FieldGroup label={STEP.counts} refusal={null}>
      <div class="cup-choice">
        {lines.map((line) => (
          <Cup
            key={line.line}
            isChosen={counted.has(line.line)}
            onPress={() => onCounted(toggledCount(step, line))}
          >
            {nameOf("material", line.material)}
          </Cup>
        ))}
      </div>
    </FieldGroup>
  );
}

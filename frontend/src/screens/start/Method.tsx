/** What a recipe says of its method where it is made larger or smaller: steps, minutes, notes. */
import { itemsIn, textIn } from "../../calc/bodies.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Part } from "../../parts/Plain.tsx";
import type { Body } from "../../state/types.ts";
import { amountWords } from "../../text/numbers.ts";
import { START } from "../../text/start.ts";

/** As written, at every size: only amounts are scaled. */
export function Method({ body }: { body: Body }) {
  const unscaled = textIn(body, "does_not_scale");
  const steps = itemsIn(body, "steps");
  return (
    <>
      {steps.length > 0 && (
        <Part title={START.method}>
          <ol class="method">
            {steps.map((step) => (
              <li key={textIn(step, "step")}>
                <span class="rec">{textIn(step, "says")}</span>
                {textIn(step, "minutes") !== null && (
                  <span class="second">
                    {START.takes(amountWords(textIn(step, "minutes"), "min"))}
                  </span>
                )}
              </li>
            ))}
          </ol>
        </Part>
      )}
      {unscaled !== null && (
        <Part title={START.does_not_scale}>
          <p class="rec">{unscaled}</p>
        </Part>
      )}
      {(steps.length > 0 || unscaled !== null) && <Caution about="scaling" />}
    </>
  );
}

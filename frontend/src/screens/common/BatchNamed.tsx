/** Which batch a screen works on: its code whole, then what is made, as far as there is room. */
import type { BatchState } from "../../calc/batches.ts";
import { recipeNameOf } from "./batches.ts";

/** For the first line of the head. */
export function BatchNamed({ batch }: { batch: BatchState }) {
  return (
    <>
      <b class="code">{batch.code}</b> <span class="rec">{recipeNameOf(batch)}</span>
    </>
  );
}

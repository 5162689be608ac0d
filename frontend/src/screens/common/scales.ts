/** The scales of a kitchen whose smallest step is known. */
import { type InstrumentShown, instrumentsInUse } from "./batches.ts";

export type ScaleShown = InstrumentShown & { division: string };

/** `kitchen` is where one stands; null where that matters not. */
export function scalesAt(kitchen: string | null): ScaleShown[] {
  return instrumentsInUse(kitchen).flatMap(({ division, ...each }) =>
    each.sort === "scale" && each.is_here && division !== null ? [{ ...each, division }] : [],
  );
}

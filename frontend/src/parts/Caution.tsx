/** A caution in full, in body size, never behind a tap, beside the number it belongs to. */
import { type CautionAbout, cautionParts } from "../text/cautions.ts";

/** `own` is what the recipe says itself; it comes first, in the voice of what was recorded. */
export interface CautionProps {
  about: CautionAbout | readonly CautionAbout[];
  own?: string | null | undefined;
}

/** Nothing where there is nothing to say. */
export function Caution({ about, own }: CautionProps) {
  const all = typeof about === "string" ? [about] : about;
  const said = cautionParts(all, own ?? "");
  if (said.ours === "") return null;
  return (
    <p class="caution" role="note" data-about={all.join(" ")}>
      {said.own !== "" && <span class="rec">{said.own} </span>}
      {said.ours}
    </p>
  );
}

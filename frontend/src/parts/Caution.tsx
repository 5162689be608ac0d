/** A caution in full, in body size, never behind a tap, beside the number it belongs to. */
import { type CautionAbout, cautionWords } from "../text/cautions.ts";

/** What it is about: one thing or several. */
export interface CautionProps {
  about: CautionAbout | readonly CautionAbout[];
}

/** Nothing where there is nothing to say. */
export function Caution({ about }: CautionProps) {
  const all = typeof about === "string" ? [about] : about;
  const words = cautionWords(all);
  if (words === "") return null;
  return (
    <p class="caution" role="note" data-about={all.join(" ")}>
      {words}
    </p>
  );
}

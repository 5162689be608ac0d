/** Each reading of a drill beside what was drawn: the rings as a list. */
import { itemsIn, textIn } from "../../calc/bodies.ts";
import type { Drill } from "../../calc/skills.ts";
import { Part } from "../../parts/Plain.tsx";
import { dayWords, figure } from "../../text/numbers.ts";
import { SKILLS, SORT_WORDS } from "../../text/skills.ts";
import { useHeld } from "../common/use_held.ts";
import { signedFigure } from "./says.ts";

/** Shown where this phone holds the entry itself, as it was made. */
export function LastReadings({ subject, drill }: { subject: string; drill: Drill }) {
  const held = useHeld(subject, drill);
  const entry = held.value.find((each) => each.entry.id === drill.entry)?.entry;
  // A corrected drill has other readings than its entry; the sheet's own scores stand then.
  if (entry === undefined || drill.was.length > 0) return null;
  return (
    <Part title={SKILLS.readings}>
      <table class="skill-figures readings">
        <caption class="unseen">{dayWords(drill.on)}</caption>
        <thead>
          <tr>
            <th scope="col">{SKILLS.sort}</th>
            <th scope="col">{SKILLS.read}</th>
            <th scope="col">{SKILLS.was}</th>
            <th scope="col">{SKILLS.off}</th>
          </tr>
        </thead>
        <tbody>
          {itemsIn(entry.body, "questions").map((question, at) => (
            <tr key={`${at}`}>
              <th scope="row">{SORT_WORDS[textIn(question, "sort") ?? ""]}</th>
              <td>{figure(textIn(question, "read"))}</td>
              <td>{figure(textIn(question, "truth"))}</td>
              <td>{signedFigure(shortened(drill.scores[at]?.error ?? null))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Part>
  );
}

/** Errors are exact to four places; trailing zeros say nothing to a reader. */
function shortened(error: string | null): string | null {
  return error?.replace(/\.?0+$/, "") ?? null;
}

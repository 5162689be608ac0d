/** The lines at the chosen size, each with what is at hand. */
import { nameOf } from "../../state/stock.ts";
import { START } from "../../text/start.ts";
import { amountText } from "../shared/lots.ts";
import type { Scaled, ScaledLine } from "./scaling.ts";

/** Read only: names, amounts, what is at hand; the one that limits is named. */
export function ScaledLines({ scaled }: { scaled: Scaled }) {
  return (
    <ul class="scaled-lines">
      {scaled.lines.map((line) => (
        <li key={line.line}>
          <span class="rec">{nameOf("material", line.material)}</span>
          <b>{amountText(line.amount, line.unit)}</b>
          <span class="scaled-hand">
            <span class={line.is_short ? "shout" : "second"}>{handWords(line)}</span>
            {scaled.limits === line.line && <span class="second">{START.limits}</span>}
          </span>
        </li>
      ))}
    </ul>
  );
}

function handWords(line: ScaledLine): string {
  if (line.at_hand === null) return START.not_known;
  const words = amountText(line.at_hand, line.unit);
  return line.is_short ? START.short(words) : START.at_hand(words);
}

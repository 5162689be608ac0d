/** What the two ends of a way are called: a source, batch, recipient, stall day, lot. */
import { idIn, typeIn } from "../../calc/subjects.ts";
import { nameOf } from "../../state/stock.ts";
import { dayWords } from "../../text/numbers.ts";

const DAY_CHARS = "2026-11-10".length;

/** `type:id` as words; the id itself while this phone does not know the name. */
export function endName(subject: string): string {
  const type = typeIn(subject);
  const id = idIn(subject);
  if (type === "lot") return id;
  if (type !== "day") return nameOf(type, id);
  return `${placeOfDay(subject)}, ${dayWords(id.slice(-DAY_CHARS))}`;
}

/** The stall of a stall day, which is `day:<place>:<day>`. */
export function placeOfDay(subject: string): string {
  return nameOf("place", idIn(subject).slice(0, -DAY_CHARS - 1));
}

/** What the two ends of a way are called: a source, batch, recipient, stall day, lot. */
import { idIn } from "../../calc/bodies.ts";
import { nameOf } from "../../state/stock.ts";
import { dayWords } from "../../text/numbers.ts";

const DAY_CHARS = "2026-11-10".length;

/** `type:id` as words; the id itself while this phone does not know the name. */
export function endName(subject: string): string {
  const type = subject.slice(0, subject.indexOf(":"));
  const id = idIn(subject);
  if (type === "lot") return id;
  if (type !== "day") return nameOf(type, id);
  // A stall day is `<place>:<day>`.
  return `${nameOf("place", id.slice(0, -DAY_CHARS - 1))}, ${dayWords(id.slice(-DAY_CHARS))}`;
}

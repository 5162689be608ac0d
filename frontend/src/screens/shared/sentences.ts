/** From what saving answered to one sentence, beside the field it is about. */
import { SENTENCES } from "../../entries/kinds.ts";
import type { Refusal, Saved } from "../../state/types.ts";
import { fieldWords, TROUBLE } from "../../text/refusals.ts";

/** What stands in the way of saving: a sentence, and the field it belongs to ("" for none). */
export interface Hindrance {
  field: string;
  sentence: string;
}

/** What stands in the way, or null when it was saved. */
export function hindrance(answer: Saved): Hindrance | null {
  if ("saved" in answer) return null;
  if ("trouble" in answer) return { field: "", sentence: TROUBLE[answer.trouble] };
  return { field: answer.refusal.field ?? "", sentence: refusalSentence(answer.refusal) };
}

/** The sentence if the hindrance is about this field (or a part of it), else null. */
export function beside(found: Hindrance | null, field: string): string | null {
  if (found === null) return null;
  const isHere = found.field === field || found.field.startsWith(`${field}.`);
  return isHere ? found.sentence : null;
}

/** The sentence if no field on the screen shows it. */
export function besideNone(found: Hindrance | null, shown: readonly string[]): string | null {
  if (found === null || shown.some((field) => beside(found, field) !== null)) return null;
  return found.sentence;
}

function refusalSentence(refusal: Refusal): string {
  const sentences: Record<string, string> = SENTENCES;
  const words = sentences[refusal.key] ?? refusal.key;
  return words.replace(/\{(\w+)\}/g, (hole, name: string) =>
    name === "field" ? fieldWords(refusal.field ?? "") : (refusal[name] ?? hole),
  );
}

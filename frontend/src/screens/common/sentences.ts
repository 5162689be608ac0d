/** From what saving answered to one sentence, beside the field it is about. */
import { sentence } from "../../entries/refusals.ts";
import type { Saved, SavedTogether } from "../../state/types.ts";
import { fieldWords, TROUBLE } from "../../text/refusals.ts";

/** What stands in the way of saving: a sentence, and the field it belongs to ("" for none). */
export interface Hindrance {
  field: string;
  sentence: string;
}

/** What stands in the way, or null when it was saved. */
export function hindrance(answer: Saved | SavedTogether): Hindrance | null {
  if ("saved" in answer) return null;
  if ("trouble" in answer) return { field: "", sentence: TROUBLE[answer.trouble] };
  const { refusal } = answer;
  return { field: refusal.field, sentence: sentence(refusal, fieldWords(refusal.field)) };
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

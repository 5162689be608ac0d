/** Every way an entry is refused; the sentences come from the table of kinds. */

import { type RefusalKey, SENTENCES } from "./kinds.ts";

/**
 * What a person can put right. It never repeats what was typed: that may be unstorable.
 * `key` names the sentence, `field` is the path in the body, `params` fill the sentence.
 */
export interface Refusal {
  readonly refused: true;
  readonly key: RefusalKey;
  readonly field: string;
  readonly params: Readonly<Record<string, string>>;
}

export function refusal(
  key: RefusalKey,
  field: string,
  params: Readonly<Record<string, string>> = {},
): Refusal {
  return { refused: true, key, field, params };
}

/** Whether parsing answered with a refusal. */
export function isRefusal(value: unknown): value is Refusal {
  return (
    typeof value === "object" && value !== null && "refused" in value && value.refused === true
  );
}

/** The sentence of a refusal; `named` is the name a person knows the field by. */
export function sentence(refused: Refusal, named?: string): string {
  const words: Record<string, string> = {
    ...refused.params,
    field: named ?? (refused.field || "The entry"),
  };
  return SENTENCES[refused.key].replace(/\{(\w+)\}/g, (hole, name) => words[name] ?? hole);
}

/** What can be read at all: numbers kept exact, and how deep and long an entry may be. */

import { type Refusal, refusal } from "./refusals.ts";

export const DEPTH_MOST = 20; // R32
export const TEXT_CHARS_MOST = 10_000; // R32

/** Why nobody should look into this value further; `depth` is the level it stands on. */
export function unreadable(value: unknown, at: string, depth = 1): Refusal | null {
  const waiting: [unknown, number][] = [[value, depth]]; // a stack, for no depth is known yet
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [part, level] = next;
    if (typeof part === "string" && isTooLong(part)) {
      return refusal("entry.text_too_long", at, { most: String(TEXT_CHARS_MOST) });
    }
    if (typeof part === "number" && !Number.isSafeInteger(part)) {
      return refusal("entry.not_exact", at);
    }
    if (typeof part !== "object" || part === null) continue;
    if (level > DEPTH_MOST) return refusal("entry.too_deep", at, { most: String(DEPTH_MOST) });
    for (const [name, inner] of Object.entries(part)) {
      waiting.push([name, level + 1], [inner, level + 1]);
    }
  }
  return null;
}

/** Characters are code points, as the server counts them. */
export function charCount(text: string): number {
  let count = 0;
  for (const _ of text) count += 1;
  return count;
}

function isTooLong(text: string): boolean {
  return text.length > TEXT_CHARS_MOST && charCount(text) > TEXT_CHARS_MOST;
}

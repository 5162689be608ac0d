/** What a key does to typed digits. What was typed is kept as it was read: "12.50" stays "12.50". */

/** How much may be typed, and whether a point or a minus makes sense. */
export interface TypingRules {
  mostChars: number;
  isWhole: boolean;
  isSigned: boolean;
}

const PLACES_MOST = 6; // an entry takes no more, and it is said here rather than at the end

/** The text after one key; a key that makes no sense here changes nothing. */
export function afterKey(typed: string, key: string, rules: TypingRules): string {
  if (key === "Backspace") return typed.slice(0, -1);
  if (key === "-") return rules.isSigned ? turned(typed) : typed;
  if (typed.length >= rules.mostChars) return typed;
  if (key === "." || key === ",") return rules.isWhole ? typed : withPoint(typed);
  if (!/^\d$/.test(key) || (typed.split(".")[1]?.length ?? 0) >= PLACES_MOST) return typed;
  return typed === "0" || typed === "-0" ? typed.slice(0, -1) + key : typed + key;
}

function turned(typed: string): string {
  return typed.startsWith("-") ? typed.slice(1) : `-${typed}`;
}

function withPoint(typed: string): string {
  if (typed.includes(".")) return typed;
  return typed === "" || typed === "-" ? `${typed}0.` : `${typed}.`;
}

/** Typed digits as a number of the wire, or null while they are none yet ("12." is 12). */
export function typedNumber(typed: string): string | null {
  const text = typed.endsWith(".") ? typed.slice(0, -1) : typed;
  return /^-?\d+(\.\d+)?$/.test(text) ? text : null;
}

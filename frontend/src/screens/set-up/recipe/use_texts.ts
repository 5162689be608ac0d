/** The texts being brought in: what was pasted, and each chosen file as a draft of its own. */
import { useDrafted } from "../../common/drafted.ts";

/** One text; `name` is that of its file, "" for what was pasted. */
export type SourceText = { name: string; text: string };

const PASTED: SourceText = { name: "", text: "" };
const BLANK = { texts: [PASTED], at: 0 };

/** All texts, and the one that is looked at. */
export interface Texts {
  all: readonly SourceText[];
  at: number;
  now: SourceText;
  look: (at: number) => void;
  type: (text: string) => void;
  /** Adds files behind what stands there, and looks at the first of them. */
  add: (files: readonly SourceText[]) => void;
  takeAway: () => void;
}

/** Kept on this phone until somebody takes them away. */
export function useTexts(): Texts {
  const { typed, type } = useDrafted("set-up/recipe-import", BLANK);
  const { texts } = typed.value;
  const at = Math.min(typed.value.at, texts.length - 1);
  const now = texts[at] ?? PASTED;
  return {
    all: texts,
    at,
    now,
    look: (to) => type({ at: to }),
    type: (text) =>
      type({ texts: texts.map((each, place) => (place === at ? { ...each, text } : each)) }),
    add: (files) => type(added(texts, files)),
    takeAway: () => type(withoutOne(texts, at)),
  };
}

/** A file of the name of another gets a number behind it; the blank text gives way to a file. */
export function added(
  texts: readonly SourceText[],
  files: readonly SourceText[],
): { texts: SourceText[]; at: number } {
  const all = texts.filter(({ name, text }) => name !== "" || text !== "");
  const at = all.length;
  for (const { name, text } of files) {
    const count = all.filter((each) => each.name.replace(/ \(\d+\)$/, "") === name).length;
    all.push({ name: count === 0 ? name : `${name} (${count + 1})`, text });
  }
  return all.length === 0
    ? { texts: [PASTED], at: 0 }
    : { texts: all, at: Math.min(at, all.length - 1) };
}

/** The others, with the one before it looked at. */
export function withoutOne(
  texts: readonly SourceText[],
  at: number,
): { texts: SourceText[]; at: number } {
  const left = texts.filter((_, place) => place !== at);
  return { texts: left.length === 0 ? [PASTED] : left, at: Math.max(0, at - 1) };
}

/** The verdict plate: a small drawing of the truth, the word, and what to do. */
import type { ComponentChildren } from "preact";

/** `too_little` mirrors the sign. `none` is nothing typed yet. */
export type VerdictKind = "within" | "cannot_tell" | "outside" | "held" | "none";

/** Two limits and the reading with its whisker, drawn as they lie, on a 52 x 30 field. */
const TRUTHS: Record<Exclude<VerdictKind, "none">, ComponentChildren> = {
  within: (
    <>
      <path class="limit" d="M5 2v26M47 2v26" />
      <path class="reach" d="M16 15h20M16 10v10M36 10v10" />
      <circle class="dot" cx="26" cy="15" r="4.5" />
    </>
  ),
  cannot_tell: (
    <>
      <path class="limit" d="M5 2v26M34 1v28" />
      <path class="reach" d="M20 15h28M20 10v10M48 10v10" />
      <circle class="ring" cx="34" cy="15" r="6" />
      <path class="dot" d="M34 9a6 6 0 0 0 0 12z" />
    </>
  ),
  outside: (
    <>
      <path class="limit" d="M4 2v26M22 2v26" />
      <path class="reach" d="M31 15h17M31 10v10M48 10v10" />
      <circle class="dot" cx="39.5" cy="15" r="4.5" />
    </>
  ),
  held: <path class="reach" d="M7 12h38v15H7zM7 12l38 15M7 27l38-15M15 12V8a11 6 0 0 1 22 0v4" />,
};

/** What a plate says. `why` is what to do next, one sentence. */
export interface VerdictProps {
  verdict: VerdictKind;
  isTooLittle?: boolean | undefined;
  word?: ComponentChildren | undefined;
  why: ComponentChildren;
  /** A plate that changes while one types is read out; one in a list is not. */
  isLive?: boolean | undefined;
}

/** A square plate: it can only be read. */
export function Verdict({ verdict, isTooLittle, word, why, isLive }: VerdictProps) {
  return (
    <div class={`verdict ${verdict}`} role={isLive ? "status" : undefined}>
      {verdict !== "none" && (
        <svg
          class={isTooLittle ? "truth mirrored" : "truth"}
          width="52"
          height="30"
          viewBox="0 0 52 30"
          aria-hidden="true"
        >
          {TRUTHS[verdict]}
        </svg>
      )}
      <p class="verdict-words">
        {word && <b>{word}</b>} <span>{why}</span>
      </p>
    </div>
  );
}

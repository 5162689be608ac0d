/** The state of an instrument as a small drawing of the truth; its word always stands beside it. */
const LOOKS = {
  // Between the limits, on a limit, beyond it, and limits with nothing between.
  fit: ["M3 2v14M17 2v14", "M10 5.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7z"],
  due: [
    "M3 2v14M17 2v14M10 5.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7z",
    "M10 5.5a3.5 3.5 0 0 0 0 7z",
  ],
  failed: ["M3 2v14M11 2v14", "M17 5.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7z"],
  not_checked: ["M3 2v3M3 8v3M3 14v2M17 2v3M17 8v3M17 14v2", ""],
} as const;

/** Two limits and what was found, as they lie. */
export function FitMark({ is }: { is: keyof typeof LOOKS }) {
  const [line, full] = LOOKS[is];
  return (
    <svg class={`fit-mark ${is}`} width="22" height="18" viewBox="0 0 22 18" aria-hidden="true">
      <path class="icon-line" d={line} />
      <path class="icon-full" d={full} />
    </svg>
  );
}

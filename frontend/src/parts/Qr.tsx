/** A QR code drawn as one path, on the phone, without signal. */
import { generate } from "lean-qr";
import { useMemo } from "preact/hooks";

const QUIET_MODULES = 4; // ISO/IEC 18004: the quiet zone is four modules wide

/** The dark modules as rows of one path, run by run. */
function darkRuns(text: string): { path: string; size: number } {
  const code = generate(text);
  const runs: string[] = [];
  for (let y = 0; y < code.size; y += 1) {
    for (let x = 0; x < code.size; x += 1) {
      if (!code.get(x, y)) continue;
      let length = 1;
      while (code.get(x + length, y)) length += 1;
      runs.push(`M${x + QUIET_MODULES} ${y + QUIET_MODULES}h${length}v1h-${length}z`);
      x += length;
    }
  }
  return { path: runs.join(""), size: code.size + 2 * QUIET_MODULES };
}

/** `text` as a code; `says` names what it holds. Always ink on white, or readers fail. */
export function Qr({
  text,
  says,
  class: look,
}: {
  text: string;
  says: string;
  class?: string | undefined;
}) {
  const { path, size } = useMemo(() => darkRuns(text), [text]);
  return (
    <svg class={`qr ${look ?? ""}`} viewBox={`0 0 ${size} ${size}`} role="img" aria-label={says}>
      <rect class="qr-paper" width={size} height={size} />
      <path class="qr-ink" d={path} />
    </svg>
  );
}

/** One drawn sign. It never stands without its word, so it is hidden from readers of the screen. */
import { SIGNS, type SignName } from "./signs.ts";

/** A sign of `size` px (28 unless told). */
export function Icon({ name, size = 28 }: { name: SignName; size?: number | undefined }) {
  const [line, full] = SIGNS[name];
  return (
    <svg class="icon" width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
      <path class="icon-line" d={line} />
      <path class="icon-full" d={full} />
    </svg>
  );
}

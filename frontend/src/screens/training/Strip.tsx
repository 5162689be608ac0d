/** A mean with its spread on a line whose middle is the truth; the figures beside it say the same. */
import type { Figures } from "../../calc/skills.ts";
import { percent } from "../../parts/drawing.ts";
import { numberOf } from "./says.ts";

/** `reach` is what the ends of the line stand for, in divisions. */
export function Strip(props: { figures: Pick<Figures, "bias" | "spread">; reach: number }) {
  const { figures, reach } = props;
  const [bias, spread] = [numberOf(figures.bias), numberOf(figures.spread)];
  const x = (value: number) => `${percent(value + reach, 2 * reach)}%`;
  return (
    <svg class="strip" width="100%" height="26" aria-hidden="true">
      <line class="true-line" x1="50%" x2="50%" y1="1" y2="25" />
      <line class="whisker-line" x1={x(bias - spread)} x2={x(bias + spread)} y1="13" y2="13" />
      <line class="whisker-line" x1={x(bias - spread)} x2={x(bias - spread)} y1="8" y2="18" />
      <line class="whisker-line" x1={x(bias + spread)} x2={x(bias + spread)} y1="8" y2="18" />
      <circle class="drop" cx={x(bias)} cy="13" r="5" />
    </svg>
  );
}

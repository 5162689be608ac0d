/** Each drill a point: its mean and spread around the truth, the last one on top. */
import type { Drill, Figures } from "../../calc/skills.ts";
import { Part } from "../../parts/Plain.tsx";
import { dayWords, figure } from "../../text/numbers.ts";
import { SKILLS } from "../../text/skills.ts";
import { Strip } from "./Strip.tsx";
import { meanShown, numberOf, signedFigure, spreadShown } from "./says.ts";

/** All drills of one member on one scale. */
export function OverTime({ drills }: { drills: readonly Drill[] }) {
  const reach = reachOf(drills.map((drill) => drill.whole));
  return (
    <Part title={SKILLS.over_time}>
      <p class="second">{SKILLS.over_time_why}</p>
      <ol class="over-time" reversed>
        {[...drills].reverse().map((drill) => (
          <li key={drill.entry}>
            <span>{dayWords(drill.on)}</span>
            <Strip figures={drill.whole} reach={reach} />
            <b>
              {signedFigure(meanShown(drill.whole.bias, drill.whole.spread))}
              <small> ± {figure(spreadShown(drill.whole.spread))}</small>
            </b>
          </li>
        ))}
      </ol>
    </Part>
  );
}

/** How far from the truth the widest of them reaches, in divisions. */
export function reachOf(all: readonly Pick<Figures, "bias" | "spread">[]): number {
  return Math.max(1, ...all.map(({ bias, spread }) => Math.abs(numberOf(bias)) + numberOf(spread)));
}

/** What is still on this phone: drops above a vessel. No banner, nothing red. */
import { figure } from "../text/numbers.ts";
import { PARTS } from "../text/parts.ts";

/** `since` is ready to show ("since 8:05", "10:24"); `stage` says how long it has been. */
export interface WaitingGaugeProps {
  count: number;
  stage: "none" | "usual" | "day" | "days";
  since?: string | undefined;
  /** The way to the outbox, where it is not the outbox itself. */
  href?: string;
  isLarge?: boolean | undefined;
}

const LEVELS = { none: 18, usual: 25, day: 31, days: 35 };
const DROPS = { none: [], usual: [18], day: [9, 18, 27], days: [9, 18, 27] };

function Vessels({ stage, height }: { stage: WaitingGaugeProps["stage"]; height: number }) {
  const level = LEVELS[stage];
  return (
    <svg
      class="drops"
      height={height}
      width={(height * 36) / 46}
      viewBox="0 0 36 46"
      aria-hidden="true"
    >
      <path
        class="icon-full"
        d={`M4 ${level}q4 4.5 14 4.5t14-4.5V38a5 5 0 0 1-5 5H9a5 5 0 0 1-5-5z`}
      />
      <path class="icon-line" d="M4 17v21a5 5 0 0 0 5 5h18a5 5 0 0 0 5-5V17" />
      {DROPS[stage].map((x, index) => (
        <path
          key={x}
          class="icon-line"
          transform={`translate(${x} ${index % 2 === 1 ? 2 : 6})`}
          d="M0-1c-2 2.7-2.9 4-2.9 5.2a2.9 2.9 0 0 0 5.8 0C2.9 3 2 1.7 0-1z"
        />
      ))}
    </svg>
  );
}

function afterwards(stage: WaitingGaugeProps["stage"]): string {
  if (stage === "usual") return PARTS.as_usual;
  if (stage === "day") return PARTS.find_signal;
  return stage === "days" ? PARTS.save_a_copy : "";
}

/** Small in the head (a way to the outbox), large in the outbox. */
export function WaitingGauge({ count, stage, since, href, isLarge }: WaitingGaugeProps) {
  const words = count === 0 ? PARTS.none_waiting : PARTS.waiting(figure(String(count)));
  if (!isLarge) {
    return (
      <a class={`gauge ${stage}`} href={href ?? ""}>
        <Vessels stage={stage} height={38} />
        <span>
          <b>{words}</b>
          {(stage === "day" || stage === "days") && <em>{afterwards(stage)}</em>}
        </span>
      </a>
    );
  }
  return (
    <p class={`gauge large ${stage}`}>
      <Vessels stage={stage} height={110} />
      <span>
        <b>{count === 0 ? PARTS.all_handed_over : words}</b>
        <span>{since}</span>
        <em>{afterwards(stage)}</em>
      </span>
    </p>
  );
}

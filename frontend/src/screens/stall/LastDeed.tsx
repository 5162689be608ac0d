/** The last sale, or what was not one, with the way to take it back. */
import { Cup } from "../../parts/Cup.tsx";
import { clockWords, figure } from "../../text/numbers.ts";
import { PARTS } from "../../text/parts.ts";
import { STALL } from "../../text/stall.ts";
import { zone } from "../shared/edge.ts";
import type { Last } from "./selling.ts";

/** It stands above the ruler: the bench grows upwards, so that no key moves under a thumb. */
export function LastDeed({ last, onTakeBack }: { last: Last; onTakeBack: () => void }) {
  return (
    <div class="last-deed">
      <p class="second" role="status">
        {STALL.last(clockWords(last.at, zone()), figure(last.count))}{" "}
        <span class="rec">{last.name}</span> {STALL.did[last.deed]}
        <br />
        {STALL.kept}
      </p>
      <Cup onPress={onTakeBack}>{PARTS.take_back}</Cup>
    </div>
  );
}

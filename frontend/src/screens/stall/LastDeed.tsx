/** The last sale, or what was not one, with the way to take it back. */
import type { Signal } from "@preact/signals";
import { Cup } from "../../parts/Cup.tsx";
import { clockWords, figure } from "../../text/numbers.ts";
import { PARTS } from "../../text/parts.ts";
import { STALL } from "../../text/stall.ts";
import { zone } from "../common/edge.ts";
import type { Last } from "./selling.ts";

/**
 * It stands above the ruler: the bench grows upwards, so that no key moves under a thumb. Given as
 * a signal, so that "kept" is said without drawing the whole table before it.
 */
export function LastDeed(props: { last: Signal<Last | null>; onTakeBack: () => void }) {
  const last = props.last.value;
  if (last === null) return null;
  return (
    <div class="last-deed">
      <p class="second" role="status">
        {STALL.last(clockWords(last.at, zone()), figure(last.count))}{" "}
        <span class="rec">{last.name}</span> {STALL.did[last.deed]}
        <br />
        {STALL.kept}
      </p>
      <Cup onPress={props.onTakeBack}>{PARTS.take_back}</Cup>
    </div>
  );
}

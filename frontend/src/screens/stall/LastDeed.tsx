/** The last sale, or what was not one, with the way to take it back. */
import { Cup } from "../../parts/Cup.tsx";
import { clockWords, figure } from "../../text/numbers.ts";
import { PARTS } from "../../text/parts.ts";
import { STALL } from "../../text/stall.ts";
import { zone } from "../shared/edge.ts";
import type { Last } from "./selling.ts";

/** Empty before the first sale; its place is kept, so that nothing moves under a thumb. */
export function LastDeed({ last, onTakeBack }: { last: Last | null; onTakeBack: () => void }) {
  return (
    <div class="last-deed">
      <p class="second" role="status">
        {last !== null && (
          <>
            {STALL.last(clockWords(last.at, zone()), figure(last.count))}{" "}
            <span class="rec">{last.name}</span> {STALL.did[last.deed]}
            <br />
            {STALL.kept}
          </>
        )}
      </p>
      {last !== null && <Cup onPress={onTakeBack}>{PARTS.take_back}</Cup>}
    </div>
  );
}

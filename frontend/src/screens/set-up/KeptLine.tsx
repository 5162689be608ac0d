/** What was kept last, with the way to take it back: said where one returns to. */
import { useSignal } from "@preact/signals";
import { Cup } from "../../parts/Cup.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { PARTS } from "../../text/parts.ts";
import { SET_UP } from "../../text/set_up.ts";
import { keptAt, takeBackLast } from "./kept.ts";

/** Nothing when nothing was kept a moment ago. */
export function KeptLine({ at }: { at: string }) {
  const trouble = useSignal<string | null>(null);
  const kept = keptAt(at);
  if (kept === null) return null;
  return (
    <>
      <div class="kept-line" role="status">
        <span>
          <span class="rec">{kept.name}</span> {kept.isNew ? SET_UP.kept_new : SET_UP.kept_changed}
          <span class="second">{PARTS.kept_here}</span>
        </span>
        <Cup
          onPress={() =>
            void takeBackLast().then((sentence) => {
              trouble.value = sentence;
            })
          }
        >
          {PARTS.take_back}
        </Cup>
      </div>
      <Refusal sentence={trouble.value} />
    </>
  );
}

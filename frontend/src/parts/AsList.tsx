/** A chart's points as rows to read, behind one tap. */
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { PARTS } from "../text/parts.ts";
import { Cup } from "./Cup.tsx";
import { Facts } from "./Plain.tsx";

/** Everything that is drawn, and what found no room in the drawing. */
export function AsList({ rows }: { rows: readonly { name: string; value: ComponentChildren }[] }) {
  const isListed = useSignal(false);
  return (
    <>
      <p class="key-row">
        <Cup
          isOpen={isListed.value}
          onPress={() => {
            isListed.value = !isListed.value;
          }}
        >
          {PARTS.as_list}
        </Cup>
      </p>
      {isListed.value && <Facts rows={rows} />}
    </>
  );
}

/** The trace of one lot: over held sheets at once, and as the server knows it when asked. */
import { useSignal } from "@preact/signals";
import { askedTrace, heldTrace } from "../../state/trace.ts";
import { clockWords } from "../../text/numbers.ts";
import { TRACE } from "../../text/trace.ts";
import { nowMs, zone } from "../common/edge.ts";
import { type BothWays, earliestDay } from "./steps.ts";

/** What is shown, where it comes from, and how complete it is. */
export interface Traced {
  ways: BothWays;
  says: string;
  isComplete: boolean;
  isAsked: boolean;
  isAsking: boolean;
  trouble: string | null;
  ask: () => void;
}

/** `lot` is the code in the middle. */
export function useTrace(lot: string): Traced {
  const asked = useSignal<{ lot: string; ways: BothWays; at: string } | null>(null);
  const isAsking = useSignal(false);
  const trouble = useSignal<string | null>(null);
  const held = { back: heldTrace(lot, "back"), forward: heldTrace(lot, "forward") };
  const server = asked.value?.lot === lot ? asked.value : null;
  const ways = server?.ways ?? held;
  const missing = new Set([...ways.back.missing, ...ways.forward.missing]).size;
  const isComplete = ways.back.is_complete && ways.forward.is_complete;
  const since = earliestDay(held);
  const origin =
    server !== null
      ? TRACE.asked(server.at)
      : since === null
        ? TRACE.held
        : TRACE.held_since(since);

  async function ask() {
    isAsking.value = true;
    const [back, forward] = await Promise.all([
      askedTrace(lot, "back"),
      askedTrace(lot, "forward"),
    ]);
    isAsking.value = false;
    if ("trace" in back && "trace" in forward) {
      const at = clockWords(new Date(nowMs()).toISOString(), zone());
      asked.value = { lot, ways: { back: back.trace, forward: forward.trace }, at };
      trouble.value = null;
    } else {
      const isUnknown = "code" in back && back.code === "not_found";
      trouble.value = isUnknown ? TRACE.not_found : TRACE.no_answer;
    }
  }
  return {
    ways,
    says: `${origin}: ${isComplete ? TRACE.complete : TRACE.missing(missing)}.`,
    isComplete,
    isAsked: server !== null,
    isAsking: isAsking.value,
    trouble: trouble.value,
    ask: () => void ask(),
  };
}

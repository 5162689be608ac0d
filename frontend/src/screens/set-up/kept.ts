/** What was kept last in setting up, so that the list can say so and take it back. */
import { signal } from "@preact/signals";
import { takeBack } from "../../state/record.ts";
import { nowMs } from "../common/edge.ts";
import { hindrance } from "../common/sentences.ts";

/** One definition as it was kept. */
export interface KeptLast {
  entry: string;
  name: string;
  isNew: boolean;
  /** The list one returns to, and when. */
  back: string;
  at_ms: number;
}

/** Later a slip is no slip any more: then one changes it, or retires it. */
const SLIP_MS = 10 * 60_000;

const keptLast = signal<KeptLast | null>(null);

/** To be said on the list one returns to. */
export function tellKept(kept: Omit<KeptLast, "at_ms">): void {
  keptLast.value = { ...kept, at_ms: nowMs() };
}

/** What was kept a moment ago and belongs to this list, or null. */
export function keptAt(back: string): KeptLast | null {
  const kept = keptLast.value;
  return kept?.back === back && nowMs() - kept.at_ms < SLIP_MS ? kept : null;
}

/** Takes the last one back as a slip; answers what stands in the way, or null. */
export async function takeBackLast(): Promise<string | null> {
  const kept = keptLast.value;
  if (kept === null) return null;
  const answer = await takeBack(kept.entry);
  if ("saved" in answer) keptLast.value = null;
  return hindrance(answer)?.sentence ?? null;
}

/** What was kept last in setting up, so that the list can say so and take it back. */
import { signal } from "@preact/signals";
import { takeBack } from "../../state/record.ts";
import { hindrance } from "../shared/sentences.ts";

/** One definition as it was kept. */
export interface KeptLast {
  entry: string;
  name: string;
  isNew: boolean;
}

/** Null as soon as one leaves setting up or takes it back. */
export const keptLast = signal<KeptLast | null>(null);

/** To be said on the list one returns to. */
export function tellKept(kept: KeptLast): void {
  keptLast.value = kept;
}

/** Takes the last one back as a slip; answers what stands in the way, or null. */
export async function takeBackLast(): Promise<string | null> {
  const kept = keptLast.value;
  if (kept === null) return null;
  const answer = await takeBack(kept.entry);
  if ("saved" in answer) keptLast.value = null;
  return hindrance(answer)?.sentence ?? null;
}

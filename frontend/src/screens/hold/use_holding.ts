/** The form of a hold: what is typed, what is missing, the entry it becomes. */
import type { Signal } from "@preact/signals";
import { record } from "../../state/record.ts";
import { HOLD } from "../../text/holds.ts";
import { useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { useFound } from "../common/use_found.ts";
import { type HeldThing, openCauses } from "./thing.ts";

/** Every field as it was typed; "" is not answered yet. */
interface HoldTyped {
  [field: string]: string;
  decision: string;
  because: string;
  reason: string;
}

const BLANK: HoldTyped = { decision: "", because: "", reason: "" };

/** What the parts of the screen share. */
export interface Holding {
  typed: HoldTyped;
  type: (part: Partial<HoldTyped>) => void;
  lacks: Hindrance | null;
  words: string;
  found: Signal<Hindrance | null>;
  save: () => Promise<void>;
}

/** `decides`: the person may decide about what is held; else something is put on hold. */
export function useHolding(thing: HeldThing, decides: boolean): Holding {
  const form = useDrafted<HoldTyped>(`hold/${thing.subject}/${decides}`, BLANK);
  const found = useFound(form.typed);
  const typed = form.typed.value;
  const decision = typed.decision === "release" ? "release" : "hold";

  async function save() {
    const reason = typed.reason.trim();
    const decides_about = openCauses(thing.hold).map(({ entry }) => ({ entry }));
    const answer = decides
      ? await record("hold_decided", { ...thing.about, decision, decides: decides_about, reason })
      : await record("held", { ...thing.about, because: typed.because, reason });
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field);
    tremble(1);
    form.clear();
    window.scrollTo(0, 0); // to the plate that says how it stands now
  }

  return {
    typed,
    type: form.type,
    lacks: missing(typed, decides),
    words: decides && typed.decision !== "" ? HOLD.decide[decision] : HOLD.put,
    found,
    save,
  };
}

/** The first open thing, or null. */
function missing(typed: HoldTyped, decides: boolean): Hindrance | null {
  if (decides && typed.decision === "") {
    return { field: "decision", sentence: HOLD.decide_first };
  }
  if (!decides && typed.because === "") return { field: "because", sentence: HOLD.because_first };
  return typed.reason.trim() === "" ? { field: "reason", sentence: HOLD.reason_first } : null;
}

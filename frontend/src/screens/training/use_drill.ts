/** All a drill knows and does: where it is, what was typed, saving it. */
import { useSignal } from "@preact/signals";
import { record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { current } from "../../state/session.ts";
import { remember, remembered } from "../../state/settings.ts";
import { type InstrumentShown, instrumentsInUse } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { chanceBytes } from "../common/edge.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import {
  BLANK_DRILL,
  type DrillTyped,
  drillBody,
  LEFT_OUT,
  QUESTIONS_COUNT,
  questionsOf,
  STEPS_COUNT,
  seedOf,
  takenUp,
  WEIGHINGS_COUNT,
  withRead,
} from "./asked.ts";

const SEED_BYTES = 4;
const REMEMBERED = "instrument:drill";

/** One drill of the member on the screen; it survives a closed tab at any step. */
export function useDrill() {
  const { typed, type, clear } = useDrafted<DrillTyped>("drill", BLANK_DRILL);
  const found = useSignal<Hindrance | null>(null);
  const scales = instrumentsInUse(null).filter((each) => each.sort === "scale");
  const choice = typed.value.instrument || remembered(REMEMBERED) || "";
  const scale = scales.find((each) => each.id === choice) ?? null;
  const { seed, at, reads } = typed.value;

  function choose(instrument: InstrumentShown | null) {
    if (instrument === null) {
      const past = QUESTIONS_COUNT + WEIGHINGS_COUNT;
      return type({ instrument: LEFT_OUT, at: past, reads: reads.slice(0, QUESTIONS_COUNT) });
    }
    type(takenUp(typed.value, instrument.id, remembered(REMEMBERED)));
    remember(REMEMBERED, instrument.id);
  }

  async function save() {
    const member = current.value?.member.id ?? "";
    const answer = await record("drill_done", drillBody(typed.value, member, scale));
    found.value = hindrance(answer);
    if (found.value !== null) return;
    tremble(1);
    clear();
    goTo(`/skills/${member}`);
  }

  return {
    typed: typed.value,
    type,
    begin: () => type({ ...BLANK_DRILL, seed: seedOf(chanceBytes(SEED_BYTES)) }),
    question: seed === null ? null : (questionsOf(seed)[at] ?? null),
    read: reads[at] ?? "",
    onRead: (read: string) => type({ reads: withRead(reads, at, read) }),
    next: () => type({ at: Math.min(at + 1, STEPS_COUNT - 1) }),
    back: () => type(backFrom(typed.value)),
    tell: () => type({ is_in_words: !typed.value.is_in_words, used_words: true }),
    scales,
    scale,
    choose,
    hindrance: found,
    save,
  };
}

/** One step back; from the checklist over a weighing that was left out. */
function backFrom({ at, instrument }: DrillTyped): Partial<DrillTyped> {
  const isOver = at === STEPS_COUNT - 1 && instrument === LEFT_OUT;
  return isOver ? { at: QUESTIONS_COUNT, instrument: "" } : { at: at - 1 };
}

/** The state of a drill's screen. */
export type Drilling = ReturnType<typeof useDrill>;

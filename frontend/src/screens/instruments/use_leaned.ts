/** What leaned on an instrument: over held sheets at once, and the whole record when it comes. */
import { type Signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { InstrumentState } from "../../calc/instruments.ts";
import { askedImpact, askedReadings, type Impact, type ImpactReading } from "../../state/impact.ts";
import { sheet } from "../../state/sheets.ts";
import { LEANED } from "../../text/instruments.ts";
import { clockWords, figure } from "../../text/numbers.ts";
import { nowMs, zone } from "../common/edge.ts";
import { type Leaned, leanedFrom } from "./leaned.ts";
import { leanedHere } from "./leaned_here.ts";

const PAGES_MOST = 500;
const ASK_AGAIN_MS = 2_000;
const ASKED_MOST = 15; // while the server is adding up

/** What is seen, and in words where it comes from. */
export interface Seen {
  leaned: Leaned | null;
  isWhole: boolean;
  says: string;
}

/** The server's answer so far; `isDone` once all its readings have come. */
interface Answer {
  about: string;
  impact: Impact;
  readings: ImpactReading[];
  at: string;
  isDone: boolean;
}

/** One failed check of an instrument. */
export function useLeaned(instrument: string, check: string): Seen {
  const answer = useSignal<Answer | null>(null);
  const trouble = useSignal<string | null>(null);
  // An own check that has just been handed over is known to the server from then on.
  const shown = sheet<InstrumentState>(`instrument:${instrument}`).value;
  const waiting = shown?.waiting ?? 0;
  const hinders = hindersAsking(shown?.state ?? null, { check, waiting });
  useEffect(() => {
    trouble.value = hinders;
    return hinders === null ? asking(instrument, check, { answer, trouble }) : undefined;
  }, [instrument, check, hinders]);
  const whole = answer.value?.about === check ? answer.value : null;
  if (whole === null) {
    const says = [LEANED.held_why, trouble.value ?? LEANED.asking].join(" ");
    return { leaned: leanedHere(instrument, check), isWhole: false, says };
  }
  const leaned = leanedFrom(whole.impact, whole.readings);
  return { leaned, isWhole: true, says: wholeSays(whole, trouble.value) };
}

/** Why the server need not be asked; its sheet names every check. Null: ask. */
function hindersAsking(
  state: InstrumentState | null,
  { check, waiting }: { check: string; waiting: number },
): string | null {
  if (waiting > 0) return LEANED.not_handed;
  const known = state?.checks?.find((each) => each.entry === check);
  return state === null || known?.verdict === "failed" ? null : LEANED.not_found;
}

function wholeSays({ impact, readings, at, isDone }: Answer, trouble: string | null): string {
  const isShort = readings.length < impact.readings && !isDone;
  return [
    LEANED.whole_why(at),
    impact.is_adding_up ? LEANED.still : "",
    isShort ? LEANED.coming(figure(`${readings.length}`), figure(`${impact.readings}`)) : "",
    trouble === LEANED.cut_off ? trouble : "",
  ]
    .filter(Boolean)
    .join(" ");
}

interface Told {
  answer: Signal<Answer | null>;
  trouble: Signal<string | null>;
}

/** Asks until the server has added up; answers what stops it. */
function asking(instrument: string, check: string, told: Told): () => void {
  let isLeft = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tell = (answer: Answer | null, trouble: string | null): boolean => {
    if (isLeft) return false;
    if (answer !== null) told.answer.value = answer;
    told.trouble.value = trouble;
    return true;
  };
  const askFor = async (asks: number): Promise<void> => {
    const isBehind = await askedOnce(instrument, check, { tell, isLast: asks === ASKED_MOST });
    if (isBehind && !isLeft) {
      timer = setTimeout(() => void askFor(asks + 1), ASK_AGAIN_MS);
    }
  };
  void askFor(1);
  return () => {
    isLeft = true;
    clearTimeout(timer);
  };
}

interface Asked {
  tell: (answer: Answer | null, trouble: string | null) => boolean;
  /** Then what is known is shown, though there may be more. */
  isLast: boolean;
}

/** Sums first, then page after page; true where the server is still adding up. */
async function askedOnce(
  instrument: string,
  check: string,
  { tell, isLast }: Asked,
): Promise<boolean> {
  const sums = await askedImpact(instrument, check);
  if ("code" in sums) {
    tell(null, troubleWords(sums.code));
    return false;
  }
  const { impact } = sums;
  if (impact.is_adding_up && !isLast) {
    tell(null, LEANED.adding_up);
    return true;
  }
  const at = clockWords(new Date(nowMs()).toISOString(), zone());
  let readings: ImpactReading[] = [];
  let after: string | null = "";
  for (let page = 0; page < PAGES_MOST && after !== null; page += 1) {
    if (!tell({ about: check, impact, readings, at, isDone: false }, null)) return false;
    const next = await askedReadings(instrument, check, after);
    if ("code" in next) {
      tell({ about: check, impact, readings, at, isDone: true }, LEANED.cut_off);
      return false;
    }
    readings = [...readings, ...next.readings];
    after = next.more;
  }
  tell({ about: check, impact, readings, at, isDone: true }, null);
  return false;
}

/** One sentence for whatever stood in the way. */
function troubleWords(code: string): string {
  if (code === "no_signal" || code === "nonsense") return LEANED.no_signal;
  return code === "not_found" ? LEANED.not_found : LEANED.refused;
}

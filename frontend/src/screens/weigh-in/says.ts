/** The verdict in words, with what to do. */
import type { VerdictKind } from "../../parts/Verdict.tsx";
import { amountWords, figure } from "../../text/numbers.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import type { BatchLine, InstrumentShown } from "../common/batches.ts";
import type { Weighed } from "./reading.ts";

/** What the plate shows. */
export interface PlateSays {
  verdict: VerdictKind;
  isTooLittle: boolean;
  word: string | null;
  why: string;
}

/** What the verdict rests on besides the reading. */
export interface SaysGiven {
  line: BatchLine;
  unit: string;
  instrument: InstrumentShown | null;
  /** An instrument that could tell, other than the one in use. */
  better: InstrumentShown | null;
  isCounted: boolean;
}

/** The plate for what was weighed. */
export function plateSays(weighed: Weighed, given: SaysGiven): PlateSays {
  const isTooLittle = !weighed.is_over && !weighed.is_exact;
  const off = amountWords(weighed.off, given.unit);
  const plate: Omit<PlateSays, "why"> = {
    verdict: weighed.verdict ?? "none",
    isTooLittle,
    word: null,
  };
  if (weighed.verdict === "within") {
    return { ...plate, word: WEIGH_IN.within, why: withinWhy(weighed, given, off) };
  }
  if (weighed.verdict === "outside") {
    const word = isTooLittle ? WEIGH_IN.outside_little : WEIGH_IN.outside_much;
    const act = isTooLittle ? WEIGH_IN.add : WEIGH_IN.take_out;
    return { ...plate, word, why: act(off, figure(weighed.stop_at ?? weighed.target)) };
  }
  if (weighed.verdict === "cannot_tell") {
    const sort = given.instrument?.sort ?? "";
    return { ...plate, word: WEIGH_IN.this_cannot_tell(sort), why: cannotWhy(weighed, given, off) };
  }
  return { ...plate, why: WEIGH_IN.no_limits };
}

function withinWhy(weighed: Weighed, { line }: SaysGiven, off: string): string {
  if (weighed.is_exact) return WEIGH_IN.keep_exact;
  const allowed = weighed.is_over ? line.above : line.below;
  const words = amountWords(allowed, line.planned?.unit);
  return weighed.is_over ? WEIGH_IN.keep_over(off, words) : WEIGH_IN.keep_under(off, words);
}

/** Names what would help: another instrument, else a repeat, or the amount itself. */
function cannotWhy(weighed: Weighed, given: SaysGiven, off: string): string {
  const help =
    given.better !== null
      ? WEIGH_IN.other_instrument(given.better.name)
      : given.instrument?.division
        ? WEIGH_IN.repeat_it
        : WEIGH_IN.division_unknown;
  if (weighed.is_exact) return `${help}.`;
  return `${help}, ${weighed.is_over ? WEIGH_IN.or_take_out(off) : WEIGH_IN.or_add(off)}`;
}

/** What the main key says it will do. */
export function saveWords(weighed: Weighed, unit: string): string {
  const net = amountWords(weighed.corrected ?? weighed.net, unit);
  if (weighed.verdict === "outside") return WEIGH_IN.save_outside(net);
  return weighed.verdict === "cannot_tell" ? WEIGH_IN.save_cannot_tell(net) : WEIGH_IN.save(net);
}

/** The sentence of the glass. */
export function glassSays(weighed: Weighed, unit: string): string {
  const allowed =
    weighed.low === null && weighed.high === null
      ? WEIGH_IN.glass_no_limits
      : WEIGH_IN.glass_allowed(figure(weighed.low), amountWords(weighed.high, unit));
  return weighed.level === null
    ? WEIGH_IN.glass_empty(amountWords(weighed.target, unit), allowed)
    : WEIGH_IN.glass(amountWords(weighed.level, unit), allowed);
}

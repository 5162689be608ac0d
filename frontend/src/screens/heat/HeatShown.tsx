/** A log drawn with its limits, its result in a sentence, its caution in full. */
import type { ComponentChildren } from "preact";
import type { HeatJudged } from "../../calc/heat_judged.ts";
import type { HeatTrust } from "../../calc/heat_trust.ts";
import { significant } from "../../calc/numbers.ts";
import { ONE_SIDED_95 } from "../../calc/readings.ts";
import { Caution } from "../../parts/Caution.tsx";
import { HeatChart } from "../../parts/HeatChart.tsx";
import { Part } from "../../parts/Plain.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import { CITED, HEAT, plotWords } from "../../text/heat.ts";
import { cautionOf, heatSentence, thermometerWords, wholeWords } from "../../text/heat_results.ts";
import { HEAT_LOGS, heatVerdictWord, ruleWord } from "../../text/heat_rules.ts";
import { Recalled } from "../common/Recalled.tsx";
import type { Plot } from "./plot.ts";

const PLATES: Readonly<Record<string, "within" | "outside" | "cannot_tell">> = {
  pass: "within",
  fail: "outside",
  not_proven: "cannot_tell",
  unfinished: "cannot_tell",
};

/** What a plate says; `isSoFar` while more rows may come. */
interface HeatPlateProps {
  judged: HeatJudged;
  unit: string | null;
  isLive?: boolean;
  isSoFar?: boolean;
}

/** The verdict with its figures. */
export function HeatPlate({ judged, unit, isLive, isSoFar }: HeatPlateProps) {
  const why = heatSentence(judged, unit);
  const word = heatVerdictWord(judged.verdict);
  return (
    <Verdict
      verdict={PLATES[judged.verdict ?? ""] ?? "none"}
      word={judged.verdict === null ? undefined : isSoFar ? HEAT.so_far(word) : word}
      why={judged.verdict === null && judged.by === null ? `${why} ${HEAT_LOGS.kept_as}` : why}
      isLive={isLive}
    />
  );
}

/** The drawing, how whole the log is, and what it leans on. */
export function HeatShown(props: {
  judged: HeatJudged & { readonly trust?: HeatTrust | null };
  plot: Plot | null;
  unit: string | null;
  setBy: string | null;
  /** Where the thermometer was due for a check. */
  due?: ComponentChildren;
}) {
  const { judged, plot, unit, setBy, due } = props;
  const trust = judged.trust ?? null; // a sheet of an earlier version knows none
  return (
    <Part title={ruleWord(judged.by)} id="heat-shown">
      {plot !== null && <HeatChart {...plot} says={plotWords(judged, unit)} />}
      <p class="second">{wholeWords(judged)}</p>
      {trust !== null && (
        <p class="second">{thermometerWords(trust, { unit, reach: reachOf(trust) })}</p>
      )}
      {due}
      {setBy && (
        <p class="second">
          {HEAT.limits_by} <span class="rec">{setBy}</span>
        </p>
      )}
      <Recalled cited={judged.cited} names={CITED} />
      <Caution about={cautionOf(judged.by)} />
    </Part>
  );
}

const REACH_DIGITS = 2;

/** The guard band of a reading, as verdicts have it. */
function reachOf({ u }: HeatTrust): string | null {
  return u === null ? null : significant(Number(u) * ONE_SIDED_95, REACH_DIGITS);
}

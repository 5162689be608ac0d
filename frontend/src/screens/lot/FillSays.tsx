/** What a fill check says: the verdict in a sentence, what was recalled, the packs as a chart. */
import { individuals } from "../../calc/charts.ts";
import type { Fill } from "../../calc/fills.ts";
import { parseDecimal, plain, rounded, total } from "../../calc/numbers.ts";
import type { FillCheck } from "../../calc/stock.ts";
import { ControlChart } from "../../parts/ControlChart.tsx";
import { Caution, Part } from "../../parts/Plain.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import {
  chartWords,
  FILL,
  fillSentence,
  reasonWords,
  ruleWords,
  VERDICT_WORDS,
} from "../../text/fill.ts";
import { amountWords, dayWords, figure } from "../../text/numbers.ts";
import { memberName } from "../shared/people.ts";
import { Recalled } from "../shared/Recalled.tsx";
import { fillSaid } from "./fill.ts";

const CHART_PACKS_LEAST = 8; // fewer have no limits worth the name
const PLATES = { pass: "within", fail: "outside", not_decided: "cannot_tell" } as const;

/** The verdict of a check, whole in one sentence. */
export function FillPlate({ fill, isLive }: { fill: Fill; isLive?: boolean }) {
  const said = fillSaid(fill);
  return (
    <Verdict
      verdict={PLATES[fill.verdict]}
      isTooLittle
      word={VERDICT_WORDS[fill.verdict]}
      why={said === null ? reasonWords(fill.reasons) : fillSentence(said)}
      isLive={isLive}
    />
  );
}

/** The last check of a lot, on its sheet. */
export function LastFill({ fills }: { fills: readonly FillCheck[] }) {
  const last = fills.at(-1);
  if (last === undefined) return null;
  return (
    <>
      <Part title={FILL.last}>
        <FillPlate fill={last} />
        <p class="second">
          {last.label !== null && `${amountWords(last.label.amount, last.label.unit)}, `}
          {memberName(last.author)}, {dayWords(last.on)}
          {fills.length > 1 && `. ${FILL.earlier(fills.length - 1)}`}
        </p>
        <Recalled cited={last.cited} names={FILL} />
        <Caution>{FILL.caution}</Caution>
      </Part>
      <Packs fill={last} />
    </>
  );
}

/** Net content of each pack in the order they were weighed, with the rules that fired. */
export function Packs({ fill }: { fill: Fill }) {
  if (fill.errors.length < CHART_PACKS_LEAST || fill.declared === null) return null;
  const declared = parseDecimal(fill.declared);
  const nets = fill.errors.map((error) => total([declared, parseDecimal(error)]));
  const { places } = individuals(nets);
  const [limit] = places.limits;
  const marked = new Set(places.fired.flatMap(({ points }) => points));
  const words = (value: number) => amountWords(value.toFixed(1), fill.unit);
  return (
    <Part title={FILL.chart}>
      <ControlChart
        points={nets.map((net, place) => ({
          id: `${place}`,
          value: Number(plain(net)),
          isMarked: marked.has(place),
        }))}
        centre={places.centre}
        low={limit?.low ?? null}
        high={limit?.high ?? null}
        says={`${chartWords(nets.length, words(limit?.low ?? 0), words(limit?.high ?? 0))} ${nets.map((net) => figure(plain(rounded(net, 1)))).join(", ")}`}
      />
      {places.fired.length === 0 ? (
        <p>{FILL.usual}</p>
      ) : (
        places.fired.map(({ rule, points }) => <p key={rule}>{ruleWords(rule, points)}</p>)
      )}
      <p class="second">{FILL.rules_recalled}</p>
    </Part>
  );
}

/** What a fill check says: the verdict in a sentence, what was recalled, the way to its chart. */

import type { FillCheck } from "../../calc/fill_trust.ts";
import type { Fill } from "../../calc/fills.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Part } from "../../parts/Plain.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import { FILL, fillSentence, reasonWords } from "../../text/fill.ts";
import { FILL_VERDICTS } from "../../text/lot.ts";
import { amountWords, dayWords } from "../../text/numbers.ts";
import { ChartKeyLater } from "../common/ChartKeyLater.ts";
import { InQuestion } from "../common/InQuestion.tsx";
import { memberName } from "../common/people.ts";
import { Recalled } from "../common/Recalled.tsx";
import { fillSaid } from "./fill.ts";

const PLATES = { pass: "within", fail: "outside", not_decided: "cannot_tell" } as const;

/** The verdict of a check, whole in one sentence. */
export function FillPlate({ fill, isLive }: { fill: Fill; isLive?: boolean }) {
  const said = fillSaid(fill);
  return (
    <Verdict
      verdict={PLATES[fill.verdict]}
      isTooLittle
      word={FILL_VERDICTS[fill.verdict]}
      why={said === null ? reasonWords(fill.reasons) : fillSentence(said)}
      isLive={isLive}
    />
  );
}

/** The last check of a lot, on its sheet. */
export function LastFill({ lot, fills }: { lot: string; fills: readonly FillCheck[] }) {
  const last = fills.at(-1);
  if (last === undefined) return null;
  return (
    <Part title={FILL.last}>
      <FillPlate fill={last} />
      <p class="second">
        {last.label !== null && `${amountWords(last.label.amount, last.label.unit)}, `}
        {memberName(last.author)}, {dayWords(last.on)}
        {fills.length > 1 && `. ${FILL.earlier(fills.length - 1)}`}
      </p>
      <FillInQuestion fill={last} />
      <ChartKeyLater of={{ is: "fills", lot }} />
      <Recalled cited={last.cited} names={FILL} />
      <Caution about="net_content" />
    </Part>
  );
}

/** What the checks of its scale say of a fill check. A sheet of an earlier version knows none. */
export function FillInQuestion({
  fill,
}: {
  fill: Fill & { [Known in "trust" | "instrument" | "happened_at"]?: FillCheck[Known] | undefined };
}) {
  const { trust, instrument, happened_at, unit } = fill;
  const wouldBe = trust?.failed_by ? trust.would_be : null;
  return (
    <p>
      {trust?.found_by && <span class="second">{FILL.corrected} </span>}
      <InQuestion trust={trust} instrument={instrument} unit={unit} happened_at={happened_at} />
      {wouldBe != null && wouldBe !== fill.verdict && (
        <span class="in-question">{FILL.would_be(FILL_VERDICTS[wouldBe] ?? wouldBe)}</span>
      )}
    </p>
  );
}

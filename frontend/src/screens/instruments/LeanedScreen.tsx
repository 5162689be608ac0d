/** What leaned on an instrument that failed: readings, batches, lots, and who got them. */
import { useSignal } from "@preact/signals";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { INSTRUMENTS, LEANED } from "../../text/instruments.ts";
import { Business } from "../common/Business.tsx";
import { dayOf } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { InQuestion, ReadingRow, ShowMore } from "./LeanedParts.tsx";
import type { Leaned } from "./leaned.ts";
import { type Seen, useLeaned } from "./use_leaned.ts";
import "../common/rows.css";
import "./instruments.css";

const SHEETS_AT_ONCE = 20;
const LOTS_AT_ONCE = 30;

/** `#/instruments/:id/leaned/:check`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { id = "", check = "" } = params;
  const seen = useLeaned(id, check);
  const { leaned } = seen;
  const hasLots = leaned !== null && leaned.lots.length > 0;
  return (
    <Frame
      where={LEANED.where(nameOf("instrument", id))}
      title={LEANED.title}
      gauge={<HeadGauge />}
      calm={
        leaned &&
        LEANED.calm(leaned.after && dayOf(leaned.after), leaned.until && dayOf(leaned.until))
      }
      benchName={INSTRUMENTS.bench}
      bench={
        <Foot>
          <BackKey href={`#/instruments/${id}`} />
          {hasLots ? (
            <MainKey words={LEANED.print} onPress={() => window.print()} />
          ) : (
            <MainKey words={LEANED.sheet} href={`#/instruments/${id}`} />
          )}
        </Foot>
      }
      side={hasLots && <WhoGotIt leaned={leaned} />}
    >
      <Origin seen={seen} />
      {leaned === null || isNothing(leaned) ? (
        <Notice>{seen.isWhole ? LEANED.none_at_all : LEANED.none}</Notice>
      ) : (
        <WhatLeaned leaned={leaned} />
      )}
    </Frame>
  );
}

function isNothing({ sheets, elsewhere }: Leaned): boolean {
  return sheets.length === 0 && elsewhere.length === 0;
}

/** Which of the two is seen, in words; read out when it changes. */
function Origin({ seen }: { seen: Seen }) {
  return (
    <p class={seen.isWhole ? "origin whole" : "origin"} role="status">
      <b>{seen.isWhole ? LEANED.whole : LEANED.held}.</b> {seen.says}
    </p>
  );
}

function WhatLeaned({ leaned }: { leaned: Leaned }) {
  const shown = useSignal(SHEETS_AT_ONCE);
  const { sheets, elsewhere } = leaned;
  const count = sheets.reduce((sum, each) => sum + each.count, 0);
  return (
    <>
      {sheets.length > 0 && <p>{LEANED.sum(count, sheets.length)}</p>}
      {sheets.slice(0, shown.value).map((each) => (
        <InQuestion key={each.subject} sheet={each} />
      ))}
      <ShowMore shown={shown} of={sheets.length} />
      {elsewhere.length > 0 && (
        <Part title={LEANED.elsewhere}>
          <ul class="leaned">
            {elsewhere.map((each) => (
              <ReadingRow key={each.entry} reading={each} />
            ))}
          </ul>
        </Part>
      )}
    </>
  );
}

/** A recall starts from here: the lots, and everybody who has some of them. */
function WhoGotIt({ leaned }: { leaned: Leaned }) {
  const { businesses, stalls, isComplete } = leaned;
  return (
    <>
      <Part title={LEANED.got}>
        {!isComplete && <Notice>{LEANED.incomplete}</Notice>}
        {businesses.length === 0 && <p>{LEANED.got_none}</p>}
        {businesses.map((each) => (
          <Business key={each.recipient} business={each} />
        ))}
      </Part>
      {stalls.length > 0 && (
        <Part title={LEANED.private}>
          <Facts rows={stalls.map(({ name, amount }) => ({ name, value: amount }))} />
        </Part>
      )}
      <Lots lots={leaned.lots} />
    </>
  );
}

function Lots({ lots }: { lots: readonly string[] }) {
  const shown = useSignal(LOTS_AT_ONCE);
  return (
    <Part title={LEANED.lots}>
      <ul class="leaned lots">
        {lots.slice(0, shown.value).map((each) => (
          <li key={each}>
            <a class="fact-link code" href={`#/lot/${each}`}>
              {each}
            </a>
            <a class="fact-link" href={`#/trace/${each}`} aria-label={`${LEANED.trace} ${each}`}>
              {LEANED.trace}
            </a>
          </li>
        ))}
      </ul>
      <ShowMore shown={shown} of={lots.length} />
    </Part>
  );
}

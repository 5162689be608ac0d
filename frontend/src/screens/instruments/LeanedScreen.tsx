/** What leaned on an instrument that failed: readings, batches, lots, and who got them. */
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { INSTRUMENTS, LEANED } from "../../text/instruments.ts";
import { amountWords, clockWords, dayWords, signedWords } from "../../text/numbers.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { recipeNameOf } from "../shared/batches.ts";
import { dayOf, zone } from "../shared/edge.ts";
import { endName } from "../shared/ends.ts";
import { HeadGauge } from "../shared/HeadGauge.tsx";
import { movesText } from "../shared/trust.ts";
import { type LeanedBatch, type LeanedReading, leanedOn } from "./leaned.ts";
import "../shared/rows.css";
import "./instruments.css";

/** `#/instruments/:id/leaned/:check`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { id = "", check = "" } = params;
  const leaned = leanedOn(id, check);
  const [lot] = leaned?.lots ?? [];
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
          {lot === undefined ? (
            <MainKey words={LEANED.sheet} href={`#/instruments/${id}`} />
          ) : (
            <MainKey words={LEANED.call} href={`#/trace/${lot}/call`} />
          )}
        </Foot>
      }
      side={
        leaned !== null &&
        leaned.batches.length > 0 && (
          <>
            <Part title={LEANED.lots}>
              <p class="key-row">
                {leaned.lots.map((each) => (
                  <Cup key={each} href={`#/lot/${each}`}>
                    <span class="code">{each}</span>
                  </Cup>
                ))}
              </p>
            </Part>
            <Part title={LEANED.got}>
              {leaned.ends.length === 0 ? (
                <p>{LEANED.got_none}</p>
              ) : (
                <Facts
                  rows={leaned.ends.map((each) => ({
                    name: `${endName(each.to)}, ${endName(each.from)}`,
                    value: amountWords(each.amount, each.unit),
                  }))}
                />
              )}
            </Part>
          </>
        )
      }
    >
      <p class="second">{LEANED.from_phone}</p>
      {leaned === null || leaned.batches.length === 0 ? (
        <Notice>{LEANED.none}</Notice>
      ) : (
        leaned.batches.map((each) => <InQuestion key={each.batch.batch} leaned={each} />)
      )}
    </Frame>
  );
}

function InQuestion({ leaned }: { leaned: LeanedBatch }) {
  const { batch, readings, changes } = leaned;
  return (
    <Part title={`${recipeNameOf(batch)}, ${batch.code ?? ""}`}>
      <ul class="leaned">
        {readings.map((each) => (
          <li key={each.entry}>
            <span>
              <b>{momentWords(each)}</b> <span class="rec">{each.name}</span>
            </span>
            <span>{movesWords(each)}</span>
          </li>
        ))}
      </ul>
      <p>
        {changes.length === 0
          ? LEANED.no_change
          : changes
              .map(({ name, was, now }) =>
                LEANED.changes(name, WEIGH_IN.verdict_word(was), WEIGH_IN.verdict_word(now)),
              )
              .join("; ")}
      </p>
      <p class="key-row">
        <Cup href={`#/batch/${batch.batch}`}>{LEANED.sheet}</Cup>
      </p>
    </Part>
  );
}

function momentWords({ happened_at }: LeanedReading): string {
  return `${dayWords(dayOf(happened_at))} ${clockWords(happened_at, zone())}`;
}

function movesWords({ moves, unit }: LeanedReading): string {
  return moves === null ? LEANED.unknown : LEANED.moves(signedWords(movesText(moves), unit));
}

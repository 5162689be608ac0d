/** The end of a way: a source, a business or a stall day, with every lot that went that way. */
import type { LotState } from "../../calc/stock.ts";
import { BackKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { LotTag } from "../../parts/LotTag.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { sheetsOf } from "../../state/sheets.ts";
import { recipients, sources } from "../../state/stock.ts";
import { dayWords } from "../../text/numbers.ts";
import { END } from "../../text/trace.ts";
import { endName } from "../common/ends.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { amountText, materialOf, textField } from "../common/lots.ts";

const TITLES: Record<string, string> = {
  source: END.from_source,
  recipient: END.to_recipient,
  day: END.at_stall,
};

/** `params.type` is source, recipient or day, `params.id` which one. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { type = "", id = "" } = params;
  const subject = `${type}:${id}`;
  const known = [...sources.value, ...recipients.value].find((each) => each.id === id) ?? null;
  const facts = [
    { name: END.contact, value: textField(known, "contact") },
    { name: END.address, value: textField(known, "address") },
  ].filter((row) => row.value !== null);
  const lots = sheetsOf<LotState>("lot").value.flatMap(({ state }) => wayOf(state, subject));
  return (
    <Frame
      where={END.where}
      title={endName(subject)}
      isRecorded
      gauge={<HeadGauge />}
      benchName={END.bench}
      bench={
        <Foot>
          <BackKey onPress={() => history.back()} />
          <span />
        </Foot>
      }
    >
      {facts.length > 0 && <Facts rows={facts} />}
      <Part title={TITLES[type] ?? END.to_recipient}>
        {lots.length === 0 ? (
          <Notice>{END.none}</Notice>
        ) : (
          <div class="tags">
            {lots.map(({ state, amount, on }) => (
              <LotTag
                key={state.lot}
                code={state.lot}
                name={materialOf(state.material)?.name ?? ""}
                amount={amountText(amount, state.unit ?? "pc", materialOf(state.material))}
                life={dayWords(on)}
                href={`#/trace/${state.lot}`}
              />
            ))}
          </div>
        )}
      </Part>
    </Frame>
  );
}

function wayOf(state: LotState, subject: string) {
  if (subject === `source:${state.source}`) {
    return [{ state, amount: state.made, on: state.made_on }];
  }
  const way = state.went_to.find((each) => each.to === subject);
  return way === undefined ? [] : [{ state, amount: way.amount, on: way.on }];
}

/** Trace: which lot. By its code or by what it is; the newest first. */
import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import { isLotCode } from "../../calc/codes.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import type { LotState } from "../../calc/stock.ts";
import { type Choice, Choices, found } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { goTo } from "../../state/route.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { dayWords } from "../../text/numbers.ts";
import { TRACE } from "../../text/trace.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { materialOf } from "../common/lots.ts";

const SHOWN_MAX = 30;

/** A code nobody here knows can still be looked for on the server. */
export function Screen() {
  const search = useSignal("");
  const id = useId();
  const lots = found(newestFirst(), search.value);
  const typed = search.value.trim().toUpperCase();
  const isUnknown = isLotCode(typed) && lots.every((lot) => lot.id !== typed);
  const left = lots.length - SHOWN_MAX;
  return (
    <Frame
      where={TRACE.where}
      title={TRACE.title}
      gauge={<HeadGauge />}
      benchName={TRACE.bench}
      bench={
        <>
          <p class="search">
            <label class="unseen" for={id}>
              {TRACE.search}
            </label>
            <input
              id={id}
              type="search"
              autocapitalize="characters"
              autocomplete="off"
              placeholder={TRACE.search}
              value={search.value}
              onInput={(event) => {
                search.value = event.currentTarget.value;
              }}
            />
          </p>
          <Foot>
            <BackKey href="#/" />
            {isUnknown ? (
              <MainKey words={TRACE.ask_for(typed)} href={`#/trace/${typed}`} />
            ) : (
              <span />
            )}
          </Foot>
        </>
      }
    >
      <Choices
        name={TRACE.title}
        items={lots.slice(0, SHOWN_MAX)}
        chosen={null}
        onChoose={(lot) => goTo(`/trace/${lot}`)}
        searchFrom={Number.POSITIVE_INFINITY}
        none={search.value === "" ? TRACE.none : TRACE.none_found}
      />
      {left > 0 && <p class="nothing">{TRACE.more(left)}</p>}
    </Frame>
  );
}

function newestFirst(): Choice[] {
  return [...sheetsOf<LotState>("lot").value]
    .sort(
      (a, b) =>
        TEXT_ORDER(b.state.made_on ?? "", a.state.made_on ?? "") ||
        TEXT_ORDER(a.subject, b.subject),
    )
    .map(({ state }) => ({
      id: state.lot,
      name: materialOf(state.material)?.name ?? state.lot,
      sub: state.lot,
      right: dayWords(state.made_on),
    }));
}

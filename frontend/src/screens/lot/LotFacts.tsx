/** What a lot sheet says: its origin, places, sums, what somebody should look at. */

import type { LotState } from "../../calc/stock.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { findingWords, LOT } from "../../text/lot.ts";
import { lifeSortWord } from "../../text/lots.ts";
import { dayWords } from "../../text/numbers.ts";
import { endName } from "../common/ends.ts";
import { BatchInQuestion } from "../common/InQuestion.tsx";
import { amountText, materialOf } from "../common/lots.ts";
import { memberName } from "../common/people.ts";

/** Findings first: they are why one opens a sheet. */
export function LotFacts({ state }: { state: LotState }) {
  return (
    <>
      <Findings state={state} />
      <BatchInQuestion batch={state.batch} />
      <Places state={state} />
      <Origin state={state} />
      <Sums state={state} />
      {state.notes.length > 0 && (
        <Part title={LOT.notes}>
          {state.notes.map((note) => (
            <p key={note.entry}>
              <span class="rec">{note.says}</span>{" "}
              <span class="second">
                {memberName(note.author)}, {dayWords(note.on)}
              </span>
            </p>
          ))}
        </Part>
      )}
    </>
  );
}

function Findings({ state }: { state: LotState }) {
  if (state.findings.length === 0) return null;
  return (
    <Part title={LOT.findings}>
      {state.findings.map((each) => (
        <Notice key={each.key}>
          {findingWords(each.what, nameOf("place", each.place ?? null))}
          {each.is_settled && <b> ({LOT.settled})</b>}
        </Notice>
      ))}
    </Part>
  );
}

function Places({ state }: { state: LotState }) {
  const material = materialOf(state.material);
  const held = Object.entries(state.places);
  return (
    <Part title={LOT.here}>
      {held.length === 0 ? (
        <p>{state.condition === "refused" ? LOT.refused : LOT.nowhere}</p>
      ) : (
        <Facts
          rows={held.map(([place, amount]) => ({
            name: nameOf("place", place),
            value: amountText(amount, state.unit ?? "pc", material),
          }))}
        />
      )}
    </Part>
  );
}

function Origin({ state }: { state: LotState }) {
  const rows = [
    { name: LOT.made_on, value: dayWords(state.made_on, true) },
    ...(state.source === null
      ? []
      : [{ name: LOT.source, value: <span class="rec">{nameOf("source", state.source)}</span> }]),
    ...(state.their_lot === null
      ? []
      : [{ name: LOT.their_lot, value: <span class="rec">{state.their_lot}</span> }]),
    ...(state.batch === null
      ? []
      : [
          {
            name: LOT.batch,
            value: (
              <a class="fact-link" href={`#/batch/${state.batch}`}>
                {nameOf("batch", state.batch)}
              </a>
            ),
          },
        ]),
    ...(state.life === null
      ? []
      : [{ name: lifeSortWord(state.life.sort), value: dayWords(state.life.on, true) }]),
    ...state.came_from.map((each) => ({
      name: LOT.came,
      value: (
        <>
          <a class="fact-link" href={`#/lot/${each.lot}`}>
            {each.lot}
          </a>{" "}
          {amountText(each.amount, state.unit ?? "pc", null)}
        </>
      ),
    })),
  ];
  return (
    <Part title={LOT.what}>
      <Facts rows={rows} />
      {state.life !== null && <Caution about="shelf_life" />}
    </Part>
  );
}

/** Every sum that is not nothing, then each target by name. */
function Sums({ state }: { state: LotState }) {
  const material = materialOf(state.material);
  const words = (amount: string) => amountText(amount, state.unit ?? "pc", material);
  const sums: [string, string][] = [
    [LOT.made, state.made],
    [LOT.used, state.used],
    [LOT.sold, state.sold],
    [LOT.dispatched, state.dispatched],
    [LOT.returned, state.returned],
    [LOT.lost, state.lost],
    [LOT.found, state.found],
  ];
  return (
    <Part title={LOT.sums}>
      <Facts
        rows={[
          ...sums
            .filter(([, amount]) => amount !== "0")
            .map(([name, amount]) => ({ name, value: words(amount) })),
          ...state.went_to.map((way) => ({
            name: endName(way.to),
            // A stall day says its day by itself.
            value: way.to.startsWith("day:")
              ? words(way.amount)
              : `${words(way.amount)}, ${dayWords(way.on)}`,
          })),
        ]}
      />
    </Part>
  );
}
